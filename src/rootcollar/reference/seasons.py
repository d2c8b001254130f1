"""When in the year a way works best, on some days only, or not at all, whatever the plant."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.reference.spans import Row, Window
from rootcollar.reference.table import Table

__all__ = ["SeasonRow", "read_season"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonRow(Row):
    """A part of the year for ways of working. Empty carriers, ingredients or leaf: bound to none.

    effect: shut, some_days or best. leaf: habits of leaf it holds for. taken: how a source's words were read as dates.
    """

    methods: tuple[str, ...]
    carriers: tuple[str, ...]
    ingredients: tuple[str, ...]
    leaf: tuple[str, ...]
    effect: str
    windows: tuple[Window, ...]
    why: str
    taken: str


def read_season(row: Table) -> SeasonRow:
    """Return a row of the seasons. Raises ValueError on any key, word or source not known."""
    return SeasonRow(
        methods=row.words("methods", "method"),
        carriers=row.words("carriers", "carrier"),
        ingredients=row.words("ingredients", "ingredient"),
        leaf=row.words("leaf", "leaf_habit"),
        effect=row.word("effect", "season_effect"),
        windows=tuple(one.window() for one in row.children("windows")),
        why=row.text("why"),
        taken=row.text("taken", ""),
        source=row.source(),
        mark=row.mark(),
    )
