"""The loads of one mix and their jug steps, within the label's strength."""

from __future__ import annotations

from dataclasses import dataclass, replace

from rootcollar.choose import Setting
from rootcollar.kernel.doubt import Worlds, best
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import note, unwatched, use
from rootcollar.kernel.tongue import Tongue
from rootcollar.kernel.units import convert, jug, show
from rootcollar.mix import (
    Card,
    Limits,
    Loads,
    Recipe,
    card,
    mix_density_kg_per_l,
    plan_loads,
    product_in_ml,
    share_of_mix_pct,
    sides,
    smallest_batch_ml,
    tank_by_weight_ml,
)  # fmt: skip
from rootcollar.reference import Span, middle, numbers, spans
from rootcollar.shelf import Sheet, strength_range
from rootcollar.work import text
from rootcollar.work.crew import Crew

__all__ = ["Batches", "batches", "card_again", "limits_for", "limits_of", "loads_again", "short", "tank_ml"]

_OIL, _WATER = "mineral_basal_oil", "water"


@dataclass(frozen=True, slots=True, eq=False)
class Batches:
    """What to mix: the need as worlds [mL], the loads, a card for each different load, what bounds a load.

    recipe: as it is mixed; without dye where so little is needed that dye cannot be measured.
    """

    need_ml: Worlds
    loads: Loads
    cards: tuple[tuple[str, Card], ...]
    bound: str
    recipe: Recipe

    def in_a_line(self, tongue: Tongue) -> str:
        """Return the first load in one line: to which mark, what goes in, and the true strength."""
        one = self.cards[0][1]
        mark = text.mark(one.total_ml)
        if one.diluent_ml == 0:
            return tongue.say("mix.pour", mark=mark)
        other = self.recipe.partner
        also = f", {short(one.partner_ml)} {other.key}" if other else ""
        also += tongue.say("mix.surfactant", amount=short(one.surfactant_ml)) if one.surfactant_ml else ""
        also += tongue.say("mix.dye") if one.dye_ml else ""  # how much stands on the card
        carrier, percent = tongue.say(f"carrier.{self.recipe.carrier}"), f"{one.true_pct:.3g}"
        product = short(one.product_ml)
        return tongue.say("mix.line", mark=mark, product=product, also=also, carrier=carrier, percent=percent)


def short(volume_ml: float) -> str:
    """Return a jug measure without its second unit, which stands on the card."""
    return jug(volume_ml).text.partition(" (")[0]


def batches(recipe: Recipe, need_ml: Worlds, method: str, crew: Crew, setting: Setting) -> Batches:
    """Return loads and cards for a mix: need_ml [mL] as worlds, cut into what the crew's tank holds and carries.

    A gallon jug is taken where the tank is not known. The best figure is mixed, rounded up to a mark of the tank.
    Raises Refusal where the empty sprayer alone is more than is to be carried.
    """
    limits = limits_for(recipe, method, setting)
    loads, bound, recipe = _loads(recipe, best(need_ml), limits, crew, setting)
    different = dict.fromkeys(loads.volumes_ml)
    names = ("Full load", "Last load") if len(different) > 1 else ("The load",)
    cards = tuple(
        (f"{name} ({loads.volumes_ml.count(volume)} of {len(loads.volumes_ml)})", card(recipe, volume, limits))
        for name, volume in zip(names, different, strict=True)
    )
    return Batches(need_ml, loads, cards, bound, recipe)


def loads_again(recipe: Recipe, need_ml: Worlds, method: str, crew: Crew, setting: Setting) -> Loads:
    """Return the loads of `batches` alone, to be watched."""
    limits = limits_for(recipe, method, setting)
    return _loads(recipe, best(need_ml), limits, crew, setting)[0]


def _loads(recipe: Recipe, need_ml: float, limits: Limits, crew: Crew, setting: Setting) -> tuple[Loads, str, Recipe]:
    """The loads, what bounds one, and the recipe as it is mixed."""
    held_ml, bound = tank_ml(recipe, crew, setting)
    least = _smallest(recipe, limits)
    if least > need_ml:
        recipe = replace(recipe, dye_pct=0.0)  # no bigger batch than the work needs, only to measure its dye
        least = _smallest(recipe, limits)
    need = max(need_ml, least)
    return plan_loads(need, held_ml, _step_ml(min(need, held_ml)), least), bound, recipe


def _smallest(recipe: Recipe, limits: Limits) -> float:
    """The smallest batch; the marks that were tried for it are no part of the working."""
    with unwatched():
        least = smallest_batch_ml(recipe, limits)
    return note("smallest batch", f"the least whose parts can be measured in a jug, {jug(least).text}", least, "mL")


