"""Where a figure comes from: the source, the mark of how it was seen, and the figure that carries both."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, TypeVar

__all__ = ["Cited", "Mark", "Source"]

T = TypeVar("T")


class Mark(StrEnum):
    """How a figure came to us, best first. Only `read` and `practice` may decide anything alone."""

    READ = "read"
    PRACTICE = "practice"
    RECKONED = "reckoned"
    OURS = "ours"
    MEMORY = "memory"


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
