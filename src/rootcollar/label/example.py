"""An example of a rule: a plan it lets be, and one that it objects to, in words and as the facts its check is given."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Rule

__all__ = ["Case", "Example"]


@dataclass(frozen=True, slots=True, eq=False)
class Case:
    """One plan in words, and the facts of it that a rule reads, by parameter of its check."""

    words: str
    facts: Mapping[str, Any]

    def weighed_by(self, known: Rule) -> Verdict | None:
        """Return what a rule's check says of it; None where it does not object."""
        return known.check(**self.facts)


@dataclass(frozen=True, slots=True, eq=False)
class Example:
    """A plan that passes a rule and one that fails it; that both do what they say is tested."""

    passes: Case
    fails: Case
