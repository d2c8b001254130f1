"""Choosing otherwise and answering: kept with reason, name and date, seen at once, and never past a stop."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.exchange import read_folder
from rootcollar.jobs.plan import prescribed, setting_of
from tests.web.conftest import TODAY

Client = Callable[[Path], TestClient]


def line_and_ways(folder: Path) -> tuple[str, list[str]]:
    """Return the bench's buckthorn of 1 to 2 inches, and the ways a person may choose for it."""
    project = read_folder(folder)
    plan = prescribed(project, setting_of(project, TODAY))
    line = next(one for one in plan.choices if one.stand.key.startswith("bench/rhca3") and one.stand.band_cm[0] == 2.54)
    return line.stand.key, [line.way.key, *(one.way.key for one in line.set_aside if one.open)]


def test_a_choice_is_kept_with_its_reason_and_seen_at_once(woods: Path, client_of: Client) -> None:
    line, ways = line_and_ways(woods)
    client = client_of(woods)
    before = client.get("/choose/bench").text
    told = {"line": line, "way": ways[1], "reason": 'no oil "this" season', "by": "Ottoline Fernwick"}
    said = client.post("/choose/bench", data=told)
    assert said.status_code == 200
    assert said.url.path == "/choose/bench"
    kept = tomllib.loads((woods / "choices.toml").read_text(encoding="utf-8"))["choice"][-1]
    assert kept == {**told, "on": TODAY}
    assert "chosen by Ottoline Fernwick, 2026-03-02: no oil" in said.text
    assert re.search(r'id="' + line, said.text)
    amounts = [re.findall(r'working/mix/([^"]+)"[^>]*>([0-9.]+ [a-z ]+)<', text) for text in (before, said.text)]
    assert dict(amounts[0])[line] != dict(amounts[1]).get(line)
    assert {key: words for key, words in amounts[0] if key != line} == {
        key: words for key, words in amounts[1] if key != line
    }


def test_what_hurts_of_the_plants_worked_stands_on_the_units_page(woods: Path, client_of: Client) -> None:
    told = client_of(woods).get("/choose/bench").text
    assert "Thorns, common buckthorn: sleeves" in told


def test_a_choice_is_taken_back(woods: Path, client_of: Client) -> None:
    line, ways = line_and_ways(woods)
    client = client_of(woods)
    before = client.get("/choose/bench").text
    for way in (ways[1], "ranking"):
        client.post("/choose/bench", data={"line": line, "way": way, "reason": "trying", "by": "A"})
    assert client.get("/choose/bench").text == before


def test_a_choice_without_a_reason_is_asked_for_it_and_nothing_typed_is_lost(woods: Path, client_of: Client) -> None:
    line, ways = line_and_ways(woods)
    said = client_of(woods).post(
        "/choose/bench", data={"line": line, "way": ways[1], "reason": " ", "by": "Juniper M."}
    )
    assert said.status_code == 422
    assert "Wanted: why, in a few words." in said.text
    assert 'value="Juniper M."' in said.text
    assert not (woods / "choices.toml").exists() or "Juniper" not in (woods / "choices.toml").read_text(
        encoding="utf-8"
    )


def test_what_only_a_source_is_against_is_done_with_a_reason_and_shown_with_name_and_date(
    woods: Path, client_of: Client
) -> None:
    line, _ = line_and_ways(woods)
    client = client_of(woods)
    assert "cut only: a source advises against it" in client.get("/choose/bench").text
    told = {"line": line, "way": "cut/-", "reason": "goats come in June", "by": "Ottoline Fernwick"}
    said = client.post("/choose/bench", data=told).text
    assert "done against a source, for the own reason of Ottoline Fernwick, 2026-03-02 (goats come in June)" in said
    after = read_folder(woods)
    choices = prescribed(after, setting_of(after, TODAY)).choices
    assert {one.way.key for one in choices if one.stand.key == line} == {"cut/-"}


def test_what_a_rule_stops_is_not_followed_and_said(woods: Path, client_of: Client) -> None:
    project = read_folder(woods)
    plan = prescribed(project, setting_of(project, TODAY))
    line, stopped = next((one, aside) for one in plan.choices for aside in one.set_aside if one.option and aside.stop)
    unit = line.stand.unit
    told = {"line": line.stand.key, "way": stopped.way.key, "reason": "habit", "by": "A"}
    client = client_of(woods)
    said = client.post(f"/choose/{unit}", data=told).text
    assert "is not followed" in said
    after = read_folder(woods)
    choice = {one.stand.key: one for one in prescribed(after, setting_of(after, TODAY)).choices}[line.stand.key]
    assert choice.way.key == line.way.key


def test_an_answer_settles_a_question_and_is_kept_with_name_and_date(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    assert "Holds 7 lines on Brook edge" in client.get("/choose/questions").text
    told = {"rule": "L16", "about": "brook-edge", "answer": "yes", "by": "Ottoline Fernwick", "note": "all along it"}
    said = client.post("/choose/questions", data={**told, "page": "7"})
    assert said.url.path == "/choose/questions"
    assert '<option value="brook-edge"' not in said.text
    kept = tomllib.loads((woods / "answers.toml").read_text(encoding="utf-8"))["answer"][-1]
    shelf = {key: sheet.stamp for key, sheet in read_folder(woods).shelf.items()}
    assert kept == {**told, "on": TODAY, "page": "7", "sheets": shelf}


def test_an_answer_about_a_label_is_asked_again_when_its_sheet_is_changed(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    told = {"rule": "L16", "about": "brook-edge", "answer": "yes", "by": "Ottoline Fernwick", "note": ""}
    assert '<option value="brook-edge"' not in client.post("/choose/questions", data=told).text
    for sheet in (woods / "shelf").glob("*.toml"):
        text = sheet.read_text(encoding="utf-8")
        sheet.write_text(text.replace('label_version = "demo-1"', 'label_version = "demo-2"'), encoding="utf-8")
    again = client.get("/choose/questions").text
    assert '<option value="brook-edge"' in again
    assert "the label sheet was changed since: to be answered again" in again


@pytest.mark.parametrize("left_out", ["by", "answer", "about"])
def test_an_answer_without_name_or_word_is_asked_for_it(left_out: str, woods: Path, client_of: Client) -> None:
    told = {"rule": "L16", "about": "brook-edge", "answer": "yes", "by": "Ottoline", "note": "seen it"}
    before = (woods / "answers.toml").read_bytes()
    said = client_of(woods).post("/choose/questions", data={k: v for k, v in told.items() if k != left_out})
    assert said.status_code == 422
    assert "Wanted:" in said.text or left_out == "about"
    assert (woods / "answers.toml").read_bytes() == before


def test_the_choose_page_says_what_is_missing_and_what_opens_most(woods: Path, client_of: Client) -> None:
    told = client_of(woods).get("/choose").text
    assert "Do first: " in told and "Missing now: " in told
