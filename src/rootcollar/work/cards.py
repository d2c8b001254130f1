"""Mix cards: what to pour for a full load and for the last one, in which order, what to buy, and the working."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from rootcollar.choose import Choice, Prescription, Setting, mix_words, poured_ml, replay_mix
from rootcollar.kernel.formula import Step, as_tree, note, watch
from rootcollar.kernel.units import convert, jug
from rootcollar.kernel.working import in_words, walk
from rootcollar.mix import Card as Batch
from rootcollar.mix import Limits, Loads, Recipe, adding_order, card, parts_of, product_in_ml, sides, smallest_batch_ml
from rootcollar.shelf import Sheet, setback_words, strictest
from rootcollar.work import text
from rootcollar.work.again import poured_again
from rootcollar.work.batches import batches, card_again, limits_for, loads_again
from rootcollar.work.crew import Crew
from rootcollar.work.packet import Card
from rootcollar.work.printed import closed_for
from rootcollar.work.worked import Worked, number, strung, within

__all__ = ["mix_cards", "product_words"]

_ALWAYS = (
    "Mixing is the riskiest moment: gloves and eyes first, over a tray, upwind, nobody beside you.",
    "The hose never hangs in the mix: a gap of air of two hose widths, never under 1 inch (HILLS, SANM, read).",
)


def product_words(recipe: Recipe, setting: Setting) -> str:
    """Return what a mix is made of, without a brand: the generic formulation's words."""
    known = setting.reference.formulations.get(recipe.formulation)
    return known.words if known else recipe.formulation


def mix_cards(lines: Sequence[Choice], prescription: Prescription, setting: Setting, crew: Crew) -> tuple[Card, ...]:
    """Return a card for each mix that the cleared lines or their fallbacks use, in letter order."""
    cards = []
    for letter, recipe in prescription.letters.items():
        mine = [one for one in lines if one.recipe == recipe and one.option]
        backs = [one for one in lines if one.fallback and one.fallback.option.way.visit.recipe == recipe]
        if mine:
            cards.append(_card(letter, recipe, mine, setting, crew))
        elif backs and backs[0].fallback:
            cards.append(_spare(letter, recipe, backs[0].fallback.option.way.visit.method, setting))
    return tuple(cards)


def _card(letter: str, recipe: Recipe, lines: Sequence[Choice], setting: Setting, crew: Crew) -> Card:
    need, method = poured_ml(lines), lines[0].way.visit.method
    made = batches(recipe, need, method, crew, setting)
    with watch() as steps:
        replay_mix(lines[0], setting)
        for _, one in made.cards:
            card(made.recipe, one.total_ml, limits_for(recipe, method, setting))

    def planned() -> Loads:
        return loads_again(recipe, poured_again(lines, setting), method, crew, setting)

    needed = number(need, text.best_gallons, "mL", lambda: poured_again(lines, setting))
    band = text.span(need)
    limits = limits_for(recipe, method, setting)
    return Card(
        letter,
        mix_words(recipe, product_words(recipe, setting)),
        Worked(
            f"{_strengths(recipe)}; ", needed, " needed" + (f" ({band})" if band else "") + f"; loads by {made.bound}"
        ),
        tuple(_load(name, made.recipe, one, limits, planned) for name, one in made.cards),
        _order(recipe, setting),
        _cautions(recipe, setting),
        _takes(recipe, made.loads.total_ml, planned),
        _working(steps),
    )


def _load(
    name: str, recipe: Recipe, one: Batch, limits: Limits, planned: Callable[[], Loads] | None = None
) -> tuple[str, tuple[str, ...], str]:
    """A batch in words, its numbers open. planned: the loads again, where it is one of a plan's."""

    def again(part: str) -> Callable[[], float]:
        return lambda: card_again(recipe, one.total_ml, limits, part)

    def volume() -> float:
        if planned is None:
            return note("a batch", "a quart, or the least that can be measured", one.total_ml, "mL", "ours")
        planned()
        return again("total_ml")()

    def poured(part: str) -> Worked:
        return number(getattr(one, part), _jug, "mL", again(part))

    half = number(one.diluent_ml / 2, _jug, "mL", lambda: _half(again("diluent_ml")()))
    amounts = {recipe.partner.key: poured("partner_ml")} if recipe.partner else {}
    amounts |= {"product": poured("product_ml"), "surfactant": poured("surfactant_ml"), "dye": poured("dye_ml")}
    amounts |= {"clear water": half, "oil": half}

    def opened(step: str) -> str:
        of = next((ml for what, ml in amounts.items() if f" of {what}" in step), "")
        return within(step, of or (amounts["product"] if one.diluent_ml == 0 else ""))

    steps = tuple(opened(step) for step in one.steps)
    title = Worked(f"{name}: ", number(one.total_ml, text.mark, "mL", volume))
    true = number(one.true_pct, _percent, "%", again("true_pct"))
    if one.partner_ml:
        true = Worked(true, " + ", number(one.partner_pct, _percent, "%", again("partner_pct")))
    return title, steps, true


