"""A tally is read whole, or refused with every fault by row and column."""

import pytest

from rootcollar.exchange.tally_file import read_tally
from rootcollar.kernel.errors import BadInput

UNITS = {"bench": "The bench", "brook-edge": "Brook edge"}
HEAD = "unit,species,diameter class,count,low,high,measured at,crown,height,fruiting,note\n"


def _rows(text: str):
    return read_tally(text, "tally.csv", UNITS)[0]


def _faults(text: str) -> list[tuple[str, str, str, str]]:
    with pytest.raises(BadInput) as caught:
        _rows(text)
    assert all(fault.file == "tally.csv" and fault.allowed for fault in caught.value.faults)
    return [(fault.row, fault.field, fault.found, fault.allowed) for fault in caught.value.faults]


def test_a_full_row_is_read_in_our_units():
    (row,) = _rows(HEAD + "bench,common buckthorn,1-2 in,120,80,150,breast height,4 ft,6 ft,yes,by the fence\n")
    assert (row.unit, row.species, row.count, row.low, row.high) == ("bench", "rhca3", 120, 80, 150)
    assert row.band_cm == pytest.approx((2.54, 5.08))
    assert (row.crown_m, row.height_m) == pytest.approx((1.2192, 1.8288))
    assert (row.measured_at, row.fruiting) == ("breast height", True)


def test_a_row_of_the_needed_columns_leaves_the_rest_unknown():
    (row,) = _rows("unit,species,diameter class,count\nbench,rhca3,2.5–5 cm,7\n")
    assert row.band_cm == pytest.approx((2.5, 5))
    assert (row.low, row.high, row.measured_at, row.crown_m, row.height_m, row.fruiting) == (None,) * 6


def test_a_thicket_has_a_name_and_what_is_to_stay_in_it_is_unknown_until_somebody_looked():
    head = "unit,species,diameter class,count,thicket,keep inside\n"
    said = [",", "Hedge,", "hedge,none", "hedge,spicebush; elder"]
    rows = _rows(head + "".join(f"bench,rhca3,{at}-{at + 1} in,7,{one}\n" for at, one in enumerate(said, 1)))
    assert [(row.thicket, row.keep_inside) for row in rows] == [
        ("", None), ("hedge", None), ("hedge", ""), ("hedge", "spicebush; elder"),
    ]  # fmt: skip
    ((row, field, found, _),) = _faults(head + "bench,rhca3,1-2 in,7,,spicebush\n")
    assert (row, field, found) == ("row 2", "keep inside", "'spicebush'")


@pytest.mark.parametrize(
    "text",
    [
        "\ufeffunit,species,diameter class,count\r\nbench,Rhamnus cathartica,1-2 in,7\r\n".removeprefix("\ufeff"),
        " Unit ,SPECIES,Diameter  Class,Count\n\n  The Bench , Common Buckthorn , 1 to 2 in , 7  \n\n,,,\n",
        "count;diameter_class;species;unit\n7;1-2 in;RHCA3;BENCH\n",
        "unit\tspecies\tdiameterclass\tcount\nbench\trhca3\t1-2 inches\t7 stems\n",
        'unit,species,diameter class,count,note,\n"bench","rhca3","1-2 in","7","one, two",\n',
    ],
)
def test_the_ways_of_spreadsheets_are_read_alike(text):
    (row,) = _rows(text)
    assert (row.unit, row.species, row.count) == ("bench", "rhca3", 7)
    assert row.band_cm == pytest.approx((2.54, 5.08))


def test_semicolons_are_read_and_said():
    text = "unit;species;diameter class;count\nbench;rhca3;1-2 in;7\n"
    assert read_tally(text, "tally.csv", UNITS)[1] == ("tally.csv: read with semicolons between the columns",)
    assert read_tally(text.replace(";", ","), "tally.csv", UNITS)[1] == ()


def test_every_fault_of_every_row_is_told_at_once_with_row_and_column():
    found = _faults(
        HEAD + "bensh,common buckthron,1-2 in,120,,,,,,,\n"
        "\n"
        "bench,common buckthorn,2-4,12.5,,,shoulder,4,tall,maybe,\n"
        "bench,,6+ in,-3,,,,,,,\n"
    )
    assert {(row, column) for row, column, _, _ in found} == {
        ("row 2", "unit"), ("row 2", "species"), ("row 4", "diameter class"), ("row 4", "count"),
        ("row 4", "measured at"), ("row 4", "crown"), ("row 4", "height"), ("row 4", "fruiting"),
        ("row 5", "species"), ("row 5", "diameter class"), ("row 5", "count"),
    }  # fmt: skip
    said = {(row, column): (what, allowed) for row, column, what, allowed in found}
    assert said["row 2", "unit"] == ("'bensh'", "a unit of ground.toml: bench, brook-edge")
    assert "common buckthorn" in said["row 2", "species"][1]
    assert "both ends" in said["row 5", "diameter class"][1]
    assert said["row 5", "species"][0] == "nothing"


