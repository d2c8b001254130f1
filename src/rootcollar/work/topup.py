"""The top-up card: when the planned loads were not enough, how much more to mix, and how much may still be poured."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from operator import attrgetter

from rootcollar.choose import mosts, poured_ml, unit_totals
from rootcollar.kernel.doubt import Worlds, best
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import note
from rootcollar.kernel.units import convert, jug
from rootcollar.label import Most, UnitTotal
from rootcollar.mix import card
from rootcollar.work import text
from rootcollar.work.again import poured_again
from rootcollar.work.asked import PacketAsked
from rootcollar.work.batches import card_again, short, tank_ml
from rootcollar.work.mixes import DayMix, day_mixes, limits_of_mix, work_lines
from rootcollar.work.packet import Page, Part
from rootcollar.work.worked import Worked, number, strung

__all__ = ["topup_page"]

_TANKS = (("1 qt", 1 / 4), ("2 qt", 1 / 2), ("1 gal", 1), ("2 gal", 2))  # ours: jugs that are sold [gal]
_BOTTLES = (("4 fl oz", 4), ("8 fl oz", 8), ("16 fl oz", 16), ("1 qt", 32))  # ours: marks of squirt bottles [fl oz]
_Of = Callable[[Most], float | None]
_ON_UNIT: _Of = attrgetter("mix_ml")
_ON_ACRE: _Of = attrgetter("on_acre_ml")
_FAR = 10  # ours: a limit so many times the plan cannot be passed by topping up
_BESIDE = ("partner_ml", "surfactant_ml", "dye_ml")
_LINES = 3  # ours: more top-ups than this in a day want a new plan
_HOW = (
    "Mix it in a jug first, then pour it into the sprayer: the same mix on the same mix.",
    "Never add product alone, nor water or oil alone, to what is left in a tank.",
    "Only while what is left is not older than the label lets a mix stand: see its tag.",
)


def topup_page(asked: PacketAsked) -> Page | None:
    """Return the card, or None on a day without mix."""
    mixes = day_mixes(asked)
    if not mixes:
        return None
    lines = "added ______ at ____ by ________"
    return Page(
        "Top-up card",
        "When the planned loads were not enough. Strengths are never above the label's.",
        (
            Part("How", "ticks", tuple((one,) for one in _HOW), note="Practice of the trade (ours)."),
            *(_table(one, asked) for one in mixes),
            _most_part(mixes, asked),
            Part(
                "Write down what was added", "text", tuple((f"Mix ___ unit ________ {lines}",) for _ in range(_LINES))
            ),
        ),
    )


def _table(mix: DayMix, asked: PacketAsked) -> Part:
    rows = tuple(_row(mix, words, total_ml) for words, total_ml in _sizes(mix, asked))
    fill = "Fill to" if mix.undiluted else f"{mix.recipe.carrier.capitalize()} to"
    note = "" if mix.lines else "Only if the first way cannot be done."
    return Part(f"{mix.letter}  {mix.words}", "table", rows, (fill, "Product", "Also", "Strength"), note)


def _sizes(mix: DayMix, asked: PacketAsked) -> Iterator[tuple[str, float]]:
    """Sizes that the sprayer holds; those of a bottle where little of the mix is needed, or it is undiluted."""
    held = tank_ml(mix.recipe, asked.crew, asked.setting)[0]
    little = best(poured_ml(mix.lines)) < convert(1, "qt", "mL")
    sizes, unit = (_BOTTLES, "fl oz") if little or mix.undiluted else (_TANKS, "gal")
    for words, amount in sizes:
        total_ml = convert(amount, unit, "mL")
        if total_ml <= held:
            yield words, total_ml


def _row(mix: DayMix, words: str, total_ml: float) -> tuple[str, ...]:
    """One size: the mark it is filled to, product, what else, true strength; without dye where that is too little."""
    for recipe in (mix.recipe, replace(mix.recipe, dye_pct=0.0)):
        try:
            made = card(recipe, total_ml, limits_of_mix(mix))
        except Refusal as refused:
            why = refused
            continue
        again = partial(card_again, recipe, total_ml, limits_of_mix(mix))
        beside = tuple(number(getattr(made, part), short, "mL", partial(again, part)) for part in _BESIDE)
        also: list[str] = [Worked(beside[0], f" {recipe.partner.key}")] if recipe.partner else []
        also += [Worked(beside[1], " surfactant")] if made.surfactant_ml else []
        also += [Worked(beside[2], " dye")] if made.dye_ml else ["no dye"] if mix.recipe.dye_pct else []
        product = number(made.product_ml, _jug, "mL", partial(again, "product_ml"))
        return (
            words,
            product,
            strung(", ", also) or "–",
            number(made.true_pct, _percent, "%", partial(again, "true_pct")),
        )
    return words, f"cannot be measured: {why.do}", "–", "–"


def _jug(volume_ml: float) -> str:
    return jug(volume_ml).text


def _percent(share_pct: float) -> str:
    return f"{share_pct:.3g} %"


def _most_part(mixes: Sequence[DayMix], asked: PacketAsked) -> Part:
    """For each mix of each unit: what is planned, and the most that keeps to the label's rates."""
    lines = work_lines(asked)
    totals, mix_of = unit_totals(lines, asked.setting), {line.stand.key: mix for mix in mixes for line in mix.lines}
    rows, treated = [], False
    for total in sorted(totals, key=lambda one: (asked.units.index(one.unit), mix_of[one.lines[0]].place)):
        mix = _seen_by(mix_of[total.lines[0]], total)
        most = mosts(total, totals, asked.setting)
        treated |= mix.sheet is not None and mix.sheet.says("limits.area_basis") != "site_acre"
        unit = asked.setting.ground.units[total.unit].name
        again = partial(_least_again, total, totals, asked)
        planned = number(total.mix_ml, text.best_gallons, "mL", partial(_planned_again, total, asked))
        rows.append((unit, mix.letter, planned, *_most_words(most, total, again)))
    note = "All loads of the day together, the unit's other work as planned."
    if treated:
        note += " The label counts the acre treated: no acre on which stems stand gets more than its own most."
    heads = ("Unit", "Mix", "Planned", "At most on the unit", "On any acre", "The label's most that was looked at")
    return Part("Pour no more than this on a unit", "table", tuple(rows), heads, note)


