"""A tally typed in a page is written so that what is read back is what was typed; another's change is never lost."""

from __future__ import annotations

import csv
import io
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.exchange import Changed, keep_tally, new_folder, read_folder, tally_as_typed, tally_cells, write_demo
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.exchange.tally_file import COLUMNS
from rootcollar.kernel.errors import BadInput
from tests import draws

NAMES = [one.name for one in COLUMNS]
UNITS = {"unit-1": "Unit 1"}

any_text = st.text(st.characters(exclude_categories=["Cc", "Cs"]), max_size=30)
sizes = st.lists(st.integers(1, 40), min_size=0, max_size=8, unique=True)


def row(size: int = 1, note: str = "", **other: str) -> dict[str, str]:
    """Return a row without fault."""
    return {
        "unit": "unit-1", "species": "common buckthorn", "diameter class": f"{size}-{size + 1} in", "count": "7",
        "note": note, **other,
    }  # fmt: skip


@pytest.fixture
def woods(tmp_path: Path) -> Path:
    """A new property of one unit, nothing counted."""
    new_folder(tmp_path / "mine")
    return tmp_path / "mine"


def written(folder: Path) -> list[list[str]]:
    """Return tally.csv as any other program reads it."""
    text = (folder / "tally.csv").read_bytes().decode("utf-8-sig")
    return list(csv.reader(io.StringIO(text, newline="")))


@settings(max_examples=draws.of(60))
@given(sizes, st.data())
def test_what_is_read_back_is_what_was_typed(sizes: list[int], data: st.DataObject) -> None:
    rows = [row(size, data.draw(any_text)) for size in sizes]
    with TemporaryDirectory() as place:
        folder = Path(place) / "mine"
        new_folder(folder)
        keep_tally(folder, tally_as_typed(rows, tally_cells(folder).stamp, UNITS))
        back = tally_cells(folder)
        assert [(one["diameter class"], one["note"]) for one in back.rows] == [
            (one["diameter class"], one["note"].strip()) for one in rows
        ]
        assert back.faults == {}
        assert [dict(zip(NAMES, one, strict=True)) for one in written(folder)[1:]] == list(back.rows)


@given(st.lists(st.fixed_dictionaries(dict.fromkeys(NAMES, any_text)), max_size=6))
def test_whatever_is_typed_is_kept_to_be_shown_again_and_no_fault_is_without_its_cell(
    rows: list[dict[str, str]],
) -> None:
    typed = tally_as_typed(rows, "", UNITS)
    bare = [{name: cell.strip() for name, cell in one.items()} for one in rows]
    assert list(typed.rows) == [one for one in bare if any(one.values())]
    assert all(at < len(typed.rows) and name in NAMES for at, name in typed.faults)


def test_an_emptied_row_is_dropped_and_the_rest_reads_as_before(tmp_path: Path) -> None:
    folder = tmp_path / "hobbin-wood"
    write_demo(folder, DEMO_DAY)
    shown = tally_cells(folder)
    before = {one.key for one in read_folder(folder).stands}
    emptied = [dict.fromkeys(NAMES, " "), *shown.rows[1:]]
    keep_tally(folder, tally_as_typed(emptied, shown.stamp, shown.units))
    assert before - {one.key for one in read_folder(folder).stands} == {"bench/rhca3/0.3-1.3cm"}


def test_the_demo_saved_as_it_was_shown_does_not_change_a_byte(tmp_path: Path) -> None:
    folder = tmp_path / "hobbin-wood"
    write_demo(folder, DEMO_DAY)
    before = (folder / "tally.csv").read_bytes()
    keep_tally(folder, tally_cells(folder))
    assert (folder / "tally.csv").read_bytes() == before


def test_columns_separator_line_ends_and_mark_stay_and_a_column_comes_only_when_something_stands_in_it(
    woods: Path,
) -> None:
    file = woods / "tally.csv"
    file.write_bytes("\ufeffcount;diameter class;species;unit\r\n7;1-2 in;rhca3;unit-1\r\n".encode())
    shown = tally_cells(woods)
    keep_tally(woods, tally_as_typed([*shown.rows, row(2)], shown.stamp, shown.units))
    said = file.read_bytes().decode()
    assert said == (
        "\ufeffcount;diameter class;species;unit\r\n7;1-2 in;rhca3;unit-1\r\n7;2-3 in;common buckthorn;unit-1\r\n"
    )
    shown = tally_cells(woods)
    keep_tally(woods, tally_as_typed([*shown.rows, row(4, "a; b")], shown.stamp, shown.units))
    assert file.read_bytes().decode().splitlines()[0] == "\ufeffcount;diameter class;species;unit;note"
    assert tally_cells(woods).rows[-1]["note"] == "a; b"


def test_a_file_changed_meanwhile_is_not_written_over(woods: Path) -> None:
    shown = tally_cells(woods)
    other = tally_as_typed([row(1, "theirs")], shown.stamp, shown.units)
    mine = tally_as_typed([row(2, "mine")], shown.stamp, shown.units)
    keep_tally(woods, other)
    with pytest.raises(Changed):
        keep_tally(woods, mine)
    assert [one["note"] for one in tally_cells(woods).rows] == ["theirs"]


def test_a_file_taken_away_meanwhile_is_a_change_and_a_missing_one_is_made(woods: Path) -> None:
    shown = tally_cells(woods)
    (woods / "tally.csv").unlink()
    with pytest.raises(Changed):
        keep_tally(woods, shown)
    keep_tally(woods, tally_as_typed([row()], tally_cells(woods).stamp, shown.units))
    assert written(woods)[0] == NAMES


def test_faults_are_told_by_row_and_column_and_nothing_is_written(woods: Path) -> None:
    before = (woods / "tally.csv").read_bytes()
    rows = [row(1), {}, row(2, unit="unit-2", count="12.5"), row(3, "two\nlines")]
    typed = tally_as_typed(rows[:3], tally_cells(woods).stamp, UNITS)
    assert set(typed.faults) == {(1, "unit"), (1, "count")}
    assert "unit-1" in typed.faults[1, "unit"][0].allowed
    assert set(tally_as_typed(rows, "", UNITS).faults) == {(2, "note")}
    with pytest.raises(BadInput):
        keep_tally(woods, typed)
    assert (woods / "tally.csv").read_bytes() == before


def test_a_faulty_file_is_shown_cell_by_cell_so_that_it_can_be_mended(woods: Path) -> None:
    (woods / "tally.csv").write_text('unit,species,diameter class,count,note\nunit-1,oak,1-2 in,7,"a\nb"\n', "utf-8")
    shown = tally_cells(woods)
    assert set(shown.faults) == {(0, "species")}
    assert shown.rows[0]["note"] == "a b"


@pytest.mark.parametrize(
    "text",
    ["unit,species,diameter class,count,colour\n", "unit,species,diameter class,count\nunit-1,rhca3,1-2 in,1,2\n"],
)
def test_what_would_be_lost_unseen_is_refused(text: str, woods: Path) -> None:
    (woods / "tally.csv").write_text(text, "utf-8")
    with pytest.raises(BadInput):
        tally_cells(woods)
