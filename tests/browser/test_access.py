"""Everybody can use every page: axe finds nothing, nothing is wider than a phone, the console is quiet."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from rootcollar.web.serve import Served
from tools.shots import PAGES

pytestmark = pytest.mark.slow

AXE = (Path(__file__).parent / "vendor" / "axe.min.js").read_text(encoding="utf-8")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def faults_of(page: Page) -> list[str]:
    """Return what axe finds on a page, a line each: rule, where."""
    page.evaluate(AXE)
    found = page.evaluate("rules => axe.run({runOnly: rules})", RULES)
    return [f"{one['id']}: {node['target']}" for one in found["violations"] for node in one["nodes"]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_on_any_page(scheme: str, chromium: Browser, served: Served) -> None:
    context = chromium.new_context(color_scheme=scheme, bypass_csp=True)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(served.address)
    found = {}
    for path in PAGES:
        page.goto(f"{served.base}{path}")
        page.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
        if faults := faults_of(page):
            found[path] = faults
    context.close()
    assert found == {}


def test_no_page_is_wider_than_a_phone(page: Page, served: Served) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    for path in PAGES:
        page.goto(f"{served.base}{path}")
        assert page.evaluate("document.documentElement.scrollWidth") <= 390, path


def test_no_page_complains_in_the_console(page: Page, served: Served) -> None:
    said: list[str] = []
    page.on("console", lambda one: said.append(f"{page.url}: {one.text}") if one.type in ("error", "warning") else None)
    page.on("pageerror", lambda error: said.append(f"{page.url}: {error}"))
    for path in PAGES:
        page.goto(f"{served.base}{path}")
    assert said == []
