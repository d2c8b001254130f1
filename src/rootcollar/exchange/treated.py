"""What a row of applied.csv says of the stems treated: kind, way, size, number, and whether they fell."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from rootcollar.exchange.rows import Column, Row
from rootcollar.kernel.days import read_date
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.units import Kind, read, read_range
from rootcollar.label.words import METHOD_NAMES, flat
from rootcollar.reference import find_species

__all__ = ["BY_HAND", "TREATED_COLUMNS", "Treated", "read_method", "read_treated"]

TREATED_COLUMNS = (
    Column("species", "white mulberry", needed=False),
    Column("method", "hack and squirt", needed=False),
    Column("diameter", "6-10 in", needed=False),
    Column("stems", "12", needed=False),
    Column("down", "2027-05-01", needed=False),
)

BY_HAND: Mapping[str, tuple[str, ...]] = {  # ways that put nothing on, as people write them
    "pull": ("pull", "pulled", "dug"),
    "cut": ("cut", "cut only"),
    "girdle": ("girdle", "girdled", "ring bark"),
    "mow": ("mow", "mown"),
}

_CM_IN_M = 100
_THICKEST_CM, _MOST_STEMS = 300, 10_000_000  # ours, as in tally.csv: beyond these it is a slip of typing


@dataclass(frozen=True, slots=True)
class Treated:
    """The stems of a row, as `Applied` has them: "" and None where nobody wrote it. diameter_cm: [cm]."""

    species: str = ""
    method: str = ""
    diameter_cm: tuple[float, float] | None = None
    stems: float | None = None
    down: date | None = None


def read_treated(row: Row, on: date | None) -> Treated:
    """Return what a row says of its stems; what cannot be read is kept as the row's faults. on: the day treated."""
    species = row.read("species", lambda said: find_species(said).key)
    method, size = row.read("method", read_method), row.read("diameter", _size_cm)
    stems, down = row.read("stems", _stems), row.read("down", read_date)
    if on is not None and down is not None and down < on:
        row.fault("down", down.isoformat(), f"a day on or after {on.isoformat()}, on which they were treated")
    return Treated(species or "", method or "", size, stems, down)


def read_method(said: str) -> str:
    """Return the key of a way of treating, however it is written. Raises BadInput for another word."""
    names = {**METHOD_NAMES, **BY_HAND}
    for key, words in names.items():
        if flat(said) in {flat(one) for one in (key, *words)}:
            return key
    raise BadInput(Fault(repr(said), ", ".join(words[0] for words in names.values())))


def _size_cm(said: str) -> tuple[float, float]:
    """Read a size class, or one size where all are alike."""
    low, high = _ends_cm(said)
    if not 0 < low <= high <= _THICKEST_CM:
        raise BadInput(Fault(repr(said), f"a diameter above 0, at most {_THICKEST_CM} cm, such as 6-10 in"))
    return low, high


def _ends_cm(said: str) -> tuple[float, float]:
    try:
        low, high = read_range(said, Kind.LENGTH)
    except BadInput as no_range:
        try:
            low = high = read(said, Kind.LENGTH)
        except BadInput:
            raise no_range from None
    return low.amount * _CM_IN_M, high.amount * _CM_IN_M


def _stems(said: str) -> float:
    count = read(said, Kind.COUNT).amount
    if count != int(count) or not 0 < count <= _MOST_STEMS:
        raise BadInput(Fault(repr(said), f"a whole number of stems, 1 to {_MOST_STEMS:,}; empty if nobody counted"))
    return count
