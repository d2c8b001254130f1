"""Every number of a unit's page opens: into the same number, its formulas and where they come from."""

from __future__ import annotations

import re
from collections.abc import Callable
from html import unescape
from pathlib import Path

import numpy as np
import pytest
from starlette.testclient import TestClient

from rootcollar.choose import line_minutes, line_mix_ml, line_money, replay_cost, replay_minutes, replay_mix
from rootcollar.web import Desk
from tests.web.conftest import TODAY

LINK = re.compile(r'<a class="open[^"]*" href="([^"]+)"[^>]*>([^<]+)</a>')
UNITS = ("bench", "brook-edge", "hollow", "orchard-side", "ridge", "trail-loop")
SHOWN = ("/ground", *(f"/ground/{one}" for one in UNITS), "/count", "/choose", *(f"/choose/{one}" for one in UNITS))
NUMBER = r"-?[0-9][0-9,]*(?:\.[0-9]+)?(?:e[+-][0-9]+)?"
NOT_THE_RESULT = ("doubt", "order", "not combined", "differ", "row")


def steps_of(page: str) -> list[tuple[str, str]]:
    """Return the steps of a drawer, (what, how)."""
    return [
        (what, how) for what, _, how in (unescape(one).partition(": ") for one in re.findall(r"<li>([^<]+)</li>", page))
    ]


def value(words: str) -> float:
    """Return the number that words begin with or end an equation with: "1,022 ft", "1 1/2 gal", "$1.04"."""
    after = words.rpartition(" = ")[2].lstrip("$")
    found = re.match(rf"(?:({NUMBER}) )?([0-9]+)/([0-9]+)(?= )", after)
    if found:
        return float(found[1] or 0) + int(found[2]) / int(found[3])
    whole = re.match(NUMBER, after)
    assert whole is not None, words
    return float(whole[0].replace(",", ""))


def half_a_step(words: str) -> float:
    """Return how far a number may be from what is printed of it: half of its last figure."""
    digits = re.match(r"\$?[0-9,]+\.([0-9]+)", words)
    return 0.501 * 10 ** -len(digits[1] if digits else "")


def result_of(page: str, words: str) -> float:
    """Return what the last step of a drawer comes to, in the unit of the words shown."""
    steps = [how for what, how in steps_of(page) if not what.startswith(NOT_THE_RESULT)]
    last = steps[-1].partition(" of ")[0] if " lines are work" in words else steps[-1]
    return value(last) * 100 if last.endswith(" share") else value(last)


@pytest.mark.slow
@pytest.mark.parametrize("path", SHOWN)
def test_every_number_opens_into_itself_and_its_working_comes_to_it(path: str, demo: TestClient) -> None:
    found = set(LINK.findall(demo.get(path).text))
    assert len(found) > 8
    for link, shown in found:
        where, words = unescape(link), unescape(shown)
        opened = demo.get(where)
        assert opened.status_code == 200, where
        drawer = opened.text[opened.text.index('<div class="working">') :]
        said = re.search(r"<p><b>([^<]+)</b>", drawer)
        assert said is not None, where
        assert unescape(said[1]).startswith(words), where
        if re.search("[0-9]", words):
            percent = re.search(r" = ([0-9.]+) %", steps_of(drawer)[-1][1]) if words.endswith("%") else None
            came_to = float(percent[1]) if percent else result_of(drawer, words)
            assert came_to == pytest.approx(value(words), abs=half_a_step(words)), where


@pytest.mark.slow
@pytest.mark.parametrize("path", SHOWN)
def test_every_sum_in_a_working_adds_up(path: str, demo: TestClient) -> None:
    sums = 0
    for where, _ in set(LINK.findall(demo.get(path).text)):
        for _, how in steps_of(demo.get(unescape(where)).text):
            added = re.search(rf"^({NUMBER}(?: \+ {NUMBER})+) = ({NUMBER})", how)
            if added:
                parts = [float(one) for one in added[1].split(" + ")]
                assert sum(parts) == pytest.approx(float(added[2]), rel=1e-4), where
                sums += 1
    assert sums


