"""The crew: who they are and what they have with them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

__all__ = ["Crew", "Person"]


@dataclass(frozen=True, slots=True)
class Person:
    """One person. may: what they may do, of lead, treat, saw. None: nobody has said."""

    name: str
    may: frozenset[str] = frozenset()
    licence_until: date | None = None


@dataclass(frozen=True, slots=True)
class Crew:
    """The people of a day, the wear they have, and the vessels they fill.

    wear: items at hand, in the words of the label sheet; None: not looked. tank_l: what the sprayer holds [L].
    carry_kg: the heaviest load anybody is asked to carry [kg].
    """

    people: tuple[Person, ...] = ()
    wear: frozenset[str] | None = None
    tank_l: float | None = None
    carry_kg: float | None = None
