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


def test_a_mixed_thicket_has_one_instruction_on_its_unit_page(
    woods: Path, client_of: Callable[[Path], TestClient]
) -> None:
    tally = woods / "tally.csv"
    head, *rows = tally.read_text(encoding="utf-8").splitlines()
    assert head.endswith(",thicket,keep inside")
    bare, inside = ",,", ",top of the ridge,spicebush"
    marked = [f"{row.removesuffix(bare)}{inside}" if row.startswith("ridge,") else row for row in rows]
    page = "/choose/ridge"
    before = client_of(woods).get(page).text
    assert "Mixed thicket" not in before
    tally.write_text("\n".join([head, *marked]) + "\n", encoding="utf-8")
    said = client_of(woods).get(page).text
    assert "Mixed thicket, top of the ridge" in said
    assert "leave it: spicebush" in said
    assert "choosing for each kind and size by itself" in said
