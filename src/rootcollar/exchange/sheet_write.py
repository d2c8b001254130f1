"""A label sheet as a person types it, line by line, and written back whole: comments and what was not touched stay."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path
from threading import Lock
from typing import Any

from rootcollar.exchange.sheet_toml import edited, fresh
from rootcollar.exchange.tally_write import Changed
from rootcollar.exchange.text import opened
from rootcollar.exchange.whole import write_whole
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.shelf import (
    PAGED,
    REPEATED,
    SILENT_WORD,
    NotAllowed,
    Sheet,
    cells_of,
    field_at,
    parse_sheet,
    raw_of,
    read_value,
)

__all__ = ["TypedSheet", "keep_sheet", "new_key", "sheet_as_typed", "sheet_changed", "sheet_file"]

Cells = Mapping[str, str]

_KEY = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_TEMPLATE = "-template"  # the end of a name that is passed over when the shelf is read
_WRITING = Lock()  # two pages of one app never write between each other's look and write


@dataclass(frozen=True, slots=True, eq=False)
class TypedSheet:
    """A sheet as typed. cells: by address, pages too; lines nobody has read are absent.

    stamp: of the file that was looked at, "" for none. text: as the file is, or is to be.
    """

    key: str
    text: str
    stamp: str
    cells: Cells
    sheet: Sheet


def sheet_file(folder: Path, key: str) -> Path:
    """Return where a sheet is kept."""
    return folder / "shelf" / f"{key}.toml"


def new_key(folder: Path, name: str) -> str:
    """Return a free key for a product of that name. Raises BadInput for a name without a letter or figure."""
    made = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")[:40].strip("-").removesuffix(_TEMPLATE)
    if not made:
        raise BadInput(Fault(repr(name), "a name with letters or figures", field="identity.product_name"))
    free = (one for one in (made, *(f"{made}-{at}" for at in range(2, 1000))) if not sheet_file(folder, one).exists())
    return next(free)


def sheet_as_typed(folder: Path, key: str, new: bool = False) -> TypedSheet:
    """Return a sheet line by line; of one that is not there yet, where it may be new, one of which nothing is read.

    Raises NotFound for a sheet that is not there, and BadInput with every fault of the file, so that nothing in it
    is lost unseen, and for a key that no file can have.
    """
    path = sheet_file(folder, key)
    there = sorted(one.stem for one in path.parent.glob("*.toml") if "." not in one.stem)
    if key in there and not key.endswith(_TEMPLATE):
        return _looked_at(key, opened(path, f"shelf/{key}.toml"))
    if not new:
        raise NotFound("label sheet", key, [one for one in there if not one.endswith(_TEMPLATE)])
    if not _KEY.fullmatch(key) or key.endswith(_TEMPLATE):
        raise BadInput(Fault(repr(key), "a short name in small letters, such as triclopyr-ester-4", field="key"))
    return TypedSheet(key, "", "", {}, Sheet(key, {}))


def sheet_changed(typed: TypedSheet, cells: Cells) -> TypedSheet:
    """Return a sheet with some lines typed anew; "" takes a line back to not read. Others stay as they are.

    Rows of a repeated block close up where one is emptied.
    Raises BadInput with every fault, each naming the address it is about.
    """
    wanted = {address: " ".join(said.split()) for address, said in cells.items()}
    changes = {one: said for one, said in wanted.items() if said != " ".join(typed.cells.get(one, "").split())}
    if not changes and typed.text:
        return typed
    raw = _raw(changes)
    whole = {one: said for one, said in {**typed.cells, **changes}.items() if said}
    text = edited(typed.text, raw)
    if text is None or not _same(typed.key, text, whole):
        text = fresh(_raw(whole))
    made = _looked_at(typed.key, text)
    return replace(made, stamp=typed.stamp)


def keep_sheet(folder: Path, typed: TypedSheet) -> TypedSheet:
    """Write a sheet whole and return it as it stands now.

    Raises Changed where its file is no longer the one that was looked at; nothing is written then.
    """
    path = sheet_file(folder, typed.key)
    with _WRITING:
        now = opened(path, path.name) if path.exists() else ""
        if _stamp(now) != typed.stamp:
            raise Changed(Fault("a sheet that was changed meanwhile", "the two compared", f"shelf/{path.name}"))
        if typed.text != now:
            write_whole(path, typed.text.encode())
    return replace(typed, stamp=_stamp(typed.text))


def _looked_at(key: str, text: str) -> TypedSheet:
    file = f"shelf/{key}.toml"
    try:
        table = tomllib.loads(text)
    except ValueError as fault:
        raise BadInput(Fault(str(fault), 'a line such as  lot = "A 17"', file=file)) from None
    try:
        sheet = parse_sheet(key, table, file)
    except BadInput as wrong:
        raise BadInput(*(replace(one, field=one.field.replace(" ", ".")) for one in wrong.faults)) from None
    return TypedSheet(key, text, _stamp(text), cells_of(sheet) | dict(_pages(table)), sheet)


def _pages(table: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """Return the pages by the address of their block; a page of a block further in holds for that one alone."""
    for block in PAGED:
        name, _, inner = block.partition(".")
        at = table.get(name)
        rows = at if isinstance(at, list) else [at]
        for number, row in enumerate(rows, start=1):
            there = row.get(inner) if inner and isinstance(row, Mapping) else row
            if isinstance(there, Mapping) and "page" in there:
                which = f".{row['kind'] if name == 'method' else number}" if name in REPEATED else ""
                yield f"{block}{which}.page", str(there["page"])


def _raw(cells: Cells) -> dict[str, object]:
    """Return what is typed as a file holds it, None to take a line away. Raises BadInput with all faults."""
    raw: dict[str, object] = {}
    faults = []
    for address, said in cells.items():
        field = None if address in REPEATED else field_at(address)
        try:
            if not said:
                raw[address] = None
            elif field is None:
                raw[address] = int(said) if said.isdecimal() else said
            else:
                raw[address] = raw_of(field, said)
        except NotAllowed as wrong:
            faults.append(Fault(repr(said), str(wrong), field=address))
    if faults:
        raise BadInput(*faults)
    return raw


def _same(key: str, text: str, whole: Cells) -> bool:
    """Whether a text says what was typed and nothing else; rows may have closed up."""
    try:
        found = _looked_at(key, text).cells
    except BadInput:
        return True  # a fault of what was typed, which is told when the text is read
    return _values(found) == _values(whole)


def _values(cells: Cells) -> list[tuple[str, object]]:
    found = []
    for address, said in cells.items():
        field = None if address in REPEATED else field_at(address)
        raw = said if field is None else raw_of(field, said)
        value = raw if field is None or raw == SILENT_WORD else read_value(field, raw)
        found.append((re.sub(r"\.[0-9]+\.", ".", address), value))
    return sorted(found, key=repr)


def _stamp(text: str) -> str:
    return sha256(text.encode()).hexdigest() if text else ""
