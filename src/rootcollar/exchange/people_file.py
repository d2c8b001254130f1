"""crew.toml and answers.toml: who works, and what has been answered."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from rootcollar.exchange.entry import Day, Entry, Mass, Text, Volume, check, refuse
from rootcollar.label.answers import Answer, Answers
from rootcollar.work.crew import Crew, Person

__all__ = ["read_answers", "read_crew"]

MAY = ("lead", "treat", "saw")

_ML_IN_L, _G_IN_KG = 1000, 1000


def _may(raw: object) -> object:
    if raw not in MAY:
        refuse(raw, ", ".join(MAY))
    return raw


class _Person(Entry):
    name: Text = Field(description='a name in quotes, such as name = "A. Steward"')
    may: list[Annotated[str, BeforeValidator(_may)]] = Field([], description='a list of "lead", "treat", "saw"')
    licence_until: Day | None = Field(None, description="a day without quotes, such as 2027-03-31")


class _Crew(Entry):
    person: list[_Person] = Field([], description="a block [[person]] for each person")
    wear: list[Text] | None = Field(None, description='a list in quotes, such as wear = ["long sleeves", "goggles"]')
    tank: Volume | None = Field(None, description='what the sprayer holds, such as tank = "4 gal"')
    carry: Mass | None = Field(None, description='the heaviest load to carry, such as carry = "40 lb"')


class _Answer(Entry):
    rule: Text = Field(description='the rule that asked, such as rule = "L26"')
    about: Text = Field(description='the line, unit or sheet asked about, or "*" for all')
    answer: Literal["yes", "no"] = Field(description='"yes" or "no", in quotes')
    by: Text = Field(description="who answers, in quotes")
    on: Day = Field(description="the day of the answer without quotes, such as on = 2026-10-09")
    note: str = Field("", description="text in quotes")


class _Answers(Entry):
    answer: list[_Answer] = Field([], description="a block [[answer]] for each answer")


def read_crew(table: dict[str, Any], file: str) -> Crew:
    """Return the crew. Raises BadInput with all faults of the file."""
    entry = check(_Crew, table, file)
    people = (Person(one.name, frozenset(one.may), one.licence_until) for one in entry.person)
    return Crew(
        people=tuple(people),
        wear=None if entry.wear is None else frozenset(entry.wear),
        tank_l=None if entry.tank is None else entry.tank / _ML_IN_L,
        carry_kg=None if entry.carry is None else entry.carry / _G_IN_KG,
    )


def read_answers(table: dict[str, Any], file: str) -> Answers:
    """Return the answers, in the order typed. Raises BadInput with all faults of the file."""
    entry = check(_Answers, table, file)
    return tuple(
        Answer(one.rule, one.about, one.answer == "yes", one.by, one.on, one.note.strip()) for one in entry.answer
    )
