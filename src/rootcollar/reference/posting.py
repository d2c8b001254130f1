"""What some places ask of signs and notice: examples with the day each was looked at, for the user to correct."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from rootcollar.reference.spans import Row
from rootcollar.reference.table import Table

__all__ = ["PostingRow", "read_posting"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PostingRow(Row):
    """One place's rule as it was found: whom it binds, the sign or notice, how long, and the day it was looked at."""

    place: str
    who: str
    sign: str
    when: str
    seen_on: date


def read_posting(row: Table) -> PostingRow:
    """Return a row of the posting table. Raises ValueError on any key or source not known."""
    return PostingRow(
        place=row.text("place"),
        who=row.text("who"),
        sign=row.text("sign"),
        when=row.text("when"),
        seen_on=row.take("seen_on", date),
        source=row.source(),
        mark=row.mark(),
    )
