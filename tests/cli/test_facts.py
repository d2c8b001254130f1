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
    seen = {one["source"] for section in page["sections"] for line in section["lines"] for one in line["seen"]}
    assert {source["key"] for source in page["sources"]} == {row["source"] for row in page["facts"]} | seen


@pytest.mark.parametrize(
    "kind", ["ingredient", "formulation", "method", "rule", "mixing", "hazard", "practice", "source"]
)
def test_everything_listed_can_be_looked_up(kind: str) -> None:
    for one in json.loads(facts("--json").stdout)["contents"][kind][:40]:
        said = facts(one["key"])
        assert said.exit_code == 0, (one, said.output)
        assert one["key"] in said.stdout or one["title"][:40].casefold() in said.stdout.replace("\n", " ").casefold()


@pytest.mark.parametrize("columns", [60, 80, 110])
def test_a_page_keeps_to_the_width_of_the_terminal(columns: int) -> None:
    keys = ("aial", "rhca3", "ambr7", "triclopyr", "glyphosate", *load().methods)
    for key in (*keys, "rules", "mixing", "hazards", "units", "conflicts", "sources"):
        lines = facts(key, columns=columns).stdout.splitlines()
        assert all(len(line) <= columns for line in lines if " " in line.strip() and "://" not in line)


def test_a_figure_from_memory_is_marked_where_it_stands() -> None:
    said = facts("rhca3").stdout
    assert "RHCA3 [plants, from memory]" in said
    assert "sprouts again [vt_buckthorn, read]" in said
    sections = json.loads(facts("rhca3", "--json").stdout)["pages"][0]["sections"]
    remembered = [
        seen for one in sections for line in one["lines"] for seen in line["seen"] if seen["mark"] == "memory"
    ]
    assert said.count("from memory") == len(remembered) + 2  # and in the opening, and once in the legend


def test_a_remembered_figure_is_told_by_its_word_where_there_is_no_colour() -> None:
    plain = CliRunner(env={"COLUMNS": "80", "NO_COLOR": "1"}).invoke(cli, ["facts", "rhca3"], color=True).stdout
    coloured = CliRunner(env={"COLUMNS": "80", "NO_COLOR": ""}).invoke(cli, ["facts", "rhca3"], color=True).stdout
    assert "\x1b" not in plain
    assert "\x1b" in coloured
    assert "from memory" in plain


def test_marks_are_explained_only_where_they_are_met() -> None:
    assert "practice =" not in facts("L37a").stdout
    assert "ours =" in facts("basal_bark").stdout
    assert "reckoned =" not in facts("rhca3").stdout


def test_a_source_shows_what_rests_on_it() -> None:
    said = facts("MO-314").stdout
    assert "navalfacilities" in said
    assert "50 stems of 2 inches" in said


def test_a_word_with_two_pages_shows_both() -> None:
    kinds = [page["kind"] for page in json.loads(facts("gloves", "--json").stdout)["pages"]]
    assert kinds == ["mixing", "practice"]


def test_amounts_line_up() -> None:
    """Half-lives of glyphosate end in one column."""
    rows = [line for line in facts("glyphosate").stdout.splitlines() if " d  " in line]
    assert len({line.index(" d  ") for line in rows}) <= 2  # and those of leaves, in the same column
    assert len(rows) >= 5


def test_a_slip_of_the_pen_is_answered_with_near_names() -> None:
    said = facts("buckthron")
    assert said.exit_code == 2
    assert "common buckthorn" in said.stderr
    assert "common buckthorn" in json.loads(facts("buckthron", "--json").stdout)["faults"][0]["allowed"]


def test_a_name_that_is_near_nothing_is_led_to_the_list() -> None:
    said = facts("qqqq")
    assert said.exit_code == 2
    assert "rootcollar facts" in said.stderr


def test_without_a_name_there_are_counts_and_examples_to_try() -> None:
    said = facts().stdout
    plain = said.replace("\u00a0", " ")
    assert all(one.common_name in plain for one in load().species.values())
    assert all(key in said for key in (*load().ingredients, *load().formulations))
    assert all(one.title in plain for one in load().methods.values())
    assert f"plants ({len(load().species)})" in said
    examples = [line.split("facts ", 1)[1] for line in said.splitlines() if line.startswith("    rootcollar facts")]
    assert len(examples) == 3
    assert all(facts(*one.strip('"').split()).exit_code == 0 for one in examples)
    listed = json.loads(facts("--json").stdout)["contents"]
    assert len(listed["source"]) == len(load().sources)


def test_no_page_permits_anything() -> None:
    for words in (("rhca3",), ("triclopyr-bee-4-ec",)):
        assert "the label in your hand is the law" in facts(*words).stdout
