"""stock.csv: what stands in the shed, one row a container."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection
from datetime import date

from rootcollar.exchange.rows import Column, Row, read_rows
from rootcollar.kernel.days import read_date
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.units import Kind, read
from rootcollar.shelf import ADDITIVES, Lot

__all__ = ["COLUMNS", "read_stock", "read_what"]

COLUMNS = (
    Column("what", "the key of its label sheet, or basal oil, surfactant, oil dye, water dye"),
    Column("lot", "A1", needed=False),
    Column("holds", "2.5 gal", needed=False),
    Column("left", "1.5 gal"),
    Column("opened", "2026-05-20, or no", needed=False),
    Column("not after", "2028-03-31", needed=False),
    Column("note", "the steel locker", needed=False),
    Column("label version", "the version or date printed on its label", needed=False),
)

_HAIR = 1e-9  # relative; floating point is not a measurement
_NONE = frozenset({"no", "not", "unopened", "new"})
_EMPTY = re.compile(r"0|none|empty", re.I)


def read_stock(text: str, file: str, sheets: Collection[str]) -> tuple[tuple[Lot, ...], tuple[str, ...]]:
    """Return the lots and notes on how the table was read; no rows say that nobody has looked.

    sheets: keys of the label sheets on the shelf. Raises BadInput with every fault, by row and column.
    """
    table = read_rows(text, file, COLUMNS)
    parse = read_what(sheets, "shelf/*.toml; type its label first")
    found = [lot for row in table.rows for lot in [_lot(row, parse)] if lot is not None]
    faults = [fault for row in table.rows for fault in row.faults]
    if faults:
        raise BadInput(*faults)
    return tuple(found), table.notes


def read_what(keys: Collection[str], where: str) -> Callable[[str], str]:
    """Return the parser of a product's key or an additive's name, in any case; it raises BadInput for another.

    where: in which place the keys stand, in words.
    """
    known = {one.casefold(): one for one in (*keys, *ADDITIVES)}

    def parse(said: str) -> str:
        folded = " ".join(said.casefold().split())
        if folded in known:
            return known[folded]
        if folded == "dye":
            raise BadInput(Fault(repr(said), "oil dye or water dye: the one does not dissolve in the other's mix"))
        listed = ", ".join(keys) or "none so far"
        raise BadInput(Fault(repr(said), f"{', '.join(ADDITIVES)}, or a key of {where} ({listed})"))

    return parse


def _lot(row: Row, parse: Callable[[str], str]) -> Lot | None:
    """Return a row's lot; None when something needed in it cannot be read, which its faults say."""
    what, left = row.read("what", parse), row.read("left", _left_ml)
    holds = row.read("holds", _holds_ml)
    opened, not_after = row.read("opened", _opened), row.read("not after", read_date)
    if left is not None and holds is not None and left > holds * (1 + _HAIR):
        row.fault("left", row.cells["left"], f"at most what it holds, {row.cells['holds']}; one row for each container")
    if what is None or left is None:
        return None
    words = row.cells.get
    return Lot(what, left, words("lot", ""), holds, opened, not_after, words("note", ""), words("label version", ""))


def _left_ml(said: str) -> float:
    return 0.0 if _EMPTY.fullmatch(said) else _volume_ml(said)


def _holds_ml(said: str) -> float:
    volume = _volume_ml(said)
    if not volume:
        raise BadInput(Fault(repr(said), "more than 0, such as 2.5 gal"))
    return volume


def _volume_ml(said: str) -> float:
    found = read(said)
    if found.kind is Kind.MASS:
        raise BadInput(
            Fault(repr(said), "a volume, such as 1.5 gal; leave out what is weighed, it is not reckoned here")
        )
    return read(said, Kind.VOLUME).amount


def _opened(said: str) -> date | None:
    return None if said.casefold() in _NONE else read_date(said)
