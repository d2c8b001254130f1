"""A label typed by keyboard alone, from an empty sheet to two readings that agree; nothing typed is lost on the way."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from rootcollar.exchange import read_folder, sheet_as_typed
from rootcollar.shelf import asked_again, twice
from rootcollar.web.serve import Served

pytestmark = pytest.mark.slow

LIKE = "glyphosate-3-sl"
NEW = "my-jug"
OTHER = "Elspeth Tarn"
PARTS = ("identity.", "formulation.", "ingredient.1.", "hazard.", "ppe.", "site.1.", "limits.", "storage.", "proof.")
BEFORE_THE_DAY = ("proof.read_by", "proof.read_on")
_FOCUSED = "(one => [one.name || '', one.type || ''])(document.activeElement)"


def typed_by_keyboard(page: Page, cells: Mapping[str, str], last: str) -> None:
    """Go from field to field by the tab key and type what is known of each, up to the last."""
    for _ in range(1_000):
        page.keyboard.press("Tab")
        name, kind = page.evaluate(_FOCUSED)
        said = cells.get(name.removeprefix("silent."), "")
        if kind == "checkbox" and said == "silent":
            page.keyboard.press("Space")
        elif kind == "select-one" and said:
            page.keyboard.type("the label says nothing" if said == "silent" else said.replace("_", " "))
        elif kind == "text" and said not in ("", "silent"):
            page.keyboard.press("ControlOrMeta+a")
            page.keyboard.type(said)
        if name == last:
            return
    raise AssertionError(f"{last} cannot be reached by keyboard")


def test_a_label_is_typed_by_keyboard_and_read_again_until_both_agree(page: Page, served: Served, woods: Path) -> None:
    cells = {one: said for one, said in sheet_as_typed(woods, LIKE).cells.items() if one.startswith(PARTS)}
    cells |= {"identity.product_name": "My jug", "proof.read_by": "Ottoline Fernwick"}

    page.goto(f"{served.base}/shelf/add")
    page.focus("h1 >> xpath=ancestor::main")
    slips = cells | {"ingredient.1.ai_percent": "410"}
    typed_by_keyboard(page, {one: said for one, said in slips.items() if one.startswith(PARTS[:4])}, "identity.lot")
    page.reload()
    expect(page.locator("[name='identity.product_name']")).to_have_value("My jug")
    expect(page.locator("[name='hazard.signal_word']")).to_have_value("CAUTION")
    expect(page.locator("[name='silent.identity.sln_no']")).to_be_checked()

    page.focus("[name='identity.lot']")
    typed_by_keyboard(page, cells, "silent.proof.read_on")
    page.focus("[name='proof.read_on']")
    page.keyboard.press("Enter")
    expect(page.get_by_role("alert")).to_contain_text("Nothing was written: 1 line")
    expect(page.locator("[id='ingredient.1.ai_percent-fault']")).to_contain_text("a percent, 0 to 100")
    page.get_by_role("link", name="Go to the first").press("Enter")
    page.focus("[name='ingredient.1.ai_percent']")
    page.keyboard.press("ControlOrMeta+a")
    page.keyboard.type("41")
    page.keyboard.press("Enter")
    expect(page.locator("h1")).to_have_text("My jug")
    expect(page).to_have_url(f"{served.base}/shelf/{NEW}")
    kept = dict(sheet_as_typed(woods, NEW).cells)
    reached = {one: said for one, said in cells.items() if not one.startswith("proof.") or one in BEFORE_THE_DAY}
    assert {one: said for one, said in kept.items() if not one.endswith("page")} == {
        one: said for one, said in reached.items() if not one.endswith("page")
    }

    asked = asked_again(read_folder(woods).shelf[NEW])
    again = {one.ask: one.first for one in asked}
    last = asked[-1].ask if asked[-1].field.kind in ("flag", "choice") else f"silent.{asked[-1].ask}"
    page.get_by_role("link", name="Second reading").press("Enter")
    page.focus("#read_by")
    page.keyboard.type(OTHER)
    typed_by_keyboard(page, again | {"limits.per_year.amount": "8"}, last)
    page.focus("#read_by")
    page.keyboard.press("Enter")
    expect(page.locator("#readings tbody tr")).to_have_count(1)
    expect(page.locator("#readings")).to_contain_text("Most on an acre in a year, the figure")

    page.locator("#readings").get_by_role("link", name="8", exact=True).last.press("Enter")
    page.focus("[name='limits.per_year.amount']")
    page.keyboard.press("ControlOrMeta+a")
    page.keyboard.type("6")
    page.keyboard.press("Enter")
    expect(page.locator("aside")).to_contain_text(f"Ottoline Fernwick and {OTHER} have read {len(again)} lines alike")
    assert twice(read_folder(woods).shelf[NEW]).agrees
