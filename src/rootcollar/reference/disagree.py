"""Where sources disagree about a practice: what each side says, and what we advise."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference.spans import Figure
from rootcollar.reference.table import Table

__all__ = ["Conflict", "read_conflict"]


@dataclass(frozen=True, slots=True)
class Conflict:
    """A question with more than one answer. sides: each with its source. advice: ours, and marked so.

    species, ingredients, methods: keys of what it is about; empty means: not bound.
    """

    about: str
    species: tuple[str, ...]
    ingredients: tuple[str, ...]
    methods: tuple[str, ...]
    sides: tuple[Figure, ...]
    advice: Cited[str]


def read_conflict(row: Table) -> Conflict:
    """Return the conflict told by the row. Raises ValueError on any key, word or source not known."""
    return Conflict(
        about=row.text("about"),
        species=row.words("species", "species"),
        ingredients=row.words("ingredients", "ingredient"),
        methods=row.words("methods", "method"),
        sides=row.figures("sides"),
        advice=Cited(row.text("advice"), "", "ours", Mark.OURS),
    )
