"""The command `facts`: everything the data say, readable, marked, sourced."""

import json

import pytest
from click.testing import CliRunner, Result

from rootcollar.cli.main import cli
from rootcollar.reference import figures, load


def facts(*words: str, columns: int = 100) -> Result:
    """Run the command on a terminal of that width."""
    return CliRunner(env={"COLUMNS": str(columns)}).invoke(cli, ["facts", *words])


@pytest.mark.parametrize("name", ["rhca3", "RHCA3", "common buckthorn", "Rhamnus cathartica", "European buckthorn"])
def test_a_plant_is_found_by_any_of_its_names(name: str) -> None:
    assert "common buckthorn (Rhamnus cathartica)" in facts(*name.split()).stdout


@pytest.mark.parametrize("key", sorted(load().species))
def test_no_figure_of_a_plant_is_left_out(key: str) -> None:
    page = json.loads(facts(key, "--json").stdout)["pages"][0]
    told = {(row["source"], row["mark"]) for row in page["facts"]}
    assert len(page["facts"]) >= len(figures(load().species[key]))
    assert told >= {(figure.source, figure.mark) for _, figure in figures(load().species[key])}
    assert {source["key"] for source in page["sources"]} == {row["source"] for row in page["facts"]}


@pytest.mark.parametrize("kind", ["ingredients", "formulations", "methods", "mixing", "practice", "sources"])
def test_everything_listed_can_be_looked_up(kind: str) -> None:
    for key in list(getattr(load(), kind))[:40]:
        said = facts(key)
        assert said.exit_code == 0, (key, said.output)
        assert key in said.stdout


@pytest.mark.parametrize("columns", [80, 120])
def test_a_page_keeps_to_the_width_of_the_terminal(columns: int) -> None:
    for key in ("rhca3", "triclopyr", "basal_bark"):
        lines = facts(key, columns=columns).stdout.splitlines()
        assert all(len(line) <= columns for line in lines if "://" not in line)


def test_a_figure_from_memory_is_marked_where_it_stands() -> None:
    said = facts("rhca3").stdout
    assert "RHCA3 [from memory, confirm: plants]" in said
    assert "yes [read: vt_buckthorn]" in said
    remembered = [
        row for row in json.loads(facts("rhca3", "--json").stdout)["pages"][0]["facts"] if row["mark"] == "memory"
    ]
    assert said.count("from memory, confirm") == len(remembered) + 1  # and once in the legend


def test_marks_are_explained_only_where_they_are_met() -> None:
    assert "ours =" not in facts("rhca3").stdout
    assert "ours =" in facts("basal_bark").stdout


def test_a_source_shows_what_rests_on_it() -> None:
    said = facts("MO-314").stdout
    assert "navalfacilities" in said
    assert "50 stems of 2 inches" in said


def test_a_word_with_two_pages_shows_both() -> None:
    kinds = [page["kind"] for page in json.loads(facts("gloves", "--json").stdout)["pages"]]
    assert kinds == ["mixing", "practice"]


def test_a_slip_of_the_pen_is_answered_with_near_names() -> None:
    said = facts("buckthron")
    assert said.exit_code == 2
    assert "common buckthorn" in said.stderr
    assert "common buckthorn" in json.loads(facts("buckthron", "--json").stdout)["faults"][0]["allowed"]


def test_a_name_that_is_near_nothing_is_led_to_the_list() -> None:
    said = facts("qqqq")
    assert said.exit_code == 2
    assert "rootcollar facts" in said.stderr


def test_without_a_name_everything_there_is_is_listed() -> None:
    said = facts().stdout
    assert all(key in said for key in (*load().species, *load().ingredients, *load().formulations, *load().methods))
    listed = json.loads(facts("--json").stdout)["contents"]
    assert len(listed["source"]) == len(load().sources)


def test_no_page_permits_anything() -> None:
    for words in (("rhca3",), ("triclopyr-bee-4-ec",)):
        assert "the label in your hand is the law" in facts(*words).stdout
