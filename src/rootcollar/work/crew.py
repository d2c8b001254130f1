"""The crew: who they are, what each may do, and what they have with them."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.label.aboard import NOTHING_SAID, Aboard
from rootcollar.label.people import DUTIES, Licence, Person, treaters
from rootcollar.label.planned import CUT_AND_TREATED

__all__ = ["DUTIES", "SAWN", "Crew", "Licence", "Person"]

SAWN = CUT_AND_TREATED | {"girdle", "cut"}  # the ways for which somebody may take a saw


@dataclass(frozen=True, slots=True)
class Crew:
    """The people of a day, the wear they have, and the vessels they fill.

    wear: items at hand, in the words of the label sheet; None: not looked. tank_l: what the sprayer holds [L].
    carry_kg: the heaviest load anybody is asked to carry [kg]. aboard: what else goes along.
    """

    people: tuple[Person, ...] = ()
    wear: frozenset[str] | None = None
    tank_l: float | None = None
    carry_kg: float | None = None
    aboard: Aboard = NOTHING_SAID

    @property
    def treaters(self) -> int | None:
        """How many may mix and treat; None where nobody has said what anybody may do."""
        return treaters(self.people)
