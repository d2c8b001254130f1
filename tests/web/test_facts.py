"""Facts in the app: what the terminal tells, found by any name, each line with who says so and how it was seen."""

from __future__ import annotations

import html
import re

import pytest
from starlette.testclient import TestClient

from rootcollar.jobs.facts import contents, look_up
from rootcollar.kernel.sources import NOT_A_LABEL
from rootcollar.label import NOT_CHECKED, RULES
from rootcollar.reference import load

SOME = ("rhca3", "aial", "glyphosate", "triclopyr", "cut_stump", "foliar", "L37a", "L26", "rules", "units", "conflicts",
        "mixing", "hazards", "emergency", "posting", "gloves", "triclopyr-bee-4-ec", "mn_dnr", "sources")  # fmt: skip


def plain(page: str) -> str:
    """Return the words of a page, tags and gaps taken out, so that a link inside a sentence does not part it."""
    words = html.unescape(re.sub(r"<[^>]+>", "", page))
    return "".join(words.split())


def squeezed(words: str) -> str:
    return "".join(words.split())


@pytest.mark.parametrize("name", SOME)
def test_a_page_holds_every_line_that_the_terminal_tells(name: str, demo: TestClient) -> None:
    said = demo.get(f"/facts/{name}")
    assert said.status_code == 200
    words = plain(said.text)
    for page in look_up(name, load()).value:
        assert squeezed(page.opening) in words
        for section in page.sections:
            assert squeezed(section.title).casefold() in words.casefold()
            for line in section.lines:
                assert squeezed(line.name).casefold() in words.casefold()
                assert squeezed(line.words) in words
                if not line.months:
                    assert squeezed(line.amount) in words
        for source in page.sources:
            assert page.kind == "source" or not page.sections or squeezed(source.cite) in words or not source.url


@pytest.mark.parametrize("name", ["", *SOME])
def test_no_page_permits_anything(name: str, demo: TestClient) -> None:
    assert NOT_A_LABEL in demo.get(f"/facts/{name}").text


def test_what_is_only_remembered_is_told_by_its_word(demo: TestClient) -> None:
    page = demo.get("/facts/rhca3").text
    lines = look_up("rhca3", load()).value[0].sections
    remembered = [seen for one in lines for line in one.lines for seen in line.seen if seen.mark == "memory"]
    assert page.count("<b>from memory</b>") == len(remembered) + 1  # and once where the marks are explained


def test_the_year_shows_what_sources_name_and_apart_what_memory_names(demo: TestClient) -> None:
    seasons = [line for one in look_up("acpl", load()).value[0].sections for line in one.lines if line.months]
    page = demo.get("/facts/acpl").text
    assert page.count('class="months"') == len(seasons) > 0
    assert any("shut by memory" in line.months for line in seasons)
    for state, cell in (("named", "good"), ("remembered", "maybe"), ("shut by memory", "shut maybe")):
        assert page.count(f'<li class="{cell}"') == sum(line.months.count(state) for line in seasons)
    assert "from memory only: " in page


@pytest.mark.parametrize(
    "typed", ["RHCA3", "common buckthorn", "Rhamnus cathartica", "European buckthorn", " rhamnus  CATHARTICA "]
)
def test_a_plant_is_found_by_any_of_its_names(typed: str, demo: TestClient) -> None:
    assert "(Rhamnus cathartica)</h1>" in demo.get("/facts", params={"q": typed}).text


def test_part_of_a_name_finds_all_that_have_it(demo: TestClient) -> None:
    page = demo.get("/facts", params={"q": "buckthorn"}).text
    assert 'href="/facts/rhca3"' in page.split('class="kinds"')[0]
    assert 'href="/facts/fral4"' in page.split('class="kinds"')[0]
    assert 'value="buckthorn"' in page


@pytest.mark.parametrize("path", ["/facts?q=buckthron", "/facts/buckthron"])
def test_a_slip_of_the_pen_is_answered_with_links_to_near_names(path: str, demo: TestClient) -> None:
    said = demo.get(path)
    assert said.status_code == (200 if "?" in path else 404)
    assert 'value="buckthron"' in said.text
    near = re.search(r'href="(/facts/common%20buckthorn)"', said.text)
    assert near is not None
    assert demo.get(near[1]).status_code == 200


@pytest.mark.parametrize("name", ["qqqq", "rules qqqq", "../secret", "<b>x</b>", "a/b"])
def test_what_is_near_nothing_is_said_to_be_missing(name: str, demo: TestClient) -> None:
    said = demo.get(f"/facts/{name.replace('/', '%2F')}")
    assert said.status_code == 404
    assert "Nothing is called" in said.text
    assert "<b>x" not in said.text


def test_every_plant_and_ingredient_is_listed_and_every_kind_counted(demo: TestClient) -> None:
    page = demo.get("/facts").text
    for one in contents(load()).value:
        assert f'<span class="soft">{len(one.entries)}</span>' in page
        if one.kind not in ("rule", "source"):
            assert all(f'href="/facts/{key}"' in page for key, _ in one.entries), one.kind


def test_every_rule_and_source_has_its_page_linked_from_all_of_them(demo: TestClient) -> None:
    rules, sources = demo.get("/facts/rules").text, demo.get("/facts/sources").text
    for number in (*RULES, *(one.number for one in NOT_CHECKED)):
        assert f'href="/facts/{number}"' in rules
        assert demo.get(f"/facts/{number}").status_code == 200
    assert all(f'href="/facts/{key}"' in sources for key in load().sources)


def test_a_rule_that_a_verdict_names_leads_to_its_page(demo: TestClient) -> None:
    links = set(re.findall(r'href="(/facts/L[^"]+)"', demo.get("/choose/brook-edge").text))
    assert links
    for one in links:
        assert "<h1>Rule L" in demo.get(one).text


@pytest.mark.slow
def test_every_link_on_a_page_leads_somewhere(demo: TestClient) -> None:
    for name in ("rhca3", "glyphosate", "cut_stump"):
        page = demo.get(f"/facts/{name}").text
        for link in sorted(set(re.findall(r'href="(/facts/[^"]+)"', page))):
            assert demo.get(link).status_code == 200, link
        for anchor in re.findall(r'href="#([^"]+)"', page):
            assert f'id="{anchor}"' in page


def test_sides_that_disagree_stand_beside_each_other_with_what_is_taken(demo: TestClient) -> None:
    page = demo.get("/facts/conflicts").text
    told = [line for one in look_up("conflicts", load()).value[0].sections for line in one.lines]
    heads = [line for line in told if line.name and not line.words]
    assert page.count('class="sides"') == len(heads)
    assert page.count('class="settled"') >= len(heads)
    sides = [one.count("<li>") for one in re.findall(r'class="sides">(.*?)</ul>', page, re.S)]
    assert sum(one > 1 for one in sides) >= len(heads) - 1  # one source may disagree with a custom that it tells of


def test_facts_are_there_before_any_property_is(tmp_path, client_of) -> None:  # type: ignore[no-untyped-def]
    assert client_of(tmp_path / "none").get("/facts/rhca3").status_code == 200
