"""A sheet is written whole: what was typed stands in it, comments and every other line stay, and nothing else."""

import tomllib
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.exchange import Changed, keep_sheet, new_key, read_folder, sheet_as_typed, sheet_changed, write_demo
from rootcollar.exchange.sheet_toml import edited
from rootcollar.exchange.sheet_write import TypedSheet
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.shelf import Sheet, template

KEY = "triclopyr-ester-4-ec"
NEW = TypedSheet("new", "", "", {}, Sheet("new", {}))


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> TypedSheet:
    folder = tmp_path_factory.mktemp("demo") / "wood"
    write_demo(folder, DEMO_DAY)
    return sheet_as_typed(folder, KEY)


@pytest.fixture
def woods(tmp_path: Path) -> Path:
    folder = tmp_path / "wood"
    write_demo(folder, DEMO_DAY)
    return folder


def changed_lines(before: str, after: str) -> set[str]:
    return set(after.splitlines()) ^ set(before.splitlines())


def test_one_line_changes_and_all_else_stays_to_the_byte(kept: TypedSheet) -> None:
    made = sheet_changed(kept, {"entry.rei_hours": "24", "hazard.signal_word": "CAUTION"})
    assert changed_lines(kept.text, made.text) == {"rei_hours = 12", "rei_hours = 24"}
    assert made.sheet.says("entry.rei_hours") == 24


def test_a_line_goes_back_to_not_read(kept: TypedSheet) -> None:
    made = sheet_changed(kept, {"entry.rei_hours": ""})
    assert changed_lines(kept.text, made.text) == {"rei_hours = 12"}
    assert made.sheet.line("entry.rei_hours") is None


def test_a_block_said_to_be_silent_opens_when_one_of_its_lines_is_typed(kept: TypedSheet) -> None:
    made = sheet_changed(kept, {"method.foliar.stem_diameter_in.high": "3"})
    assert made.cells["method.foliar.stem_diameter_in.low"] == "silent"
    assert made.cells["method.foliar.stem_diameter_in.high"] == "3"


def test_rows_and_blocks_come_and_go(kept: TypedSheet) -> None:
    made = sheet_changed(kept, {"ingredient.2.common_name": "another", "method.wipe.carrier": "water"})
    assert made.cells["ingredient.2.common_name"] == "another" and made.sheet.methods.keys() >= {"wipe"}
    gone = sheet_changed(made, {one: "" for one in made.cells if one.startswith(("ingredient.1.", "method.wipe."))})
    assert gone.cells["ingredient.1.common_name"] == "another"
    assert "ingredient.2.common_name" not in gone.cells


def test_pages_are_kept_by_block(kept: TypedSheet) -> None:
    made = sheet_changed(kept, {"hazard.first_aid.page": "2, left", "method.foliar.page": "9", "site.1.page": "4"})
    line = made.sheet.line("hazard.first_aid.skin")
    assert line is not None and line.page == "2, left"
    assert made.sheet.methods["foliar"]["carrier"].page == "9"


def test_a_whole_sheet_typed_anew_says_the_same(kept: TypedSheet) -> None:
    made = sheet_changed(NEW, kept.cells)
    assert made.cells == kept.cells
    assert "\n[hazard.first_aid]" in made.text and "\n\n[[site]]" in made.text


@settings(max_examples=40)
@given(st.data())
def test_any_lines_taken_away_and_typed_again_give_the_sheet_back(kept: TypedSheet, data: st.DataObject) -> None:
    some = data.draw(st.sets(st.sampled_from(sorted(one for one in kept.cells if one[:5] not in ("ingre", "site.")))))
    less = sheet_changed(kept, dict.fromkeys(some, ""))
    assert less.cells == {one: said for one, said in kept.cells.items() if one not in some}
    again = sheet_changed(less, {one: kept.cells[one] for one in some})
    assert again.cells == kept.cells


def test_typing_goes_into_a_copied_template_beside_its_comments() -> None:
    made = edited(template(), {"identity.lot": "A 17", "method.foliar.carrier": ["water"]})
    assert made is not None
    assert set(template().splitlines()) <= set(made.splitlines())
    assert tomllib.loads(made)["identity"]["lot"] == "A 17"


@pytest.mark.parametrize(
    ("typed", "field", "allowed"),
    [
        ({"weather.wind_mph.low": "12"}, "weather.wind_mph.low", "at most the high of 10"),
        ({"method.foliar.concentration.low": "50"}, "method.foliar.concentration.low", "at most the high"),
        ({"entry.rei_hours": "some"}, "entry.rei_hours", "a number in h"),
        ({"ingredient.1.ai_percent": "616"}, "ingredient.1.ai_percent", "a percent"),
    ],
)
def test_a_fault_names_its_line(kept: TypedSheet, typed: dict[str, str], field: str, allowed: str) -> None:
    with pytest.raises(BadInput) as wrong:
        sheet_changed(kept, typed)
    assert [fault.field for fault in wrong.value.faults] == [field]
    assert allowed in wrong.value.faults[0].allowed


def test_every_fault_is_told_at_once(kept: TypedSheet) -> None:
    with pytest.raises(BadInput) as wrong:
        sheet_changed(kept, {"entry.rei_hours": "some", "proof.read_on": "soon"})
    assert {fault.field for fault in wrong.value.faults} == {"entry.rei_hours", "proof.read_on"}


def test_what_was_kept_is_read_by_the_folder(woods: Path) -> None:
    typed = sheet_as_typed(woods, "my-jug", new=True)
    made = keep_sheet(woods, sheet_changed(typed, {"identity.product_name": "My jug", "proof.read_on": "2026-02-14"}))
    assert read_folder(woods).shelf["my-jug"].product == "My jug"
    assert sheet_as_typed(woods, "my-jug").stamp == made.stamp
    assert made.sheet.says("proof.read_on") == date(2026, 2, 14)


def test_a_file_changed_meanwhile_is_not_written_over(woods: Path) -> None:
    typed = sheet_as_typed(woods, KEY)
    path = woods / "shelf" / f"{KEY}.toml"
    path.write_text(path.read_text(encoding="utf-8") + "# a remark\n", encoding="utf-8")
    before = path.read_bytes()
    with pytest.raises(Changed):
        keep_sheet(woods, sheet_changed(typed, {"entry.rei_hours": "24"}))
    assert path.read_bytes() == before


@pytest.mark.parametrize("key", ["../ground", "a b", "x-template", "", "x.second"])
def test_a_key_that_no_sheet_can_have_is_refused(woods: Path, key: str) -> None:
    with pytest.raises(BadInput):
        sheet_as_typed(woods, key, new=True)
    with pytest.raises(NotFound):
        sheet_as_typed(woods, key)


def test_a_new_sheet_gets_a_free_name(woods: Path) -> None:
    assert new_key(woods, "Triclopyr Ester 4 EC!") == "triclopyr-ester-4-ec-2"
    assert new_key(woods, "Vine-ex  (25b)") == "vine-ex-25b"
    with pytest.raises(BadInput):
        new_key(woods, " ?! ")
