"""choices.toml: where a person has chosen another way than the ranking, and why."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import Field

from rootcollar.choose import Pick
from rootcollar.exchange.entry import Day, Entry, Text, check

__all__ = ["read_choices"]


class _Choice(Entry):
    line: Text = Field(description='the line as the plan names it, such as line = "bench/rhca3/2.54-5.08cm"')
    way: Text = Field(description='the way as the plan names it, or "ranking" to take a choice back')
    reason: Text = Field(description="why, in quotes")
    by: Text = Field(description="who chooses, in quotes")
    on: Day = Field(description="the day of the choice without quotes, such as on = 2026-10-09")


class _Choices(Entry):
    choice: list[_Choice] = Field([], description="a block [[choice]] for each choice")


def read_choices(table: Mapping[str, Any], file: str) -> Mapping[str, Pick]:
    """Return the choices by line; the last of a line counts, and "ranking" as its way takes it back.

    Raises BadInput with all faults of the file.
    """
    found = {one.line: Pick(one.way, one.reason, one.by, one.on) for one in check(_Choices, table, file).choice}
    return {line: pick for line, pick in found.items() if pick.way != "ranking"}
