"""What a cell holds, between Python and the file: days and moments as the standard writes them, nothing guessed."""

from __future__ import annotations

import math
from datetime import UTC, date, datetime

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.store.layers import Column

__all__ = ["Cell", "Value", "from_cell", "moment_text", "plain_text", "read_moment", "to_cell"]

Value = str | float | int | bool | date | datetime | None
Cell = str | float | int | bytes | None

_ALLOWED = {
    "TEXT": "text",
    "DOUBLE": "a number; infinite where somebody looked and there is none",
    "INTEGER": "a whole number",
    "BOOLEAN": "yes or no",
    "DATE": "a day, YYYY-MM-DD",
    "DATETIME": "a moment with its time zone",
}


def moment_text(moment: datetime) -> str:
    """Return a moment as the standard writes it, in UTC to the millisecond. Raises BadInput without a time zone."""
    if moment.tzinfo is None:
        raise BadInput(Fault(f"{moment.isoformat()} without a time zone", _ALLOWED["DATETIME"]))
    return moment.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def read_moment(text: object) -> datetime:
    """Return a moment written so. Raises BadInput for another text."""
    try:
        if isinstance(text, str) and text.endswith("Z"):
            return datetime.fromisoformat(text)
    except ValueError:
        pass
    raise BadInput(Fault(repr(text), "a moment in UTC, such as 2026-07-01T09:00:00.000Z"))


def plain_text(text: str) -> bool:
    """Return whether a text can be kept as it is: no zero byte, which ends a text elsewhere, and no half characters."""
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return "\0" not in text


def to_cell(column: Column, value: Value) -> Cell:
    """Return what is written for a value; None stays "nobody has said". Raises BadInput for a wrong kind."""
    match column.kind, value:
        case _, None:
            return None
        case "TEXT", str() if plain_text(value):
            return value
        case "BOOLEAN", bool():
            return int(value)
        case "INTEGER", int() if not isinstance(value, bool):
            return value
        case "DOUBLE", int() | float() if not isinstance(value, bool) and not math.isnan(value):
            return float(value)
        case "DATE", date() if not isinstance(value, datetime):
            return value.isoformat()
        case "DATETIME", datetime() if value.tzinfo is not None:
            return moment_text(value)
    raise BadInput(Fault(repr(value), _ALLOWED[column.kind], field=column.name))


def from_cell(column: Column, cell: Cell) -> Value:
    """Return the value in a cell, which another program may have written. Raises BadInput for one of another kind."""
    try:
        match column.kind, cell:
            case _, None:
                return None
            case "TEXT", str():
                return cell
            case "BOOLEAN", 0 | 1:
                return bool(cell)
            case "INTEGER", int():
                return cell
            case "DOUBLE", int() | float():
                return float(cell)
            case "DATE", str():
                return date.fromisoformat(cell)
            case "DATETIME", str():
                return read_moment(cell)
    except (ValueError, BadInput):
        pass
    raise BadInput(Fault(repr(cell), _ALLOWED[column.kind], field=column.name))
