"""applied.csv: what has already been put on the ground."""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.exchange.rows import Column, Row, read_rows
from rootcollar.exchange.tally_file import unit_reader
from rootcollar.kernel.days import read_date
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.units import Kind, Quantity, read
from rootcollar.label.applied import Applied
from rootcollar.reference import find_ingredient

__all__ = ["COLUMNS", "read_applied"]

COLUMNS = (
    Column("date", "2026-05-20"),
    Column("unit", "brook-edge"),
    Column("product", "the key of its sheet on the shelf", needed=False),
    Column("ingredient", "glyphosate"),
    Column("amount of product", "32 fl oz"),
    Column("strength", "4 lb ae/gal", needed=False),
    Column("area", "0.4 ac"),
    Column("note", "first pass", needed=False),
)

_ML_IN_L = 1000


def read_applied(text: str, file: str, units: Mapping[str, str] | None) -> tuple[tuple[Applied, ...], tuple[str, ...]]:
    """Return past applications and notes on how the table was read; no rows is an answer too.

    The amount is a volume of product with its strength, or a weight of acid or active ("0.5 lb ae").
    Raises BadInput with every fault, by row and column.
    """
    table = read_rows(text, file, COLUMNS)
    read_unit = unit_reader(units)
    found = []
    for row in table.rows:
        on, unit = row.read("date", read_date), row.read("unit", read_unit)
        ingredient = row.read("ingredient", lambda said: find_ingredient(said).key)
        ae_g, area = _ae_g(row), row.read("area", _area_m2)
        if on is not None and unit is not None and ingredient is not None and ae_g is not None and area is not None:
            found.append(Applied(on, unit, ingredient, ae_g, area, row.cells.get("product", "")))
    faults = [fault for row in table.rows for fault in row.faults]
    if faults:
        raise BadInput(*faults)
    return tuple(found), table.notes


def _ae_g(row: Row) -> float | None:
    """Return the acid or active in the amount [g]; None when it cannot be read, which the row's faults say."""
    amount, strength = row.read("amount of product", _amount), row.read("strength", _strength)
    if amount is None:
        return None
    if amount.kind is Kind.MASS:
        return amount.amount
    if strength is not None:
        return amount.amount / _ML_IN_L * strength.amount
    if not row.cells.get("strength"):
        row.fault("strength", "nothing", f"the strength of a product given by volume, such as {COLUMNS[5].example}")
    return None


def _amount(said: str) -> Quantity:
    amount = read(said)
    if amount.kind is Kind.VOLUME or (amount.kind is Kind.MASS and amount.of in {"ae", "ai"}):
        return amount
    allowed = "a volume of product (not of mix), such as 32 fl oz, or a weight such as 0.5 lb ae"
    raise BadInput(Fault(repr(said), allowed))


def _strength(said: str) -> Quantity:
    strength = read(said, Kind.STRENGTH)
    if strength.of not in {"ae", "ai"} or not strength.amount:
        raise BadInput(Fault(repr(said), "a strength that says ae or ai, such as 4 lb ae/gal"))
    return strength


def _area_m2(said: str) -> float:
    area = read(said, Kind.AREA).amount
    if not area:
        raise BadInput(Fault(repr(said), "an area above 0, such as 0.4 ac"))
    return area
