"""What the app wants of whoever knows the quick questions: their fields, and a way to ask one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal, Protocol

from rootcollar.jobs.figure import Worked

__all__ = ["Bench", "Entry", "Question"]


@dataclass(frozen=True, slots=True)
class Entry:
    """A field of a question. words: what it is; hint: help with an example.

    kind: a text, one of the choices, several texts, or a label sheet. needed: whether the question cannot do without.
    """

    name: str
    words: str
    hint: str
    kind: Literal["text", "choice", "several", "sheet"] = "text"
    choices: tuple[str, ...] = ()
    needed: bool = False


@dataclass(frozen=True, slots=True)
class Question:
    """A quick question: its name, what it answers, its fields in the order to fill them, an example by field."""

    name: str
    words: str
    entries: tuple[Entry, ...]


class Bench(Protocol):
    """The bench of quick questions."""

    def questions(self) -> Sequence[Question]:
        """Return every question, in the order a person meets them."""
        ...

    def ask(self, name: str, told: Mapping[str, Sequence[str]]) -> Worked:
        """Return the answer with its working. told: by field, the texts as typed; empty ones left out.

        Raises BadInput with the field where it can be told, Refusal, NotCleared, and NotFound for an unknown question.
        """
        ...
