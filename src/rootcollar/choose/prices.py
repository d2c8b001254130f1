"""What an hour, a litre of product and a litre of carrier cost: own prices, or placeholders until there are any."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.choose.cost import cost_per_stem
from rootcollar.choose.option import Choice
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import line_money
from rootcollar.kernel.doubt import Worlds, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.units import convert
from rootcollar.mix.recipe import Recipe, sides
from rootcollar.reference import middle

__all__ = ["LineCost", "line_cost", "line_labour", "line_mix_cost", "prices_per_l", "wage_per_h"]


@dataclass(frozen=True, slots=True, eq=False)
class LineCost:
    """What one visit to a line costs, as worlds [money]. mix: product and carrier."""

    labour: Worlds
    mix: Worlds

    @property
    def total(self) -> Worlds:
        """Both together."""
        return self.labour + self.mix


def wage_per_h(setting: Setting) -> float:
    """Return what an hour of work costs [money/h]."""
    own = setting.own.wage_per_h
    return use(middle(setting.reference.placeholders["wage"])) if own is None else own


def prices_per_l(recipe: Recipe | None, setting: Setting) -> tuple[float, float]:
    """Return the price of product and of carrier [money/L]; 0 of what is not in the mix.

    Raises Refusal where no price is kept for the product, nor an own one.
    """
    if recipe is None:
        return 0.0, 0.0
    return _products(recipe, setting), _carrier(recipe, setting)


def line_cost(line: Choice, setting: Setting) -> LineCost:
    """Return what one visit to a line costs, labour and mix apart; they add up to the cost it was chosen by."""
    return LineCost(line_labour(line, setting), line_mix_cost(line, setting))


def line_labour(line: Choice, setting: Setting) -> Worlds:
    """Return what the work of one visit to a line costs [money]."""
    return line_money(line.stand.stems, _of_stem(line, setting, line.per_stem.minutes, sure(0.0)))


def line_mix_cost(line: Choice, setting: Setting) -> Worlds:
    """Return what the products and the carrier of one visit to a line cost [money]."""
    return line_money(line.stand.stems, _of_stem(line, setting, sure(0.0), line.per_stem.mix_ml / 1000))


def _of_stem(line: Choice, setting: Setting, minutes: Worlds, mix_l: Worlds) -> Worlds:
    strength = line.recipe.products_pct if line.recipe else 0.0
    return cost_per_stem(minutes, wage_per_h(setting), mix_l, strength, *prices_per_l(line.recipe, setting))


def _products(recipe: Recipe, setting: Setting) -> float:
    """The price of what is poured of all products together; a fertiliser counts nothing, nobody keeps its price."""
    each = [(one.strength_pct, _product(one, setting)) for one in sides(recipe)]
    return sum(pct * price for pct, price in each) / recipe.products_pct


def _product(recipe: Recipe, setting: Setting) -> float:
    own = setting.own.price_per_l(*(key for key in (recipe.product, recipe.formulation) if key))
    if own is not None:
        return own
    per_gal = setting.reference.price_usd_per_gal.get(recipe.formulation)
    if per_gal is None:
        raise Refusal(f"price of {recipe.formulation}", limit="no price is kept for it", do="put in your own price")
    return _per_litre(use(middle(per_gal)))


def _carrier(recipe: Recipe, setting: Setting) -> float:
    if recipe.carrier == "none":
        return 0.0
    own = setting.own.price_per_l("basal oil") if recipe.carrier == "oil" else None
    return _per_litre(use(middle(setting.reference.placeholders[f"carrier_{recipe.carrier}"]))) if own is None else own


def _per_litre(usd_per_gal: float) -> float:
    return usd_per_gal / convert(1, "gal", "L")
