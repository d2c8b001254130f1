"""The rounds of a plan: which year is a visit, a look-back, a look for seedlings, and how many in all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rootcollar.choose.after import LOOK, NOTHING, SEED, VISIT
from rootcollar.choose.booked import kinds_of
from rootcollar.choose.option import Choice, Prescription
from rootcollar.choose.setting import Setting

__all__ = ["Rounds", "rounds_of", "rounds_of_unit"]

_HEAVIEST = (VISIT, LOOK, SEED)  # what a year on a unit is called where its lines differ


@dataclass(frozen=True, slots=True)
class Rounds:
    """Rounds on all units together. visits: with treating. looks: look-backs. seed: looks for seedlings alone.

    years: from the first visit to the last look, on the unit where it takes longest.
    """

    visits: int
    looks: int
    seed: int
    years: int

    @property
    def words(self) -> str:
        """The rounds in a sentence."""
        return (
            f"{_many(self.visits, 'visit')} to treat, {_many(self.looks, 'look-back')} and {_many(self.seed, 'look')}"
            f" for seedlings; {_many(self.years, 'year')} from the first visit to the last look"
        )


def rounds_of_unit(lines: Sequence[Choice], setting: Setting) -> tuple[str, ...]:
    """Return what is done on a unit one year after another, the first visit first. lines: its lines that are work.

    All lines are visited together. A plant of which no source gives years of seed adds none: say so beside it.
    """
    kinds = [(VISIT, *kinds_of(one, setting)) for one in lines]
    years = range(max((len(one) for one in kinds), default=0))
    found = [{one[year] for one in kinds if year < len(one)} for year in years]
    return tuple(next((kind for kind in _HEAVIEST if kind in each), NOTHING) for each in found)


def rounds_of(plan: Prescription, setting: Setting) -> Rounds:
    """Return the rounds of all lines of a plan that are work."""
    units = [
        rounds_of_unit([one for one in plan.choices if one.stand.unit == key and one.is_work], setting)
        for key, _ in plan.order
    ]
    visits, looks, seed = (sum(one.count(kind) for one in units) for kind in _HEAVIEST)
    return Rounds(visits, looks, seed, max((len(one) - 1 for one in units), default=0) if any(units) else 0)


def _many(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"
