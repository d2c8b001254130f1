"""A mixed thicket on the unit's page, in the terminal and in JSON: flag first, bands by the body, both costs."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from rootcollar.choose import prescribe
from rootcollar.cli import plan_text, thicket_text
from rootcollar.paper import render_packet
from rootcollar.reference import load
from rootcollar.work import Project
from rootcollar.work.thicket_words import size_words, thicket_words
from tests.choose.hobbin import DAY, hobbin, only, setting_of
from tests.work.packets import made


def ridge(keep: str | None = "spicebush", name: str = "hedge") -> Project:
    """Return the demo's ridge with all its stems in one thicket."""
    project = only(hobbin(), "ridge")
    return replace(
        project, stands=tuple(replace(one, thicket=name, keep_inside=keep) for one in project.stands)
    )  # fmt: skip


def test_the_unit_page_prints_one_instruction_with_both_costs() -> None:
    packet = made(ridge(), ["ridge"])
    ((title, level, lines),) = packet.units[0].thickets
    assert title.startswith("Mixed thicket, hedge")
    assert level == ""
    assert lines[0] == "First flag what is to stay inside, and leave it: spicebush. No leaf is sprayed here"
    bands = [one for one in lines if one.startswith(("Up to a", "Thicker than a"))]
    assert 1 < len(bands) <= 3
    assert "(2 in)" in " ".join(bands)
    assert "wrist" in " ".join(bands)
    assert any(one.startswith("Pass 1, ") for one in lines)
    assert any("choosing for each kind and size by itself $" in one for one in lines)
    assert render_packet(packet, made_on=DAY)[:4] == b"%PDF"


def test_a_unit_without_a_thicket_says_nothing_of_it() -> None:
    assert made(ridge(name=""), ["ridge"]).units[0].thickets == ()


@pytest.mark.parametrize(("keep", "words"), [(None, "look first, flag it"), ("", "Somebody looked")])
def test_unknown_is_looked_for_and_never_taken_as_none(keep: str | None, words: str) -> None:
    here = ridge(keep)
    setting = setting_of(here)
    (one,) = thicket_words(prescribe(here.stands, setting), setting)
    assert words in one.lines[0]


def test_a_thicket_with_an_open_question_is_held() -> None:
    project = only(hobbin(), "orchard-side")
    here = replace(project, stands=tuple(replace(one, thicket="hedge", keep_inside="") for one in project.stands))
    setting = setting_of(here)
    (one,) = thicket_words(prescribe(here.stands, setting), setting)
    assert one.level == "ask"
    assert any(words.startswith("Held until answered") for words in one.lines)
    assert "(?)" in list(thicket_text.summary(prescribe(here.stands, setting), setting))[1]


def test_the_terminal_and_json_say_the_same_as_paper() -> None:
    here = ridge()
    setting = setting_of(here)
    plan = prescribe(here.stands, setting)
    (one,) = plan_text.as_json(here, plan, setting)["thickets"]
    json.dumps(one)
    (_, _, printed), = made(here, ["ridge"], prescription=plan).units[0].thickets  # fmt: skip
    assert one["words"] == list(printed)
    assert one["keep_inside"] == "spicebush"
    assert {key for band in one["bands"] for key in band["lines"]} == {line.stand.key for line in plan.choices}
    assert one["cost"] >= one["cost_by_kind_and_size"] > 0
    told = " ".join(part.strip() for part in thicket_text.summary(plan, setting))
    for words in printed:
        assert words in told


def test_a_thickness_is_told_by_the_body_with_its_inches() -> None:
    thumb, wrist, thigh = load().body
    assert size_words(None, thumb) == "Up to a thumb (1 in)"
    assert size_words(thumb, wrist) == "Thicker than a thumb (1 in), up to a wrist (2 in)"
    assert size_words(thigh, None) == "Thicker than a thigh (6 in)"
    assert size_words(None, None) == "Every stem"


def test_a_class_that_reaches_into_the_next_band_is_named() -> None:
    project = ridge()
    stands = tuple(
        replace(one, band_cm=(3.81, 8.89)) if one.band_cm == (5.08, 10.16) else one for one in project.stands
    )
    here = replace(project, stands=stands)
    setting = setting_of(here)
    (one,) = thicket_words(prescribe(here.stands, setting), setting)
    split = [words for words in one.lines if words.startswith("Counted in the band of their middle")]
    cut = " ".join(words for words in one.lines if words.startswith(("Up to a wrist", "Thicker than a wrist")))
    assert bool(split) is bool(cut)
    assert all("1.5–3.5 in" in words for words in split)
