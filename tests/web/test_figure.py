"""The bench in the app: the same questions, read as in the terminal, answered with the same numbers and refusals."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner
from starlette.testclient import TestClient

from rootcollar.cli.figure_commands import FIGURES
from rootcollar.cli.main import cli


def test_every_question_of_the_terminal_has_its_page(demo: TestClient) -> None:
    page = demo.get("/figure").text
    for name in FIGURES:
        assert f'href="/figure/{name}"' in page
        form = demo.get(f"/figure/{name}")
        assert form.status_code == 200
        assert "Work it out" in form.text


def test_the_answer_is_that_of_the_terminal(demo: TestClient) -> None:
    said = CliRunner().invoke(cli, ["figure", "mix", "--percent", "3", "--total", "3 gal", "--json"])
    page = demo.get("/figure/mix", params={"percent": "3", "total": "3 gal"}).text
    assert json.loads(said.stdout)["says"] in page
    assert "product in ml: total ml * pct / 100" in page
    assert 'value="3 gal"' in page


@pytest.mark.parametrize(
    ("name", "told", "words"),
    [
        ("mix", {"percent": "3", "total": "3 oz"}, "fl oz, a volume, or oz wt, a weight?"),
        ("mix", {"percent": "3"}, "total for the finished mix"),
        ("dose", {"method": "basal-bark", "diameter": "9 in"}, "Next: hack-and-squirt or cut stump"),
        ("mix", {"percent": "2", "total": "4 gal", "tank": "-1 gal"}, "0 or more"),
    ],
)
def test_nonsense_is_told_and_what_was_typed_stays(
    name: str, told: dict[str, str], words: str, demo: TestClient
) -> None:
    said = demo.get(f"/figure/{name}", params=told)
    assert said.status_code == 422
    assert words in said.text
    for value in told.values():
        assert f'value="{value}"' in said.text


def test_what_the_label_forbids_gives_no_amount(demo: TestClient) -> None:
    told = {
        "percent": "31",
        "total": "2.5 gal",
        "carrier": "oil",
        "sheet": "triclopyr-ester-4-ec",
        "method": "basal-bark",
    }
    said = demo.get("/figure/mix", params=told)
    assert said.status_code == 409
    assert "Not to be poured" in said.text
    assert "31% is above the label" in said.text
    assert "fl oz (" not in said.text


def test_a_question_of_a_survey_opens_into_its_working(demo: TestClient) -> None:
    page = demo.get("/figure/stems", params={"counts": "3 0 5 2", "plot": "1/20 ac", "ground": "12 ac"}).text
    assert "50 stems on an acre" in page
    assert "density per acre: mean / plot ac" in page
    none = demo.get("/figure/clean-visits", params={"found": "60%"})
    assert none.status_code == 422
    assert "is not to be left out" in none.text
