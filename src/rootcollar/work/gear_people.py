"""Who does what on the day, and what is to be checked by hand before they start."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from rootcollar.label.people import overdue
from rootcollar.reference import Reference, named, numbers
from rootcollar.work.crew import DUTIES, Crew, Person
from rootcollar.work.packet import Part

__all__ = ["people_part"]

_DOES = {"lead": "leads", "treat": "mixes, treats, cleans", "supervise": "answers for the others"}
_CUTS = {"saw": "saws", "cut": "cuts by hand"}
_NOTE = "Of your state's own rules on licences and training none is weighed: check them by hand."
_LANGUAGES = {"es": "Spanish"}


def people_part(crew: Crew, day: date, reference: Reference, *, cutting: bool, mixing: bool) -> Part:
    """Return who does what: (name, does, wears which columns, to check by hand). day: for which dates are held."""
    if not crew.people:
        return Part("People", "text", (("No crew is written in crew.toml. Mixes and treats: ______ Saws: ______",),))
    rows = tuple(
        (
            f"{one.name}{', under 18' if one.minor else ''}",
            _does(one, crew, cutting=cutting, mixing=mixing),
            _columns(one, cutting=cutting, mixing=mixing) or "–",
            "; ".join(_check(one, day, reference)) or "–",
        )
        for one in crew.people
    )
    return Part("People", "table", rows, ("Who", "Does", "Wears", "To check by hand"), _NOTE)


def _does(one: Person, crew: Crew, *, cutting: bool, mixing: bool) -> str:
    if not one.may:
        return "nobody has said what they may do: no mix, no saw"
    handles = [word for duty, word in _DOES.items() if duty in one.may and (mixing or duty != "treat")]
    if one.minor:
        handles = []
    cuts = [_CUTS[duty] for duty in _cutting(one) if cutting]
    words = ", ".join([*handles, *cuts]) or "helps; no mix, no saw"
    if cuts and mixing and not one.treats:
        beside = [other.name for other in crew.people if other.treats]
        words += f", never alone; {' or '.join(beside)} treats at once" if beside else ": NOBODY TREATS, so do not cut"
    return words


def _cutting(one: Person) -> list[str]:
    """Their duties that cut; no chainsaw for anybody under 18 (ours)."""
    return [duty for duty in DUTIES if duty in _CUTS and duty in one.may and not (one.minor and duty == "saw")]


def _columns(one: Person, *, cutting: bool, mixing: bool) -> str:
    worn = ["Mix, Apply, Clean"] if mixing and one.treats else []
    return ", ".join([*worn, *(["Cut"] if cutting and _cutting(one) else [])])


def _check(one: Person, day: date, reference: Reference) -> Iterator[str]:
    rows = reference.hazard["people"]
    if one.minor:
        age = numbers(named(rows, "handler_age"))[0]
        yield f"handlers are {age.value:.0f} or older ({age.source}, {age.mark}), and no chainsaw (ours)"
    if one.licence_until is not None and one.licence_until < day:
        yield f"LICENCE RAN OUT on {one.licence_until.isoformat()}"
    elif one.licence_until is not None:
        number = f" {one.licence.number}" if one.licence else ""
        yield f"licence{number} runs until {one.licence_until.isoformat()}"
    elif one.treats or "supervise" in one.may:
        yield "licence: no date; is one needed here?"
    if one.treats:
        yield from _training(one, day, reference)
    if one.volunteer:
        yield "volunteer: the label binds them too; who insures them?"
    if one.language in _LANGUAGES:
        yield f"reads {_LANGUAGES[one.language]}: goes through the label in it first (CFR170-503, read)"


def _training(one: Person, day: date, reference: Reference) -> Iterator[str]:
    """Whether handler training is older than the rule's calendar months, or has no date."""
    if one.trained_on is None:
        yield "handler training: no date"
        return
    most = numbers(named(reference.hazard["people"], "training_months"))[0]
    if overdue(one.trained_on, day, most.value):
        yield (
            f"HANDLER TRAINING of {one.trained_on.isoformat()} is older than {most.value:.0f} months "
            f"({most.source}, {most.mark})"
        )
