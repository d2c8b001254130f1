"""Examples of the rules on certificates, training, age and what the ground is worked for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from rootcollar.label.example import Case, Example
from rootcollar.label.people import Handling, Licence, Person

__all__ = ["CREW"]

_DAY, _EARLIER = date(2026, 7, 15), date(2026, 7, 14)
_CARD = Licence("00-000", "Forest pest control", "WI", "commercial")
_LEAD = Person("A. Steward", frozenset({"lead"}), date(2027, 3, 31), _CARD, date(2026, 3, 1))
_LATE = replace(_LEAD, licence_until=_EARLIER)
_PLAIN = Person("B. Hand", frozenset({"treat"}), trained_on=date(2026, 3, 1))
_STALE = replace(_PLAIN, trained_on=date(2025, 3, 1))
_YOUNG = replace(_PLAIN, minor=True)
_RESTRICTED = {"restricted": True, "use_class": "restricted"}
_GENERAL = {"restricted": False, "use_class": "unclassified"}
_MASK = {"respirator": "N95 filtering facepiece"}
_BOX = {"box": True}


def _crew(*people: Person, for_whom: str = "own", purpose: str | None = "produce") -> dict[str, Handling]:
    return {"handling": Handling(people, _DAY, "WI", "forest", for_whom, purpose)}


CREW: Mapping[str, Example] = {
    "L18": Example(
        Case("a restricted-use product, the lead certified in WI for forests", {**_RESTRICTED, **_crew(_LEAD)}),
        Case("the certificate runs out the day before the work", {**_RESTRICTED, **_crew(_LATE)}),
    ),
    "L18b": Example(
        Case("the helper was trained four months before the work", {**_RESTRICTED, **_crew(_LEAD, _PLAIN)}),
        Case("the helper was trained sixteen months before the work", {**_RESTRICTED, **_crew(_LEAD, _STALE)}),
    ),
    "L19": Example(
        Case("for hire, with a commercial licence of the state", {**_GENERAL, **_crew(_LEAD, for_whom="hire")}),
        Case("for hire, with no licence", {**_GENERAL, **_crew(_PLAIN, for_whom="hire")}),
    ),
    "L19b": Example(
        Case("nobody who treats is a volunteer", {**_GENERAL, **_crew(_LEAD, _PLAIN)}),
        Case("a volunteer treats", {**_GENERAL, **_crew(_LEAD, replace(_PLAIN, volunteer=True))}),
    ),
    "L23": Example(
        Case("cleared, fitted and trained to the end of July", {
            **_MASK, **_crew(replace(_PLAIN, respirator_until=date(2026, 7, 31))),
        }),
        Case("that ran out the day before the work", {**_MASK, **_crew(replace(_PLAIN, respirator_until=_EARLIER))}),
    ),
    "L24": Example(
        Case("one under 18 treats, of the owner's family", {**_BOX, **_crew(replace(_YOUNG, family=True))}),
        Case("one under 18 treats in timber, not of the family", {**_BOX, **_crew(_YOUNG)}),
    ),
    "L25": Example(
        Case("in timber, trained four months before the work", {**_BOX, **_crew(_PLAIN)}),
        Case("in timber, trained sixteen months before it", {**_BOX, **_crew(_STALE)}),
    ),
    "L26": Example(
        Case("the ground is worked for nature", {**_BOX, **_crew(_PLAIN, purpose="nature")}),
        Case("nobody has said what for", {**_BOX, **_crew(_PLAIN, purpose=None)}),
    ),
}  # fmt: skip