def _seen_by(mix: DayMix, total: UnitTotal) -> DayMix:
    """The mix with the product in the first place that a sum counts."""
    return next((one for one in mix.each if (one.recipe.product or "") == total.product), mix)


def _planned_again(total: UnitTotal, asked: PacketAsked) -> Worlds:
    lines = {one.stand.key: one for one in work_lines(asked)}
    return poured_again([lines[key] for key in total.lines], asked.setting)


def _least_again(total: UnitTotal, totals: Sequence[UnitTotal], asked: PacketAsked, of: _Of) -> float:
    """The least of what the label's rates leave [mL]."""
    _planned_again(total, asked)
    each = [ml for one in mosts(total, totals, asked.setting) if (ml := of(one)) is not None]
    return note("the least of these", ", ".join(f"{one:.6g}" for one in each), min(each), "mL")


def _most_words(most: Sequence[Most], total: UnitTotal, again: Callable[[_Of], float]) -> tuple[str, str, str]:
    """The least of what the rates leave, rounded down, on the unit and on an acre, and the rates looked at."""
    known = [one.mix_ml for one in most if one.mix_ml is not None]
    words = "; ".join(one.words for one in most)
    acre = [one.on_acre_ml for one in most if one.on_acre_ml is not None]
    if len(known) < len(most) or not acre:
        return "not known: as planned", "not known", words
    far = min(known) > _FAR * best(total.mix_ml)
    unit = number(min(known), (lambda _: "far above the plan") if far else text.down, "mL", lambda: again(_ON_UNIT))
    return unit, number(min(acre), text.down, "mL", lambda: again(_ON_ACRE)), words
