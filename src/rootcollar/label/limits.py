"""A label's rate: what it counts, what a plan comes to by it, and how much mix keeps to it."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import ask
from rootcollar.label.words import flat, listing
from rootcollar.shelf import Active

__all__ = [
    "Rate", "RateLine", "active_g", "active_kg_per_ha", "active_of", "least_area_m2", "most_mix_ml",
    "product_l_per_ha", "read_rate", "stems_at_most",
]  # fmt: skip

RateLine = tuple[float, str, str, tuple[Active, ...]]  # amount, unit, basis, the label's active ingredients

_VOLUMES = frozenset({"gal", "qt", "pt", "fl oz", "L", "mL"})


@formula(
    "product_ml / 1000 * strength_g_per_l",
    gives="g",
    source="arithmetic",
    product_ml=(1, 100000),
    strength_g_per_l=(50, 700),
)
def active_g(product_ml: Worlds, strength_g_per_l: float) -> Worlds:
    """Return the acid (or active) in a volume of product [g]. product_ml: [mL]. strength_g_per_l: in it [g/L]."""
    return product_ml / 1000 * strength_g_per_l


@formula("active_g / area_m2 * 10", gives="kg/ha", source="arithmetic", active_g=(1, 100000), area_m2=(10, 1000000))
def active_kg_per_ha(active_g: Worlds, area_m2: float) -> Worlds:
    """Return the rate of acid (or active) [kg/ha]. active_g: put on [g]. area_m2: the ground it counts on [m2]."""
    return active_g / area_m2 * 10


@formula("product_ml / area_m2 * 10", gives="L/ha", source="arithmetic", product_ml=(1, 100000), area_m2=(10, 1000000))
def product_l_per_ha(product_ml: Worlds, area_m2: float) -> Worlds:
    """Return the rate of product [L/ha]. product_ml: put on [mL]. area_m2: the ground it counts on [m2]."""
    return product_ml / area_m2 * 10


@formula("mix_ml * room / rate", gives="mL", source="arithmetic", mix_ml=(100, 100000), room=(0, 20), rate=(0.1, 20))
def most_mix_ml(mix_ml: float, room: float, rate: float) -> float:
    """Return how much of a mix keeps to a limit [mL].

    mix_ml: the planned mix [mL]. room: what is left of the limit. rate: what the planned mix comes to, in the same
    unit as room.
    """
    return mix_ml * room / rate


@formula(
    "area_m2 * rate / limit", gives="m2", source="arithmetic", area_m2=(10, 1000000), rate=(0.01, 20), limit=(0.1, 20)
)
def least_area_m2(area_m2: float, rate: float, limit: float) -> float:
    """Return the least ground over which the planned amount keeps to a limit [m2].

    area_m2: the ground for which the rate was reckoned [m2]. rate, limit: in one unit.
    """
    return area_m2 * rate / limit


@formula(
    "most_ml_per_ac / mix_ml", gives="stems/ac", source="arithmetic", most_ml_per_ac=(10, 1000000), mix_ml=(0.5, 500)
)
def stems_at_most(most_ml_per_ac: float, mix_ml: float) -> float:
    """Return how many stems on an acre take all the mix that keeps to a limit [stems/ac].

    most_ml_per_ac: that mix [mL/ac]. mix_ml: on one stem [mL].
    """
    return most_ml_per_ac / mix_ml


@dataclass(frozen=True, slots=True)
class Rate:
    """A rate as the label gives it. limit: the same in kg/ha, or in L/ha where it counts product.

    strength_g_per_l: acid or active in the product by which it counts [g/L]; None where it counts product.
    """

    amount: float
    unit: str
    limit: float
    strength_g_per_l: float | None

    def of(self, product_ml: Worlds, area_m2: float) -> Worlds:
        """Return what a volume of product [mL] on an area [m2] comes to, in the unit of `limit`."""
        if self.strength_g_per_l is None:
            return product_l_per_ha(product_ml, area_m2)
        return active_kg_per_ha(active_g(product_ml, self.strength_g_per_l), area_m2)

    def show(self, rate: float) -> str:
        """Return a rate (in the unit of `limit`) in words, in the label's own unit."""
        return show(convert(rate, "L/ha" if self.strength_g_per_l is None else "kg/ha", self.unit), self.unit)


def read_rate(line: RateLine, ingredient: str) -> Rate | Verdict:
    """Return a label's rate ready to count by, or the question that stands in the way.

    line: amount, unit, basis and active ingredients as on the sheet. ingredient: key of the one that is planned.
    """
    amount, unit, basis, actives = line
    top, _, area = unit.partition("/")
    if (top in _VOLUMES) != (basis == "product"):
        return ask(
            f"the label's rate is {show(amount, unit)} and counts {basis}; only a volume of product, or a weight of "
            "acid or active, is reckoned here",
            "reckon the plan's rate by hand; yes if it keeps to it",
        )
    if basis == "product":
        return Rate(amount, f"{top} product/{area}", convert(amount, unit, "L/ha"), None)
    strength = _strength(actives, ingredient, basis)
    if isinstance(strength, Verdict):
        return strength
    return Rate(amount, f"{top} {basis}/{area}", convert(amount, unit, "kg/ha"), strength)


def active_of(actives: tuple[Active, ...], ingredient: str) -> Active | None:
    """Return which of a label's active ingredients is the planned one, by its key; None where it cannot be told."""
    if len(actives) == 1:
        return actives[0]
    ours = [one for one in actives if flat(one.common_name or "") == flat(ingredient)]
    return ours[0] if len(ours) == 1 else None


def _strength(actives: tuple[Active, ...], ingredient: str, basis: str) -> float | Verdict:
    ours = active_of(actives, ingredient)
    if ours is None:
        names = listing(one.common_name or "no name" for one in actives)
        clear = "type common_name in the [[ingredient]] block"
        return ask(f"which of {names} is {ingredient}?", clear, answerable=False)
    pounds = ours.ai_lb_per_gal if basis == "ai" else ours.ae_lb_per_gal
    if pounds is None:
        return ask(
            f"the label's rates count {basis}, and the sheet has no {basis} in a gallon",
            f"type {basis}_lb_per_gal in the [[ingredient]] block",
            answerable=False,
        )
    return convert(pounds, "lb/gal", "g/L")
