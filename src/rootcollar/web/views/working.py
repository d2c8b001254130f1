"""The working of a number: a pure job run again, watched, and told step by step with its sources."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from rootcollar.choose import (
    Choice,
    Setting,
    day_money,
    expected,
    replay_all_cost,
    replay_all_minutes,
    replay_cost,
    replay_minutes,
    replay_mix,
    replay_side,
    side_words,
    sum_worlds,
    unit_day_minutes,
    visits_of,
    wage_per_h,
)
from rootcollar.kernel.doubt import Worlds, band, best
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import Step as Watched
from rootcollar.kernel.formula import as_tree, watch
from rootcollar.kernel.sources import Source
from rootcollar.kernel.units import convert
from rootcollar.kernel.working import in_words, walk
from rootcollar.survey import Stand, total
from rootcollar.web.desk import Open
from rootcollar.work import text

__all__ = [
    "Drawer", "Run", "Step", "before", "counted", "drawer_of", "line_drawer", "line_of", "mean_step", "money", "spread",
    "stems_drawer", "unit_drawer", "visits", "work_of",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Run:
    """Words of a sentence; where they are a number that opens, to: the page of its working, about: what it is of."""

    words: str
    to: str = ""
    about: str = ""


@dataclass(frozen=True, slots=True)
class Step:
    """One step in words. source: key and how the figure was come by."""

    what: str
    how: str


@dataclass(frozen=True, slots=True)
class Drawer:
    """What a number opens into. band: the doubt around it."""

    says: str
    band: str
    steps: tuple[Step, ...]
    sources: tuple[tuple[str, str], ...]


def line_drawer(here: Open, what: str, line: str) -> Drawer:
    """Return how a line's number was worked out. what: one of NUMBERS.

    Raises NotFound for another number, and for a line that is not in the plan or has no such number.
    """
    if what not in NUMBERS:
        raise NotFound("number of a line", what, list(NUMBERS))
    choice = line_of(here, line, what)
    if what == "stems":
        return stems_drawer(here, [choice.stand])
    with watch() as steps:
        found = _AGAIN[what](choice, here.setting)
    says, doubt = _WORDS[what](found)
    drawer = drawer_of(says, doubt, steps, here.setting.reference.sources)
    return replace(drawer, steps=(*drawer.steps, *_as_shown(what, best(found))))


def unit_drawer(here: Open, what: str, unit: str) -> Drawer:
    """Return how a unit's hours or cost were added up of its lines. Raises NotFound for what is not there."""
    if what not in OF_UNIT:
        raise NotFound("number of a unit", what, list(OF_UNIT))
    lines = [one for one in work_of(here) if one.stand.unit == unit]
    if not lines:
        raise NotFound("unit with work", unit, list(here.project.ground.units)[:3])
    parts = []
    with watch() as steps:
        for one in lines:
            parts.append(_AGAIN[what](one, here.setting))
        parts += _of_days(what, lines, here.setting)
    whole = sum_worlds(parts)
    says, doubt = _WORDS[what](whole)
    drawer = drawer_of(says, doubt, steps, here.setting.reference.sources)
    units = "min" if what.endswith("hours") else "money"
    added = " + ".join(f"{best(one):.6g}" for one in parts)
    together = Step("all lines that are work", f"{added} = {best(whole):.6g} {units}")
    return replace(drawer, steps=(*drawer.steps, together, *_as_shown(what, best(whole))))


def _of_days(what: str, lines: Sequence[Choice], setting: Setting) -> list[Worlds]:
    """Return what setting up and travel add to all visits; nothing where own.toml says nothing of them."""
    own = setting.own
    if not what.startswith("all-") or (own.set_up_min is None and own.travel_min is None):
        return []
    extra = unit_day_minutes(lines, setting)
    return [extra if what == "all-hours" else day_money(extra, wage_per_h(setting))]


def work_of(here: Open) -> list[Choice]:
    """Return the lines that are work: neither held nor struck out."""
    choices = here.plan.choices if here.plan else ()
    return [one for one in choices if one.is_work]


def drawer_of(says: str, doubt: str, steps: Iterable[Watched], cites: Mapping[str, Source]) -> Drawer:
    """Return what a number opens into. steps: as they were watched; cites: the sources there are, by key."""
    trees = [as_tree(step) for step in steps]
    told = dict.fromkeys(in_words(node) for tree in trees for _, node in walk(tree))
    keys = dict.fromkeys(key for tree in trees for key in _keys(tree) if key in cites)
    return Drawer(says, doubt, tuple(Step(*one) for one in told), tuple((key, cites[key].cite) for key in keys))


def before(drawer: Drawer, *others: Drawer) -> Drawer:
    """Return a drawer that begins with the steps of others, and names their sources too."""
    steps = tuple(step for one in others for step in one.steps)
    sources = dict(source for one in (*others, drawer) for source in one.sources)
    return replace(drawer, steps=(*steps, *drawer.steps), sources=tuple(sources.items()))


