"""Every page reads: it answers, names itself, and holds no code or style that the strict policy would forbid."""

from __future__ import annotations

import gzip
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar import web
from tools.shots import PAGES

INLINE = re.compile(r"<style|<script(?![^>]*\bsrc=)|\sstyle=|\son[a-z]+=|javascript:", re.I)


@pytest.mark.parametrize("path", PAGES)
def test_a_page_answers_names_itself_and_has_nothing_inline(path: str, demo: TestClient) -> None:
    said = demo.get(path)
    assert said.status_code == 200
    assert re.search(r"<title>[^<]+ · Hobbin Wood", said.text)
    assert len(re.findall(r"<h1", said.text)) >= 1
    assert not INLINE.search(said.text)
    assert "http://" not in said.text.replace("http://www.w3.org/2000/svg", "")
    assert " object at 0x" not in said.text


def test_a_page_that_is_not_there_says_so(demo: TestClient) -> None:
    said = demo.get("/no-such-page")
    assert said.status_code == 404
    assert "There is no such page." in said.text


def test_a_unit_that_is_not_there_names_the_near_ones(demo: TestClient) -> None:
    said = demo.get("/choose/bensh")
    assert said.status_code == 404
    assert "bench" in said.text


def test_a_fault_in_a_file_is_told_with_its_row(woods: Path, client_of: Callable[[Path], TestClient]) -> None:
    tally = woods / "tally.csv"
    tally.write_text(
        tally.read_text(encoding="utf-8").replace("bench,common buckthorn,1-2 in", "bench,oak,1-2 in"), "utf-8"
    )
    said = client_of(woods).get("/choose")
    assert said.status_code == 422
    assert "tally.csv" in said.text
    assert "row 4" in said.text


def test_a_number_opens_into_its_formulas_with_their_sources(demo: TestClient) -> None:
    page = demo.get("/choose/bench").text
    where = re.search(r'href="(/choose/working/mix/bench/rhca3/[^"]+)"', page)
    assert where is not None
    opened = demo.get(where[1]).text
    assert "line mix ml: stems * mix ml" in opened
    assert "geometry" in opened


def test_only_the_main_part_is_sent_where_only_that_is_swapped_in(demo: TestClient) -> None:
    part = demo.get("/choose", headers={"hx-request": "true", "hx-target": "main"}).text
    assert "<html" not in part
    assert "<main" in part


def test_scripts_weigh_at_most_80_kb_beside_the_map_library() -> None:
    static = Path(web.__file__).parent / "static"
    scripts = [file for file in static.rglob("*.js") if "leaflet" not in file.parts]
    assert {file.name for file in scripts} >= {"htmx.min.js", "grid.js", "map.js"}
    assert sum(len(gzip.compress(file.read_bytes())) for file in scripts) <= 80_000


def test_the_row_counts_the_questions_that_the_page_asks(demo: TestClient) -> None:
    asked = re.search(r"([0-9]+) open questions? holds? lines back", re.sub(r"<[^>]+>", "", demo.get("/choose").text))
    assert asked is not None
    assert f"{asked[1]} questions open" in demo.get("/ground").text
