"""What is typed and not sent yet outlives a reload, in every form; what was sent is not put back."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from rootcollar.web.serve import Served

pytestmark = pytest.mark.slow


def test_an_answer_half_given_outlives_a_reload(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/choose/questions")
    page.locator("input[value=yes]").first.check()
    page.fill("#by-1", "Ottoline Fernwick")
    page.reload()
    assert page.locator("input[value=yes]").first.is_checked()
    assert page.input_value("#by-1") == "Ottoline Fernwick"
    assert page.input_value("#by-3") == ""


def test_a_choice_half_made_stands_open_after_a_reload_and_is_gone_once_sent(page: Page, served: Served) -> None:
    page.goto(f"{served.base}/choose/bench")
    page.locator("summary", has_text="Take another way").first.click()
    form = page.locator("form.choice").first
    form.locator("select").select_option(index=1)
    way = form.locator("select").input_value()
    form.locator("[name=reason]").fill("no oil this season")
    page.reload()
    assert form.locator("select").input_value() == way
    assert form.locator("[name=reason]").is_visible()
    form.locator("[name=by]").fill("Ottoline Fernwick")
    form.locator("button").click()
    page.get_by_text("no oil this season").first.wait_for(state="attached")
    page.reload()
    assert form.locator("[name=reason]").input_value() == ""


@pytest.mark.parametrize(
    ("path", "name", "words"), [("/figure/mix", "percent", "3"), ("/prepare", "day", "2026-10-10")]
)
def test_a_question_half_asked_outlives_a_reload(path: str, name: str, words: str, page: Page, served: Served) -> None:
    page.goto(f"{served.base}{path}")
    page.fill(f"input[name={name}]", words)
    page.reload()
    assert page.input_value(f"input[name={name}]") == words
    page.goto(f"{served.base}{path}?unit=bench" if name == "day" else f"{served.base}{path}?total=3+gal")
    assert page.input_value(f"input[name={name}]") == ""
