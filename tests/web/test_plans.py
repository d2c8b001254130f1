"""Plans side by side on their page: each figure opens into its sum, and no stand is dropped without a word."""

from __future__ import annotations

import re
from collections.abc import Callable
from html import unescape
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.choose import PLAN_FIGURES
from tests.web.test_working import LINK, NUMBER, half_a_step, result_of, steps_of, value

Client = Callable[[Path], TestClient]
KEYS = ("chosen", "cheapest", "kit", "side", "by-hand")


def figures(demo: TestClient) -> set[tuple[str, str]]:
    """Return the figures of the page that open: where, and as shown."""
    found = {(unescape(link), unescape(words)) for link, words in LINK.findall(demo.get("/choose/plans").text)}
    return {one for one in found if one[0].startswith("/choose/plans/")}


def test_the_page_is_linked_and_shows_every_plan(demo: TestClient) -> None:
    assert 'href="/choose/plans"' in demo.get("/choose").text
    said = demo.get("/choose/plans").text
    assert all(f'<section class="gap" id="plan-{key}">' in said for key in KEYS)
    assert len(figures(demo)) == len(KEYS) * len(PLAN_FIGURES)


def test_every_figure_opens_into_itself_and_its_sum(demo: TestClient) -> None:
    sums = 0
    for link, words in figures(demo):
        opened = demo.get(link)
        assert opened.status_code == 200, link
        drawer = opened.text[opened.text.index('<div class="working">') :]
        said = re.search(r"<p><b>([^<]+)</b>", drawer)
        assert said is not None
        assert unescape(said[1]) == words
        assert result_of(drawer, words) == pytest.approx(value(words), abs=half_a_step(words)), link
        for _, how in steps_of(drawer):
            added = re.search(rf"^({NUMBER}(?: \+ {NUMBER})+) = ({NUMBER})", how)
            if added:
                parts = [float(one) for one in added[1].split(" + ")]
                assert sum(parts) == pytest.approx(float(added[2]), rel=1e-4), link
                sums += 1
    assert sums > len(KEYS)


def test_a_stand_without_a_way_is_named_with_the_reason(demo: TestClient) -> None:
    said = demo.get("/choose/plans").text
    by_hand = unescape(said[said.index('id="plan-by-hand"') :])
    assert "no way under it" in by_hand
    named = re.findall(r"<li><b>([^<]+)</b>. <span[^>]*>No way without herbicide is open. [^<]+</span>", by_hand)
    assert named
    told = re.search(r"([0-9]+) stands have no way", by_hand)
    assert told is not None
    assert len(named) == int(told[1])


@pytest.mark.parametrize("path", ["/choose/plans/working/dearest/cost", "/choose/plans/working/kit/weight"])
def test_a_plan_or_figure_that_is_not_there_names_those_that_are(path: str, demo: TestClient) -> None:
    said = demo.get(path)
    assert said.status_code == 404
    assert "cost" in said.text or "chosen" in said.text


def test_without_a_tally_the_page_says_so(woods: Path, client_of: Client) -> None:
    file = woods / "tally.csv"
    file.write_text(file.read_text("utf-8").splitlines()[0] + "\n", "utf-8")
    said = client_of(woods).get("/choose/plans")
    assert said.status_code == 200
    assert "Nothing is counted yet." in said.text
