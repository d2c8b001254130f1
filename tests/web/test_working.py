"""Every number of a unit's page opens: into the same number, its formulas and where they come from."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import numpy as np
import pytest
from starlette.testclient import TestClient

from rootcollar.choose import line_minutes, line_mix_ml, line_money, replay_cost, replay_minutes, replay_mix
from rootcollar.web import Desk
from tests.web.conftest import TODAY

LINK = re.compile(r'<a class="open" href="([^"]+)"[^>]*>([^<]+)</a>')


def test_every_number_opens_into_itself(demo: TestClient, woods: Path) -> None:
    units = Desk(woods, lambda: TODAY).look().project.ground.units
    seen = 0
    for key in units:
        for where, words in LINK.findall(demo.get(f"/choose/{key}").text):
            opened = demo.get(where)
            assert opened.status_code == 200, where
            said = re.search(r'<div class="working">\s*<p><b>([^<]+)</b>', opened.text)
            assert said is not None, where
            assert unescape(said[1]).startswith(unescape(words)), where
            assert "<li>" in opened.text, where
            seen += 1
    assert seen > 4 * len(units)


def test_a_number_worked_out_again_is_the_one_it_was_chosen_by(woods: Path) -> None:
    here = Desk(woods, lambda: TODAY).look()
    assert here.plan is not None
    lines = [one for one in here.plan.choices if one.option]
    assert lines
    for one in lines:
        stems, stem = one.stand.stems, one.per_stem
        np.testing.assert_array_equal(replay_mix(one, here.setting), line_mix_ml(stems, stem.mix_ml))
        np.testing.assert_array_equal(replay_minutes(one, here.setting), line_minutes(stems, stem.minutes))
        np.testing.assert_array_equal(replay_cost(one, here.setting), line_money(stems, stem.cost))


def test_a_units_cost_is_the_sum_of_its_lines_as_a_calculator_has_it(demo: TestClient) -> None:
    opened = unescape(demo.get("/choose/bench/working/cost").text)
    told = re.search(r"all lines that are work: ([0-9.e+ ]+) = ([0-9.e+]+) money", opened)
    assert told is not None
    parts = [float(one) for one in told[1].split(" + ")]
    lines = re.findall(r"<li>line money: .* = ([0-9.e+]+) money", opened)
    assert parts == [float(one) for one in lines]
    assert sum(parts) == pytest.approx(float(told[2]), rel=1e-5)
    shown = re.search(r"<b>\$([0-9,]+), one visit</b>", opened)
    assert shown is not None
    assert float(shown[1].replace(",", "")) == pytest.approx(float(told[2]), abs=0.51)


def test_a_count_says_which_row_it_is_and_how_its_range_is_read(demo: TestClient) -> None:
    where = re.search(r'href="(/choose/working/stems/bench/rhca3/[^"]+)"', demo.get("/choose/bench").text)
    assert where is not None
    opened = demo.get(where[1]).text
    assert "the row of tally.csv for bench, common buckthorn" in opened


@pytest.mark.parametrize("what", ["/choose/bench/working/cost", "/count/working/bench/rhca3/2.5-5.1cm"])
def test_beside_its_number_the_working_stands_alone(what: str, demo: TestClient) -> None:
    alone = demo.get(what, headers={"hx-request": "true", "hx-target": "div"}).text
    assert alone.strip().startswith('<div class="working">')
    assert "<main" not in alone
    assert "<h1>How this number was worked out</h1>" in demo.get(what).text


@pytest.mark.parametrize(
    "path",
    [
        "/choose/working/weight/bench/rhca3/2.5-5.1cm",
        "/choose/working/mix/bench/rhca3/1-2cm",
        "/choose/bench/working/weight",
        "/choose/nowhere/working/cost",
    ],
)
def test_a_number_that_is_not_there_is_a_page_of_its_own(path: str, demo: TestClient) -> None:
    assert demo.get(path).status_code == 404
