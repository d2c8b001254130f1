"""Typing a label in the terminal: in its own order, kept as it goes, contradictions told; reading it blind again."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from rootcollar.cli.main import cli
from rootcollar.exchange import read_folder, sheet_as_typed, write_demo
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.shelf import SECTIONS, Shape, asked_again, field_at, twice, walk

KEY = "glyphosate-3-sl"
OTHER = "Elspeth Tarn"
NAME = "GLYPHOSATE 3 SL (INVENTED LABEL, DEMO ONLY)"


@pytest.fixture
def woods(tmp_path: Path) -> Path:
    folder = tmp_path / "wood"
    write_demo(folder, DEMO_DAY)
    return folder


def run(*words: object, lines: list[str] | None = None) -> Result:
    return CliRunner().invoke(
        cli, ["shelf", *map(str, words)], input="\n".join([*(lines or []), ""]) if lines else None
    )


def typing(cells: Mapping[str, str], shape: Shape) -> list[str]:
    """Return what a person types who knows every line, in the order they are asked."""
    said = [cells["proof.read_by"]]
    for section in SECTIONS:
        if "ingredient" in section.lines:
            said.append(str(shape.ingredients))
        if "site" in section.lines:
            said.append(str(shape.sites))
        if "method" in section.lines:
            said.append("; ".join(shape.methods).replace("_", " "))
        asked = [one for one in walk(section, shape) if one not in DONE]
        said += [cells.get(one, "") for one in asked]
    return said


DONE = ("identity.product_name", "proof.read_by", "proof.read_on")


def test_a_whole_label_is_typed_line_by_line_in_its_own_order(woods: Path) -> None:
    typed = sheet_as_typed(woods, KEY)
    shape = Shape(1, 4, tuple(typed.sheet.methods))
    done = run("add", woods, lines=[NAME, *typing(typed.cells, shape)])
    assert done.exit_code == 0, done.output
    made = sheet_as_typed(woods, "glyphosate-3-sl-invented-label-demo-only")
    but = {"proof.read_on": typed.cells["proof.read_on"]}
    assert {**made.cells, **but} == dict(typed.cells)
    front, aid = done.output.index("Front panel ("), done.output.index("First aid (")
    assert front < done.output.index("signal word (DANGER, WARNING, CAUTION, none)") < aid
    assert (
        aid < done.output.index("most on an acre in a year, the figure") < done.output.index("Storage and disposal (")
    )
    assert "Not read yet" in done.output and "most treatments in a year" not in done.output.split("has ")[-1]


def test_each_question_says_what_it_is_in_which_unit_and_what_may_be_typed(woods: Path) -> None:
    said = run("add", woods, "my-jug", lines=["Ottoline", "1", "My jug", ">"] + [">"] * 20).output
    assert "name of the product as printed (the label's words)" in said
    said = run("add", woods, KEY, "--all", lines=["", ""] + [""] * 300).output
    assert re.search(r"weight of a gallon of the product \(a number in lb/gal\) \[9.87\]", said)
    assert "whether RESTRICTED USE PESTICIDE stands on the label (yes or no) [no]" in said


def test_stopping_loses_nothing_and_it_is_taken_up_again(woods: Path) -> None:
    stopped = run("add", woods, "my-jug", lines=["Ottoline", "1", "1", "My jug", "silent"])
    assert stopped.exit_code == 0 and "What was typed is kept" in stopped.output
    kept = sheet_as_typed(woods, "my-jug")
    assert kept.cells["proof.read_by"] == "Ottoline" and kept.cells["identity.page"] == "1"
    assert kept.cells["identity.restricted_use"] == "silent"
    again = run("add", woods, "my-jug", lines=["1", "general"])
    assert "name of the product" not in again.output
    assert sheet_as_typed(woods, "my-jug").cells["identity.classification"] == "general"


def test_a_line_taken_back_is_not_read(woods: Path) -> None:
    asked = [one for one in walk(SECTIONS[0], Shape()) if field_at(one)]
    assert asked[1] == "identity.restricted_use"
    run("add", woods, KEY, "--all", lines=["1", "", "", "-", ">"])
    assert "identity.restricted_use" not in sheet_as_typed(woods, KEY).cells


def test_what_a_line_cannot_hold_is_asked_again(woods: Path) -> None:
    done = run("add", woods, "my-jug", lines=["Ottoline", "x", "1", "1", "My jug", "maybe", "no"])
    assert "Wanted: a whole number, 1 to 40." in done.output and "wanted: yes or no" in done.output
    assert sheet_as_typed(woods, "my-jug").cells["identity.restricted_use"] == "no"


@pytest.mark.parametrize(("answer", "kept"), [("y", "4"), ("n", "3")])
def test_a_contradiction_is_told_at_once_and_kept_only_as_printed(answer: str, kept: str, woods: Path) -> None:
    path = woods / "shelf" / f"{KEY}.toml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("ae_lb_per_gal = 3.0\n", ""), encoding="utf-8")
    done = run("add", woods, KEY, lines=["1", "1", "4", answer, "3"])
    assert "30.4 % acid of 9.87 lb/gal is 3 lb/gal, but 4 lb/gal was typed" in " ".join(done.output.split())
    assert sheet_as_typed(woods, KEY).cells["ingredient.1.ae_lb_per_gal"] == kept


def test_json_stands_alone_on_the_first_stream(woods: Path) -> None:
    done = run("add", woods, "my-jug", "--json", lines=["Ottoline", "1", "1", "My jug"])
    body = json.loads(done.stdout)
    assert body["schema"] == "rootcollar/shelf-add/1" and body["lines"]["identity.product_name"]["page"] == "1"
    assert "hazard.signal_word" in body["unread"]


def test_a_folder_that_is_no_property_is_refused(tmp_path: Path) -> None:
    for words in (["add", tmp_path], ["second", tmp_path, "x"]):
        done = run(*words)
        assert done.exit_code == 2 and "no property" in done.output


def test_show_tells_every_sheet_and_a_sheet_in_full(woods: Path) -> None:
    assert "1 line not read yet" in run("show", woods).output
    said = " ".join(run("show", woods, KEY).output.split())
    assert "Read by Ottoline Fernwick (invented), 2026-02-14. Nobody has read it a second time." in said
    assert "most on an acre in a year, the figure: 6 (page 8)" in said
    assert "most treatments in a year: not read yet" not in said
    body = json.loads(run("show", woods, "--json").output)
    assert len(body["sheets"]) == 4 and body["sheets"][0]["readings_agree"] is False
    assert run("show", woods, "no-such").exit_code == 2


def answers(woods: Path, **other: str) -> list[str]:
    sheet = read_folder(woods).shelf[KEY]
    return [other.get(one.ask.replace(".", "_"), one.first) for one in asked_again(sheet)]


def test_the_second_reader_sees_nothing_of_the_sheet(woods: Path) -> None:
    done = run("second", woods, KEY, "--by", OTHER, lines=[""] * 300)
    assert done.exit_code == 1
    asked = [line for line in done.output.splitlines() if "(" in line]
    firsts = [one.first for one in asked_again(read_folder(woods).shelf[KEY]) if one.field.kind == "number"]
    assert firsts and not any("[" in line for line in asked)
    assert "4.05" not in done.output and "long sleeves" not in done.output


def test_two_readings_that_agree_are_told_so(woods: Path) -> None:
    done = run("second", woods, KEY, lines=[OTHER, *answers(woods)])
    assert done.exit_code == 0 and "the two agree" in " ".join(done.output.split())
    assert twice(read_folder(woods).shelf[KEY]).agrees


def test_a_difference_is_shown_with_both_and_the_page_and_is_asked_again_alone(woods: Path) -> None:
    done = run("second", woods, KEY, "--by", OTHER, lines=answers(woods, limits_per_year_amount="8"))
    said = " ".join(done.output.split())
    assert done.exit_code == 1
    assert "the figure (label page 8): the sheet has 6; Elspeth Tarn read 8." in said and "Neither counts" in said
    again = run("second", woods, KEY, "--by", OTHER.upper(), lines=["6"])
    assert again.exit_code == 0 and again.output.count("(a number") == 1


def test_the_first_reader_and_another_third_are_met_plainly(woods: Path) -> None:
    same = run("second", woods, KEY, "--by", "ottoline fernwick (INVENTED)")
    assert same.exit_code == 2 and "another person than Ottoline Fernwick" in same.output
    run("second", woods, KEY, "--by", OTHER, lines=answers(woods))
    third = run("second", woods, KEY, "--by", "Rowan Pike", lines=["n"])
    assert "Elspeth Tarn has read" in third.output and read_folder(woods).shelf[KEY].second.read_by == OTHER