def mean_step(what: str, worlds: Worlds) -> Step:
    """Return the step from a sum of money with its doubt to what is expected of it."""
    if worlds.size == 1:
        return Step(what, f"without doubt = {expected(worlds):.6g} money")
    return Step(what, f"mean of {worlds.size - 1:,} draws of the doubt = {expected(worlds):.6g} money")


def money(worlds: Worlds) -> tuple[str, str]:
    """Return an amount of money in words, and its 10-90 % band where there is doubt."""
    here = band(worlds)
    return f"${here.best:,.0f}", spread(f"${here.low:,.0f}", f"{here.high:,.0f}", worlds)


def visits(worlds: Worlds) -> tuple[str, str]:
    """Return a number of visits in words, and its 10-90 % band where there is doubt."""
    here = band(worlds)
    return f"{here.best:.0f} visit{'' if here.best == 1 else 's'}", spread(
        f"{here.low:.0f}", f"{here.high:.0f}", worlds
    )


def counted(worlds: Worlds) -> tuple[str, str]:
    """Return a count of stems in words, and its 10-90 % band where there is doubt."""
    here = band(worlds)
    return f"{here.best:,.0f}", spread(f"{here.low:,.0f}", f"{here.high:,.0f}", worlds)


def spread(low: str, high: str, worlds: Worlds) -> str:
    """Return "low–high", or nothing for a number without doubt."""
    return f"{low}–{high}" if worlds.size > 1 and low != high else ""


_AGAIN: Mapping[str, Callable[[Choice, Setting], Worlds]] = {
    "mix": replay_mix, "hours": replay_minutes, "cost": replay_cost, "side": replay_side,
    "visits": visits_of, "all-hours": replay_all_minutes, "all-cost": replay_all_cost,
}  # fmt: skip
_WORDS: Mapping[str, Callable[[Worlds], tuple[str, str]]] = {
    "mix": lambda worlds: (f"{text.gallons(best(worlds))} of mix", text.span(worlds)),
    "hours": lambda worlds: (f"{text.hours(worlds)}, one visit", ""),
    "side": lambda worlds: (f"{side_words(worlds)[0]} hit beside, one visit", side_words(worlds)[1]),
    "visits": lambda worlds: (f"{visits(worlds)[0]} until the share is dead", visits(worlds)[1]),
    "all-hours": lambda worlds: (f"{text.hours(worlds)}, all visits", ""),
    "all-cost": lambda worlds: (f"{money(worlds)[0]}, all visits", money(worlds)[1]),
    "cost": lambda worlds: (f"{money(worlds)[0]}, one visit", money(worlds)[1]),
}
NUMBERS = ("stems", *_AGAIN)
OF_UNIT = ("hours", "cost", "all-hours", "all-cost")


def _as_shown(what: str, figure: float) -> tuple[Step, ...]:
    """Return the last step, from a mix [mL], a time [min] or a ground [m2] to the unit shown; money stays as it is."""
    if what in ("cost", "all-cost", "visits"):
        return ()
    volume = "gal" if text.gallons(figure).endswith("gal") else "fl oz"
    unit, shown = {"hours": ("min", "h"), "all-hours": ("min", "h"), "side": ("m2", "sq ft")}.get(what, ("mL", volume))
    worked = f"{figure:.6g} {unit} / {convert(1, shown, unit):.6g} = {convert(figure, unit, shown):.6g} {shown}"
    return (Step("as shown", worked),)


def stems_drawer(here: Open, stands: Sequence[Stand]) -> Drawer:
    """Return where a count comes from: its row of the tally and the counter's own range; of several, their sum."""
    steps = [step for one in stands for step in _counted(here, one)]
    whole = total(stands)
    said, doubt = counted(whole)
    if len(stands) > 1:
        added = " + ".join(f"{best(one.stems):.6g}" for one in stands)
        steps.append(Step("all together", f"{added} = {best(whole):.6g} stems"))
        if doubt:
            steps.append(
                Step("doubt of the sum", f"{doubt}, the rows' doubt added draw by draw, the middle 80 % of it")
            )
    return Drawer(f"{said} stems", doubt, tuple(steps), ())


def _counted(here: Open, stand: Stand) -> Iterator[Step]:
    said, doubt = counted(stand.stems)
    plant = here.setting.reference.species[stand.species].common_name
    row = f"{said} stems, the row of tally.csv for {stand.unit}, {plant}, {text.size(stand.band_cm)}"
    yield Step("counted", row)
    if doubt:
        yield Step("doubt", f"{doubt}, the row's own range, read as the middle 80 % of what is believed (ours)")


def line_of(here: Open, line: str, what: str) -> Choice:
    """Return a line of the plan that has a number. Raises NotFound for no line, or one without that number."""
    lines = {one.stand.key: one for one in (here.plan.choices if here.plan else ())}
    found = lines.get(line)
    if (
        found is None
        or (what in ("mix", "side") and found.recipe is None)
        or (what != "stems" and found.option is None)
    ):
        raise NotFound(f"line with {what}", line, list(lines)[:3])
    return found


def _keys(tree: Mapping[str, Any]) -> Iterator[str]:
    yield str(tree["source"])
    for below in tree["steps"]:
        yield from _keys(below)
