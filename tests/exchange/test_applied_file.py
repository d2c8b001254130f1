"""applied.csv: what was put on the ground, in grams of acid or active."""

from datetime import date

import pytest

from rootcollar.exchange.applied_file import read_applied
from rootcollar.kernel.errors import BadInput

HEAD = "date,unit,product,ingredient,amount of product,strength,area\n"


def _read(row: str):
    return read_applied(HEAD + row, "applied.csv", {"bench": "The bench"})[0]


def test_a_volume_of_product_counts_by_its_strength():
    """32 fl oz is a quarter gallon, so of 4 lb ae/gal it holds 1 lb ae."""
    (one,) = _read("2026-05-20,bench,ester,Triclopyr,32 fl oz,4 lb ae/gal,0.4 ac\n")
    assert (one.on, one.unit, one.ingredient, one.product) == (date(2026, 5, 20), "bench", "triclopyr", "ester")
    assert one.ae_g == pytest.approx(453.59237)
    assert one.area_m2 == pytest.approx(1618.74, rel=1e-5)


def test_a_weight_of_acid_counts_as_it_is():
    (one,) = _read("2026-05-20,bench,,triclopyr,0.5 lb ae,,0.4 ac\n")
    assert one.ae_g == pytest.approx(226.796, rel=1e-5)


def test_a_header_alone_says_nothing_was_applied():
    assert _read("") == ()


@pytest.mark.parametrize(
    ("row", "column", "word"),
    [
        ("20.5.2026,bench,,triclopyr,1 qt,4 lb ae/gal,0.4 ac", "date", "YYYY-MM-DD"),
        ("2026-02-30,bench,,triclopyr,1 qt,4 lb ae/gal,0.4 ac", "date", "calendar"),
        ("2026-05-20,bensh,,triclopyr,1 qt,4 lb ae/gal,0.4 ac", "unit", "bench"),
        ("2026-05-20,bench,,triclopir,1 qt,4 lb ae/gal,0.4 ac", "ingredient", "triclopyr"),
        ("2026-05-20,bench,,triclopyr,32 oz,4 lb ae/gal,0.4 ac", "amount of product", "fl oz"),
        ("2026-05-20,bench,,triclopyr,2 lb,,0.4 ac", "amount of product", "lb ae"),
        ("2026-05-20,bench,,triclopyr,1 qt,,0.4 ac", "strength", "lb ae/gal"),
        ("2026-05-20,bench,,triclopyr,1 qt,4 lb/gal,0.4 ac", "strength", "ae or ai"),
        ("2026-05-20,bench,,triclopyr,1 qt,4 lb ae/gal,0 ac", "area", "above 0"),
        ("2026-05-20,bench,,triclopyr,1 qt,4 lb ae/gal,", "area", "0.4 ac"),
    ],
)
def test_what_cannot_be_counted_is_refused_by_row_and_column(row, column, word):
    with pytest.raises(BadInput) as caught:
        _read(row + "\n")
    (fault,) = caught.value.faults
    assert (fault.file, fault.row, fault.field) == ("applied.csv", "row 2", column)
    assert word in fault.allowed


STEMS = HEAD.strip() + ",species,method,diameter,stems,down\n"
PUT = "2026-05-20,bench,ester,triclopyr,32 fl oz,4 lb ae/gal,0.4 ac"


def _stems(said: str):
    return read_applied(STEMS + said + "\n", "applied.csv", {"bench": "The bench"})[0]


def test_a_row_may_say_which_stems_were_treated_and_how():
    (one,) = _stems(f"{PUT},white mulberry,Hack-and-squirt,6-10 in,12,2027-05-01")
    assert (one.species, one.method, one.stems, one.down) == ("moal", "hack_squirt", 12, date(2027, 5, 1))
    assert one.diameter_cm == pytest.approx((15.24, 25.4))


def test_what_a_row_does_not_say_of_its_stems_is_not_known():
    for one in (*_stems(f"{PUT},,,,,"), *_read(PUT + "\n")):
        assert (one.species, one.method, one.diameter_cm, one.stems, one.down) == ("", "", None, None, None)


def test_one_size_is_a_size_too():
    (one,) = _stems(f"{PUT},,,8 in,,")
    assert one.diameter_cm == pytest.approx((20.32, 20.32))


def test_work_by_hand_puts_nothing_on():
    (one,) = _stems("2026-05-20,bench,,none,none,,0.4 ac,white mulberry,girdle,6-10 in,3,")
    assert (one.ingredient, one.ae_g, one.method, one.stems) == ("", 0.0, "girdle", 3)


@pytest.mark.parametrize(
    ("row", "column", "word"),
    [
        (f"{PUT},white mulbery tree of doom,,,,", "species", ""),
        (f"{PUT},,hacking,,,", "method", "hack and squirt"),
        (f"{PUT},,,10-6 in,,", "diameter", "smaller end first"),
        (f"{PUT},,,6-10,,", "diameter", "in"),
        (f"{PUT},,,0 in,,", "diameter", "above 0"),
        (f"{PUT},,,6-400 in,,", "diameter", "300 cm"),
        (f"{PUT},,,,0,", "stems", "whole number"),
        (f"{PUT},,,,2.5,", "stems", "whole number"),
        (f"{PUT},,,,,2026-05-19", "down", "on or after 2026-05-20"),
        (f"{PUT},,,,,yes", "down", "YYYY-MM-DD"),
        ("2026-05-20,bench,,none,none,,0.4 ac,,hack and squirt,,,", "method", "girdle"),
        ("2026-05-20,bench,,none,none,,0.4 ac,,,,,", "method", "girdle"),
        ("2026-05-20,bench,,none,1 qt,,0.4 ac,,girdle,,,", "ingredient", "amount"),
        ("2026-05-20,bench,ester,none,none,,0.4 ac,,girdle,,,", "ingredient", "no product"),
    ],
)
def test_what_is_said_of_stems_is_refused_by_row_and_column(row, column, word):
    with pytest.raises(BadInput) as caught:
        _stems(row)
    (fault,) = caught.value.faults
    assert (fault.file, fault.row, fault.field) == ("applied.csv", "row 2", column)
    assert word in fault.allowed
