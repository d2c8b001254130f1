"""A recipe is what goes into the jug; a visit is one pass with it; a treatment is visits in order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["Carrier", "Recipe", "Treatment", "Visit"]

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
