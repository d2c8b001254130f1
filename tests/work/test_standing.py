"""Trees that were killed standing stay on the paper of every later day until somebody writes that they are down."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose import Choice
from rootcollar.exchange import read_folder, write_demo
from rootcollar.jobs.plan import prepare
from rootcollar.kernel.verdict import Level
from rootcollar.label import Applied, History
from rootcollar.label.once import Heard
from rootcollar.reference import load
from rootcollar.work.standing import dead_standing, leaves_words, not_said, standing_on, standing_words
from tests.choose.hobbin import hobbin, only, plan
from tests.work.packets import hobbin_packet, made

DAY = date(2026, 10, 1)
TREATED = date(2026, 6, 20)
LATER = date(2027, 5, 1)
TREES = Applied(TREATED, "ridge", "triclopyr", 100.0, 800.0, "", True, "moal", "hack_squirt", (15.24, 25.4), 12)
ENGLISH, SPANISH = load().tongues["en"], load().tongues["es"]


def still(*rows: Applied, on: date | None = LATER) -> tuple[Applied, ...]:
    """Return which of the rows still stand on the ridge."""
    return dead_standing("ridge", History(rows), on)


def told(*changes: dict[str, Any]) -> str:
    """Return the warning of the trees, once for each change of them."""
    return standing_words([replace(TREES, **one) for one in changes or ({},)], (), load(), ENGLISH)


@pytest.mark.parametrize("method", ["hack_squirt", "basal_bark", "girdle", "injection", "thinline", "soil"])
def test_what_is_killed_on_its_feet_stands(method: str) -> None:
    assert len(still(replace(TREES, method=method))) == 1


@pytest.mark.parametrize("method", ["cut_stump", "vine_cut", "foliar", "pull", "cut", "mow", "wipe", ""])
def test_what_is_cut_off_or_low_does_not(method: str) -> None:
    assert still(replace(TREES, method=method)) == ()


def test_brush_is_left_out_and_a_stem_of_unknown_size_is_not_taken_for_brush() -> None:
    assert still(replace(TREES, diameter_cm=(5.08, 10.16))) == ()
    assert len(still(replace(TREES, diameter_cm=(5.08, 10.2)))) == 1
    assert len(still(replace(TREES, diameter_cm=None))) == 1


def test_it_stands_until_the_day_it_is_down_and_on_no_other_unit() -> None:
    down = replace(TREES, down=LATER)
    assert still(down, on=LATER - timedelta(days=1)) == (down,)
    assert still(down, on=LATER) == still(down, on=None) == ()
    assert dead_standing("bench", History((TREES,)), LATER) == ()


@given(st.dates(TREATED, date(2060, 1, 1)))
def test_time_alone_never_fells_a_tree(on: date) -> None:
    assert still(TREES, on=on) == (TREES,)


def test_the_warning_says_what_stands_and_who_may_do_what_beneath_it() -> None:
    assert told() == "Dead standing: 12 white mulberry 6\N{EN DASH}10 in, treated 2026-06-20."
    assert standing_words((), (), load(), ENGLISH) == ""
    whole = standing_on("ridge", History((TREES,)), LATER, load(), ENGLISH)
    brief = standing_on("ridge", History((TREES,)), LATER, load(), ENGLISH, "standing.brief")
    assert whole.startswith(told()) and brief.startswith(told()) and len(brief) < len(whole)
    for words in (whole, brief):
        assert "ook up" in words and "two tree lengths" in words and "trained" in words
    assert "near a power line, only tree trimmers its owner sends" in whole


def test_trees_treated_in_a_way_nobody_wrote_are_not_taken_for_none() -> None:
    bare = replace(TREES, method="", product="jug")
    assert not_said("ridge", History((bare,)), LATER) == (TREATED,)
    words = standing_on("ridge", History((bare,)), LATER, load(), ENGLISH)
    assert words.startswith("Not known whether trees stand dead") and "2026-06-20" in words and "Look up" in words
    assert standing_on("bench", History((bare,)), LATER, load(), ENGLISH) == ""
    assert not_said("ridge", History((replace(bare, down=LATER),)), LATER) == ()
    assert not_said("ridge", History((replace(bare, down=LATER),)), LATER - timedelta(days=1)) == (TREATED,)
    assert not_said("ridge", History((bare, replace(TREES, product="jug"))), LATER) == ()  # its second ingredient


def test_trees_of_one_plant_are_told_together_and_what_is_not_written_is_said() -> None:
    both = told({}, {"stems": 3, "diameter_cm": (25.4, 30.48), "on": date(2026, 8, 1)})
    assert "15 white mulberry 6\N{EN DASH}12 in, treated 2026-06-20 to 2026-08-01" in both
    assert "12 white mulberry and more, 6" in told({}, {"stems": None})
    assert "white mulberry, not counted, 6" in told({"stems": None})
    assert "12 white mulberry of no size written" in told({"diameter_cm": None})
    assert "12 trees of no kind written 6" in told({"species": ""})
    assert "12 white mulberry" in (two := told({}, {"species": "aial"})) and "12 tree-of-heaven" in two


@pytest.mark.parametrize("unit", ["ridge", "bench"])
def test_day_sheet_and_unit_page_tell_of_them_in_every_language_where_they_stand(unit: str) -> None:
    packet = hobbin_packet(unit)
    here = unit == "ridge"
    assert ("12 white mulberry" in packet.day.standing) is here
    assert ("12 white mulberry" in packet.units[0].standing) is here
    assert ("Only who is trained to fell dead trees" in packet.units[0].standing) is here
    (spanish,) = [day for code, day in packet.days if code == "es"]
    assert spanish.standing.startswith("Muertos en pie") is here


def test_a_later_day_drops_them_once_they_are_down() -> None:
    project = only(hobbin(), "ridge")
    down = replace(project, history=replace(project.history, rows=(replace(TREES, down=LATER),)))
    assert made(down, day=LATER - timedelta(days=1)).day.standing
    assert made(down, day=LATER).day.standing == ""


def cleared(one: Choice) -> Choice:
    """Return a line of which nothing is asked any more."""
    option = one.option and replace(one.option, heard=Heard((), Level.OK))
    return replace(one, option=option, total_verdicts=())


def test_what_the_plan_leaves_dead_on_its_feet_is_counted_for_next_years_crew() -> None:
    asked = [one for one in plan().choices if one.stand.unit == "ridge"]
    lines = [cleared(one) for one in asked]
    words = leaves_words(lines, load(), ENGLISH)
    assert words.startswith(
        "This plan leaves dead on their feet: 2 white mulberry 6\N{EN DASH}10 in. Write them into applied.csv"
    )
    assert leaves_words(lines, load(), SPANISH).startswith("Este plan deja muertos en pie: 2 ")
    assert leaves_words(asked, load(), ENGLISH) == ""  # held: nothing is done until it is answered
    low = [replace(one, stand=replace(one.stand, height_m=2.0)) for one in lines]
    assert leaves_words(low, load(), ENGLISH) == ""
    thin = [one for one in lines if one.stand.band_cm[1] < 11]
    assert thin and leaves_words(thin, load(), ENGLISH) == ""


def test_the_unit_page_counts_for_next_years_crew_what_may_be_worked(tmp_path: Path) -> None:
    write_demo(tmp_path / "wood", DAY)
    page = prepare(read_folder(tmp_path / "wood"), DAY, ["ridge"]).value.packet.units[0]
    assert page.leaves.startswith("This plan leaves dead on their feet: 2 white mulberry")
    assert page.standing.startswith("Dead standing: 12 white mulberry")
