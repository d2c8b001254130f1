"""From the tally to the packet in a real browser: by clicks, keyboard alone, phone, no scripts, on paper."""

from __future__ import annotations

import pytest
from playwright.sync_api import Locator, Page, expect

from rootcollar.web.serve import Served

pytestmark = pytest.mark.slow

MOST_STOPS = 120  # of the Tab key: more than any page on the way has


def reach(page: Page, wanted: Locator) -> None:
    """Go to something with the Tab key alone."""
    for _ in range(MOST_STOPS):
        page.keyboard.press("Tab")
        if wanted.evaluate("one => one === document.activeElement"):
            return
    raise AssertionError(f"the Tab key does not reach {wanted}")


def packet_from(page: Page, key: str = "") -> bytes:
    """Return what the link of the packet leads to, clicked, or pressed with a key.

    The browser's own viewer is left out: it is another page, which fetches its own parts.
    """
    page.route("**/packet.pdf*", lambda one: one.fulfill(status=204))
    with page.expect_request("**/packet.pdf*") as led:
        if key:
            page.keyboard.press(key)
        else:
            page.get_by_role("link", name="The packet as PDF").click()
    said = page.request.get(led.value.url, timeout=120_000)
    assert said.headers["content-type"] == "application/pdf"
    return said.body()


def test_from_the_tally_to_the_packet_by_clicks(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/count")
    steps = page.get_by_role("navigation", name="Steps")
    steps.get_by_role("link", name="Prepare").click()
    units = page.get_by_role("navigation", name="Units")
    expect(units.get_by_role("link", name="The ridge")).to_have_attribute("aria-current", "page")
    units.get_by_role("link", name="Brook edge").click()
    expect(page.get_by_text("the plan keeps to 3.75 lb ae/ac").first).to_be_visible()
    steps.get_by_role("link", name="Choose").click()
    page.get_by_role("link", name="hold lines back").click()
    asked = page.locator(".question", has_text="Holds 7 lines on Brook edge")
    asked.get_by_label("yes").check()
    asked.get_by_label("Who answers").fill("Ottoline Fernwick")
    asked.get_by_role("button", name="Keep the answer").click()
    steps.get_by_role("link", name="Prepare").click()
    units.get_by_role("link", name="Brook edge").click()
    expect(page.get_by_role("heading", name="Brook edge, day sheet")).to_be_visible()
    expect(page.get_by_text("the plan keeps to 3.75 lb ae/ac")).to_have_count(0)
    page.get_by_text("Several units in one packet").click()
    expect(page.get_by_role("checkbox", name="Brook edge")).to_be_checked()
    expect(page.get_by_role("checkbox", name="The ridge")).not_to_be_checked()
    expect(page.get_by_role("heading", name="Order in the jug").first).to_be_hidden()
    page.get_by_role("navigation", name="In this packet").get_by_role("link", name="Mix cards").click()
    expect(page.get_by_role("heading", name="Mix cards")).to_be_in_viewport()
    expect(page.get_by_role("heading", name="Order in the jug").first).to_be_visible()
    assert packet_from(page).startswith(b"%PDF")


def test_from_the_tally_to_the_packet_by_keyboard_alone(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/choose")
    reach(page, page.get_by_role("link", name="hold lines back"))
    page.keyboard.press("Enter")
    page.wait_for_url("**/choose/questions")
    asked = page.locator(".question", has_text="Holds 7 lines on Brook edge")
    reach(page, asked.get_by_label("no, and the line stays out").or_(asked.get_by_label("yes")).first)
    page.keyboard.press("Space")
    reach(page, asked.get_by_label("Who answers"))
    page.keyboard.type("Juniper Marrowby")
    page.keyboard.press("Enter")
    page.wait_for_load_state()
    expect(asked).to_have_count(0)
    reach(page, page.get_by_role("navigation", name="Steps").get_by_role("link", name="Prepare"))
    page.keyboard.press("Enter")
    page.wait_for_url("**/prepare")
    reach(page, page.get_by_role("navigation", name="Units").get_by_role("link", name="Brook edge"))
    page.keyboard.press("Enter")
    page.wait_for_url("**/prepare?unit=brook-edge")
    reach(page, page.get_by_label("Day of work"))
    page.keyboard.type("2026-09-21")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="Brook edge, day sheet")).to_be_visible()
    expect(page.get_by_text("Monday 21 September 2026")).to_be_visible()
    reach(page, page.get_by_role("link", name="The packet as PDF"))
    assert packet_from(page, "Enter").startswith(b"%PDF")


