"""Checking what was typed in a TOML file: quantities, days and positions, and faults in the user's words.

The description of each field is what is allowed there; it is printed when something else was found.
"""

from __future__ import annotations

import difflib
import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date, datetime
from typing import Annotated, Any, NoReturn, TypeVar, get_args

from pydantic import BaseModel, BeforeValidator, ConfigDict, StringConstraints, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails, PydanticCustomError

from rootcollar.kernel.errors import BadInput, Fault, UnitError
from rootcollar.kernel.units import Kind, read

__all__ = [
    "Area", "Day", "Distance", "Entry", "Mass", "Position", "Text", "Volume", "check", "refuse",
]  # fmt: skip

M = TypeVar("M", bound="Entry")


class Entry(BaseModel):
    """A table of a file: nothing but the known keys, nothing turned silently from one kind into another."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


def refuse(found: object, allowed: str) -> NoReturn:
    """Raise the fault of a value, in words."""
    raise PydanticCustomError("allowed", "{allowed}", {"found": shown(found), "allowed": allowed})


def _quantity(kind: Kind, none: bool = False) -> Callable[[object], float]:
    def parse(raw: object) -> float:
        if not isinstance(raw, str):
            refuse(raw, f"a number and its unit in quotes, such as {_EXAMPLE[kind]}")
        if none and raw.strip().casefold() == "none":
            return math.inf
        try:
            amount = read(raw, kind).amount
        except UnitError as wrong:
            allowed = wrong.faults[0].allowed
            refuse(raw, f'{allowed}, or "none" where you looked and there is none' if none else allowed)
        if amount == 0 and kind in _ABOVE_0:
            refuse(raw, f"more than 0, such as {_EXAMPLE[kind]}")
        return amount

    return parse


_EXAMPLE = {
    Kind.AREA: '"3.2 ac"', Kind.LENGTH: '"60 ft"', Kind.VOLUME: '"4 gal"', Kind.MASS: '"40 lb"',
}  # fmt: skip

_ABOVE_0 = frozenset({Kind.AREA, Kind.VOLUME, Kind.MASS})


def _day(raw: object) -> date:
    if isinstance(raw, datetime) or not isinstance(raw, date):
        refuse(raw, "a day without quotes, such as 2027-03-31")
    return raw


def _position(raw: object) -> tuple[float, float]:
    if not (isinstance(raw, Sequence) and not isinstance(raw, str) and len(raw) == 2 and all(map(_is_number, raw))):
        refuse(raw, "[longitude, latitude] in degrees, such as [-89.9012, 43.3004]")
    lon, lat = float(raw[0]), float(raw[1])
    if not (abs(lon) <= 180 and abs(lat) <= 90):
        refuse(raw, "longitude first, -180 to 180, then latitude, -90 to 90")
    return lon, lat


def _is_number(one: object) -> bool:
    return isinstance(one, (int, float)) and not isinstance(one, bool) and math.isfinite(one)


Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]
Area = Annotated[float, BeforeValidator(_quantity(Kind.AREA))]
Distance = Annotated[float, BeforeValidator(_quantity(Kind.LENGTH, none=True))]
Volume = Annotated[float, BeforeValidator(_quantity(Kind.VOLUME))]
Mass = Annotated[float, BeforeValidator(_quantity(Kind.MASS))]
Day = Annotated[date, BeforeValidator(_day)]
Position = Annotated[tuple[float, float], BeforeValidator(_position)]


def check(model: type[M], table: Mapping[str, Any], file: str) -> M:
    """Return the table as an entry. Raises BadInput with every fault: file, place, found, allowed."""
    try:
        return model.model_validate(dict(table))
    except ValidationError as wrong:
        errors = wrong.errors(include_url=False)
        raise BadInput(*dict.fromkeys(_fault(error, model, table, file) for error in errors)) from None


def _fault(error: ErrorDetails, model: type[Entry], table: Mapping[str, Any], file: str) -> Fault:
    loc = error["loc"]
    row, field = _place(loc, table)
    about, names = _described(model, loc)
    if error["type"] == "extra_forbidden":
        near = difflib.get_close_matches(str(loc[-1]), names, n=3)
        return Fault(f"the key {loc[-1]}", ", ".join(near or names), file=file, row=row, field=field)
    if error["type"] == "missing":
        return Fault("nothing", about, file=file, row=row, field=field)
    context = error.get("ctx", {})
    found = context.get("found", shown(error["input"]))
    return Fault(found, context.get("allowed") or about or error["msg"], file=file, row=row, field=field)


def _place(loc: tuple[int | str, ...], table: Mapping[str, Any]) -> tuple[str, str]:
    """Return where a fault stands: the block with its number and name, and the key within it."""
    if len(loc) < 2 or not isinstance(loc[1], int):
        return "", ".".join(map(str, loc))
    block, number = str(loc[0]), loc[1]
    rest = ".".join(str(part) if isinstance(part, str) else str(part + 1) for part in loc[2:])
    typed = table[block][number]
    named = typed.get("key", typed.get("name", "")) if isinstance(typed, Mapping) else ""
    if not isinstance(typed, Mapping):
        return "", f"{block}, item {number + 1}"
    return f"[[{block}]] {number + 1}{f' ({named})' if isinstance(named, str) and named else ''}", rest


def _described(model: type[Entry], loc: tuple[int | str, ...]) -> tuple[str, list[str]]:
    """Return what is allowed at a place, and the keys of the table it stands in."""
    inside: type[Entry] = model
    about = ""
    names = list(_keys(model))
    for part in loc:
        known_here = _keys(inside)
        names = list(known_here)
        if isinstance(part, str) and part in known_here:
            known = known_here[part]
            about = known.description or ""
            inside = next(_entries(known.annotation), inside)
    return about, names


def _keys(model: type[Entry]) -> dict[str, FieldInfo]:
    """Return what a table can hold by the keys that are typed."""
    return {known.alias or name: known for name, known in model.model_fields.items()}


def _entries(annotation: object) -> Iterator[type[Entry]]:
    if isinstance(annotation, type) and issubclass(annotation, Entry):
        yield annotation
    for part in get_args(annotation):
        yield from _entries(part)


def shown(found: object) -> str:
    """Return a value as the user typed it, cut to a length that fits a line."""
    text = repr(found) if not isinstance(found, bool) else str(found).lower()
    if isinstance(found, (date, datetime)):
        text = found.isoformat()
    return text if len(text) <= 80 else f"{text[:77]}..."
