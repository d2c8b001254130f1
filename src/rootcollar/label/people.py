"""The people a rule looks at: what each may do, what certificates and training they hold, and for whom they work."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from rootcollar.kernel.days import MONTHS
from rootcollar.site.ground import Taken, Unit

__all__ = ["DUTIES", "LICENCE_KINDS", "TRAINING_MONTHS", "Handling", "Licence", "Person", "overdue", "treaters"]

DUTIES = ("lead", "treat", "saw", "cut", "supervise")  # saw: with a chainsaw; cut: with hand tools
LICENCE_KINDS = ("commercial", "private")  # commercial: every kind but private, public and not for hire too, FIFRA 2(e)

TRAINING_MONTHS = 12  # how old training may be, in calendar months [CFR170-501]; 40 CFR 171.201(c)


@dataclass(frozen=True, slots=True)
class Licence:
    """An applicator's licence as printed on the card. Empty where not written down; kind: one of LICENCE_KINDS."""

    number: str = ""
    category: str = ""
    state: str = ""
    kind: str = ""


@dataclass(frozen=True, slots=True)
class Person:
    """One person. may: what they may do, of `DUTIES`; empty: nobody has said.

    trained_on: last handler training. minor: under 18. language: the one they read a label in, "en" or "es".
    family: they own most of the ground, or are of the immediate family that does. respirator_until: the day to which
    they are cleared, fitted and trained to wear one. Nothing else of anybody's health is kept.
    """

    name: str
    may: frozenset[str] = frozenset()
    licence_until: date | None = None
    licence: Licence | None = None
    trained_on: date | None = None
    minor: bool = False
    volunteer: bool = False
    language: str = "en"
    family: bool = False
    respirator_until: date | None = None

    @property
    def handles(self) -> bool:
        """Whether somebody has written that they mix and treat, whatever their age."""
        return bool(self.may & {"lead", "treat"})

    @property
    def treats(self) -> bool:
        """Whether they may mix and treat: they lead or treat, and are 18, as handlers must be [CFR170-309]."""
        return self.handles and not self.minor

    @property
    def answers(self) -> bool:
        """Whether they can do or supervise the work of others: they treat, lead or supervise, and are 18."""
        return bool(self.may & {"lead", "treat", "supervise"}) and not self.minor

    @property
    def cuts(self) -> bool:
        """Whether they cut, with a chainsaw or by hand."""
        return bool(self.may & {"saw", "cut"})

    def certified(self, on: date, state: str | None = None) -> bool:
        """Return whether a licence on their card holds on a day, in a state if one is named."""
        holds = self.licence is not None and self.licence_until is not None and on <= self.licence_until
        return holds and (state is None or (self.licence is not None and self.licence.state.upper() == state))


@dataclass(frozen=True, slots=True)
class Handling:
    """Who works on a unit and when, in which state and class of place, for whom and for what. None: not known.

    people: empty, nobody is written down. hay: whether hay is cut there.
    """

    people: tuple[Person, ...] = ()
    on: date | None = None
    state: str | None = None
    site_class: str | None = None
    for_whom: str | None = None
    purpose: str | None = None
    hay: bool | None = None

    @classmethod
    def at(cls, unit: Unit, people: tuple[Person, ...], on: date | None, state: str | None) -> Handling:
        """Return what is known of the handling on a unit."""
        return cls(people, on, state, unit.site_class, unit.for_whom, unit.purpose, _hay(unit.taken))

    @property
    def produces(self) -> bool | None:
        """Whether the work produces agricultural plants, so that worker protection can reach it, 40 CFR 170.303.

        Timber counts. Pasture counts where its forage is cut for hay, 170.303(b)(7). Every way of putting it on counts:
        the exception that the old rule made for injection is not in this one. None: nobody has said.
        """
        if self.purpose == "pasture":
            return self.hay
        return None if self.purpose is None else self.purpose == "produce"

    @property
    def box(self) -> str:
        """The box of the label that governs, in its printed words; empty while nobody has said what the work is for."""
        if self.produces is None:
            return ""
        return "Agricultural Use Requirements" if self.produces else "Non-Agricultural Use Requirements"

    @property
    def treating(self) -> tuple[Person, ...]:
        """Those who may mix and treat."""
        return tuple(one for one in self.people if one.treats)

    @property
    def open_who(self) -> bool:
        """Whether nobody has said who mixes and treats."""
        return treaters(self.people) is None


def _hay(taken: tuple[Taken, ...] | None) -> bool | None:
    return None if taken is None else any(one.what == "hay" for one in taken)


def treaters(people: tuple[Person, ...]) -> int | None:
    """Return how many may mix and treat; None where nobody has said what anybody may do."""
    if not any(one.may for one in people):
        return None
    return sum(one.treats for one in people)


def overdue(since: date, on: date, months: float = TRAINING_MONTHS) -> bool:
    """Return whether a day lies more than so many calendar months before another: 12 months on is still in time.

    >>> overdue(date(2025, 7, 15), date(2026, 7, 15)), overdue(date(2025, 7, 15), date(2026, 7, 16))
    (False, True)
    """
    gone = (on.year - since.year) * len(MONTHS) + on.month - since.month
    return (gone, on.day) > (months, since.day)
