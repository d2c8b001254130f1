"""crew.toml and answers.toml: who works, and what has been answered."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from rootcollar.exchange.entry import Day, Entry, Mass, Text, Volume, check, refuse
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.label.aboard import NOTHING_SAID, Aboard
from rootcollar.label.answers import Answer, Answers
from rootcollar.label.people import DUTIES, LICENCE_KINDS, Licence, Person
from rootcollar.work.crew import Crew

__all__ = ["read_answers", "read_crew"]

_MAY_WORDS = ", ".join(f'"{one}"' for one in DUTIES)
_ML_IN_L, _G_IN_KG = 1000, 1000


def _may(raw: object) -> object:
    if raw not in DUTIES:
        refuse(raw, f"{', '.join(DUTIES)} (saw: with a chainsaw, cut: with hand tools)")
    return raw


def _kind(raw: object) -> object:
    if raw not in LICENCE_KINDS:
        refuse(raw, ", ".join(LICENCE_KINDS))
    return raw


def _licence(raw: object) -> object:
    if not isinstance(raw, Mapping):
        refuse(raw, 'a table such as licence = { number = "00-000", category = "forest", state = "WI" }')
    return raw


class _Licence(Entry):
    number: Text = Field(description='the number on the card in quotes, such as number = "00-000"')
    category: str = Field("", description="the category on the card, in quotes")
    state: str = Field("", description='the state in quotes, such as state = "WI"')
    kind: Annotated[str, BeforeValidator(_kind)] = Field(
        "", description='"private", or "commercial" for every other kind, public and not for hire too'
    )


class _Person(Entry):
    name: Text = Field(description='a name in quotes, such as name = "A. Steward"')
    may: list[Annotated[str, BeforeValidator(_may)]] = Field([], description=f"a list of {_MAY_WORDS}")
    licence: Annotated[_Licence, BeforeValidator(_licence)] | None = Field(
        None, description='a table such as licence = { number = "00-000", category = "forest", state = "WI" }'
    )
    licence_until: Day | None = Field(None, description="a day without quotes, such as 2027-03-31")
    trained_on: Day | None = Field(None, description="the day of handler training without quotes, such as 2026-03-31")
    minor: bool = Field(False, description="true for anybody under 18, or false")
    volunteer: bool = Field(False, description="true or false")
    family: bool = Field(False, description="true for who owns most of the ground and their immediate family, or false")
    respirator_until: Day | None = Field(
        None, description="to which day they are cleared, fitted and trained for a respirator, such as 2027-03-31"
    )
    language: Literal["en", "es"] = Field(
        "en", description='the language they read a label in: "en" for English, "es" for Spanish'
    )


class _Aboard(Entry):
    metals: list[Text] | None = Field(
        None, description='metals of sprayers and tools that the mix touches, such as metals = ["brass"], or []'
    )
    wash_water: Volume | None = Field(None, description='water to wash with, such as wash_water = "9 gal"')
    eye_flush: Volume | None = Field(None, description='water for eyes at the mixing site, such as eye_flush = "6 gal"')
    flasks: Annotated[int, Field(ge=0)] | None = Field(
        None, description="flasks of a pint for eyes, one on each who applies, such as flasks = 3"
    )
    soap: bool | None = Field(None, description="whether soap and towels go along: true or false")
    labels: bool | None = Field(None, description="whether the label booklets ride along: true or false")


class _Crew(Entry):
    person: list[_Person] = Field([], description="a block [[person]] for each person")
    wear: list[Text] | None = Field(None, description='a list in quotes, such as wear = ["long sleeves", "goggles"]')
    tank: Volume | None = Field(None, description='what the sprayer holds, such as tank = "4 gal"')
    carry: Mass | None = Field(None, description='the heaviest load to carry, such as carry = "40 lb"')
    aboard: _Aboard | None = Field(None, description="a block [aboard] of what else goes along")


class _Answer(Entry):
    rule: Text = Field(description='the rule that asked, such as rule = "L26"')
    about: Text = Field(description='the line, unit or sheet asked about, or "*" for all')
    answer: Literal["yes", "no"] = Field(description='"yes" or "no", in quotes')
    by: Text = Field(description="who answers, in quotes")
    on: Day = Field(description="the day of the answer without quotes, such as on = 2026-10-09")
    note: str = Field("", description="text in quotes")
    page: str = Field("", description='the label page it was found on, in quotes, such as page = "4"')
    sheets: dict[str, str] = Field({}, description="the shelf as it was then; written by rootcollar itself")


class _Answers(Entry):
    answer: list[_Answer] = Field([], description="a block [[answer]] for each answer")


def read_crew(table: dict[str, Any], file: str) -> Crew:
    """Return the crew. Raises BadInput with all faults of the file."""
    entry = check(_Crew, table, file)
    _once(entry, file)
    return Crew(
        people=tuple(_told(one) for one in entry.person),
        wear=None if entry.wear is None else frozenset(entry.wear),
        tank_l=None if entry.tank is None else entry.tank / _ML_IN_L,
        carry_kg=None if entry.carry is None else entry.carry / _G_IN_KG,
        aboard=_along(entry.aboard),
    )


def _along(entry: _Aboard | None) -> Aboard:
    if entry is None:
        return NOTHING_SAID
    metals = None if entry.metals is None else tuple(entry.metals)
    return Aboard(metals, entry.wash_water, entry.eye_flush, entry.flasks, entry.soap, entry.labels)


def _once(entry: _Crew, file: str) -> None:
    """Raise BadInput where two people have one name: on paper nobody could tell them apart."""
    seen: set[str] = set()
    faults = []
    for number, one in enumerate(entry.person, start=1):
        if one.name.casefold() in seen:
            row = f"[[person]] {number} ({one.name})"
            faults.append(Fault(repr(one.name), "each name once; add an initial", file=file, row=row, field="name"))
        seen.add(one.name.casefold())
    if faults:
        raise BadInput(*faults)


def _told(entry: _Person) -> Person:
    held = entry.licence
    return Person(
        entry.name,
        frozenset(entry.may),
        entry.licence_until,
        None if held is None else Licence(held.number, held.category.strip(), held.state.strip(), held.kind),
        entry.trained_on,
        entry.minor,
        entry.volunteer,
        entry.language,
        entry.family,
        entry.respirator_until,
    )


def read_answers(table: dict[str, Any], file: str) -> Answers:
    """Return the answers, in the order typed. Raises BadInput with all faults of the file."""
    entry = check(_Answers, table, file)
    return tuple(
        Answer(
            one.rule,
            one.about,
            one.answer == "yes",
            one.by,
            one.on,
            one.note.strip(),
            one.page.strip(),
            tuple(one.sheets.items()),
        )
        for one in entry.answer
    )
