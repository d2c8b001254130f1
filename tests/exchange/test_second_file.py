"""A second reading is a file of its own beside the sheet, by another person, and is read with the folder."""

import shutil
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from rootcollar.exchange import keep_second, read_folder, read_sheet, write_demo
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.kernel.errors import BadInput
from rootcollar.shelf import Second, asked_again, twice

KEY = "glyphosate-3-sl"
OTHER = "Elspeth Tarn"


@pytest.fixture
def woods(tmp_path: Path) -> Path:
    folder = tmp_path / "wood"
    write_demo(folder, DEMO_DAY)
    return folder


def second(woods: Path, by: str = OTHER) -> Second:
    sheet = read_folder(woods).shelf[KEY]
    return Second(by, date(2026, 3, 2), {one.ask: one.first for one in asked_again(sheet)})


def test_it_is_kept_beside_the_sheet_and_read_with_it(woods: Path) -> None:
    before = sorted(read_folder(woods).shelf)
    keep_second(woods, read_folder(woods).shelf[KEY], second(woods))
    after = read_folder(woods)
    assert sorted(after.shelf) == before and after.ground.notes == ()
    assert twice(after.shelf[KEY]).agrees
    assert twice(read_sheet(woods / "shelf" / f"{KEY}.toml")[0]).agrees


def test_the_first_reader_cannot_be_the_second(woods: Path) -> None:
    with pytest.raises(BadInput) as wrong:
        keep_second(woods, read_folder(woods).shelf[KEY], second(woods, by="ottoline fernwick (INVENTED) "))
    assert wrong.value.faults[0].field == "read_by"
    assert not (woods / "shelf" / f"{KEY}.second.toml").exists()


def test_a_sheet_copied_over_it_is_no_second_reading(woods: Path) -> None:
    shutil.copy(woods / "shelf" / f"{KEY}.toml", woods / "shelf" / f"{KEY}.second.toml")
    with pytest.raises(BadInput, match=r"second\.toml"):
        read_folder(woods)


def test_a_second_reading_copied_over_the_sheet_is_no_sheet(woods: Path) -> None:
    keep_second(woods, read_folder(woods).shelf[KEY], second(woods))
    shutil.copy(woods / "shelf" / f"{KEY}.second.toml", woods / "shelf" / f"{KEY}.toml")
    with pytest.raises(BadInput):
        read_folder(woods)


def test_only_what_is_asked_is_kept(woods: Path) -> None:
    told = second(woods)
    keep_second(woods, read_folder(woods).shelf[KEY], replace(told, lines={**told.lines, "proof.read_by": "me"}))
    assert "proof.read_by" not in (woods / "shelf" / f"{KEY}.second.toml").read_text(encoding="utf-8")
