"""Both steps of a way of two visits on the unit's page."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from starlette.testclient import TestClient

from rootcollar.exchange import read_folder
from rootcollar.jobs.plan import prescribed, setting_of
from tests.web.conftest import TODAY


def test_a_line_of_two_steps_says_when_both_can_be(woods: Path, client_of: Callable[[Path], TestClient]) -> None:
    project = read_folder(woods)
    plan = prescribed(project, setting_of(project, TODAY))
    found = [(line, one) for line in plan.choices for one in line.set_aside if one.open and one.way.step]
    assert found, "the demo has no open way of two steps"
    line, aside = found[0]
    page = f"/choose/{line.stand.unit}"
    client = client_of(woods)
    assert "Two steps: first step" not in client.get(page).text
    told = {"line": line.stand.key, "way": aside.way.key, "reason": "brush too thick", "by": "Ottoline Fernwick"}
    said = client.post(page, data=told).text
    assert "Two steps: first step" in said
    assert "What kills is the spray on the sprouts" in said
    for what in ("hours", "cost", "mix", "months"):
        where = f"/choose/working/{what}/" if what != "months" else "/choose/months/"
        assert client.get(f"{where}{line.stand.key}").status_code == 200
