"""The top-up card: when the planned loads were not enough, how much more to mix, and how much may still be poured."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from rootcollar.choose import Setting, poured_ml, unit_totals
from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units import convert, jug, show
from rootcollar.label import Most, Past, UnitTotal, Work, most_mix
from rootcollar.label.limits import product_l_per_ha
from rootcollar.mix import card
from rootcollar.work import text
from rootcollar.work.asked import PacketAsked
from rootcollar.work.batches import tank_ml
from rootcollar.work.mixes import DayMix, day_mixes, limits_of_mix, work_lines
from rootcollar.work.packet import Page, Part
from rootcollar.work.printed import NO_SHEET

__all__ = ["topup_page"]

_TANKS = (("1 qt", 1 / 4), ("2 qt", 1 / 2), ("1 gal", 1), ("2 gal", 2))  # ours: jugs that are sold [gal]
_BOTTLES = (("4 fl oz", 4), ("8 fl oz", 8), ("16 fl oz", 16), ("1 qt", 32))  # ours: marks of squirt bottles [fl oz]
_FAR = 10  # ours: a limit so many times the plan cannot be passed by topping up
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
        other = recipe.partner
        also = [f"{_short(made.partner_ml)} {other.key}"] if other else []
        also += [f"{_short(made.surfactant_ml)} surfactant"] if made.surfactant_ml else []
        also += [f"{_short(made.dye_ml)} dye"] if made.dye_ml else ["no dye"] if mix.recipe.dye_pct else []
        return words, jug(made.product_ml).text, ", ".join(also) or "–", f"{made.true_pct:.3g} %"
    return words, f"cannot be measured: {why.do}", "–", "–"


def _short(volume_ml: float) -> str:
    return jug(volume_ml).text.partition(" (")[0]


def _most_part(mixes: Sequence[DayMix], asked: PacketAsked) -> Part:
    """For each mix of each unit: what is planned, and the most that keeps to the label's rates."""
    lines = work_lines(asked)
    totals, mix_of = unit_totals(lines, asked.setting), {line.stand.key: mix for mix in mixes for line in mix.lines}
    rows, treated = [], False
    for total in sorted(totals, key=lambda one: (asked.units.index(one.unit), mix_of[one.lines[0]].place)):
        mix = _seen_by(mix_of[total.lines[0]], total)
        most = _most(total, totals, mix, asked.setting)
        treated |= mix.sheet is not None and mix.sheet.says("limits.area_basis") != "site_acre"
        unit = asked.setting.ground.units[total.unit].name
        rows.append((unit, mix.letter, text.gallons(best(total.mix_ml)), *_most_words(most, total)))
    note = "All loads of the day together, the unit's other work as planned."
    if treated:
        note += " The label counts the acre treated: no acre on which stems stand gets more than its own most."
    heads = ("Unit", "Mix", "Planned", "At most on the unit", "On any acre", "The label's most that was looked at")
    return Part("Pour no more than this on a unit", "table", tuple(rows), heads, note)


def _seen_by(mix: DayMix, total: UnitTotal) -> DayMix:
    """The mix with the product in the first place that a sum counts."""
    counted = (total.ingredient, total.ae_g_per_l, total.strength_pct)
    each = ((one, (one.recipe.ingredient, one.recipe.ae_g_per_l, one.recipe.strength_pct)) for one in mix.each)
    return next((one for one, has in each if has == counted), mix)


def _most(total: UnitTotal, totals: Sequence[UnitTotal], mix: DayMix, setting: Setting) -> tuple[Most, ...]:
    if mix.sheet is None:
        return (Most(None, NO_SHEET),)
    same = (total.unit, total.ingredient)
    beside = tuple(one for one in totals if (one.unit, one.ingredient) == same and one is not total)
    rows = tuple(one for one in setting.history.rows if (one.unit, one.ingredient) == same)
    return most_mix(mix.sheet, Work(total, beside), Past(rows, setting.history.complete, setting.on))


def _most_words(most: Sequence[Most], total: UnitTotal) -> tuple[str, str, str]:
    """The least of what the rates leave, rounded down, on the unit and on an acre, and the rates looked at."""
    known = [one.mix_ml for one in most if one.mix_ml is not None]
    words = "; ".join(one.words for one in most)
    if len(known) < len(most) or not total.area_m2:
        return "not known: as planned", "not known", words
    on_acre = convert(best(product_l_per_ha(sure(min(known)), total.area_m2)), "L/ha", "mL/ac")
    far = min(known) > _FAR * best(total.mix_ml)
    return "far above the plan" if far else _down(min(known)), _down(on_acre), words


def _down(volume_ml: float) -> str:
    """A volume rounded down: whole gallons where there are many, tenths of a few, else a mark of a jug."""
    gallons = convert(volume_ml, "mL", "gal")
    if gallons >= 1:
        return show(to_step(gallons, 1 if gallons >= 10 else 1 / 10, "down"), "gal", 4)
    return jug(volume_ml, direction="down").text.partition(" (")[0]
