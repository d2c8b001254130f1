"""A recipe is what goes into the jug; a visit is one pass with it; a treatment is visits in order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["Carrier", "Recipe", "Treatment", "Visit", "parts_of"]

Carrier = Literal["none", "water", "oil"]


@dataclass(frozen=True, slots=True)
class Recipe:
    """A finished mix. product: key of a label sheet, or None while there is no label for the formulation.

    strength_pct: volume of product in 100 volumes of finished mix [%]. ae_g_per_l: acid equivalent (or active
    ingredient where rates go by it) in the product as sold [g/L]. surfactant_pct, dye_pct: of finished mix [%].
    """

    product: str | None
    formulation: str
    ingredient: str
    ae_g_per_l: float
    strength_pct: float
    carrier: Carrier
    surfactant_pct: float = 0.0
    dye_pct: float = 0.0


@dataclass(frozen=True, slots=True)
class Visit:
    """One pass. method: a key of the methods. recipe: None to pull, cut or girdle. months: when it may be done."""

    method: str
    recipe: Recipe | None
    months: frozenset[int]
    wait_days: int = 0


Treatment = tuple[Visit, ...]


def parts_of(recipe: Recipe) -> tuple[tuple[str, float], ...]:
    """Return what goes into a mix, water left out, and how much of the finished mix each is [%].

    The product by the key of its sheet or formulation, then by name what goes in beside it.
    """
    oil = recipe.carrier == "oil"
    beside = {"surfactant": recipe.surfactant_pct, "oil dye" if oil else "water dye": recipe.dye_pct}
    oil_pct = max(100 - recipe.strength_pct - sum(beside.values()), 0.0) if oil else 0.0
    parts = {recipe.product or recipe.formulation: recipe.strength_pct, "basal oil": oil_pct, **beside}
    return tuple((what, pct) for what, pct in parts.items() if pct > 0)
