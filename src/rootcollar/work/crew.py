"""The crew: who they are, what each may do, and what they have with them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from rootcollar.label.aboard import NOTHING_SAID, Aboard
from rootcollar.label.planned import CUT_AND_TREATED

__all__ = ["DUTIES", "SAWN", "Crew", "Licence", "Person"]

DUTIES = ("lead", "treat", "saw", "cut", "supervise")  # saw: with a chainsaw; cut: with hand tools
SAWN = CUT_AND_TREATED | {"girdle", "cut"}  # the ways for which somebody may take a saw


@dataclass(frozen=True, slots=True)
class Licence:
    """An applicator's licence as printed on the card: number, category, state. Empty where not written down."""

    number: str = ""
    category: str = ""
    state: str = ""


@dataclass(frozen=True, slots=True)
class Person:
    """One person. may: what they may do, of `DUTIES`; empty: nobody has said.

    trained_on: last handler training. minor: under 18. language: the one they read a label in, "en" or "es".
    Nothing of anybody's health is kept.
    """

    name: str
    may: frozenset[str] = frozenset()
    licence_until: date | None = None
    licence: Licence | None = None
    trained_on: date | None = None
    minor: bool = False
    volunteer: bool = False
    language: str = "en"

    @property
    def treats(self) -> bool:
        """Whether they may mix and treat: they lead or treat, and are 18, as handlers must be [CFR170-309]."""
        return bool(self.may & {"lead", "treat"}) and not self.minor

    @property
    def cuts(self) -> bool:
        """Whether they cut, with a chainsaw or by hand."""
        return bool(self.may & {"saw", "cut"})


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
        if not any(one.may for one in self.people):
            return None
        return sum(one.treats for one in self.people)
