"""tally.csv as a table to type in: every cell as it stands, and written back whole in the shape the file had."""

from __future__ import annotations

import codecs
import csv
import io
import re
import unicodedata
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path
from threading import Lock

from rootcollar.exchange.ground_file import read_ground
from rootcollar.exchange.rows import Rows, read_rows
from rootcollar.exchange.tally_file import COLUMNS, read_tally
from rootcollar.exchange.text import opened, toml
from rootcollar.exchange.whole import write_whole
from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["Changed", "TypedTally", "keep_tally", "tally_as_typed", "tally_cells"]

Cells = Mapping[str, str]

_FILE = "tally.csv"
_NAMES = tuple(one.name for one in COLUMNS)
_FIRST = 2  # the row of a spreadsheet that stands beneath the header
_WRITING = Lock()  # two pages of one app never write between each other's look and write


class Changed(BadInput):
    """The file is another than the one that was shown when the typing began; nothing was written."""


@dataclass(frozen=True, slots=True)
class TypedTally:
    """A tally as typed: each row its cells by column; empty rows are dropped, and spaces around a cell.

    stamp: of the file that was shown, "" for none. units: names by key. faults: by (row from 0, column).
    """

    rows: tuple[Cells, ...]
    stamp: str
    units: Mapping[str, str]
    faults: Mapping[tuple[int, str], tuple[Fault, ...]] = field(default_factory=dict)


def tally_cells(folder: Path) -> TypedTally:
    """Return tally.csv of a property cell by cell, with what is wrong in it; no rows where there is no file yet.

    A line break within a cell becomes a space: a cell of a form has one line.
    Raises BadInput for a ground that cannot be read, and for a file that is no such table (a column nobody knows,
    more cells than columns), so that nothing in it is lost unseen.
    """
    ground, _ = read_ground(toml(folder / "ground.toml", "ground.toml"), "ground.toml")
    text = _text(folder / _FILE)
    table = _table(text)
    if beyond := [fault for row in table.rows for fault in row.faults if not fault.field]:
        raise BadInput(*beyond)
    rows = [{name: re.sub(r"[\r\n]+", " ", said) for name, said in row.cells.items()} for row in table.rows]
    return tally_as_typed(rows, _stamp(text), {key: unit.name for key, unit in ground.units.items()})


def tally_as_typed(rows: Iterable[Cells], stamp: str, units: Mapping[str, str]) -> TypedTally:
    """Return what was typed, weighed as the file would be; stamp: of the file that was shown before the typing."""
    bare = [{name: row.get(name, "").strip() for name in _NAMES} for row in rows]
    kept = tuple(row for row in bare if any(row.values()))
    faults: dict[tuple[int, str], tuple[Fault, ...]] = defaultdict(tuple)
    for fault in _not_text(kept) or _wrong(kept, units):
        at = int(fault.row.removeprefix("row ")) - _FIRST, fault.field
        faults[at] = (*faults[at], fault)
    return TypedTally(kept, stamp, units, dict(faults))


def keep_tally(folder: Path, typed: TypedTally) -> None:
    """Write tally.csv whole: columns in the order the file had them, those it lacked behind when something is typed.

    The separator, the line ends and the byte-order mark that some spreadsheets need stay as they were.
    Raises BadInput with every fault of what was typed, and Changed when the file is no longer the one that was shown.
    """
    path = folder / _FILE
    if typed.faults:
        raise BadInput(*(fault for found in typed.faults.values() for fault in found))
    with _WRITING:
        text = _text(path)
        if _stamp(text) != typed.stamp:
            raise Changed(Fault("a tally.csv that was changed since this page was shown", "the two compared", _FILE))
        mark = codecs.BOM_UTF8 if text and path.read_bytes().startswith(codecs.BOM_UTF8) else b""
        line_end = "\r\n" if "\r\n" in text else "\n"
        write_whole(path, mark + _as_text(typed.rows, _table(text), line_end).encode())


def _as_text(rows: Sequence[Cells], table: Rows, line_end: str = "\n") -> str:
    """Return rows as text, in the columns and with the separator of a table that was read."""
    columns = [*table.columns, *(one for one in _NAMES if one not in table.columns and any(row[one] for row in rows))]
    out = io.StringIO(newline="")
    writer = csv.writer(out, delimiter=table.separator, lineterminator=line_end)
    writer.writerow(columns)
    writer.writerows([row[name] for name in columns] for row in rows)
    return out.getvalue()


def _text(path: Path) -> str:
    return opened(path, _FILE) if path.exists() else ""


def _table(text: str) -> Rows:
    """Return the text as a table; the plain one where nothing is written yet."""
    return read_rows(text, _FILE, COLUMNS) if text.strip() else Rows((), columns=_NAMES)


def _stamp(text: str) -> str:
    return sha256(text.encode()).hexdigest() if text else ""


def _wrong(rows: Sequence[Cells], units: Mapping[str, str]) -> tuple[Fault, ...]:
    try:
        read_tally(_as_text(rows, Rows((), columns=_NAMES)), _FILE, units)
    except BadInput as wrong:
        return wrong.faults
    return ()


def _not_text(rows: Sequence[Cells]) -> tuple[Fault, ...]:
    """Return a fault for each cell that a table cannot hold: too long, or with a sign that is none of a line's."""
    return tuple(
        Fault(repr(said[:40]), "plain text on one line", _FILE, f"row {number}", name)
        for number, row in enumerate(rows, _FIRST)
        for name, said in row.items()
        if len(said) > csv.field_size_limit()
        or any(unicodedata.category(sign) in ("Cc", "Cs") and sign != "\t" for sign in said)
    )