def card_again(recipe: Recipe, total_ml: float, limits: Limits, part: str) -> float:
    """Return one number of a batch's card, to be watched. part: its name in `Card`."""
    with unwatched():
        made = card(recipe, total_ml, limits)
    if part == "total_ml":
        return note("filled to", f"the nearest mark, {text.mark(made.total_ml)}", made.total_ml, "mL", "ours")
    pct = {"product_ml": recipe.strength_pct, "surfactant_ml": recipe.surfactant_pct, "dye_ml": recipe.dye_pct}
    pct |= {"partner_ml": recipe.partner.strength_pct} if recipe.partner else {}
    of_share = {"true_pct": "product_ml", "partner_pct": "partner_ml"}
    wanted = tuple(pct) if part == "diluent_ml" else (of_share.get(part, part),)
    measured = [name for name in wanted if getattr(made, name)]
    poured = [_poured(name.removesuffix("_ml"), getattr(made, name), made, pct[name]) for name in measured]
    if part == "diluent_ml":
        return note("beside it", " - ".join(f"{one:.6g}" for one in (made.total_ml, *poured)), made.diluent_ml, "mL")
    return share_of_mix_pct(getattr(made, wanted[0]), made.total_ml) if part in of_share else poured[0]


def _poured(what: str, mark_ml: float, made: Card, pct: float) -> float:
    """A part at its mark of the jug, beside what its percent asks for."""
    product_in_ml(made.total_ml, pct)
    says = f"the nearest mark of a jug that keeps to the label's strength, {jug(mark_ml).text}"
    return note(f"{what}, at a mark", says, mark_ml, "mL", "ours")


def _step_ml(volume_ml: float) -> float:
    """The mark to fill to: half pints in a tank, half cups in a bottle, fluid ounces for a handful of stems."""
    if volume_ml >= convert(2, "qt", "mL"):
        return convert(1 / 2, "pt", "mL")
    return convert(1 / 2, "cup", "mL") if volume_ml >= convert(1, "cup", "mL") else convert(1, "fl oz", "mL")


def limits_for(recipe: Recipe, method: str, setting: Setting) -> Limits:
    """Return the strengths that keep to the label of each product of a mix, for a method."""
    mine, *others = (limits_of(one, method, setting.sheet(one.product)) for one in sides(recipe))
    if recipe.partner and not others:
        others = [Limits(recipe.partner.strength_pct)]
    return replace(mine, partner_max_pct=others[0].max_pct, partner_min_pct=others[0].min_pct) if others else mine


def limits_of(recipe: Recipe, method: str, sheet: Sheet | None) -> Limits:
    """Return the label's strengths for a method; where it gives none the recipe's own strength is the most."""
    low, high = strength_range(sheet, method) if sheet else (None, None)
    forbidden = bool(sheet and sheet.says("less_than_low_forbidden", method))
    least = low if forbidden and low != high else None  # one strength only: no jug hits it, so just never above it
    return Limits(recipe.strength_pct if high is None else high, least)


def tank_ml(recipe: Recipe, crew: Crew, setting: Setting) -> tuple[float, str]:
    """Return the most of a mix that is filled at once [mL], and what bounds it: the tank, or the weight carried.

    Raises Refusal where the empty sprayer alone is more than is to be carried.
    """
    held = convert(crew.tank_l, "L", "mL") if crew.tank_l is not None else convert(1, "gal", "mL")
    words = "the tank" if crew.tank_l is not None else "a gallon jug: no tank is written in crew.toml"
    note("what is filled at most", "crew.toml, the tank" if crew.tank_l is not None else words, held, "mL")
    if crew.carry_kg is None:
        return held, words
    empty = spans([row.figure for row in setting.reference.mixing["weight"] if row.name == "empty_backpack_lb"])[0]
    heavier = replace(empty, value=Span(best=empty.value.high))  # nobody is asked to carry more than they said
    empty_kg = convert(use(middle(heavier)), "lb", "kg")
    carried = tank_by_weight_ml(crew.carry_kg, empty_kg, _density_kg_per_l(recipe, setting))
    if carried <= 0:
        raise Refusal(
            f"a load of at most {show(convert(crew.carry_kg, 'kg', 'lb'), 'lb')}",
            limit=f"an empty sprayer weighs up to {show(convert(empty_kg, 'kg', 'lb'), 'lb')}",
            do="Write a heavier carry in crew.toml, or leave it out and carry a bottle",
        )
    return (carried, "the weight its carrier accepts") if carried < held else (held, words)


def _density_kg_per_l(recipe: Recipe, setting: Setting) -> float:
    """The mix's density [kg/L]: the product's by the label or else by its strength and percent, and the carrier's."""
    name = _OIL if recipe.carrier == "oil" else _WATER
    rows = [row.figure for row in setting.reference.mixing["carrier_density"] if row.name == name]
    carrier = use(next(one for one in (*numbers(rows), *map(middle, spans(rows))) if one.unit == "g/mL"))
    each = [(one.strength_pct, _product_kg_per_l(one, carrier, setting)) for one in sides(recipe)]
    pct = sum(one for one, _ in each)
    return mix_density_kg_per_l(pct, sum(one * density for one, density in each) / pct, carrier)


def _product_kg_per_l(recipe: Recipe, carrier: float, setting: Setting) -> float:
    """The density of a product [kg/L]; the carrier's [kg/L] where neither label nor source gives one."""
    sheet = setting.sheet(recipe.product)
    typed = sheet.says("formulation.density_lb_per_gal") if sheet else None
    formulation = setting.reference.formulations.get(recipe.formulation)
    known = formulation.density_g_per_ml if formulation else None
    return convert(typed, "lb/gal", "g/mL") if typed is not None else use(known) if known else carrier
