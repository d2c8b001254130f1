"""applied.csv: what has already been put on the ground."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from types import MappingProxyType

from rootcollar.exchange.rows import Column, Row, read_rows
from rootcollar.exchange.tally_file import unit_reader
from rootcollar.exchange.treated import BY_HAND, TREATED_COLUMNS, Treated, read_treated
from rootcollar.kernel.days import read_date
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.kernel.units import Kind, Quantity, read
from rootcollar.label.acid import acid_in_product, acid_share
from rootcollar.label.applied import Applied
from rootcollar.reference import Form, find_form, find_ingredient, load
from rootcollar.shelf import Active, Sheet, actives, base_product

__all__ = ["COLUMNS", "read_applied"]

COLUMNS = (
    Column("date", "2026-05-20"),
    Column("unit", "brook-edge"),
    Column("product", "the key of its sheet on the shelf, or its EPA Reg. No.", needed=False),
    Column("ingredient", "glyphosate"),
    Column("amount of product", "32 fl oz"),
    Column("strength", "4 lb ae/gal", needed=False),
    Column("area", "0.4 ac"),
    *TREATED_COLUMNS,
    Column("note", "first pass", needed=False),
)

_ML_IN_L = 1000
_NOTHING = "none"  # in both columns of a row of work by hand: an empty cell could be one forgotten


@dataclass(frozen=True, slots=True)
class _Named:
    """The ingredient of a row: its key, the form that was named with it, the active of the product's sheet."""

    key: str
    form: Form | None = None
    active: Active | None = None


@dataclass(frozen=True, slots=True)
class _Put:
    """What was put on: acid [g], whether that is known to be acid, and the product [L] where it can be told."""

    acid_g: float | None
    known: bool
    product_l: float | None = None


def read_applied(
    text: str, file: str, units: Mapping[str, str] | None, shelf: Mapping[str, Sheet] = MappingProxyType({})
) -> tuple[tuple[Applied, ...], tuple[str, ...]]:
    """Return past applications and notes on how the table was read; no rows is an answer too.

    The amount is a volume of product with its strength (that of its sheet, where none is written), or a weight of acid
    or active ("0.5 lb ae"). Salts and esters are counted as their acid. shelf: label sheets by key; a product of two
    ingredients counts for both, and a distributor's number stands for its base product. What was girdled, pulled or cut
    and got nothing is a row too, with none as its ingredient and its amount: its trees may still stand dead.
    Raises BadInput with every fault, by row and column.
    """
    table = read_rows(text, file, COLUMNS)
    read_unit = unit_reader(units)
    found: list[Applied] = []
    for row in table.rows:
        on, unit, area = row.read("date", read_date), row.read("unit", read_unit), row.read("area", _area_m2)
        stems = read_treated(row, on)
        if row.cells.get("ingredient", "").casefold() == _NOTHING:
            found += _by_hand(row, (on, unit, area), stems)
            continue
        sheet = _sheet(row.cells.get("product", ""), shelf)
        named = _named(row, sheet)
        put = _put(row, named, sheet)
        if on is not None and unit is not None and named is not None and put is not None and area is not None:
            first, *others = _applied(row, (on, unit, area), named, put, sheet)
            found += [_with(first, stems), *others]
    faults = [fault for row in table.rows for fault in row.faults]
    if faults:
        raise BadInput(*faults)
    return tuple(found), table.notes


def _by_hand(row: Row, where: tuple[date | None, str | None, float | None], stems: Treated) -> Iterator[Applied]:
    """Yield the work of a row that put nothing on; a fault where the row says otherwise too."""
    on, unit, area_m2 = where
    if stems.method not in BY_HAND:
        row.fault("method", repr(row.cells.get("method", "")), f"{', '.join(BY_HAND)}, where the ingredient is none")
    if row.cells.get("amount of product", "").casefold() != _NOTHING or row.cells.get("product"):
        row.fault("ingredient", _NOTHING, "none also as the amount of product, and no product")
    if on is not None and unit is not None and area_m2 is not None:
        yield _with(Applied(on, unit, "", 0.0, area_m2), stems)


