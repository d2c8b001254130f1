"""Gloves at the bench: the label first, a remembered chart after it, and words as people type them."""

from __future__ import annotations

import pytest

from tests.cli.test_figure import asked, figure


@pytest.mark.parametrize(
    "words", ["--mix oil", "--carrier water", "--product triclopyr-bee-4-ec --carrier oil", "--material butyl"]
)
def test_every_answer_puts_the_label_first_and_calls_the_chart_remembered(words: str) -> None:
    body = asked(f"glove {words}")
    assert body["schema"] == "rootcollar/figure-glove/1"
    assert body["says"].startswith("By the label")
    assert body["details"][0].startswith("The label first")
    assert any("remembered" in one for one in body["assumed"])
    assert any(one.startswith("Never: no leather or cotton") for one in body["details"])


@pytest.mark.parametrize(
    "typed", ["oil", "Oil", "basal oil", "mineral oil", "diesel", "kerosene", "EC", "triclopyr ester", "oil in water"]
)
def test_oil_and_what_is_sold_in_it_want_laminate_or_fluoro_elastomer(typed: str) -> None:
    says = asked(f"glove --mix '{typed}'")["says"]
    assert "barrier laminate or fluoro-elastomer hold the day; nitrile or neoprene hold it in E only" in says


@pytest.mark.parametrize("typed", ["water", "water-based", "water mix", "amine", "an SL in water"])
def test_a_water_mix_says_that_it_took_a_salt_for_granted(typed: str) -> None:
    body = asked(f"glove --mix '{typed}'")
    assert "any material" in body["says"] and "ester or EC in water counts as oil" in body["assumed"][0]
    assert any("waterproof (CFR15, read)" in one for one in body["details"])


@pytest.mark.parametrize("typed", ["E", "e", "category E", "cat. E", "chemical-resistance category E", "group E"])
def test_the_letter_on_the_label_is_read(typed: str) -> None:
    body = asked(f"glove --mix '{typed}' --material nitrile")
    assert body["says"] == "By the label; by the chart nitrile in category E: the day" and body["value"] == 3


def test_an_ester_counts_as_oil_in_water_too_and_a_salt_does_not() -> None:
    assert "fluoro-elastomer" in asked("glove --product triclopyr-bee-4-ec --carrier water")["says"]
    assert "any material" in asked("glove --product glyphosate-ipa-4-sl")["says"]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("--mix oil --material butyl", "butyl in a mix with oil or an EC in it: 10 min"),
        ("--mix oil --material latex", "natural rubber in a mix with oil or an EC in it: 10 min in E, never in G"),
        ("--mix xylene --material 'nitrile gloves'", "nitrile in a mix with xylene: 10 min"),
        ("--material butyl", "butyl holds the day in A, B, C, D, F; 10 min in E, G, H"),
        ("--material 'leather gloves'", "Leather: never with herbicide, unless the label lists it"),
    ],
)
def test_a_glove_that_is_at_hand_is_held_against_the_mix(words: str, says: str) -> None:
    assert says in asked(f"glove {words}")["says"]


def test_butyl_is_named_by_the_rule_and_weak_by_the_chart_and_both_are_said() -> None:
    details = " ".join(asked("glove --mix oil")["details"])
    assert "such as nitrile or butyl" in details and "not butyl" in details


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("", "found no mix and no glove; allowed: --mix oil"),
        ("--mix honey", "allowed: what is in it: water, oil"),
        ("--mix 'methylated seed oil'", "no group for oils from seeds"),
        ("--mix oil --carrier water", "one of the two ways"),
        ("--carrier none", "--product"),
        ("--material wool", "allowed: a material: barrier laminate"),
        ("--product glyphosate-ipa-4-sl --carrier oil", "can be: water, none"),
        ("--product nonsense", "found formulation 'nonsense'"),
    ],
)
def test_what_cannot_be_answered_is_refused_in_one_sentence(words: str, says: str) -> None:
    said = figure(f"glove {words}")
    assert said.exit_code == 2
    assert says in " ".join(said.stderr.split())
    assert len(said.stderr.strip().splitlines()) <= 3
