"""Every number of a packet's page that was worked out opens: into the same number, by steps a calculator follows."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from datetime import date
from html import unescape
from pathlib import Path

import numpy as np
import pytest
from starlette.testclient import TestClient

from rootcollar.kernel.formula import FORMULAS, as_tree, evaluate, watch
from rootcollar.kernel.units import convert
from rootcollar.kernel.working import walk
from rootcollar.web import Desk
from rootcollar.web.views import prepare as views
from rootcollar.web.views.packet_numbers import numbers_of
from rootcollar.work.worked import Number
from tests.web.conftest import TODAY

LINK = re.compile(r'<a class="open" href="([^"]+)"[^>]*aria-label="([^"]+)"[^>]*>([^<]+)</a>')
UNITS = ("ridge", "trail-loop", "bench", "hollow", "orchard-side", "brook-edge")
SECTIONS = ("day-sheet", "mix-cards", "shopping", "gear-and-crew", "top-up-card", "spill-and-first-aid",
            "leftover-rinse-water-empty-jugs", "signs")  # fmt: skip
CELLS = re.compile(r"<t[dh][^>]*>(?:(?!</t[dh]>).)*</t[dh]>|<dd[^>]*>(?:(?!</dd>).)*</dd>", re.S)


@pytest.fixture(scope="module")
def opened(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Number]:
    """Every number of the demo's packet of all units that opens, by its place."""
    from rootcollar.exchange import write_demo

    folder = tmp_path_factory.mktemp("opened") / "hobbin-wood"
    write_demo(folder, TODAY)
    here = Desk(folder, lambda: TODAY).look()
    return dict(numbers_of(views.packet_view(here, views.Wanted())))


def first(value: object) -> float:
    """Return the best figure of a number or of worlds."""
    return float(np.ravel(np.asarray(value))[0])


def nodes_of(one: Number) -> tuple[object, list[dict[str, object]]]:
    """Return the number worked out again, and every step of it."""
    with watch() as steps:
        value = one.again()
    return value, [dict(node) for step in steps for _, node in walk(as_tree(step))]


def test_every_sheet_with_numbers_has_some_that_open(opened: dict[str, Number]) -> None:
    assert {place.partition("/")[0] for place in opened} == set(SECTIONS)
    assert len(opened) > 250


def test_a_number_worked_out_again_is_the_one_that_is_shown(opened: dict[str, Number]) -> None:
    for place, one in opened.items():
        value, nodes = nodes_of(one)
        assert one.write(value) == one.words, place
        results = [node["result"] for node in nodes if isinstance(node["result"], int | float)]
        assert any(math.isclose(found, first(value), rel_tol=1e-9, abs_tol=1e-9) for found in results), place


def test_every_step_of_every_working_can_be_redone(opened: dict[str, Number]) -> None:
    sums = 0
    for place, one in opened.items():
        for node in nodes_of(one)[1]:
            says, inputs, result = str(node["says"]), node["inputs"], node["result"]
            if node["formula"] in FORMULAS:
                assert isinstance(inputs, dict)
                assert first(evaluate(says, inputs)) == pytest.approx(result, rel=1e-9, abs=1e-9), place
            elif re.fullmatch(r"[0-9.e+* -]+", says):  # a sum of parts, as printed: six figures each
                assert float(evaluate(says, {})) == pytest.approx(result, rel=1e-4, abs=1e-2), (place, says)
                sums += 1
    assert sums > 50


def amounts(words: str) -> Iterator[tuple[float, str]]:
    """Yield the amounts in a text with one plain figure and a unit: "5.11 gal", "74 mL"."""
    for figure, unit in re.findall(r"(?<![\d/ ])(\d[\d,]*(?:\.\d+)?) (gal|qt|fl oz|mL|lb|ft|h)\b", words):
        yield float(figure.replace(",", "")), unit


@pytest.mark.slow
def test_the_last_step_rounded_is_the_shown_number(demo: TestClient) -> None:
    """Read off the page itself, and turned into the shown unit here."""
    held = 0
    for where, _, words in LINK.findall(demo.get("/prepare?unit=ridge").text):
        page = unescape(demo.get(unescape(where)).text)
        last = re.search(r"<li>as it is shown: (\S+) (\S+) = (.+)</li>\s*</ol>", page)
        assert last is not None, where
        assert last[3] == unescape(words)
        value, unit = float(last[1]), last[2]
        for figure, shown in list(amounts(unescape(words)))[:1]:
            if re.fullmatch(r"[\d,.]+ (fl )?\w+( \(.*)?", unescape(words)):
                assert convert(value, unit, shown) == pytest.approx(figure, rel=0.06), (where, words)
                held += 1
        if unit == "money":
            assert value == pytest.approx(float(re.sub(r"[$,]| .*", "", unescape(words))), abs=0.51)
            held += 1
        if unit in ("stems", "%"):
            assert value == pytest.approx(float(re.sub(r",| .*", "", unescape(words))), rel=0.01)
            held += 1
    assert held > 60


