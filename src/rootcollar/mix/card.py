"""A mix card: what to pour in jug steps, in order, with the true strength of what is poured."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import Jug, convert, jug, show
from rootcollar.mix.batch import product_in_ml, share_of_mix_pct, total_for_product_ml
from rootcollar.mix.recipe import Recipe

__all__ = ["Card", "Limits", "card", "smallest_batch_ml"]

System = Literal["us", "metric"]

_DIRECTIONS: tuple[Literal["nearest", "down", "up"], ...] = ("nearest", "down", "up")

_CLOSE = 0.1  # ours: a measure that misses the strength by more than a tenth of it is not a measure of it
_EIGHTHS = 8  # of a fluid ounce, as small bottles are marked
_HAIR = 1e-9  # relative; floating point is not a measurement
_LEAST_ML = 1.0  # ours: below a millilitre a jug or a spoon measures nothing, a syringe does
_MOST_ML = 1e6  # ours: no batch by hand is larger
_ROOMY = 0.75  # ours: with less diluent than this share, "about half a tank" of it first could already be too much


@dataclass(frozen=True, slots=True)
class Limits:
    """What a label allows of strength [% of finished mix], and the label of a partner of its own; None: not said."""

    max_pct: float | None = None
    min_pct: float | None = None
    partner_max_pct: float | None = None
    partner_min_pct: float | None = None

    @property
    def of_partner(self) -> Limits:
        """What the partner's label allows of it."""
        return Limits(self.partner_max_pct, self.partner_min_pct)


@dataclass(frozen=True, slots=True)
class Card:
    """One batch. Volumes in mL; true_pct: strength of what is poured, by the jug [% of finished mix].

    partner_ml, partner_pct: the second product of the mix, 0 where there is none.
    """

    steps: tuple[str, ...]
    true_pct: float
    product_ml: float
    surfactant_ml: float
    dye_ml: float
    diluent_ml: float
    total_ml: float
    partner_ml: float = 0.0
    partner_pct: float = 0.0


@dataclass(frozen=True, slots=True)
class _Measured:
    """The marks of a jug to pour to; a part that is not in the mix pours 0 mL."""

    product: Jug
    surfactant: Jug
    dye: Jug
    partner: Jug


def card(recipe: Recipe, total_ml: float, limits: Limits = Limits(), system: System = "us") -> Card:
    """Return the card of a batch of a recipe. total_ml: finished mix [mL]; the card's own is the nearest mark to it.

    Amounts are marks of a measuring jug, the whole too. No label maximum is passed by rounding, and no minimum missed
    where the label gives one. Raises Refusal for a recipe outside the limits or without a diluent, and for a batch too
    small to measure, with the smallest that can be.
    """
    _check(recipe, limits)
    if not 0 < total_ml < float("inf"):
        raise Refusal("a batch", limit="there is nothing to mix", do="Give an amount above 0")
    mark = _mark(total_ml, system)
    if _undiluted(recipe):
        steps = (f"Pour {mark.text} through a funnel over a tray, undiluted. Tag the bottle.",)
        return Card(steps, 100.0, mark.ml, 0.0, 0.0, 0.0, mark.ml)
    found = _measure(recipe, mark.ml, limits, system)
    if found is None:
        least = smallest_batch_ml(recipe, limits, system)
        raise Refusal(
            f"a batch of {mark.text} at {show(recipe.strength_pct, '%')}",
            limit="too little to measure in a jug within the label's strength",
            do=f"Mix at least {jug(least, system).text}, or measure with a syringe",
        )
    return _card(recipe, mark, found, system)


def smallest_batch_ml(recipe: Recipe, limits: Limits = Limits(), system: System = "us") -> float:
    """Return the smallest batch [mL], a mark of a jug, whose parts can all be measured, and so can those of any larger.

    Where the label allows no more than it demands, the first that works, doubling. Raises Refusal as `card`, and where
    no mark keeps to limits so close together.
    """
    _check(recipe, limits)
    other = recipe.partner.strength_pct if recipe.partner else 0.0
    parts = [pct for pct in (recipe.strength_pct, other, recipe.surfactant_pct, recipe.dye_pct) if pct > 0]
    total_ml = jug(total_for_product_ml(_LEAST_ML, min(parts)), system, "up").ml
    while not _undiluted(recipe) and _measure(recipe, total_ml, limits, system) is None:
        if total_ml > _MOST_ML:
            raise Refusal(
                f"a mix of {show(recipe.strength_pct, '%')}",
                limit="no mark of a jug keeps to strengths so close together",
                do="Weigh the product, or measure it with a syringe",
            )
        total_ml = jug(2 * total_ml, system, "up").ml
    return total_ml


def _check(recipe: Recipe, limits: Limits) -> None:
    """Refuse what no batch of any size could be."""
    _within(recipe.strength_pct, limits)
    if recipe.partner:
        _within(recipe.partner.strength_pct, limits.of_partner)
    if _undiluted(recipe) and not recipe.partner:
        return
    pct, mix = recipe.products_pct, f"a mix of {show(recipe.strength_pct, '%')}"
    if recipe.carrier == "none":
        raise Refusal(mix, limit="nothing is named to thin it with", do="Name water or oil, or use it undiluted")
    if pct + recipe.surfactant_pct + recipe.dye_pct > 100:
        raise Refusal(mix, limit="product, surfactant and dye are more than 100 % together", do="Give another strength")


