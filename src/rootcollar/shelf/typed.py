"""A line as a person types it, without quotes or brackets, and back: `25; 50`, `yes`, `25 ft from surface water`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from rootcollar.kernel.days import read_date
from rootcollar.kernel.errors import BadInput
from rootcollar.shelf.fields import FIELDS, Field
from rootcollar.shelf.sheet import SILENT, Active, Distance, Line, Sheet, SiteLine
from rootcollar.shelf.values import NotAllowed, read_value
from rootcollar.shelf.walk import REPEATED, Shape

__all__ = ["SILENT_WORD", "as_typed", "cells_of", "form_of", "raw_of", "shape_of"]

SILENT_WORD = "silent"
_NONE = "none"  # typed for a list of which the label says that nothing is in it
_FLAGS = {"yes": True, "no": False, "true": True, "false": False, "y": True, "n": False}
_NUMBER = re.compile(r"([-+]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+))\s*(.*)")
_DISTANCE = re.compile(r"(?P<ft>\S+?)\s*(?:ft|feet)?\s+from\s+(?P<what>[^()]+?)\s*(?:\((?P<methods>[^()]*)\))?")


def raw_of(field: Field, text: str) -> object:
    """Return what a typed text stands for, as a sheet's file holds it; "silent" stays that word.

    Raises NotAllowed with the words of what the line can hold.
    """
    said = " ".join(text.split())
    if said.casefold() == SILENT_WORD:
        return SILENT_WORD
    try:
        raw = _RAW.get(field.kind, lambda _, one: one)(field, said)
        read_value(field, raw)
    except NotAllowed:
        raise NotAllowed(form_of(field)) from None
    return raw


def as_typed(says: object) -> str:
    """Return what a line says as a person types it."""
    if says is SILENT:
        return SILENT_WORD
    if isinstance(says, bool):
        return "yes" if says else "no"
    if isinstance(says, tuple):
        return "; ".join(map(as_typed, says)) or _NONE
    if isinstance(says, float):
        return f"{says:.12g}"
    if isinstance(says, Distance):
        methods = f" ({', '.join(says.methods)})" if says.methods else ""
        return f"{says.ft:.12g} ft from {says.from_}{methods}"
    return str(says)


def form_of(field: Field) -> str:
    """Return how a line is typed, in words, with an example where one helps."""
    return {
        "text": "the label's words",
        "texts": "one or several, with ; between; none",
        "states": "states by two letters, such as WV; OH",
        "flag": "yes or no",
        "number": f"a number{f' in {field.unit}' if field.unit else ''}",
        "count": f"a whole number{f' of {field.unit}s' if field.unit else ''}",
        "percent": "a percent, 0 to 100",
        "date": "a day such as 2026-05-20",
        "choice": ", ".join(field.among).replace("_", " "),
        "choices": f"one or several of {', '.join(field.among)}, with ; between".replace("_", " "),
        "distances": "such as 25 ft from surface water (foliar); none",
    }.get(field.kind, "")


def cells_of(sheet: Sheet) -> dict[str, str]:
    """Return every line that was read, by address, as typed; pages are not among them."""
    cells = {path: as_typed(line.says) for path, line in sheet.lines.items() if path not in REPEATED}
    for block in REPEATED[:2]:
        line = sheet.line(block)
        if line is not None and line.says is SILENT:
            cells[block] = SILENT_WORD
        for number, row in enumerate(sheet.says(block) or (), start=1):
            cells |= {f"{block}.{number}.{name}": said for name, said in _row(row)}
    for kind, lines in sheet.methods.items():
        cells |= {f"method.{kind}.{path}": as_typed(line.says) for path, line in lines.items()}
    return cells


def shape_of(cells: Mapping[str, str], methods: tuple[str, ...] = ()) -> Shape:
    """Return the shape that holds all the addresses. methods: kinds that are there though nothing is typed of them."""
    most = {"ingredient": 1, "site": 1}
    found = dict.fromkeys(methods)
    for address in cells:
        block, *rest = address.split(".")
        if block in most and rest and rest[0].isdecimal():
            most[block] = max(most[block], int(rest[0]))
        elif block == "method" and rest:
            found[rest[0]] = None
    return Shape(most["ingredient"], most["site"], tuple(found))


def _row(row: Active | SiteLine) -> list[tuple[str, str]]:
    block = "ingredient" if isinstance(row, Active) else "site"
    names = [path.removeprefix(f"{block}.") for path in FIELDS if path.startswith(f"{block}.")]
    said: list[tuple[str, Line[object]]] = [
        (name, Line(getattr(row, "class_" if name == "class" else name))) for name in names if name not in row.unread
    ]
    return [(name, SILENT_WORD if line.says is None else as_typed(line.says)) for name, line in said]


def _number(field: Field, said: str) -> object:
    return _figure(said, {field.unit.casefold(), "%" if field.kind == "percent" else ""})


def _figure(said: str, units: set[str]) -> float:
    """Return a number, whole where it was typed so; one of the units, or none, may stand behind it."""
    found = _NUMBER.fullmatch(said)
    if found is None or found[2].casefold() not in {"", *units}:
        raise NotAllowed("a number")
    return int(found[1]) if found[1].lstrip("+-").isdecimal() else float(found[1])


def _flag(field: Field, said: str) -> object:
    return _FLAGS.get(said.casefold(), said)


def _choice(field: Field, said: str) -> object:
    return next((one for one in field.among if one.casefold() in (said.casefold(), said.casefold().replace(" ", "_"))),
                said)  # fmt: skip


def _texts(field: Field, said: str) -> object:
    return [] if said.casefold() == _NONE else [one.strip() for one in said.split(";") if one.strip()]


def _states(field: Field, said: str) -> object:
    return [] if said.casefold() == _NONE else [one for one in re.split(r"[;,\s]+", said.upper()) if one]


def _choices(field: Field, said: str) -> object:
    if said.casefold() == _NONE and _NONE not in field.among:
        return []
    return [_choice(field, one.strip()) for one in re.split(r"[;,]", said) if one.strip()]


def _date(field: Field, said: str) -> object:
    try:
        return read_date(said)
    except BadInput:
        return said


def _distances(field: Field, said: str) -> object:
    return [] if said.casefold() == _NONE else [_distance(field, one.strip()) for one in said.split(";") if one.strip()]


def _distance(field: Field, said: str) -> object:
    found = _DISTANCE.fullmatch(said)
    if found is None:
        raise NotAllowed(form_of(field))
    methods = [one.replace(" ", "_") for one in re.split(r",\s*", found["methods"] or "") if one]
    made = {"from": found["what"], "ft": _figure(found["ft"], set())}
    return {**made, "methods": methods} if methods else made


_RAW = {
    "number": _number, "percent": _number, "count": _number, "flag": _flag, "choice": _choice, "texts": _texts,
    "states": _states, "choices": _choices, "date": _date, "distances": _distances,
}  # fmt: skip
