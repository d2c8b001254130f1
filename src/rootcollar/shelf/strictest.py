"""Several labels as one: of each line the strictest, for what is printed of a mix of their products."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from rootcollar.shelf.fields import FIELDS, Field, fields_of
from rootcollar.shelf.sheet import SILENT, Line, Sheet, SiteLine

__all__ = ["OWN", "strictest"]

# What a label says of its own product alone: its strength, its dose, its rates. Weighed by each label, never merged.
OWN = (
    "identity.", "proof.", "ingredient", "formulation.", "hazard.", "limits.", "transport.", "method.concentration.",
    "method.less_than_low", "method.dose.",
)  # fmt: skip
_NAMED = frozenset({"site", "method.carrier"})  # what a silent label names nothing of


def strictest(sheets: Sequence[Sheet]) -> Sheet:
    """Return one sheet with the strictest of several on every line they share, by the direction of its field.

    A line that one of them has not read is not read. Where one is silent, what the other says stands; but a label
    that names no place and no carrier lets none. A method stands where every label gives directions for it. What a
    label says of its own product (`OWN`), and lines of which no change is stricter and which differ, are left out:
    they are read on each label. Raises ValueError for no sheet.
    """
    if not sheets:
        raise ValueError("no sheet to take the strictest of")
    if len(sheets) == 1:
        return sheets[0]
    lines: dict[str, Line[Any]] = {}
    for path, row in FIELDS.items():
        if not row.in_method and not path.startswith(("ingredient", "site.")):
            found = _merged(path, row, [one.line(path) for one in sheets])
            lines |= {path: found} if found else {}
    methods = {}
    for method in sheets[0].methods:
        if all(method in one.methods for one in sheets):
            block = {
                path: _merged(f"method.{path}", FIELDS[f"method.{path}"], [one.line(path, method) for one in sheets])
                for path in fields_of(method)
            }
            methods[method] = {path: line for path, line in block.items() if line}
    return Sheet("+".join(one.key for one in sheets), lines, methods)


def _merged(path: str, row: Field, found: Sequence[Line[Any] | None]) -> Line[Any] | None:
    lines = [one for one in found if one is not None]
    if len(lines) < len(found) or (path.startswith(OWN) and path != "proof.complete_booklet_read"):
        return None
    said = [one.says for one in lines if one.says is not SILENT]
    pages = ", ".join(dict.fromkeys(one.page for one in lines if one.page))
    if not said or (path in _NAMED and len(said) < len(lines)):
        return Line(SILENT, pages)
    if row.stricter == "none":
        return Line(said[0], pages) if len(said) == len(lines) and all(one == said[0] for one in said) else None
    return Line(_strictest(row, said), pages)


def _strictest(row: Field, said: Sequence[Any]) -> Any:
    match row.stricter:
        case "lower":
            return min(said)
        case "higher":
            return max(said)
        case "true":
            return any(said)
        case "false":
            return all(said)
        case "first":
            return min(said, key=row.among.index)
        case "more":
            return tuple(dict.fromkeys(item for items in said for item in items))
    if row.kind == "tables":
        return _sites(said)
    return tuple(one for one in said[0] if all(one.casefold() in {each.casefold() for each in rest} for rest in said))


def _sites(said: Sequence[tuple[SiteLine, ...]]) -> tuple[SiteLine, ...]:
    """Every place that a label forbids or leaves open, and those that all of them allow."""
    everywhere = set.intersection(*({one.class_ for one in rows if one.allowed and one.class_} for rows in said))
    kept = (one for rows in said for one in rows if not one.allowed or one.class_ in everywhere)
    return tuple(dict.fromkeys(kept))
