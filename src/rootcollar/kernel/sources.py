"""Where a figure comes from: the source, the mark of how it was seen, and the figure that carries both."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, TypeVar

__all__ = ["MARK_WORDS", "NOT_A_LABEL", "Cited", "Mark", "Source"]

T = TypeVar("T")


class Mark(StrEnum):
    """How a figure came to us, best first. Only `read` and `practice` may decide anything alone."""

    READ = "read"
    PRACTICE = "practice"
    RECKONED = "reckoned"
    OURS = "ours"
    MEMORY = "memory"


MARK_WORDS: Mapping[Mark, tuple[str, str]] = {
    Mark.READ: ("read", "the source named was seen to say so"),
    Mark.PRACTICE: ("practice", "a habit of the trade"),
    Mark.RECKONED: ("reckoned", "worked out from other figures"),
    Mark.OURS: ("ours", "our own guess, to be replaced by yours"),
    Mark.MEMORY: ("from memory", "recalled, not seen; confirm before anybody acts on it"),
}
NOT_A_LABEL = "No fact here permits anything: the label in your hand is the law."


@dataclass(frozen=True, slots=True)
class Source:
    """A published work, a regulation, a data set, or one of the two marks without one (practice, ours)."""

    key: str
    cite: str
    url: str = ""
    kind: str = ""
    year: int | None = None


@dataclass(frozen=True, slots=True)
class Cited(Generic[T]):
    """A figure with its unit, its source key, its mark, and what it holds for."""

    value: T
    unit: str
    source: str
    mark: Mark
    holds_for: str = ""
    locator: str = ""