@pytest.mark.slow
@pytest.mark.parametrize("unit", UNITS)
def test_every_link_of_a_units_packet_opens_into_itself(unit: str, demo: TestClient) -> None:
    for asked in (f"unit={unit}", f"unit={unit}&day=2026-10-09&language=es&paper=a4")[: 2 if unit == "bench" else 1]:
        for where, about, words in LINK.findall(demo.get(f"/prepare?{asked}").text):
            assert unescape(where).endswith(f"?{asked}"), where
            assert about.endswith("show the working")
            page = demo.get(unescape(where))
            assert page.status_code == 200, where
            said = re.search(r'<div class="working">\s*<p><b>([^<]+)</b>', page.text)
            assert said is not None
            assert unescape(said[1]) == unescape(words)
            assert page.text.count("<li>") > 1


COMPUTED = {
    "day-sheet": ("Stems", "In all"),
    "shopping": ("Need", "To buy", "Stems", "Hours", "Labour", "Together (10–90 %)"),
    "top-up-card": ("Product", "Strength", "Planned", "On any acre"),
    "leftover-rinse-water-empty-jugs": ("Each rinse", "All rinses: off the tank's water"),
}


def test_no_figure_of_a_computed_column_is_left_shut(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=ridge").text
    found = 0
    for anchor, heads in COMPUTED.items():
        sheet = page[page.index(f'id="{anchor}"') :]
        sheet = sheet[: sheet.index("</details>")]
        for head in heads:
            cells = re.findall(rf'<td data-word="{re.escape(head)}"[^>]*>(.*?)</td>', unescape(sheet), re.S)
            assert cells, head
            for cell in cells:
                bare = re.sub(r"<[^>]+>", "", cell)
                if re.search(r"\d", bare) and not bare.startswith("cannot"):
                    assert 'class="open"' in cell, (anchor, head, bare)
                    found += 1
    assert found > 40


def test_a_sum_shows_its_parts(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=bench").text
    where = [one for one in LINK.findall(page) if "All lines" in one[1] and "Together" in one[1]]
    opened = unescape(demo.get(unescape(where[0][0])).text)
    labour = re.search(r"labour, all lines: ([0-9.e+ ]+) = ([0-9.e+]+) money", opened)
    both = re.search(r"labour and mix: ([0-9.]+) \+ ([0-9.]+) = ([0-9.]+) money", opened)
    assert labour is not None
    assert both is not None
    assert sum(map(float, labour[1].split(" + "))) == pytest.approx(float(labour[2]), rel=1e-5)
    assert float(both[1]) == float(labour[2])
    assert float(both[1]) + float(both[2]) == pytest.approx(float(both[3]), rel=1e-5)


def test_a_figure_off_a_label_says_where_it_stands(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=ridge").text
    signs = page[page.index('id="signs"') :]
    where = LINK.findall(signs)[0][0]
    assert re.search(r"the label: .+\(label page \d+\) = \d+ h", demo.get(unescape(where)).text)


@pytest.mark.parametrize("place", ["shopping/0/0/0/0", "shopping/99/0/2/0", "nowhere", "day-sheet/x/y/z/0"])
def test_a_place_without_such_a_number_is_a_page_of_its_own(place: str, demo: TestClient) -> None:
    assert demo.get(f"/prepare/working/{place}?unit=ridge").status_code == 404


def test_beside_its_number_the_working_stands_alone(demo: TestClient) -> None:
    where = unescape(LINK.findall(demo.get("/prepare").text)[0][0])
    alone = demo.get(where, headers={"hx-request": "true", "hx-target": "div"}).text
    assert alone.strip().startswith('<div class="working">')
    assert "<main" not in alone
    assert "<h1>How this number was worked out</h1>" in demo.get(where).text


@pytest.mark.slow
def test_another_day_has_its_own_working(woods: Path) -> None:
    here = Desk(woods, lambda: TODAY).look()
    for day in (date(2026, 9, 21), date(2026, 5, 12)):
        for place, one in numbers_of(views.packet_view(here, views.Wanted((), day))).items():
            assert one.write(one.again()) == one.words, (place, day)
