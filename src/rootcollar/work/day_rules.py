"""The rules that can be weighed only when a day is prepared: how long a load lasts, and what rides in the vehicle."""

from __future__ import annotations

from rootcollar.choose import minutes, poured_ml
from rootcollar.hazard import Package, is_classed
from rootcollar.kernel.doubt import best
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import formula
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Verdict
from rootcollar.label import Facts, settle, weigh_day
from rootcollar.shelf import Line
from rootcollar.work import text
from rootcollar.work.asked import PacketAsked
from rootcollar.work.batches import batches
from rootcollar.work.gear_aboard import day_lots, jug_of
from rootcollar.work.mixes import DayMix, day_mixes, day_products

__all__ = ["day_verdicts", "load_hours"]

_DAY = "day"


@formula("work_h * load_ml / mix_ml", gives="h", source="arithmetic", work_h=(1, 5000), load_ml=(100, 20000),
         mix_ml=(100, 100000))  # fmt: skip
def load_hours(work_h: float, load_ml: float, mix_ml: float) -> float:
    """Return how long one person works with a load [h]. work_h: with all the mix [h]. load_ml, mix_ml: [mL]."""
    return work_h * load_ml / mix_ml


def day_verdicts(asked: PacketAsked) -> tuple[Verdict, ...]:
    """Return what the rules say of the day's loads and of what rides along, answers taken in; alike ones once."""
    mixes = day_mixes(asked)
    jugs = _jugs(mixes, asked)
    settled: dict[Verdict, None] = {}
    law = {"law.transport": Line(tuple(asked.setting.reference.hazard["transport"]))}
    for mix in mixes:
        load = {"day.load": Line(_load(mix, asked))}
        for one in mix.each:
            if one.sheet is not None:
                label = {f"sheet.{path}": line for path, line in one.sheet.lines.items()}
                ride = {"day.jugs": Line((jugs.get(one.sheet.key, ()), _classed_kg(jugs, asked)))}
                facts: Facts = {"sheet.key": Line(one.sheet.key), **label, **law, **load, **ride}
                said = (
                    settle(found, asked.setting.answers, on=asked.setting.on, sheet=one.sheet)
                    for found in weigh_day(facts, _DAY)
                )
                settled |= dict.fromkeys(said)
    return tuple(settled)


def _load(mix: DayMix, asked: PacketAsked) -> tuple[str, float]:
    """The largest load of a mix in words, and how long one person works with it [h]; nothing of what is not poured."""
    words = f"mix {mix.letter}"
    if not mix.lines:
        return words, 0.0
    need, method = poured_ml(mix.lines), mix.lines[0].way.visit.method
    try:
        load_ml = max(batches(mix.recipe, need, method, asked.crew, asked.setting).loads.volumes_ml)
    except Refusal:  # what cannot be mixed has no load; its mix card says so
        return words, 0.0
    hours = load_hours(convert(best(minutes(mix.lines)), "min", "h"), load_ml, max(best(need), load_ml))
    return f"{text.mark(load_ml)} of {words}", hours


def _jugs(mixes: tuple[DayMix, ...], asked: PacketAsked) -> dict[str, tuple[Package, ...]]:
    """The jugs that ride along, by product: those in the shed, else one by its label."""
    lots, found = day_lots(mixes, asked), {}
    for one in day_products(mixes):
        if one.sheet is not None:
            mine = [jug_of(one.sheet, lot) for lot in lots if lot.what == one.sheet.key] or [jug_of(one.sheet)]
            found[one.sheet.key] = tuple(jug for jug in mine if jug is not None)
    return found


def _classed_kg(jugs: dict[str, tuple[Package, ...]], asked: PacketAsked) -> float:
    """What all classed products that ride along weigh together [kg]; a jug of unknown weight counts nothing."""
    kinds = {key: asked.setting.shelf[key].says("transport.dot_class") for key in jugs}
    classed = (jugs[key] for key, said in kinds.items() if said is not None and is_classed(said))
    return sum(jug.weight_kg or 0.0 for ones in classed for jug in ones)