def test_the_picture_of_page_one_comes_beside_the_page(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/prepare?unit=hollow")
    picture = page.get_by_role("img", name="Page one of the packet")
    expect(picture).to_have_js_property("naturalWidth", 935, timeout=60_000)
    expect(picture).to_have_js_property("naturalHeight", 1210)


def test_on_a_phone_what_stands_in_the_way_comes_before_any_number(page: Page, served: Served) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(f"{served.base}/prepare?units=all")
    boxes = [page.locator(one).bounding_box() for one in (".ways", ".printed", ".contents", "#day-sheet")]
    tops = [box["y"] for box in boxes if box is not None]
    assert len(tops) == 4
    assert tops == sorted(tops)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_without_scripts_a_choice_is_made_and_a_wrong_day_is_kept(bare: Page, served: Served) -> None:
    bare.goto(f"{served.base}/prepare?units=all")
    bare.get_by_role("checkbox", name="The ridge").uncheck()
    bare.get_by_label("Day of work").fill("next Friday")
    bare.get_by_label("Day sheet also in").select_option("Spanish")
    bare.get_by_role("button", name="Prepare this").click()
    expect(bare.locator("#day-fault")).to_contain_text("next Friday")
    expect(bare.get_by_label("Day of work")).to_have_value("next Friday")
    expect(bare.get_by_role("checkbox", name="The ridge")).not_to_be_checked()
    expect(bare.get_by_label("Day sheet also in")).to_have_value("es")
    bare.get_by_label("Day of work").fill("2026-10-09")
    bare.get_by_role("button", name="Prepare this").click()
    expect(bare.get_by_text("Friday 9 October 2026")).to_be_visible()
    expect(bare.get_by_role("checkbox", name="The ridge")).not_to_be_checked()


def test_on_paper_the_sheets_stand_without_buttons_and_the_banner_is_dark(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/prepare?unit=hollow")
    page.emulate_media(media="print")
    for hidden in (".asks", ".printed", ".contents", ".path", ".stepper"):
        expect(page.locator(hidden)).to_be_hidden()
    expect(page.locator(".ways")).to_be_visible()
    for sheet in ("#mix-cards", "#shopping", "#signs"):  # folded on the screen, open on paper
        box = page.locator(f"{sheet} h3").first.bounding_box()
        assert box is not None
        assert box["height"] > 0
    assert page.locator(".stacks td").first.evaluate("one => getComputedStyle(one).display") == "table-cell"
    assert page.locator(".banner").evaluate("one => getComputedStyle(one).printColorAdjust") == "exact"


def test_a_number_of_the_packet_opens_beside_itself_by_a_click(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/prepare?unit=bench")
    page.get_by_role("heading", name="Shopping").click()
    part = page.locator("#shopping .part", has_text="Now: for the first days")
    number = part.locator("a.open", has_text="fl oz").first
    words = number.inner_text()
    number.click()
    drawer = part.locator(".drawer .working")
    expect(drawer).to_contain_text("as it is shown")
    expect(drawer.locator("b").first).to_have_text(words)
    expect(drawer).to_contain_text("all mixes")
    assert page.url == f"{served.base}/prepare?unit=bench"


def test_without_scripts_a_number_of_the_packet_opens_as_a_page(bare: Page, served: Served) -> None:
    bare.goto(f"{served.base}/prepare?unit=hollow")
    number = bare.locator("#day-sheet a.open").first
    words = number.inner_text()
    number.click()
    expect(bare.get_by_role("heading", name="How this number was worked out")).to_be_visible()
    expect(bare.locator(".working b").first).to_have_text(words)
    bare.go_back()
    bare.get_by_role("heading", name="Mix cards").click()
    expect(bare.get_by_role("heading", name="Order in the jug").first).to_be_visible()


def test_an_address_that_leads_to_a_folded_sheet_opens_it(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/prepare?unit=hollow#shopping")
    expect(page.get_by_role("heading", name="Now: for the first days")).to_be_visible()
    expect(page.get_by_role("heading", name="Shopping")).to_be_in_viewport()
