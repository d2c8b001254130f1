"""In a real browser: nothing is fetched from elsewhere, the drawer opens in place, the policy stops nothing of ours."""

from __future__ import annotations

from playwright.sync_api import Page

from rootcollar.web.serve import Served


def test_a_number_opens_in_place_and_the_console_is_quiet(page: Page, served: Served) -> None:
    complaints: list[str] = []
    page.on("console", lambda said: complaints.append(said.text) if said.type in ("error", "warning") else None)
    page.goto(f"{served.base}/choose/bench")
    page.locator("article a.open[href*='/working/mix/']").first.click()
    page.locator(".drawer .working").first.wait_for()
    assert page.url == f"{served.base}/choose/bench"
    assert "stems * mix ml" in page.locator(".drawer .working").first.inner_text()
    assert page.locator("main").count() == 1  # the working alone was put in, no page within the page
    assert page.locator(".drawer nav, .drawer h1").count() == 0
    assert complaints == []


def test_a_count_of_a_line_opens_in_its_own_line(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/choose/bench")
    line = page.locator("article.band").first
    line.locator(".num a.open").click()
    line.locator(".drawer .working").wait_for()
    assert "the row of tally.csv" in line.locator(".drawer .working").inner_text()