def _half(diluent_ml: float) -> float:
    return note("about half of it", f"{diluent_ml:.6g} / 2", diluent_ml / 2, "mL")


def _jug(volume_ml: float) -> str:
    return jug(volume_ml).text


def _percent(share_pct: float) -> str:
    return f"{share_pct:.3g} %"


def _spare(letter: str, recipe: Recipe, method: str, setting: Setting) -> Card:
    """A card for a mix poured only if the first way cannot be done: a quart, or the least that can be measured."""
    limits = limits_for(recipe, method, setting)
    total_ml = max(convert(1, "qt", "mL"), smallest_batch_ml(recipe, limits))
    with watch() as steps:
        one = card(recipe, total_ml, limits)
    return Card(
        letter,
        mix_words(recipe, product_words(recipe, setting)),
        f"{_strengths(recipe)}; only if the first way cannot be done, a batch at a time",
        (_load("A batch", recipe, one, limits),),
        _order(recipe, setting),
        _cautions(recipe, setting),
        (),
        _working(steps),
    )


def _strengths(recipe: Recipe) -> str:
    other = recipe.partner
    both = f" and {other.strength_pct:.3g} % of {other.key}" if other else ""
    return f"{recipe.strength_pct:.3g} %{both} of the finished mix"


def _takes(recipe: Recipe, total_ml: float, planned: Callable[[], Loads]) -> tuple[tuple[str, str], ...]:
    """What the loads of a card take in all; what of that is to be bought stands on the shopping page alone."""
    taken = []
    for place, (what, pct) in enumerate(parts_of(recipe)):
        again = partial(_part_again, planned, pct)
        amount = number(product_in_ml(total_ml, pct), text.gallons, "mL", again)
        taken.append(Worked(amount, f" of {what if place else 'product'}"))
    return ((Worked("These loads take ", strung("; ", taken), "."), "See the page Shopping."),)


def _part_again(planned: Callable[[], Loads], pct: float) -> float:
    return product_in_ml(planned().total_ml, pct)


def _order(recipe: Recipe, setting: Setting) -> tuple[str, ...]:
    order = _strictest(recipe, setting)
    said = (order.says("mixing.order") or ()) if order else ()
    if recipe.partner is None:
        return adding_order(recipe.carrier, said)
    named = f"{recipe.product or recipe.formulation}, then {recipe.partner.key}, unless a label says otherwise"
    return tuple(named if one == "product" else one for one in adding_order(recipe.carrier, said))


def _products(recipe: Recipe) -> tuple[str | None, ...]:
    return tuple(one.product for one in sides(recipe))


def _strictest(recipe: Recipe, setting: Setting) -> Sheet | None:
    """The strictest of the labels of a mix; None where one of its products has no sheet."""
    sheets = [setting.sheet(one) for one in _products(recipe)]
    known = [one for one in sheets if one is not None]
    return strictest(known) if len(known) == len(sheets) else None


def _cautions(recipe: Recipe, setting: Setting) -> tuple[str, ...]:
    sheet = _strictest(recipe, setting)
    if sheet is None:
        return (*_ALWAYS, "No label sheet: strength assumed from sources, not checked against a label.")
    words = (one.says("hazard.signal_word") for one in map(setting.sheet, _products(recipe)) if one)
    word = ", ".join(dict.fromkeys(str(one) for one in words if one))
    dye, hours = sheet.says("mixing.dye_allowed"), closed_for((sheet,))
    mixing = [one for one in setback_words(sheet) if one.startswith("mixing")]
    return (
        *((f"Signal word on the label: {word}.",) if word else ()),
        *_ALWAYS,
        "Where to mix: " + "; ".join(one.removeprefix("mixing: ") for one in mixing) + ".",
        *(("The label allows a marking dye: use one, so that no stem is missed or done twice.",) if dye else ()),
        Worked("No entry until ", hours, " after the last load.") if hours else "Hours of entry: not read.",
    )


def _working(steps: Sequence[Step]) -> tuple[tuple[str, str], ...]:
    """Every step in words, innermost first, equal ones once."""
    return tuple(dict.fromkeys(in_words(node) for step in steps for _, node in walk(as_tree(step))))
