"""stock.csv: one row a container, with what is left in it and its last day of use."""

from datetime import date
from pathlib import Path

import pytest

from rootcollar.exchange import new_folder, read_folder
from rootcollar.exchange.stock_file import read_stock
from rootcollar.kernel.errors import BadInput

HEAD = "what,lot,holds,left,opened,not after,note\n"
GAL = 3785.411784


def _read(row: str):
    return read_stock(HEAD + row, "stock.csv", ["ester-4", "salt-3"])[0]


def test_a_row_is_a_lot():
    (one,) = _read("Ester-4,A1,2.5 gal,1 1/2 gal,2026-05-20,2028-03-31,steel locker\n")
    assert (one.what, one.lot, one.note) == ("ester-4", "A1", "steel locker")
    assert (one.holds_ml, one.left_ml) == (pytest.approx(2.5 * GAL), pytest.approx(1.5 * GAL))
    assert (one.opened, one.not_after) == (date(2026, 5, 20), date(2028, 3, 31))


def test_what_is_not_written_down_is_not_known():
    (one,) = _read("basal oil,,,2 gal,no,,\n")
    assert (one.what, one.holds_ml, one.opened, one.not_after) == ("basal oil", None, None, None)


def test_an_empty_container_holds_nothing():
    assert _read("surfactant,,1 qt,none,,,\n")[0].left_ml == 0


@pytest.mark.parametrize(
    ("row", "column", "word"),
    [
        ("estor-4,,,1 gal,,,", "what", "ester-4, salt-3"),
        ("dye,,,1 qt,,,", "what", "oil dye or water dye"),
        ("ester-4,,,,,,", "left", "1.5 gal"),
        ("ester-4,,,32 oz,,,", "left", "fl oz"),
        ("ester-4,,,2 lb,,,", "left", "a volume"),
        ("ester-4,,,1,,,", "left", "no unit"),
        ("ester-4,,,-1 gal,,,", "left", "0 or more"),
        ("ester-4,,1 gal,2 gal,,,", "left", "one row for each container"),
        ("ester-4,,0 gal,1 gal,,,", "holds", "more than 0"),
        ("ester-4,,,1 gal,May,,", "opened", "YYYY-MM-DD"),
        ("ester-4,,,1 gal,,2028-03,", "not after", "YYYY-MM-DD"),
    ],
)
def test_what_cannot_be_counted_is_refused_by_row_and_column(row, column, word):
    with pytest.raises(BadInput) as caught:
        _read(row + "\n")
    assert {(one.file, one.row, one.field) for one in caught.value.faults} == {("stock.csv", "row 2", column)}
    assert any(word in one.allowed for one in caught.value.faults)


def test_a_folder_is_read_with_its_stock_and_without(tmp_path: Path):
    new_folder(tmp_path / "mine")
    (tmp_path / "mine/tally.csv").write_text("unit,species,diameter class,count\nunit-1,rhca3,1-2 in,40\n")
    assert read_folder(tmp_path / "mine").stock is None  # the header alone: nobody has looked
    (tmp_path / "mine/stock.csv").write_text("what,left\nbasal oil,2 gal\n")
    stock = read_folder(tmp_path / "mine").stock
    assert stock is not None and [one.what for one in stock.lots] == ["basal oil"]
    (tmp_path / "mine/stock.csv").unlink()
    assert read_folder(tmp_path / "mine").stock is None


def test_the_version_of_a_jugs_label_is_kept_where_somebody_wrote_it():
    rows, _ = read_stock(
        HEAD.replace("note\n", "note,Label Version\n") + "ester-4,A1,,1 gal,,,,2019-03\nsalt-3,,,1 gal,,,,\n",
        "stock.csv", ["ester-4", "salt-3"],
    )  # fmt: skip
    assert [one.label_version for one in rows] == ["2019-03", ""]
    assert _read("ester-4,A1,,1 gal,,,\n")[0].label_version == ""
