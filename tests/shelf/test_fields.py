"""The one table of lines: whole, told in words, with directions that fit their kinds."""

import pytest

from rootcollar.kernel.units import convert
from rootcollar.shelf import FIELDS, METHODS, Field, fields_of
from tests.shelf.sample import sample_table

DIRECTIONS = {
    "number": {"lower", "higher", "none"},
    "count": {"lower", "higher", "none"},
    "percent": {"lower", "higher", "none"},
    "date": {"lower", "none"},
    "text": {"none"},
    "texts": {"fewer", "more", "none"},
    "states": {"fewer"},
    "choices": {"fewer", "more"},
    "distances": {"more"},
    "tables": {"fewer", "none"},
    "flag": {"true", "false", "none"},
    "choice": {"first", "none"},
}


@pytest.mark.parametrize("row", FIELDS.values(), ids=lambda row: row.path)
def test_every_line_has_words_and_a_direction_that_fits_its_kind(row: Field) -> None:
    assert row.words and "\n" not in row.words
    assert row.stricter in DIRECTIONS[row.kind]
    assert bool(row.among) == (row.kind in {"choice", "choices"})
    assert set(row.methods) <= set(METHODS)


def test_the_units_of_amounts_and_rates_can_be_counted_with() -> None:
    for unit in FIELDS["limits.per_year.unit"].among:
        to = "kg/ha" if unit.split("/")[0] in {"lb", "oz wt", "kg", "g"} else "L/ha"
        assert convert(1, unit, to) > 0
    for unit in FIELDS["method.dose.unit"].among:
        assert convert(1, unit, "mL") > 0


def leaves(table: dict[str, object], path: str = "") -> set[str]:
    """Return the paths of all values in nested tables."""
    found = set()
    for name, value in table.items():
        at = f"{path}.{name}" if path else name
        found |= leaves(value, at) if isinstance(value, dict) else {at}
    return found


def test_the_sample_and_the_table_hold_the_same_lines() -> None:
    table = sample_table()
    del table["sheet"]
    said = set()
    for name in ("ingredient", "site", "method"):
        for block in table.pop(name):
            block.pop("kind", None)
            said |= leaves(block, name) | {name}
    said |= leaves(table)
    never_in_the_sample = {"method"}
    assert said - {"method"} == set(FIELDS) - never_in_the_sample


def test_a_block_of_directions_holds_only_what_its_method_can_have() -> None:
    assert "max_target_height_ft" in fields_of("foliar")
    assert "max_target_height_ft" not in fields_of("hack_squirt")
    assert "dose.amount" in fields_of("hack_squirt")
    assert "dose.amount" not in fields_of("foliar")
