"""The map in a real browser: moved and clicked, drawn without scripts, in the evening, and gone through by keyboard."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from rootcollar.web.serve import Served

pytestmark = pytest.mark.slow


def middle(page: Page, across: float, down: float) -> None:
    """Click a place on the map, given as shares of its width and height."""
    box = page.locator(".moved").bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + across * box["width"], box["y"] + down * box["height"])


def soon(page: Page, told: Callable[[], bool]) -> bool:
    """Return whether something comes true within half a minute: a busy machine is slow, not wrong."""
    for _ in range(300):
        if told():
            return True
        page.wait_for_timeout(100)
    return False


def test_a_click_on_a_unit_tells_what_is_known_of_it(page: Page, served: Served) -> None:
    page.set_viewport_size({"width": 1280, "height": 1100})
    page.goto(f"{served.base}/ground")
    page.locator(".moved canvas").wait_for()
    expect(page.locator("svg.map")).to_be_hidden()
    middle(page, 0.66, 0.55)
    expect(page.locator("#chosen h2")).to_have_text("Known of Orchard side")
    middle(page, 0.4, 0.3)
    expect(page.locator("#chosen h2")).to_have_text("Known of The bench")
    assert page.url == f"{served.base}/ground"
    page.get_by_role("link", name="all about this unit").click()
    page.wait_for_url("**/ground/bench")
    page.go_back()
    page.locator(".moved canvas").wait_for()


def test_every_unit_is_named_on_the_map_and_the_marks_are_there(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/ground")
    page.locator(".moved canvas").wait_for()
    names = page.locator(".unit-name").all_inner_texts()
    assert sorted(names) == ["Brook edge", "Orchard side", "The bench", "The hollow", "The ridge", "Trail loop"]
    assert page.locator(".moved .mark.keep").count() == 4
    page.locator(".moved .mark.gate").hover()
    expect(page.locator(".place-name")).to_have_text("the gate")


def test_the_map_has_a_name_takes_the_focus_and_moves_by_keyboard(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/ground")
    page.locator(".moved canvas").wait_for()
    named = page.get_by_role("application", name="Map of Hobbin Wood")
    named.focus()
    before = page.locator(".moved .mark.gate").bounding_box()
    page.keyboard.press("ArrowRight")
    assert soon(page, lambda: page.locator(".moved .mark.gate").bounding_box() != before)


def test_a_unit_is_reached_from_the_list_by_keyboard_alone(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/ground")
    link = page.get_by_role("complementary", name="Units").get_by_role("link", name="The ridge", exact=True)
    for _ in range(60):
        page.keyboard.press("Tab")
        if link.evaluate("one => one === document.activeElement"):
            break
    page.keyboard.press("Enter")
    page.wait_for_url("**/ground/ridge")


def test_without_scripts_the_drawn_map_leads_to_each_unit(bare: Page, served: Served) -> None:
    bare.goto(f"{served.base}/ground")
    expect(bare.locator("svg.map")).to_be_visible()
    bare.locator('svg.map a[href="/ground/ridge"] polygon').click()
    expect(bare.get_by_role("heading", level=1)).to_have_text("The ridge")


def test_the_drawn_map_stays_when_the_positions_cannot_be_fetched(page: Page, served: Served) -> None:
    page.route("**/ground/map.json", lambda one: one.abort())
    page.goto(f"{served.base}/ground")
    page.wait_for_timeout(300)
    expect(page.locator("svg.map")).to_be_visible()
    expect(page.locator(".moved")).to_have_count(0)


def test_the_map_follows_the_evening(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/ground")
    page.locator(".moved canvas").wait_for()
    read = """() => { const c = document.querySelector('.moved canvas');
        return [...c.getContext('2d').getImageData(c.width * .25 | 0, c.height * .45 | 0, 1, 1).data].slice(0, 3) }"""
    assert soon(page, lambda: min(page.evaluate(read)) > 200)
    page.emulate_media(color_scheme="dark")
    assert soon(page, lambda: max(page.evaluate(read)) < 80)


def test_a_number_opens_beside_the_map_and_the_map_stays(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/ground")
    page.locator(".moved canvas").wait_for()
    units = page.get_by_role("complementary", name="Units")
    units.get_by_role("link", name="area of The bench").first.click()
    expect(units.locator(".drawer .working").first).to_contain_text("geodesics on the WGS 84 ellipsoid")
    assert page.url == f"{served.base}/ground"
    expect(page.locator(".moved canvas")).to_be_visible()


def test_a_number_of_the_unit_chosen_on_the_map_opens_by_keyboard(page: Page, served: Served) -> None:
    page.set_viewport_size({"width": 1280, "height": 1100})
    page.goto(f"{served.base}/ground")
    page.locator(".moved canvas").wait_for()
    middle(page, 0.4, 0.3)
    link = page.locator("#chosen").get_by_role("link", name="well of The bench")
    link.focus()
    page.keyboard.press("Enter")
    expect(page.locator("#chosen .drawer .working")).to_contain_text("the well at the gate, the nearest of 2 drawn")


def test_back_from_a_working_without_scripts_leads_to_its_number(bare: Page, served: Served) -> None:
    bare.goto(f"{served.base}/ground/bench")
    bare.locator("#facts a.open").first.click()
    expect(bare.get_by_role("heading", level=1)).to_have_text("How this number was worked out")
    bare.go_back()
    expect(bare.get_by_role("heading", level=1)).to_have_text("The bench")


def test_back_after_drawers_leaves_the_unit_for_the_ground(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/ground")
    page.get_by_role("complementary", name="Units").get_by_role("link", name="The ridge", exact=True).click()
    page.wait_for_url("**/ground/ridge")
    for _ in range(2):
        page.locator("#facts a.open").first.click()
        page.locator("#facts .drawer .working").wait_for()
    page.go_back()
    page.wait_for_url(f"{served.base}/ground")
