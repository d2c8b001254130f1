"""tally.csv: the stem count, one row a unit, species and diameter class."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from typing import TypeVar

from rootcollar.exchange.rows import Column, Row, Rows, read_rows
from rootcollar.kernel.errors import BadInput, Fault, UnitError
from rootcollar.kernel.units import Kind, read, read_range
from rootcollar.reference import find_species
from rootcollar.survey import MeasuredAt, TallyRow

__all__ = ["COLUMNS", "read_band", "read_tally", "unit_reader"]

COLUMNS = (
    Column("unit", "brook-edge"),
    Column("species", "common buckthorn"),
    Column("diameter class", "1-2 in"),
    Column("count", "120"),
    Column("low", "80", needed=False),
    Column("high", "150", needed=False),
    Column("measured at", "breast height", needed=False),
    Column("crown", "4 ft", needed=False),
    Column("height", "6 ft", needed=False),
    Column("fruiting", "yes", needed=False),
    Column("note", "along the fence", needed=False),
    Column("thicket", "hedge", needed=False),
    Column("keep inside", "spicebush; or none", needed=False),
)

T = TypeVar("T")

_CM_IN_M = 100
_LONE = re.compile(r"(\+|>|<|over|above|up$|more|under|below|less)", re.I)
_METRIC = frozenset({"mm", "cm", "m"})
_MEASURED: Mapping[str, MeasuredAt] = {
    "breast height": "breast height", "dbh": "breast height", "root collar": "root collar", "ground": "root collar",
}  # fmt: skip
_NOTHING = "none"  # somebody looked and found nothing that is to stay
_YES = {"yes": True, "y": True, "no": False, "n": False}
_THICKEST_CM, _NARROWEST_CM = 300, 0.1  # ours: beyond these it is a slip of the unit, or a class no tape can tell
_MOST_STEMS, _TALLEST_M = 10_000_000, 100  # ours: beyond these it is a slip of typing


def read_tally(text: str, file: str, units: Mapping[str, str] | None) -> tuple[tuple[TallyRow, ...], tuple[str, ...]]:
    """Return the rows of a tally and notes on how it was read.

    units: names of the units by key; None while the ground could not be read, then no unit is checked.
    No rows is an answer too: nothing is counted yet. Raises BadInput with every fault, by row and column.
    """
    table = read_rows(text, file, COLUMNS)
    read_unit = unit_reader(units)
    found = [(row, _tally_row(row, read_unit)) for row in table.rows]
    whole = [(row, one) for row, one in found if one is not None]
    _one_system(table)
    _apart(whole)
    faults = [fault for row in table.rows for fault in row.faults]
    if faults:
        raise BadInput(*faults)
    return tuple(one for _, one in whole), table.notes


def unit_reader(units: Mapping[str, str] | None) -> Callable[[str], str]:
    """Return the parser of a unit's key or name, in any case, to its key; it raises BadInput for another."""
    known = {} if units is None else {name.casefold(): key for key, name in units.items()} | {key: key for key in units}

    def parse(said: str) -> str:
        if units is None:
            return said
        if said.casefold() not in known:
            raise BadInput(Fault(repr(said), f"a unit of ground.toml: {', '.join(units)}"))
        return known[said.casefold()]

    return parse


