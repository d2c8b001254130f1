"""The path of steps and the shelves beside it: where each lies and what it is called, in one place."""

from __future__ import annotations

from typing import NamedTuple

__all__ = ["SHELVES", "STEPS", "Place"]


class Place(NamedTuple):
    """A page that the row names. key: of its fact in the row."""

    key: str
    word: str
    path: str


STEPS = (
    Place("ground", "Ground", "/ground"),
    Place("count", "Count", "/count"),
    Place("choose", "Choose", "/choose"),
    Place("prepare", "Prepare", "/prepare"),
)
SHELVES = (Place("figure", "Figure", "/figure"), Place("shelf", "Shelf", "/shelf"), Place("facts", "Facts", "/facts"))
