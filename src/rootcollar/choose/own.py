"""A crew's own figures, which replace guesses: proving batches, times, prices paid, what an hour costs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from rootcollar.dose import Proving
from rootcollar.mix import Container, Recipe

__all__ = ["NO_OWN", "Mixed", "Own", "Price", "Time"]


@dataclass(frozen=True, slots=True)
class Price:
    """A size on sale. what: key of a label sheet or formulation, or an additive. container: with its price, if known.

    on: the day the price was seen.
    """

    what: str
    container: Container
    on: date | None = None


@dataclass(frozen=True, slots=True)
class Mixed:
    """A second product planned in every thinned mix of a product. pct: of it in the finished mix [%].

    product, partner: keys of label sheets or formulations; of a fertiliser, its name.
    """

    product: str
    partner: str
    pct: float
    fertiliser: bool = False


@dataclass(frozen=True, slots=True)
class Time:
    """What one stem took the crew, measured on the ground [min of one person].

    what: stem, the whole visit from one stem to the next, with the walk, slope, thorns, what is cut and fruit in it;
    slash, what is cut alone; fruit, its bagging alone. species, unit: empty, of any. size_cm: None, of any size.
    """

    method: str
    minutes: float
    on: date
    by: str
    what: str = "stem"
    species: str = ""
    unit: str = ""
    size_cm: tuple[float, float] | None = None

    @property
    def words(self) -> str:
        """Whose figure it is: "own time of 2026-10-02, measured on brook-edge"."""
        return f"own time of {self.on.isoformat()}" + (f", measured on {self.unit}" if self.unit else "")

    def holds(self, species: str, unit: str, diameter_cm: float) -> bool:
        """Return whether it was measured on what is asked for, or says nothing against it. diameter_cm: [cm]."""
        low, high = self.size_cm or (diameter_cm, diameter_cm)
        return self.species in ("", species) and self.unit in ("", unit) and low <= diameter_cm <= high


@dataclass(frozen=True, slots=True)
class Own:
    """Own figures; empty while nothing was measured. wage_per_h: what an hour of one person costs [money/h].

    mixed: partners that the crew plans in a mix. target_share: of the stems, to be dead at the end. set_up_min,
    travel_min: of a day, all people together [min]. day_h: on stems in a day, all people together [h]. times: of stems.
    extra_mix: what each mix after the first costs, on a whole property [money].
    """

    proving: tuple[Proving, ...] = ()
    prices: tuple[Price, ...] = ()
    wage_per_h: float | None = None
    mixed: tuple[Mixed, ...] = ()
    target_share: float | None = None
    set_up_min: float | None = None
    travel_min: float | None = None
    day_h: float | None = None
    times: tuple[Time, ...] = ()
    extra_mix: float | None = None

    def time(self, what: str, method: str, species: str, unit: str, diameter_cm: float) -> Time | None:
        """Return the own time that fits best: of this ground first, then of this plant, of this size, then the newest.

        what: as `Time` has it. species, unit: keys. diameter_cm: of the stem [cm]. None: nothing was measured.
        """
        fits = (one for one in self.times if (one.what, one.method) == (what, method))
        found = [one for one in fits if one.holds(species, unit, diameter_cm)]
        return max(
            found,
            key=lambda one: (bool(one.unit), bool(one.species), one.size_cm is not None, one.on, -one.minutes),
            default=None,
        )

    def sizes(self, *names: str) -> tuple[Container, ...]:
        """Return the sizes on sale of the first of some names that any were written down for."""
        for name in names:
            found = tuple(one.container for one in self.prices if one.what == name)
            if found:
                return found
        return ()

    def price_per_l(self, *names: str) -> float | None:
        """Return the least own price [money/L] of what is sold under the first known of some names; None: no price."""
        known = [(one.price, one.volume_ml) for one in self.sizes(*names)]
        return min((price / (volume_ml / 1000) for price, volume_ml in known if price is not None), default=None)

    def batch(self, method: str, recipe: Recipe, ingredients: dict[str, str]) -> Proving | None:
        """Return the newest proving batch of a mix put on in this way; None where there is none.

        The mix is the same where strength and carrier are, and the product, or else its ingredient, is.
        ingredients: by key of sheet or formulation.
        """
        fits = [
            one
            for one in self.proving
            if one.same_mix(method, recipe.strength_pct, recipe.carrier)
            and (
                one.product in {recipe.product, recipe.formulation} or ingredients.get(one.product) == recipe.ingredient
            )
        ]
        named = (recipe.product, recipe.formulation)
        return max(fits, key=lambda one: (one.product in named, one.on), default=None)


NO_OWN = Own()