def _tally_row(row: Row, read_unit: Callable[[str], str]) -> TallyRow | None:
    """Return a row of the tally; None when something needed in it cannot be read, which its faults say."""
    unit = row.read("unit", read_unit)
    species = row.read("species", lambda said: find_species(said).key)
    band_cm = row.read("diameter class", read_band)
    count, low, high = (row.read(column, _stems) for column in ("count", "low", "high"))
    measured_at = row.read("measured at", lambda said: _word(said, _MEASURED))
    crown_m, height_m = row.read("crown", _length_m), row.read("height", _length_m)
    fruiting = row.read("fruiting", lambda said: _word(said, _YES))
    if count is not None and low is not None and low > count:
        row.fault("low", f"{low:g} with a count of {count:g}", "at most the count")
    if count is not None and high is not None and high < count:
        row.fault("high", f"{high:g} with a count of {count:g}", "at least the count")
    if unit is None or species is None or band_cm is None or count is None:
        return None
    thicket, inside = row.cells.get("thicket", "").casefold(), row.cells.get("keep inside", "")
    if inside and not thicket:
        row.fault("keep inside", repr(inside), "empty, or the name of the thicket in its column too")
    keep = "" if inside.casefold() == _NOTHING else inside or None
    return TallyRow(
        unit, species, band_cm, count, low, high, measured_at, crown_m, height_m, fruiting, thicket, keep
    )  # fmt: skip


def read_band(said: str) -> tuple[float, float]:
    """Return both ends of a diameter class such as "1-2 in" [cm]. Raises BadInput or UnitError for another."""
    try:
        low, high = (end.amount * _CM_IN_M for end in read_range(said, Kind.LENGTH))
    except UnitError:
        if _LONE.search(said):
            allowed = "a class with both ends, such as 6-10 in: the dose grows with size"
            raise BadInput(Fault(repr(said), allowed)) from None
        raise
    if high > _THICKEST_CM:
        raise BadInput(Fault(repr(said), f"stems of at most {_THICKEST_CM} cm"))
    if high - low < _NARROWEST_CM:
        raise BadInput(Fault(repr(said), "a class at least 1 mm wide"))
    return low, high


def _stems(said: str) -> float:
    count = read(said, Kind.COUNT).amount
    if count != int(count) or count > _MOST_STEMS:
        raise BadInput(Fault(repr(said), f"a whole number of stems, 0 to {_MOST_STEMS:,}"))
    return count


def _length_m(said: str) -> float:
    length = read(said, Kind.LENGTH).amount
    if not 0 < length <= _TALLEST_M:
        raise BadInput(Fault(repr(said), f"a length above 0, at most {_TALLEST_M} m"))
    return length


def _word(said: str, words: Mapping[str, T]) -> T:
    if said.casefold() not in words:
        raise BadInput(Fault(repr(said), ", ".join(words)))
    return words[said.casefold()]


def _one_system(table: Rows) -> None:
    """Find the first row whose diameter class is in another system than the rows before it."""
    first: tuple[int, bool] | None = None
    for row in table.rows:
        said = row.cells.get("diameter class", "")
        try:
            metric = read_range(said, Kind.LENGTH)[0].unit in _METRIC
        except UnitError:
            continue
        if first is None:
            first = row.number, metric
        elif metric is not first[1]:
            allowed = f"{'centimetres' if first[1] else 'inches'} in all rows, as in row {first[0]}"
            row.fault("diameter class", repr(said), allowed)
            return


def _apart(whole: Sequence[tuple[Row, TallyRow]]) -> None:
    """Find classes of one species on one unit that say the same stems twice."""
    groups: dict[tuple[str, str], list[tuple[Row, TallyRow]]] = defaultdict(list)
    for row, one in whole:
        groups[one.unit, one.species].append((row, one))
    for group in groups.values():
        in_order = sorted(group, key=lambda pair: (pair[1].band_cm, pair[0].number))
        (widest, reach), *rest = in_order
        for row, one in rest:
            if one.band_cm[0] < reach.band_cm[1]:
                row.fault("diameter class", repr(row.cells["diameter class"]), _told(widest, one, reach))
            if one.band_cm[1] > reach.band_cm[1]:
                widest, reach = row, one


def _told(before: Row, one: TallyRow, other: TallyRow) -> str:
    what = f"{one.species} on {one.unit}"
    if one.band_cm == other.band_cm:
        return f"one row for {what} in this class; row {before.number} has it too: take one out, or add them"
    said = before.cells["diameter class"]
    return f"classes of {what} that do not overlap; row {before.number} has {said}"