def _with(one: Applied, stems: Treated) -> Applied:
    return replace(
        one, species=stems.species, method=stems.method, diameter_cm=stems.diameter_cm, stems=stems.stems,
        down=stems.down,
    )  # fmt: skip


def _applied(
    row: Row, where: tuple[date, str, float], named: _Named, put: _Put, sheet: Sheet | None
) -> Iterator[Applied]:
    """Yield the application for its ingredient, and for what else is in the product."""
    on, unit, area_m2 = where
    product = sheet.key if sheet else row.cells.get("product", "")
    yield Applied(on, unit, named.key, put.acid_g, area_m2, product, put.known)
    for active in actives(sheet) if sheet else ():
        key = _key(active)
        if key in {None, named.key}:
            continue
        acid = acid_in_product(active, str(key), load())
        grams = None if acid is None or put.product_l is None else put.product_l * acid[0]
        yield Applied(on, unit, str(key), grams, area_m2, product, acid is not None and acid[1])


def _sheet(product: str, shelf: Mapping[str, Sheet]) -> Sheet | None:
    """Return the sheet of a product by its key or number; a distributor's number stands for the base product."""
    if product in shelf:
        return shelf[product]
    base = base_product(product)
    same = (one for one in shelf.values() if base and base_product(str(one.says("identity.epa_reg_no"))) == base)
    return next(same, None)


def _named(row: Row, sheet: Sheet | None) -> _Named | None:
    named = row.read("ingredient", _ingredient)
    if named is None or sheet is None or not actives(sheet):
        return named
    active = next((one for one in actives(sheet) if _key(one) == named.key), None)
    if active is None:
        inside = ", ".join(one.common_name or "an ingredient without a name" for one in actives(sheet))
        row.fault("ingredient", repr(row.cells["ingredient"]), f"what is in {sheet.key} by its sheet: {inside}")
        return None
    return _Named(named.key, named.form, active)


def _ingredient(said: str) -> _Named:
    """Read an ingredient, or a salt or ester of it, which counts as its acid."""
    try:
        return _Named(find_ingredient(said).key)
    except NotFound as unknown:
        try:
            form = find_form(said)
        except NotFound:
            raise unknown from None
        return _Named(form.ingredient, form)


def _key(active: Active) -> str | None:
    try:
        return _ingredient(active.common_name).key if active.common_name else None
    except NotFound:
        return active.common_name


def _put(row: Row, named: _Named | None, sheet: Sheet | None) -> _Put | None:
    """Return what was put on; None when it cannot be read, which the row's faults say."""
    amount, strength = row.read("amount of product", _amount), row.read("strength", _strength)
    if amount is None or named is None:
        return None
    own = acid_in_product(named.active, named.key, load()) if named.active else None
    if amount.kind is Kind.MASS:
        acid_g, known = _acid(amount.amount, amount.of, named)
        alike = own is not None and own[1] == known
        return _Put(acid_g, known, acid_g / own[0] if own is not None and alike else None)
    litres = amount.amount / _ML_IN_L
    if strength is not None:
        return _Put(*_acid(litres * strength.amount, strength.of, named), litres)
    if own is not None and not row.cells.get("strength"):
        return _Put(litres * own[0], own[1], litres)
    if not row.cells.get("strength"):
        row.fault("strength", "nothing", f"the strength of a product given by volume, such as {COLUMNS[5].example}")
    return None


def _acid(grams: float, of: str, named: _Named) -> tuple[float, bool]:
    """Return so much acid [g] and True; the active ingredient as it is and False where its acid is not known."""
    if of == "ae":
        return grams, True
    share = acid_share(named.active, named.key, load(), named.form)
    return (grams, False) if share is None else (grams * share, True)


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