def _within(pct: float, limits: Limits) -> None:
    """Refuse a strength that is none, or outside the limits."""
    mix = f"a mix of {show(pct, '%')}"
    if not 0 < pct <= 100:
        raise Refusal(mix, limit="a strength is above 0 and at most 100 %", do="Give another strength")
    if limits.max_pct is not None and pct > limits.max_pct * (1 + _HAIR):
        most = show(limits.max_pct, "%")
        raise Refusal(mix, limit=f"at most {most} is allowed", do=f"Mix {most} or less")
    if limits.min_pct is not None and pct < limits.min_pct * (1 - _HAIR):
        least = show(limits.min_pct, "%")
        raise Refusal(mix, limit=f"at least {least} is demanded", do=f"Mix {least} or more")


def _undiluted(recipe: Recipe) -> bool:
    return recipe.strength_pct >= 100


def _measure(recipe: Recipe, total_ml: float, limits: Limits, system: System) -> _Measured | None:
    """The marks to pour to, the product's kept to the label; None where a part is too little to measure."""
    surfactant = _additive(total_ml, recipe.surfactant_pct, system)
    dye = _additive(total_ml, recipe.dye_pct, system)
    if surfactant is None or dye is None:
        return None
    partner = _partner(recipe, total_ml, limits, system)
    if partner is None:
        return None
    beside_ml = surfactant.ml + dye.ml + partner.ml
    for mark in _allowed(recipe.strength_pct, total_ml, limits, system):
        if mark.ml + beside_ml <= total_ml * (1 + _HAIR):
            return _Measured(mark, surfactant, dye, partner)
    return None


def _partner(recipe: Recipe, total_ml: float, limits: Limits, system: System) -> Jug | None:
    """The mark of the second product, within its own label; none of it where there is no second product."""
    if recipe.partner is None:
        return Jug("", 0.0)
    return next(_allowed(recipe.partner.strength_pct, total_ml, limits.of_partner, system), None)


def _allowed(pct: float, total_ml: float, limits: Limits, system: System) -> Iterator[Jug]:
    """The marks of a product that keep to its label, best first."""
    for mark in _marks(product_in_ml(total_ml, pct), system):
        true = share_of_mix_pct(mark.ml, total_ml)
        if limits.max_pct is not None and true > limits.max_pct * (1 + _HAIR):
            continue
        if limits.min_pct is not None and true < limits.min_pct * (1 - _HAIR):
            continue
        yield mark


def _additive(total_ml: float, pct: float, system: System) -> Jug | None:
    """The mark nearest to a surfactant or dye; None where it is too little to measure."""
    return next(_marks(product_in_ml(total_ml, pct), system), None) if pct else Jug("", 0.0)


def _marks(want_ml: float, system: System) -> Iterator[Jug]:
    """Marks close to a volume, best first; millilitres where the spoons and ounces of the system are too coarse."""
    for scale in dict.fromkeys((system, "metric")):
        for direction in _DIRECTIONS:
            mark = jug(want_ml, scale, direction)
            if mark.ml >= _LEAST_ML * (1 - _HAIR) and abs(mark.ml - want_ml) <= _CLOSE * want_ml:
                yield mark


def _card(recipe: Recipe, mark: Jug, found: _Measured, system: System) -> Card:
    product, surfactant, dye, total_ml = found.product, found.surfactant, found.dye, mark.ml
    partner = found.partner
    diluent_ml = max(total_ml - product.ml - partner.ml - surfactant.ml - dye.ml, 0.0)
    oil = recipe.carrier == "oil"
    diluent = "oil" if oil else "clear water"
    first = f"Fill about half with {diluent}."
    if diluent_ml < _ROOMY * total_ml:
        first = f"Pour in {jug(diluent_ml / 2, system).text} of {diluent}, about half of what it takes."
    parts = [f"Add {product.text} of product."]
    if recipe.partner:
        named = recipe.product or recipe.formulation
        parts = [f"Add {product.text} of {named}.", f"Add {partner.text} of {recipe.partner.key}."]
    parts += [f"Add {surfactant.text} of surfactant."] if surfactant.ml else []
    parts += [f"Add {dye.text} of dye."] if dye.ml else []
    last = f"Oil to the {mark.text} mark; stir or shake." if oil else f"Water to the {mark.text} mark; stir, not shake."
    return Card(
        (f"Dry sprayer, no water in it. {first}" if oil else first, *parts, last),
        share_of_mix_pct(product.ml, total_ml),
        product.ml,
        surfactant.ml,
        dye.ml,
        diluent_ml,
        total_ml,
        partner.ml,
        share_of_mix_pct(partner.ml, total_ml) if partner.ml else 0.0,
    )


def _mark(total_ml: float, system: System) -> Jug:
    """The mark to fill to: the volume itself where a tank or bottle is marked with it, else the nearest of a jug.

    Everything is reckoned from the mark, because what is poured to it sets the strength.
    """
    if system == "metric":
        unit, parts = ("L", 10) if total_ml >= 1000 else ("mL", 1)
    else:
        unit, parts = ("gal", 4) if total_ml >= convert(1 / 2, "gal", "mL") else ("fl oz", _EIGHTHS)
    amount = convert(total_ml, "mL", unit)
    whole = round(amount * parts)
    if whole and abs(amount * parts - whole) < _HAIR * whole:
        return Jug(show(whole / parts, unit, 4), total_ml)
    near = jug(total_ml, system)
    return Jug(near.text.partition(" (")[0], near.ml)
