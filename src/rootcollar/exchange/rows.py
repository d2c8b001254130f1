"""A table as a spreadsheet saves it: rows with their numbers, and cells read with faults by row and column."""

from __future__ import annotations

import csv
import difflib
import io
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["Column", "Row", "Rows", "read_rows"]

T = TypeVar("T")

_SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs"}


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its name as printed, an example of what stands in it, whether it can be left out."""

    name: str
    example: str
    needed: bool = True


@dataclass(slots=True)
class Row:
    """One row: the number a spreadsheet shows beside it, its cells by column name, the faults found in it."""

    number: int
    cells: Mapping[str, str]
    file: str
    faults: list[Fault] = field(default_factory=list)

    def fault(self, column: str, found: str, allowed: str) -> None:
        """Keep a fault of this row."""
        self.faults.append(Fault(found, allowed, self.file, f"row {self.number}", column))

    def read(self, column: str, parse: Callable[[str], T]) -> T | None:
        """Return the cell as read by a parser; None when it is empty, or when it cannot be read, which is kept."""
        said = self.cells.get(column, "")
        if not said:
            return None
        try:
            return parse(said)
        except BadInput as wrong:
            self.fault(column, repr(said), wrong.faults[0].allowed)
            return None


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of a table, and notes on how it was read. columns: in the file's order; separator: between them."""

    rows: tuple[Row, ...]
    notes: tuple[str, ...] = ()
    columns: tuple[str, ...] = ()
    separator: str = ","


def read_rows(text: str, file: str, columns: Sequence[Column]) -> Rows:
    """Return the rows of a table with a header row; blank rows are passed over, spaces around cells dropped.

    Columns may stand in any order, in any case and spacing; semicolons or tabs between them are noted.
    Raises BadInput for an empty file, a column missing, unknown or doubled, a row longer than the header, or quotes
    that do not close; cells needed but empty are faults of their row.
    """
    separator, said = _separator(text)
    lines = list(_lines(text, file, separator))
    if not lines:
        raise BadInput(Fault("an empty file", f"a header row: {', '.join(one.name for one in columns)}", file=file))
    (_, header), *body = lines
    names = _header(header, file, columns)
    rows = []
    for number, cells in body:
        row = Row(number, dict(zip(names, cells, strict=False)), file)
        if any(cells[len(names) :]):
            allowed = f"{len(names)}, as in the header (a text with a comma in it needs quotes around it)"
            row.fault("", f"{len(cells)} cells", allowed)
        for one in columns:
            if one.needed and not row.cells.get(one.name):
                row.fault(one.name, "nothing", f"for instance {one.example}")
        rows.append(row)
    notes = (f"{file}: read with {said} between the columns",) if said else ()
    return Rows(tuple(rows), notes, tuple(names), separator)


def _separator(text: str) -> tuple[str, str]:
    first = next((line for line in text.splitlines() if line.strip()), "")
    best = max(_SEPARATORS, key=first.count)
    return best, "" if best == "," else _SEPARATORS[best]


def _lines(text: str, file: str, separator: str) -> Iterator[tuple[int, list[str]]]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    try:
        for cells in reader:
            bare = [cell.strip() for cell in cells]
            if any(bare):
                yield reader.line_num, bare
    except csv.Error as fault:
        found = f"a row that cannot be taken apart ({fault})"
        raise BadInput(Fault(found, "quotes in pairs around a cell", file, f"row {reader.line_num}")) from None


def _header(header: Sequence[str], file: str, columns: Sequence[Column]) -> list[str]:
    known = {_folded(one.name): one.name for one in columns}
    names: list[str] = []
    faults = []
    while header and not header[-1]:
        header = header[:-1]
    for said in header:
        name = known.get(_folded(said))
        if name is None:
            near = difflib.get_close_matches(said.casefold(), known.values(), n=2) or list(known.values())
            faults.append(Fault(f"a column {said!r}", ", ".join(near), file=file, row="header"))
        elif name in names:
            faults.append(Fault(f"the column {name} twice", "each column once", file=file, row="header"))
        names.append(name or said)
    missing = [one.name for one in columns if one.needed and one.name not in names]
    faults += [Fault(f"no column {name}", f"a column named {name}", file=file, row="header") for name in missing]
    if faults:
        raise BadInput(*faults)
    return names


def _folded(name: str) -> str:
    return "".join(letter for letter in name.casefold() if letter.isalnum())
