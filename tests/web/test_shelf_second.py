"""The second reading in the app: blind, by another person, compared line by line, taken only when both agree."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.exchange import read_folder
from rootcollar.shelf import asked_again, twice
from tests.web.test_shelf_edit import fault_at, fields

Client = Callable[[Path], TestClient]
KEY = "glyphosate-3-sl"
SECOND = f"/shelf/{KEY}/second"
OTHER = "Elspeth Tarn"


def answers(woods: Path) -> dict[str, str]:
    return {one.ask: one.first for one in asked_again(read_folder(woods).shelf[KEY])}


def typed(client: TestClient, woods: Path, **other: str) -> dict[str, str]:
    return fields(client.get(SECOND).text) | answers(woods) | {"read_by": OTHER} | other


def test_nothing_of_the_sheet_stands_in_the_form(demo: TestClient) -> None:
    page = demo.get(SECOND).text
    shown = fields(page)
    assert {said for name, said in shown.items() if name != "stamp"} == {""}
    assert not any(one.startswith("silent.") for one in shown)
    assert "4.05" not in page and "long sleeves" not in page


def test_two_readings_alike_agree_and_both_names_are_shown(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    said = client.post(SECOND, data=typed(client, woods), follow_redirects=False)
    assert said.headers["location"] == f"/shelf/{KEY}#readings"
    assert twice(read_folder(woods).shelf[KEY]).agrees
    page = client.get(f"/shelf/{KEY}").text
    assert f"and {OTHER} have read" in page and 'id="readings"' not in page


def test_a_difference_is_shown_with_its_page_and_goes_when_the_sheet_is_mended(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    client.post(SECOND, data=typed(client, woods, **{"limits.per_year.amount": "8"}))
    page = re.sub(r"<[^>]+>", " ", client.get(f"/shelf/{KEY}").text)
    assert re.search(r"Most on an acre in a year, the figure\s+8\s+6\s+8\s", page)
    blind = client.get(SECOND).text
    assert "The two readings differ here" in blind and fields(blind)["limits.per_year.amount"] == "8"
    edit = f"/shelf/{KEY}/edit"
    client.post(edit, data=fields(client.get(edit).text) | {"do": "save", "limits.per_year.amount": "8"})
    assert twice(read_folder(woods).shelf[KEY]).agrees


def test_the_first_reader_is_refused_and_nothing_typed_is_lost(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    said = client.post(SECOND, data=typed(client, woods, read_by=" ottoline FERNWICK (invented)"))
    assert said.status_code == 422 and "another person than Ottoline Fernwick" in fault_at(said.text, "read_by")
    assert fields(said.text)["limits.per_year.amount"] == "6"
    assert read_folder(woods).shelf[KEY].second is None


def test_a_slip_is_told_at_its_line(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    said = client.post(SECOND, data=typed(client, woods, **{"limits.per_year.amount": "six"}))
    assert said.status_code == 422 and "a number" in fault_at(said.text, "limits.per_year.amount")
    assert read_folder(woods).shelf[KEY].second is None


def test_another_person_begins_anew_without_the_lines_of_the_one_before(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    client.post(SECOND, data=typed(client, woods))
    assert fields(client.get(SECOND).text)["limits.per_year.amount"] == "6"
    anew = fields(client.get(f"{SECOND}?anew=yes").text)
    assert anew["limits.per_year.amount"] == "" and anew["read_by"] == ""


def test_a_sheet_changed_meanwhile_is_told(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    sent = typed(client, woods)
    path = woods / "shelf" / f"{KEY}.toml"
    path.write_text(path.read_text(encoding="utf-8").replace('lot = "silent"', 'lot = "A 17"'), encoding="utf-8")
    said = client.post(SECOND, data=sent)
    assert said.status_code == 409 and "changed meanwhile" in said.text
    assert fields(said.text)["limits.per_year.amount"] == "6"


@pytest.mark.parametrize("line", ['read_by = "Ottoline Fernwick (invented)"\n'])
def test_without_a_first_reader_the_page_says_what_to_do(line: str, woods: Path, client_of: Client) -> None:
    path = woods / "shelf" / f"{KEY}.toml"
    path.write_text(path.read_text(encoding="utf-8").replace(line, ""), encoding="utf-8")
    client = client_of(woods)
    assert "Nobody has said who read this label first" in client.get(SECOND).text
    assert client.post(SECOND, data=typed(client, woods)).status_code == 422


def test_real_ground_asks_until_two_have_read(woods: Path, client_of: Client) -> None:
    ground = woods / "ground.toml"
    ground.write_text(ground.read_text(encoding="utf-8").replace("demo = true", "demo = false"), encoding="utf-8")
    for file in (woods / "shelf").glob("*.toml"):  # numbers of the form of real ones
        file.write_text(file.read_text(encoding="utf-8").replace("00000-000", "99999-"), encoding="utf-8")
    said = client_of(woods).get("/choose/questions").text
    assert "only one person has read" in said
