"""Facts in a real browser: found by keyboard alone and without scripts, and led through by its index."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from rootcollar.web.serve import Served

pytestmark = pytest.mark.slow


def test_a_plant_is_found_without_scripts_by_a_name_nobody_listed(bare: Page) -> None:
    bare.set_viewport_size({"width": 390, "height": 844})
    bare.get_by_role("link", name="Facts").click()
    bare.get_by_label("Look up").fill("european buckthorn")
    bare.keyboard.press("Enter")
    expect(bare.get_by_role("heading", level=1)).to_have_text("Common buckthorn (Rhamnus cathartica)")


def test_the_index_of_a_page_leads_by_keyboard_to_its_sections_and_sources(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/facts/rhca3")
    index = page.get_by_role("navigation", name="On this page")
    index.get_by_role("link", name="Sources", exact=True).focus()
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile("/facts/rhca3#sources$"))
    expect(page.get_by_role("heading", name="Sources", exact=True)).to_be_visible()
    page.get_by_role("link", name="mn_dnr", exact=True).last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("mn_dnr", ignore_case=True)


def test_a_name_in_a_page_leads_to_what_is_known_of_it(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/facts/rhca3")
    page.get_by_role("link", name="glyphosate", exact=True).first.click()
    expect(page).to_have_url(re.compile("/facts/glyphosate$"))