@pytest.mark.parametrize(
    ("cells", "column", "word"),
    [
        ("1-2 in,10,12,", "low", "at most the count"),
        ("1-2 in,10,,8", "high", "at least the count"),
        ("2-1 in,10,,", "diameter class", "smaller end first"),
        ("1-2 oz,10,,", "diameter class", "oz"),
        ("over 6 in,10,,", "diameter class", "both ends"),
        ("1-2 km,10,,", "diameter class", "at most"),
        ("1-1.01 cm,10,,", "diameter class", "1 mm"),
        ('"1,5-2,5 cm",10,,', "diameter class", ""),
        ("1-2 in,99999999,,", "count", "whole number"),
        ("1-2 in,ten,,", "count", "number"),
    ],
)
def test_what_cannot_be_counted_with_is_refused(cells, column, word):
    ((row, field, _, allowed),) = _faults(f"unit,species,diameter class,count,low,high\nbench,rhca3,{cells}\n")
    assert (row, field) == ("row 2", column)
    assert word in allowed


def test_inches_and_centimetres_in_one_file_are_refused_at_the_first_that_differs():
    text = "unit,species,diameter class,count\nbench,rhca3,1-2 in,7\nbench,rhca3,10-20 cm,7\nbench,moal,1-2 ft,7\n"
    ((row, column, found, allowed),) = _faults(text)
    assert (row, column, found) == ("row 3", "diameter class", "'10-20 cm'")
    assert "inches" in allowed and "row 2" in allowed


def test_the_same_stems_are_not_counted_twice():
    text = (
        "unit,species,diameter class,count\nbench,rhca3,1-10 in,7\nbench,rhca3,2-3 in,7\nbench,rhca3,4-5 in,7\n"
        "bench,rhca3,4-5 in,7\nbench,moal,1-2 in,7\nbrook-edge,rhca3,2-3 in,7\nbench,moal,2-4 in,7\n"
    )
    found = _faults(text)
    assert [(row, column) for row, column, _, _ in found] == [(f"row {n}", "diameter class") for n in (3, 4, 5)]
    assert all("row 2" in allowed for *_, allowed in found)


def test_a_row_typed_twice_is_refused_and_names_the_first():
    ((row, _, _, allowed),) = _faults(
        "unit,species,diameter class,count\nbench,rhca3,1-2 in,7\nThe bench,RHCA3,1-2 in,9\n"
    )
    assert row == "row 3"
    assert "one row" in allowed and "row 2" in allowed


def test_classes_that_meet_do_not_overlap():
    classes = ("0-0.5 in", "0.5-1 in", "1-2 in", "2-4 in", "4-6 in", "6-10 in")
    text = "unit,species,diameter class,count\n" + "".join(f"bench,rhca3,{one},7\n" for one in classes)
    assert len(_rows(text)) == len(classes)


@pytest.mark.parametrize(
    ("text", "found", "allowed"),
    [
        ("", "an empty file", "diameter class"),
        ("\n , \n", "an empty file", "diameter class"),
        ("unit,species,count\nbench,rhca3,7\n", "no column diameter class", "diameter class"),
        ("unit,species,diameter class,count,hight\nb,r,1-2 in,7,\n", "'hight'", "height"),
        ("unit,species,diameter class,count,Count\nb,r,1-2 in,7,7\n", "count twice", "once"),
        ('unit,species,diameter class,count\n"bench,rhca3,1-2 in,7\n', "taken apart", "quotes"),
        ("unit,species,diameter class,count\nbench,rhca3,1-2 in,1,200\n", "5 cells", "4"),
    ],
)
def test_a_table_that_is_none_is_refused_in_words(text, found, allowed):
    faults = _faults(text)
    assert any(found in what and allowed in can for _, _, what, can in faults), faults


def test_a_header_alone_is_a_count_not_begun():
    assert read_tally(HEAD, "tally.csv", None) == ((), ())


def test_without_a_ground_no_unit_is_called_wrong():
    rows, _ = read_tally("unit,species,diameter class,count\nnowhere,rhca3,1-2 in,7\n", "tally.csv", None)
    assert rows[0].unit == "nowhere"
