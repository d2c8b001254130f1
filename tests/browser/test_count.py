"""The tally in a real browser: typed by keyboard alone, on a phone, without scripts, never lost before it is saved."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from rootcollar.web.serve import Served

pytestmark = pytest.mark.slow

NEW = ["ridge", "porcelainberry", "0.5-1 in", "12", "8", "20", "root collar", "", "", "no", "by the wall", "", ""]


def rows(woods: Path) -> list[list[str]]:
    """Return tally.csv as it stands."""
    with (woods / "tally.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def at(page: Page, row: int, column: int) -> bool:
    """Whether the keyboard is in a cell."""
    return bool(page.evaluate("name => document.activeElement.name === name", f"r{row}c{column}"))


def value(page: Page, name: str) -> str:
    """Return what stands in a cell."""
    return page.locator(f"#{name}").input_value()


def test_a_row_is_typed_and_saved_by_keyboard_alone(page: Page, served: Served, woods: Path) -> None:
    page.goto(f"{served.base}/count")
    page.locator("#r33c0").focus()
    for said in ["The ridge", *NEW[1:6], "root", *NEW[7:9], "no", *NEW[10:]]:
        page.keyboard.type(said)
        page.keyboard.press("Tab")
    page.locator("#r37c12").focus()
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Save the tally"
    page.keyboard.press("Enter")
    expect(page.get_by_text("Saved: 34 rows.")).to_be_visible()
    assert rows(woods)[-1] == NEW
    page.reload()
    expect(page.locator("#put-back")).to_be_empty()


def test_enter_and_arrows_go_from_cell_to_cell_and_a_row_is_added_at_the_end(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/count")
    page.locator("#r3c3").focus()
    for key, cell in [
        ("ArrowDown", (4, 3)), ("Enter", (5, 3)), ("Shift+Enter", (4, 3)), ("ArrowUp", (3, 3)),
        ("ArrowRight", (3, 4)), ("ArrowLeft", (3, 3)), ("ArrowLeft", (3, 2)), ("Tab", (3, 3)),
    ]:  # fmt: skip
        page.keyboard.press(key)
        assert at(page, *cell), (key, cell)
    page.locator("#r37c3").focus()
    page.keyboard.press("Enter")
    assert at(page, 38, 3)
    assert page.locator("#r38c3").get_attribute("aria-label") == "Count, row 40"
    assert value(page, "r38c1") == ""
    assert page.url == f"{served.base}/count"


def test_the_arrows_move_within_a_word_before_they_leave_the_cell(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/count")
    page.locator("#r0c10").click()
    page.keyboard.press("Home")
    page.keyboard.press("ArrowRight")
    assert at(page, 0, 10)
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowLeft")
    assert at(page, 0, 9)


def test_what_is_typed_outlives_a_reload_another_page_and_the_way_back(page: Page, served: Served, woods: Path) -> None:
    page.goto(f"{served.base}/count")
    page.locator("#r33c1").fill("half a name")
    page.locator("#r37c3").fill("7")
    page.locator("#r37c3").press("Enter")
    page.keyboard.type("8")
    page.reload()
    assert [value(page, name) for name in ("r33c1", "r37c3", "r38c3")] == ["half a name", "7", "8"]
    expect(page.locator("#put-back")).to_contain_text("is here again")
    page.goto(f"{served.base}/choose")
    page.go_back()
    page.wait_for_function("document.querySelector('#r38c3')?.value === '8'")
    assert len(rows(woods)) == 34
    page.get_by_role("button", name="Drop it").click()
    expect(page.locator("#r33c1")).to_have_value("")
    page.reload()
    assert value(page, "r33c1") == ""


def test_what_is_typed_is_kept_through_a_fault_and_gone_once_saved(page: Page, served: Served, woods: Path) -> None:
    page.goto(f"{served.base}/count")
    for column, said in enumerate(NEW):
        field = page.locator(f"#r33c{column}")
        if column in (0, 6, 9):
            field.select_option(said)
        else:
            field.fill("twelve" if column == 3 else said)
    page.get_by_role("button", name="Save the tally").click()
    expect(page.locator("#r33c3-fault")).to_contain_text("Wanted:")
    page.goto(f"{served.base}/count")
    assert value(page, "r33c3") == "twelve"
    page.locator("#r33c3").fill("12")
    page.get_by_role("button", name="Save the tally").click()
    expect(page.get_by_text("Saved: 34 rows.")).to_be_visible()
    page.wait_for_url(f"{served.base}/count")  # once the script has run, so that a reload does not say it again
    page.locator("#r34c10").fill("typed after")
    page.reload()
    assert value(page, "r34c10") == "typed after"
    assert rows(woods)[-1] == NEW


def test_typing_begun_before_another_saved_is_compared_and_not_lost(page: Page, served: Served, woods: Path) -> None:
    page.goto(f"{served.base}/count")
    page.locator("#r0c3").fill("899")
    file = woods / "tally.csv"
    file.write_text(file.read_text("utf-8").replace(",900,650,", ",901,650,"), "utf-8")
    page.reload()
    assert value(page, "r0c3") == "899"
    page.get_by_role("button", name="Save the tally").click()
    expect(page.get_by_role("heading", name="The tally was changed meanwhile")).to_be_visible()
    assert value(page, "r0c3") == "899"
    assert rows(woods)[1][3] == "901"
    page.get_by_role("link", name="drop yours").click()
    expect(page.locator("#r0c3")).to_have_value("901")


def test_more_rows_come_at_once(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/count")
    page.locator("#r33c1").fill("kept")
    page.get_by_role("button", name="More rows").click()
    expect(page.locator(".grid tbody tr")).to_have_count(43)
    expect(page.locator("#r38c0")).to_be_focused()
    assert value(page, "r33c1") == "kept"


def test_without_scripts_a_row_is_typed_and_saved(bare: Page, served: Served, woods: Path) -> None:
    bare.goto(f"{served.base}/count")
    bare.get_by_role("button", name="More rows").click()
    expect(bare.locator(".grid tbody tr")).to_have_count(43)
    for column, said in enumerate(NEW):
        field = bare.locator(f"#r40c{column}")
        if column in (0, 6, 9):
            field.select_option(said)
        else:
            field.fill(said)
    bare.locator("#r40c10").press("Enter")
    expect(bare.get_by_text("Saved: 34 rows.")).to_be_visible()
    assert rows(woods)[-1] == NEW


def test_on_a_phone_each_cell_is_named_and_wide_enough_to_touch(page: Page, served: Served) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(f"{served.base}/count")
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    box = page.locator("#r0c3").bounding_box()
    assert box is not None
    assert box["height"] >= 24
    assert box["x"] + box["width"] <= 390
    word = page.locator("td.count").first
    assert word.get_attribute("data-word") == "Count"
    assert word.evaluate("one => getComputedStyle(one, '::before').display") == "block"


def test_stems_per_acre_open_in_place(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/count")
    page.locator('#dense a.open[href^="/count/working"]').first.click()
    expect(page.locator(".drawer .working").first).to_contain_text("stems / area acre")
    assert page.url == f"{served.base}/count"


def test_a_drawer_opened_beneath_the_tally_loses_nothing_typed(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/count")
    page.fill("#r0c3", "131")
    page.locator("#dense td a.open").first.click()
    page.locator("#dense .drawer .working").first.wait_for()
    assert page.input_value("#r0c3") == "131"
    page.reload()
    page.locator("#put-back").get_by_text("is here again").wait_for()
    assert page.input_value("#r0c3") == "131"
