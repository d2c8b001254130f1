"""Thicknesses that a crew tells by its own body."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.sources import Cited
from rootcollar.reference.table import Table

__all__ = ["BodySize", "read_body"]


@dataclass(frozen=True, slots=True)
class BodySize:
    """A part of the body and how thick it is taken to be [cm]."""

    word: str
    diameter_cm: Cited[float]


def read_body(row: Table) -> BodySize:
    """Return a thickness by its word. Raises ValueError on any key or source not known."""
    return BodySize(row.text("word"), row.cited("diameter_cm", float))
