"""A mix card: what to pour in jug steps, in order, with the true strength of what is poured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import Jug, convert, jug, show
from rootcollar.mix.batch import product_in_ml, share_of_mix_pct
from rootcollar.mix.recipe import Recipe

__all__ = ["Card", "Limits", "card", "smallest_batch_ml"]

System = Literal["us", "metric"]

_CLOSE = 0.1  # ours: a measure that misses the strength by more than a tenth of it is not a measure of it
_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Limits:
    """What a label allows of strength [% of finished mix]; None: not said."""

    max_pct: float | None = None
    min_pct: float | None = None


@dataclass(frozen=True, slots=True)
class Card:
    """One batch. Volumes in mL; true_pct: strength of what is poured, by the jug [% of finished mix]."""

    steps: tuple[str, ...]
    true_pct: float
    product_ml: float
    surfactant_ml: float
    dye_ml: float
    diluent_ml: float
    total_ml: float


def card(recipe: Recipe, total_ml: float, limits: Limits = Limits(), system: System = "us") -> Card:
    """Return the card of a batch of a recipe. total_ml: finished mix [mL].

    Amounts are marks of a measuring jug. No label maximum is passed by rounding, and no minimum missed where the
    label gives one. Raises Refusal for a batch too small to measure, with the smallest that can be.
    """
    found = _measure(recipe, total_ml, limits, system)
    if found is None:
        least = smallest_batch_ml(recipe, limits, system)
        raise Refusal(
            f"a batch of {jug(total_ml, system).text} at {show(recipe.strength_pct, '%')}",
            limit="too little product to measure in a jug within the label's strength",
            do=f"Mix at least {jug(least, system, 'up').text}, or measure with a syringe",
        )
    return _card(recipe, total_ml, found, system)


def smallest_batch_ml(recipe: Recipe, limits: Limits = Limits(), system: System = "us") -> float:
    """Return a batch [mL] small enough to be useful and large enough to measure: the first that works, doubling."""
    total_ml = 10.0
    while _measure(recipe, total_ml, limits, system) is None:
        total_ml *= 2
    return total_ml


def _measure(recipe: Recipe, total_ml: float, limits: Limits, system: System) -> Jug | None:
    """The jug mark nearest to the product, or the one below, that keeps to the label and comes close."""
    if recipe.strength_pct >= 100:
        return Jug(jug(total_ml, system).text, total_ml)
    want = product_in_ml(total_ml, recipe.strength_pct)
    for direction in ("nearest", "down", "up"):
        mark = jug(want, system, direction)
        true = share_of_mix_pct(mark.ml, total_ml)
        if limits.max_pct is not None and true > limits.max_pct * (1 + _HAIR):
            continue
        if limits.min_pct is not None and true < limits.min_pct * (1 - _HAIR):
            continue
        if mark.ml > 0 and abs(mark.ml - want) <= _CLOSE * want:
            return mark
    return None


def _card(recipe: Recipe, total_ml: float, product: Jug, system: System) -> Card:
    surfactant = jug(product_in_ml(total_ml, recipe.surfactant_pct), system) if recipe.surfactant_pct else Jug("", 0.0)
    dye = jug(product_in_ml(total_ml, recipe.dye_pct), system) if recipe.dye_pct else Jug("", 0.0)
    mark = _volume(total_ml, system)
    if recipe.carrier == "none" or recipe.strength_pct >= 100:
        steps = (f"Pour {mark} through a funnel over a tray, undiluted. Tag the bottle.",)
        return Card(steps, 100.0, total_ml, 0.0, 0.0, 0.0, total_ml)
    parts = [f"Add {product.text} of product."]
    parts += [f"Add {surfactant.text} of surfactant."] if surfactant.ml else []
    parts += [f"Add {dye.text} of dye."] if dye.ml else []
    if recipe.carrier == "oil":
        first, last = (
            "Dry sprayer, no water in it. Fill about half with oil.",
            f"Oil to the {mark} mark; stir or shake.",
        )
    else:
        first, last = "Fill about half with clear water.", f"Water to the {mark} mark; stir, not shake."
    diluent_ml = total_ml - product.ml - surfactant.ml - dye.ml
    return Card(
        (first, *parts, last),
        share_of_mix_pct(product.ml, total_ml),
        product.ml,
        surfactant.ml,
        dye.ml,
        diluent_ml,
        total_ml,
    )


def _volume(total_ml: float, system: System) -> str:
    if system == "metric":
        return show(total_ml / 1000, "L", 3) if total_ml >= 1000 else show(total_ml, "mL", 3)
    gallons = convert(total_ml, "mL", "gal")
    return show(gallons, "gal", 3) if gallons >= 1 / 2 else show(convert(total_ml, "mL", "fl oz"), "fl oz", 3)
