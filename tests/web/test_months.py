"""The months on the pages: every month of a line gives its reason, and a month shows what can be done in it."""

from __future__ import annotations

import re

import pytest
from starlette.testclient import TestClient

from rootcollar.kernel.days import MONTHS


def test_the_months_of_a_line_open_into_a_reason_for_every_month(demo: TestClient) -> None:
    page = demo.get("/choose/bench").text
    found = list(dict.fromkeys(re.findall(r'href="(/choose/months/[^"]+)"', page)))
    assert found
    for where in found:
        said = demo.get(where).text
        assert re.search(r"(open|shut)[^:]*: ", said)
    foliar = next(said for said in (demo.get(one).text for one in found) if "natives are bare" in said)
    assert "uwex_buckthorn" in foliar
    assert "August to September: open" in foliar


@pytest.mark.parametrize("month", range(1, len(MONTHS) + 1))
def test_a_month_shows_every_unit_and_leads_to_the_others(demo: TestClient, month: int) -> None:
    said = demo.get(f"/choose/month/{month}")
    assert said.status_code == 200
    assert f"What can be done in {MONTHS[month - 1]}" in said.text
    assert all(f'href="/choose/month/{other}"' in said.text for other in range(1, len(MONTHS) + 1))
    assert all(name in said.text for name in ("The bench", "Trail loop", "The hollow"))


def test_a_month_is_reached_from_the_list_of_units_and_none_beyond_the_year(demo: TestClient) -> None:
    assert 'href="/choose/month/3"' in demo.get("/choose").text  # the day of the app is in March
    assert demo.get("/choose/month/13").status_code == 404
