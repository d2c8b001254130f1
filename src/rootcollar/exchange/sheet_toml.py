"""The text of a label sheet with some of its lines changed: comments, order and spaces of the rest stay as they are."""

from __future__ import annotations

from collections.abc import Mapping, MutableMapping
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from rootcollar.shelf import FIELDS, REPEATED, SCHEMA, fields_of

__all__ = ["edited", "fresh"]

Raw = Mapping[str, object]  # by address; None takes a line away

_HEAD = """\
# A label sheet, typed from the label on the jug. "silent": the label was read and says nothing there. A line that is
# not here has not been looked up yet. Only the label in your hand counts.
"""


def fresh(raw: Raw) -> str:
    """Return a new sheet that says just this, in the order of the sheet's lines."""
    order = {address: at for at, address in enumerate(_ordered(raw))}
    text = edited(f'{_HEAD}\nsheet = "{SCHEMA}"\n', dict(sorted(raw.items(), key=lambda one: order[one[0]])))
    assert text is not None
    return text


def edited(text: str, raw: Raw) -> str | None:
    """Return a sheet's text with some lines changed; None where it is written in a way that cannot be changed so."""
    if not text:
        return fresh(raw)
    try:
        document = tomlkit.parse(text)
        for address, value in raw.items():
            _put(document, address, value)
        for block in REPEATED[:2]:
            _close_up(document, block)
        return _spaced(document.as_string(), text)
    except (TOMLKitError, AttributeError, TypeError, ValueError, KeyError, IndexError):
        return None  # tomlkit can read more ways of writing a table than it can change


def _spaced(text: str, before: str) -> str:
    """Return a text with an empty line above each heading that is new in it."""
    lines = text.splitlines(keepends=True)
    made: list[str] = []
    for above, line in zip(["\n", *lines], lines, strict=False):
        if line.startswith("[") and above.strip() and not above.startswith("#") and above + line not in before:
            made.append("\n")
        made.append(line)
    return "".join(made)


def _on_one_line(value: object) -> object:
    """Return a list of tables as one that stands on a line; other values as they are."""
    if not (isinstance(value, list) and value and isinstance(value[0], dict)):
        return value
    array = tomlkit.array()
    for one in value:
        table = tomlkit.inline_table()
        table.update(one)
        array.append(table)
    return array


def _ordered(raw: Raw) -> list[str]:
    """Return the addresses block by block, as the table of lines has them; a block's page behind its lines."""
    blocks = {path.split(".")[0]: at for at, path in reversed(list(enumerate(FIELDS)))}
    places = {path: at for at, path in enumerate(FIELDS)}

    def place(address: str) -> tuple[int, str, int, int]:
        block, *rest = address.split(".")
        number = rest.pop(0) if block in REPEATED and rest else ""
        deep = rest[0] in ("category", "first_aid") if len(rest) > 1 else False
        at = places.get(".".join([block, *rest]), len(places))
        return blocks[block], number.zfill(6), int(deep and rest[0] == "first_aid"), at

    return sorted(raw, key=place)


def _put(document: MutableMapping[str, Any], address: str, value: object) -> None:
    block, *rest = address.split(".")
    if not rest:
        return  # a whole block said to be silent: it stays until one of its lines is typed
    if block in REPEATED:
        table = _row(document, block, rest.pop(0), value is not None)
        known = fields_of(str(table.get("kind"))) if block == "method" and table else _inside(block)
    else:
        table = _table(document, block, _inside(block), value is not None, flat=False)
        known = _inside(block)
    parents: list[tuple[Any, str]] = []
    for at, name in enumerate(rest[:-1]):
        if table is None:
            return
        inner = ".".join(rest[: at + 1])
        known_inside = tuple(one.removeprefix(f"{inner}.") for one in known if one.startswith(f"{inner}."))
        parents.append((table, name))
        table = _table(table, name, known_inside, value is not None, flat=name != "first_aid")
    if table is None:
        return
    if value is not None:
        table[rest[-1]] = _on_one_line(value)
        return
    table.pop(rest[-1], None)
    for parent, name in reversed(parents):
        if not parent[name]:
            parent.pop(name)


def _inside(block: str) -> tuple[str, ...]:
    return tuple(path.removeprefix(f"{block}.") for path in FIELDS if path.startswith(f"{block}."))


def _table(inside: Any, name: str, known: tuple[str, ...], make: bool, *, flat: bool) -> Any:
    """Return the table of that name, made where it is not there; one said to be silent becomes its silent lines."""
    there = inside.get(name)
    silent = there == "silent"
    if there is not None and not silent:
        return there
    if there is None and not make:
        return None
    made = tomlkit.inline_table() if flat else tomlkit.table()
    for path in known if silent else ():
        at: Any = made
        *outer, last = path.split(".")
        for one in outer:
            at = at.setdefault(one, tomlkit.inline_table())
        at[last] = "silent"
    if silent and not flat:
        inside.pop(name)
    inside[name] = made
    return inside[name]


def _row(document: MutableMapping[str, Any], block: str, which: str, make: bool) -> Any:
    """Return a row of a repeated block: the one of a method's kind, or by number from 1."""
    if not isinstance(document.get(block), list):
        if not make:
            return {}
        document.pop(block, None)
        document[block] = tomlkit.aot()
    rows = document[block]
    if block == "method":
        found = [row for row in rows if row.get("kind") == which]
        if found or not make:
            return found[0] if found else {}
        rows.append(tomlkit.item({"kind": which}))
        return document[block][-1]
    while len(rows) < int(which):
        rows.append(tomlkit.table())
    return rows[int(which) - 1]


def _close_up(document: MutableMapping[str, Any], block: str) -> None:
    rows = document.get(block)
    if not isinstance(rows, list):
        return
    for at in reversed(range(len(rows))):
        if not rows[at]:
            del rows[at]
    if not rows:
        document.pop(block)
