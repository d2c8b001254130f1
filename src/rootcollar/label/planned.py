"""What the rules see of a plan: one line of work, and the sum of a product's work on a unit."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.doubt import Worlds
from rootcollar.mix.recipe import Recipe

__all__ = ["CUT_AND_TREATED", "LEFT_STANDING", "Partnered", "Planned", "UnitTotal"]

CUT_AND_TREATED = frozenset({"cut_stump", "vine_cut"})  # what is cut off is treated at once, by somebody who may

# Ways that kill a tree and leave it on its feet; what is cut off, or low enough to spray, does not fall later.
LEFT_STANDING = frozenset({"hack_squirt", "basal_bark", "girdle", "injection", "thinline", "soil"})


@dataclass(frozen=True, slots=True)
class Partnered:
    """The other product in a mix, as a label may call it. names: most telling first. label_known: it has a sheet."""

    names: tuple[str, ...]
    label_known: bool = True
    fertiliser: bool = False


@dataclass(frozen=True, slots=True)
class Planned:
    """One line of work, before any ground is known (the same for every unit that could use it).

    species: names the label may use for the target (common, scientific, other), common name first. recipe: None to
    pull, cut, girdle or leave. band_cm: stem diameters [cm]. dose_ml, dose_per: planned mix on one cut, stump or stem
    [mL], where planned so. height_m: height of the target [m], where known. leaks: whether a source
    finds the risk high that its ingredient hurts others through their roots. partner: the other product in the mix.
    """

    method: str
    species: tuple[str, ...]
    recipe: Recipe | None
    band_cm: tuple[float, float]
    dose_ml: float | None = None
    dose_per: str = ""
    height_m: float | None = None
    leaks: bool = False
    partner: Partnered | None = None


@dataclass(frozen=True, slots=True, eq=False)
class UnitTotal:
    """All planned work with one product on one unit.

    mix_ml: finished mix poured [mL], worlds. product_ml: product in it [mL], worlds. area_m2: the unit's ground [m2].
    passes: applications planned. lines: keys of the plan's lines that make up the total. treated_m2: the ground in
    the unit on which the stems stand and that is worked [m2], where somebody has said so; never the sum of wetted
    patches. ae_g_per_l: acid in the product [g/L]; acid_known: False where it is active ingredient (salt, ester) whose
    acid is not known. product: key of its sheet, empty where there is none.
    """

    unit: str
    ingredient: str
    ae_g_per_l: float
    strength_pct: float
    mix_ml: Worlds
    product_ml: Worlds
    area_m2: float | None
    passes: int
    lines: tuple[str, ...]
    treated_m2: float | None = None
    product: str = ""
    acid_known: bool = True
