"""What a folder lacks: bad input by file, row, field, found and allowed; a plan that is shut by the change to make."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest

from tests.cli.test_plan_commands import rootcollar

DAY = "2026-09-15"
HEAD = "unit,species,diameter class,count,low,high,measured at,crown,height,fruiting,note\n"


@pytest.fixture
def wood(tmp_path: Path) -> Path:
    """Return a copy of the demo's folder."""
    return Path(shutil.copytree(str(files("rootcollar.exchange") / "hobbin_wood"), tmp_path / "wood"))


def faults(folder: Path) -> list[dict[str, str]]:
    """Return the faults told of a folder that cannot be used."""
    said = rootcollar("choose", folder, "--on", DAY, "--json")
    assert said.exit_code == 2, said.output
    found: list[dict[str, str]] = json.loads(said.output)["faults"]
    return found


def opening(folder: Path) -> str:
    """Return the sentence of the change that opens most."""
    said = rootcollar("choose", folder, "--on", DAY, "--json")
    assert said.exit_code in {0, 1}, said.output
    return str(json.loads(said.output)["opens_most"])


@pytest.mark.parametrize(
    ("rows", "row", "field", "found", "allowed"),
    [
        ("ridge,rhca3,1-2 in,7,,,,,,,\nridge,rhca3,1-2 in,9,,,,,,,", "row 3", "diameter class", "1-2 in", "row 2"),
        ("ridge,rhca3,1-10 in,7,,,,,,,\nridge,rhca3,2-3 in,9,,,,,,,", "row 3", "diameter class", "2-3 in", "row 2"),
        ("ridge,rhca3,1-2 in,10,20,30,,,,,", "row 2", "low", "20", ""),
        ("ridge,rhca3,1-2 in,7,,,,,,,\nridge,loma6,2-5 cm,7,,,,,,,", "row 3", "diameter class", "2-5 cm", "inches"),
    ],
    ids=["typed twice", "within another", "least above the count", "two systems"],
)
def test_rows_that_contradict_are_told_by_file_row_field_found_and_allowed(
    rows: str, row: str, field: str, found: str, allowed: str, wood: Path
) -> None:
    (wood / "tally.csv").write_text(HEAD + rows + "\n", encoding="utf-8")
    (fault,) = faults(wood)
    assert fault["file"] == "tally.csv"
    assert (fault["row"], fault["field"]) == (row, field)
    assert found in fault["found"] and allowed in fault["allowed"] and fault["allowed"]


def no_label(wood: Path) -> None:
    shutil.rmtree(wood / "shelf")
    (wood / "stock.csv").unlink()


def out_of_season_state(wood: Path) -> None:
    """Leave only labels that are not registered where the ground is."""
    edit(wood, "ground.toml", lambda text: text.replace('state = "WI"', 'state = "OR"'))


def no_licence(wood: Path) -> None:
    edit(wood, "crew.toml", lambda text: re.sub(r"(?m)^licence.*\n", "", text))


def no_permission(wood: Path) -> None:
    edit(wood, "ground.toml", lambda text: re.sub(r"(?m)^permission.*\n", "", text))


def edit(wood: Path, name: str, change: Callable[[str], str]) -> None:
    before = (wood / name).read_text(encoding="utf-8")
    assert change(before) != before
    (wood / name).write_text(change(before), encoding="utf-8")


@pytest.mark.parametrize(
    ("broken", "change", "missing"),
    [
        (no_label, "put the label of your own jug on the shelf", "no label sheet"),
        (out_of_season_state, "regist", "OR"),
        (no_licence, "licence", "licence"),
        (no_permission, "permission", "allowed"),
    ],
)
def test_a_plan_in_which_nothing_can_be_worked_says_what_to_do_first(
    broken: Callable[[Path], None], change: str, missing: str, wood: Path
) -> None:
    broken(wood)
    told = opening(wood)
    before, after = told.split("Missing now: ")
    assert before.startswith("Do first: ") and "cannot be worked yet" in before
    assert change in before and missing in after
    assert ".." not in told and "?." not in told
    assert "lines" in before or "one line" in before


def test_the_units_that_a_change_opens_are_named_where_they_are_few(wood: Path) -> None:
    told = opening(wood)
    assert re.search(r"cannot be worked yet on (brook-edge|orchard-side)", told), told


@pytest.mark.parametrize(("day", "hidden"), [("2026-12-01", True), ("2026-07-01", False)])
def test_what_hurts_and_what_cannot_be_told_apart_on_the_day_is_said_with_the_choice(
    day: str, hidden: bool, wood: Path
) -> None:
    (wood / "answers.toml").unlink()  # of another season: they would be asked again either way
    told = json.loads(rootcollar("choose", wood, "--on", day, "--json").output)["mind"]
    in_text = " ".join(rootcollar("choose", wood, "--on", day).output.split())
    assert all(" ".join(f"(!) {one}.".split()) in in_text for one in told)
    mulberry = [one for one in told if one.startswith("White mulberry: nothing tells it from")]
    assert bool(mulberry) == hidden
    assert not hidden or "leave it" in mulberry[0]
