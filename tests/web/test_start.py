"""A first start without a property: four questions, or the demo."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.exchange import read_folder

Client = Callable[[Path], TestClient]
SAID = {
    "name": 'Quillet "Hollow"',
    "state": "wi",
    "unit": "North bench",
    "area": "3.2 ac",
    "by": "A. Steward",
    "until": "2027-03-31",
}


def test_an_empty_start_asks_and_has_no_row_of_steps(tmp_path: Path, client_of: Client) -> None:
    said = client_of(tmp_path / "mine").get("/")
    assert said.url.path == "/start"
    assert "Begin with your woods" in said.text
    assert 'aria-label="Steps"' not in said.text


def test_four_answers_make_a_property_that_reads(tmp_path: Path, client_of: Client) -> None:
    folder = tmp_path / "mine"
    client_of(folder).post("/start", data=SAID, follow_redirects=False)
    ground = read_folder(folder).ground
    unit = ground.units["north-bench"]
    assert (ground.name, ground.state, unit.name) == ('Quillet "Hollow"', "WI", "North bench")
    assert unit.area_m2 == pytest.approx(3.2 * 4046.8564224)
    assert unit.permission is not None
    assert unit.permission.by == "A. Steward"


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ({"name": ""}, "what people call the place"),
        ({"state": "Wisconsin"}, "two"),
        ({"area": "3.2"}, "area"),
        ({"until": "soon"}, "Wanted"),
    ],
)
def test_a_wrong_answer_is_told_beside_it_and_nothing_is_written(
    wrong: dict[str, str], told: str, tmp_path: Path, client_of: Client
) -> None:
    folder = tmp_path / "mine"
    said = client_of(folder).post("/start", data=SAID | wrong)
    assert said.status_code == 422
    assert told in said.text
    assert 'value="A. Steward"' in said.text
    assert 'aria-invalid="true"' in said.text
    assert not folder.exists()


def test_the_demo_opens_from_the_start(tmp_path: Path, client_of: Client) -> None:
    said = client_of(tmp_path / "mine").post("/start/demo")
    assert said.url.path == "/choose"
    assert "Hobbin Wood" in said.text
