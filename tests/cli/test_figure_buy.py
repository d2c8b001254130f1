"""Shopping asked in the shed: as people write it, refused in a sentence where it is nonsense."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests import draws
from tests.cli.test_figure import answered_first, asked, figure, held_together

GAL = 3785.411784
ANSWERED = [
    "buy --need '2.3 gal'",
    "buy --need '2.3 gal' --sizes '1 qt, 1 gal, 2.5 gal' --price '1 gal=95, 2.5 gal=210' --have '1 qt'",
    "buy --need '5 L' --price '1 L = 30; 5 L = $99.50'",
    "buy --need 'half a gallon' --kind surfactant",
]


@pytest.mark.parametrize("words", ANSWERED)
def test_an_answer_has_every_key_and_a_working_that_can_be_redone(words: str) -> None:
    assert held_together(words)
    answered_first(words)


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("--need '2.3 gal' --price '1 qt=30,1 gal=95,2.5 gal=$210' --have '1 qt'", "buy 1 × 2.5 gal, for $210.00"),
        ("--need '2.3 gal' --price '1 gal at 60 and 2.5 gal for 210'", "Buy 3 × 1 gal, for $180.00"),
        ("--need 1.6gal --sizes '1 qt, 1 gal, 2.5 gal'", "Buy 3 × 1 qt and 1 × 1 gal;"),
        ("--need '10 gal' --sizes '1, 2.5 and 5 gal'", "Buy 2 × 5 gal; nothing left over"),
        ("--need '2 qt' --sizes 'a quart'", "Buy 2 × 1 qt; nothing left over"),
        ("--need '3 qt' --kind oil", "Buy 1 × 1 gal; 32 fl oz (946 mL) left over"),
        ("--need '2 gal' --have '3 gal'", "Nothing to buy: 3 gal (11.4 L) at hand cover 2 gal (7.57 L)"),
    ],
)
def test_the_answer_in_one_line(words: str, says: str) -> None:
    assert says in asked(f"buy {words}")["says"]


def test_what_leaves_least_over_is_told_where_it_is_dearer() -> None:
    body = asked("buy --need '2.05 gal' --price '1 qt=30, 1 gal=95, 2.5 gal=210'")
    assert body["figures"]["cost"] == 210
    assert any("Least left over: 1 × 1 qt and 2 × 1 gal for $220.00" in one for one in body["details"])


def test_a_size_without_a_price_is_named_and_least_left_over_decides() -> None:
    body = asked("buy --need '2.3 gal' --sizes '1 qt, 1 gal, 2.5 gal' --price '1 gal=95'")
    assert "cost" not in body["figures"]
    assert body["details"][0].startswith("No price is told for 1 qt, 2.5 gal, so")


def test_sizes_from_memory_are_said_to_be() -> None:
    assert "from memory" in asked("buy --need '2.3 gal'")["assumed"][0]
    assert asked("buy --need '2.3 gal' --sizes '1 gal'")["assumed"] == []


def test_more_left_over_than_needed_asks_whether_it_can_be_used_up() -> None:
    assert any("memory" in one for one in asked("buy --need '3 fl oz' --kind dye")["cautions"])


def test_metric_questions_get_metric_answers() -> None:
    body = asked("buy --need '5 L' --sizes '1 L, 10 L'")
    assert (body["unit"], body["value"]) == ("L", 5)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("--need '0 gal'", "more than 0"),
        ("--need 2.3", "has no unit"),
        ("--need '32 oz'", "fl oz, a volume"),
        ("--need '-1 gal'", "0 or more"),
        ("--need '2 lb'", "a volume"),
        ("--need '2 gal' --sizes '1,5 L'", "space behind the comma"),
        ("--need '2 gal' --sizes '2 x 2.5 gal'", "2.5 gal if one jug is sold"),
        ("--need '2 gal' --sizes '1, 2.5'", "no unit"),
        ("--need '2 gal' --sizes '1 gal, 4 qt'", "each size once"),
        ("--need '2 gal' --sizes ''", "sizes with their unit"),
        ("--need '2 gal' --price 95", "a size and its price"),
        ("--need '2 gal' --price '1 gal=1,200'", "no comma within a number"),
        ("--need '2 gal' --price '1 gal=-5'", "a size and its price"),
        ("--need '2 gal' --price '1 gal=0'", "above 0"),
        ("--need '2 gal' --price '1 gal=5, 4 qt=6'", "once for each size"),
        ("--need '2 gal' --sizes '1 gal' --price '5 gal=300'", "a price for 5 gal"),
        ("--need '2 gal' --sizes '1 gal' --kind oil", "--kind with --sizes"),
        ("--need '2 gal' --price '1 gal=9' --kind oil", "--kind with --price"),
        ("--need '9000 gal' --sizes '1 L, 1 gal'", "sizes in one unit"),
    ],
)
def test_nonsense_gets_one_helpful_sentence(words: str, told: str) -> None:
    said = figure(f"buy {words}")
    assert said.exit_code == 2, said.output
    assert told in said.stderr
    assert said.stdout == "" and len(said.stderr.strip().splitlines()) == 1
    assert json.loads(figure(f"buy {words} --json").stdout)["schema"] == "rootcollar/error/1"


@given(need=st.floats(0.05, 40), cents=st.lists(st.integers(100, 90_000), min_size=3, max_size=3))
@settings(max_examples=draws.of(40))
def test_the_purchase_covers_the_need_and_costs_what_it_says(need: float, cents: list[int]) -> None:
    sizes = dict(zip(("1 qt", "1 gal", "2.5 gal"), (one / 100 for one in cents), strict=True))
    prices = ", ".join(f"{name}={price:.2f}" for name, price in sizes.items())
    figures = asked(f"buy --need '{need:.4f} gal' --price '{prices}'")["figures"]
    assert figures["bought_ml"] >= need * GAL - 1
    assert figures["left_over_ml"] == pytest.approx(figures["bought_ml"] - round(need, 4) * GAL, abs=1e-2)
    one_size = [-(-need // gallons) * sizes[name] for name, gallons in (("1 qt", 0.25), ("1 gal", 1), ("2.5 gal", 2.5))]
    assert figures["cost"] <= min(one_size) + max(sizes.values()) * 1e-6


WORDS = st.sampled_from(
    ["1", "2.5", "gal", "qt", "L", "=", ",", " ", "x", "and", "$", "95", "-", ";", "nan", "½", ".", "1/4"]
)


@given(sizes=st.lists(WORDS, max_size=8).map("".join), prices=st.lists(WORDS, max_size=8).map("".join))
@settings(max_examples=draws.of(150))
def test_no_words_bring_out_a_trace(sizes: str, prices: str) -> None:
    for more in ([f"--sizes={sizes}"], [f"--price={prices}"], [f"--sizes={sizes}", f"--price={prices}"]):
        said = figure(["buy", "--need=3 gal", *more])
        assert said.exit_code in (0, 2), said.stderr
        assert "Traceback" not in said.output
