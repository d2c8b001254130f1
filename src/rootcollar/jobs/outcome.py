"""What a job hands back: its value, and what the rules say of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from rootcollar.kernel.verdict import Level, Verdict, worst

__all__ = ["Outcome"]

T = TypeVar("T")


@dataclass(frozen=True, slots=True, eq=False)
class Outcome(Generic[T]):
    """The value of a job and the verdicts on it; the verdicts decide exit code and banner, the value never does."""

    value: T
    verdicts: tuple[Verdict, ...] = ()

    @property
    def level(self) -> Level:
        """The worst of the verdicts; OK when nothing was weighed."""
        return worst(self.verdicts)
