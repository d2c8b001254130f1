"""Verdicts: what a rule says of a line of work. A rule can object; it cannot permit."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum

__all__ = ["Level", "Stage", "Verdict", "worst", "worst_first"]


class Level(IntEnum):
    """ok: no known rule objects. warn: lawful but risky. ask: a fact is missing. stop: must not be done."""

    OK, WARN, ASK, STOP = range(4)

    @property
    def word(self) -> str:
        """The level as printed: lower case, one word."""
        return self.name.lower()


class Stage(IntEnum):
    """When a rule can be weighed: with the plan, in the hour of work, or when the record is closed."""

    PLAN, HOURS, CLOSE = range(3)


@dataclass(frozen=True, slots=True)
class Verdict:
    """What one rule says: how bad, why, what clears it, which rule, about which line, on which label page.

    answerable: an `ask` that a person's answer settles; an unread label line is settled only by reading it.
    """

    level: Level
    because: str
    clear: str = ""
    rule: str = ""
    about: str = ""
    page: str = ""
    answerable: bool = False

    def of(self, about: str) -> Verdict:
        """Return the same said of another line: what is alike for many lines is weighed once and said of each."""
        return Verdict(self.level, self.because, self.clear, self.rule, about, self.page, self.answerable)


def worst(verdicts: Iterable[Verdict]) -> Level:
    """Return the worst level, or OK when nothing was said."""
    return max((verdict.level for verdict in verdicts), default=Level.OK)


def worst_first(verdicts: Iterable[Verdict]) -> tuple[Verdict, ...]:
    """Return the verdicts, stops before asks before warnings, then by rule and line."""
    return tuple(sorted(verdicts, key=lambda one: (-one.level, one.rule, one.about)))