def test_an_area_or_distance_says_how_it_was_come_by(demo: TestClient) -> None:
    water = demo.get("/ground/brook-edge/working/water").text
    assert "outline of 13 corners to the brook, the nearest of 2 drawn" in water
    assert "geodesics on the WGS 84 ellipsoid" in demo.get("/ground/bench/working/area").text
    assert "14 % as slope in ground.toml" in demo.get("/ground/bench/working/slope").text


def test_of_what_was_typed_and_drawn_the_working_shows_both(
    woods: Path, client_of: Callable[[Path], TestClient]
) -> None:
    file = woods / "ground.toml"
    typed = 'key = "bench"\nname = "The bench"\narea = "18 ac"\nwater = "none"\nwell = "100 ft"\n'
    before = 'key = "bench"\nname = "The bench"\n'
    file.write_text(file.read_text("utf-8").replace(before, typed), "utf-8")
    client = client_of(woods)
    area = client.get("/ground/bench/working/area").text
    assert "typed: 72843.4 m2, as area in ground.toml" in area
    assert "minimum(typed m2, drawn m2) = minimum(72843.4, 81781.4) = 72843.4 m2" in area
    assert "the smaller is used" in area
    assert "<b>18 ac, area of The bench</b>" in area
    water = unescape(client.get("/ground/bench/working/water").text)
    assert 'typed: "none", somebody looked, as water in ground.toml' in water
    assert "minimum(inf, 311.648) = 311.648 m" in water
    well = client.get("/ground/bench/working/well").text
    assert "minimum(30.48, 48.0866) = 30.48 m" in well
    assert "<b>100 ft, well of The bench</b>" in well


def test_none_there_says_who_looked_and_unknown_does_not_open(
    woods: Path, client_of: Callable[[Path], TestClient]
) -> None:
    file = woods / "ground.toml"
    text = file.read_text("utf-8")
    start, end = text.index("[[well]]"), text.index("[[trail]]")
    file.write_text(text[:start] + text[end:], "utf-8")
    client = client_of(woods)
    assert "no well is drawn, and looked_for in ground.toml names well" in client.get("/ground/bench/working/well").text
    file.write_text(file.read_text("utf-8").replace('"well", ', ""), "utf-8")
    assert client.get("/ground/bench/working/well").status_code == 404
    assert "/ground/bench/working/well" not in client.get("/ground/bench").text


def test_a_kill_share_opens_into_every_row_and_their_sum(demo: TestClient) -> None:
    page = demo.get("/choose/bench").text
    found = re.findall(r'href="(/choose/reason/kill/bench/rhca3/[^"]+)"[^>]*>([0-9]+%)</a>([^<]*)', page)
    assert found
    for where, shown, after in found:
        opened = demo.get(unescape(where)).text
        source = re.search(r"\((\S+), (?:read|memory)", after)
        assert ("[ours]" if source is None else f"[{source[1]}]") in opened
        steps = steps_of(opened)
        each = {
            what: [value(how.removesuffix(" [ours]")) for name, how in steps if name == f"plants {what}"]
            for what in ("dead", "alive")
        }
        assert len([what for what, _ in steps if what == "row"]) >= len(each["dead"]) >= 1
        whole = {what: sum(parts) for what, parts in each.items()}
        share = 100 * whole["dead"] / (whole["dead"] + whole["alive"])
        assert share == pytest.approx(float(shown[:-1]), abs=0.501)


def test_a_number_worked_out_again_is_the_one_it_was_chosen_by(woods: Path) -> None:
    here = Desk(woods, lambda: TODAY).look()
    assert here.plan is not None
    lines = [one for one in here.plan.choices if one.option]
    assert lines
    for one in lines:
        stems, stem = one.stand.stems, one.per_stem
        np.testing.assert_array_equal(replay_mix(one, here.setting), line_mix_ml(stems, stem.mix_ml))
        np.testing.assert_array_equal(replay_minutes(one, here.setting), line_minutes(stems, stem.minutes))
        np.testing.assert_array_equal(replay_cost(one, here.setting), line_money(stems, stem.cost))


