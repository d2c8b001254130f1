"""The style page shows every element of the look once, so that a change can be seen in one place."""

from __future__ import annotations

import re
from pathlib import Path

from starlette.testclient import TestClient

from rootcollar import web

ROOM = Path(web.__file__).parent
# What is no element but the layout of one page, or is put there by a script: why, and the classes.
ELSEWHERE = {
    "where the main parts of a page stand": "two first fact packet lead ways printed contents sheets asks",
    "words over a page or a list of one kind": "opening look kinds index wider lettered initial hits shelf year",
    "put on or shown by a script": "scripted own",
    "the stems per acre beneath the tally": "dense sum",
    "the list of units beside the map": "units",
    "a question with its form, a choice with its form": "question choice",
}


def classes_of(page: str) -> set[str]:
    """Return every class a page has."""
    return {word for said in re.findall(r'class="([^"]*)"', page) for word in said.split()}


def may_be_of(template: str) -> set[str]:
    """Return every word that may be a class in a template: those of a tag behind its `class=`, and of its shape."""
    said = re.findall(r"class=([^>]*)>|block shape %\}([a-z]+)", template)
    return {word for one in said for part in one for word in re.findall(r"[a-z][a-z-]*", part)}


def missing(page: str) -> set[str]:
    """Return the classes that look.css draws and a template uses, but a page has not."""
    css = re.sub(r"/\*.*?\*/|\{[^{}]*\}", " ", (ROOM / "static" / "look.css").read_text("utf-8"), flags=re.S)
    drawn = set(re.findall(r"\.([a-z][a-z-]*)", css))
    used = {word for one in (ROOM / "templates").glob("*.html") for word in may_be_of(one.read_text("utf-8"))}
    return (drawn & used) - classes_of(page)


def test_every_element_that_is_drawn_is_on_the_page_or_excused(demo: TestClient) -> None:
    excused = {word for words in ELSEWHERE.values() for word in words.split()}
    page = demo.get("/style").text
    assert missing(page) - excused == set()
    assert excused - missing(page) == set(), "excused without need"


def test_a_missing_element_would_be_noticed(demo: TestClient) -> None:
    page = demo.get("/style").text
    assert "tape" not in missing(page)
    assert "ticks" in missing(page.replace('class="ticks"', ""))


def test_every_verdict_every_month_and_every_mark_is_there(demo: TestClient) -> None:
    page = demo.get("/style").text
    for level in ("stop", "ask", "warn", "ok"):
        assert f'<li class="verdict {level}">' in page
    for state in ("good", "maybe", "shut", "shut maybe", ""):
        assert f'<li class="{state}" title="' in page
    for kind in ("water", "well", "trail", "keep", "neighbour", "gate"):
        assert f'class="line {kind}"' in page
        assert f'class="mark {kind}"' in page
    assert 'role="status"' in page
    assert 'aria-invalid="true"' in page
    assert '<svg class="tape"' in page


def test_its_number_opens_as_everywhere(demo: TestClient) -> None:
    assert 'href="/style/working"' in demo.get("/style").text
    assert '<div class="working">' in demo.get("/style/working").text
