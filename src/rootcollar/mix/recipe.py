"""A recipe is what goes into the jug; a visit is one pass with it; a treatment is visits in order."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

__all__ = ["Carrier", "Part", "Recipe", "Treatment", "Visit", "parts_of", "sides"]

Carrier = Literal["none", "water", "oil"]


@dataclass(frozen=True, slots=True)
class Part:
    """A second product in a mix. product, formulation, ingredient, ae_g_per_l, strength_pct: as of a `Recipe`.

    fertiliser: it is one, named by `product`, and has no label that limits it.
    """

    product: str | None
    formulation: str
    ingredient: str
    ae_g_per_l: float
    strength_pct: float
    fertiliser: bool = False

    @property
    def key(self) -> str:
        """The key of its sheet or formulation."""
        return self.product or self.formulation


@dataclass(frozen=True, slots=True)
class Recipe:
    """A finished mix. product: key of a label sheet, or None while there is no label for the formulation.

    strength_pct: volume of product in 100 volumes of finished mix [%]. ae_g_per_l: acid equivalent (or active
    ingredient where rates go by it) in the product as sold [g/L]. surfactant_pct, dye_pct: of finished mix [%].
    partner: a second product in it.
    """

    product: str | None
    formulation: str
    ingredient: str
    ae_g_per_l: float
    strength_pct: float
    carrier: Carrier
    surfactant_pct: float = 0.0
    dye_pct: float = 0.0
    partner: Part | None = None

    @property
    def products_pct(self) -> float:
        """All products in the finished mix [%]."""
        return self.strength_pct + (self.partner.strength_pct if self.partner else 0.0)


@dataclass(frozen=True, slots=True)
class Visit:
    """One pass. method: a key of the methods. recipe: None to pull, cut or girdle. months: when it may be done."""

    method: str
    recipe: Recipe | None
    months: frozenset[int]
    wait_days: int = 0


Treatment = tuple[Visit, ...]


def sides(recipe: Recipe) -> tuple[Recipe, ...]:
    """Return a mix as the label of each of its products sees it: itself, and with the partner in the first place."""
    other = recipe.partner
    if other is None or other.fertiliser:
        return (recipe,)
    mine = Part(recipe.product, recipe.formulation, recipe.ingredient, recipe.ae_g_per_l, recipe.strength_pct)
    return recipe, replace(
        recipe, product=other.product, formulation=other.formulation, ingredient=other.ingredient,
        ae_g_per_l=other.ae_g_per_l, strength_pct=other.strength_pct, partner=mine,
    )  # fmt: skip


def parts_of(recipe: Recipe) -> tuple[tuple[str, float], ...]:
    """Return what goes into a mix, water left out, and how much of the finished mix each is [%].

    The products by the key of their sheet or formulation, then by name what goes in beside them.
    """
    oil = recipe.carrier == "oil"
    beside = {"surfactant": recipe.surfactant_pct, "oil dye" if oil else "water dye": recipe.dye_pct}
    oil_pct = max(100 - recipe.products_pct - sum(beside.values()), 0.0) if oil else 0.0
    other = {recipe.partner.key: recipe.partner.strength_pct} if recipe.partner else {}
    parts = {recipe.product or recipe.formulation: recipe.strength_pct, **other, "basal oil": oil_pct, **beside}
    return tuple((what, pct) for what, pct in parts.items() if pct > 0)