def test_a_units_cost_is_the_sum_of_its_lines_as_a_calculator_has_it(demo: TestClient) -> None:
    opened = unescape(demo.get("/choose/bench/working/cost").text)
    told = re.search(r"all lines that are work: ([0-9.e+ ]+) = ([0-9.e+]+) money", opened)
    assert told is not None
    parts = [float(one) for one in told[1].split(" + ")]
    lines = re.findall(r"<li>line money: .* = ([0-9.e+]+) money", opened)
    assert parts == [float(one) for one in lines]
    assert sum(parts) == pytest.approx(float(told[2]), rel=1e-5)
    shown = re.search(r"<b>\$([0-9,]+), one visit</b>", opened)
    assert shown is not None
    assert float(shown[1].replace(",", "")) == pytest.approx(float(told[2]), abs=0.51)


def test_a_count_says_which_row_it_is_and_how_its_range_is_read(demo: TestClient) -> None:
    where = re.search(r'href="(/choose/working/stems/bench/rhca3/[^"]+)"', demo.get("/choose/bench").text)
    assert where is not None
    opened = demo.get(where[1]).text
    assert "the row of tally.csv for bench, common buckthorn" in opened


@pytest.mark.parametrize("what", ["/choose/bench/working/cost", "/count/working/bench/rhca3/2.5-5.1cm"])
def test_beside_its_number_the_working_stands_alone(what: str, demo: TestClient) -> None:
    alone = demo.get(what, headers={"hx-request": "true", "hx-target": "div"}).text
    assert alone.strip().startswith('<div class="working">')
    assert "<main" not in alone
    assert "<h1>How this number was worked out</h1>" in demo.get(what).text


@pytest.mark.parametrize(
    "path",
    [
        "/choose/working/weight/bench/rhca3/2.5-5.1cm",
        "/choose/working/mix/bench/rhca3/1-2cm",
        "/choose/bench/working/weight",
        "/choose/nowhere/working/cost",
        "/choose/orchard-side/working/order",
        "/choose/nowhere/working/lines",
        "/choose/reason/weight/bench/rhca3/2.5-5.1cm?way=pull/-",
        "/choose/reason/kill/bench/rhca3/2.5-5.1cm?way=magic",
        "/choose/reason/kill/bench/rhca3/1-2cm?way=pull/-",
        "/ground/nowhere/working/area",
        "/ground/bench/working/weight",
        "/count/working/bench/oak",
        "/count/stems/bench",
    ],
)
def test_a_number_that_is_not_there_is_a_page_of_its_own(path: str, demo: TestClient) -> None:
    assert demo.get(path).status_code == 404


def test_a_days_set_up_and_travel_stand_in_the_working_of_all_visits(
    woods: Path, client_of: Callable[[Path], TestClient]
) -> None:
    plain = unescape(client_of(woods).get("/choose/ridge").text)
    assert "set_up and travel not said in own.toml, so counted as 0" in plain
    (woods / "own.toml").write_text("set_up = 40\ntravel = 60\nday = 12\n", "utf-8")
    client = client_of(woods)
    page = unescape(client.get("/choose/ridge").text)
    assert "With setting up and travel of each day." in page
    for what in ("all-hours", "all-cost"):
        opened = unescape(client.get(f"/choose/ridge/working/{what}").text)
        assert "days * (set up min + travel min)" in opened
        shown = re.search(rf'/working/{what}"[^>]*>([^<]+)<', page)
        assert shown is not None
        assert f"<b>{shown[1]}, all visits</b>" in opened
        assert result_of(opened, shown[1]) == pytest.approx(value(shown[1]), abs=half_a_step(shown[1]))
