"""Loads, topping up and what is carried: never stronger than asked, never heavier than accepted."""

from __future__ import annotations

import json
import re
import shlex

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.kernel.units import convert
from tests import draws
from tests.cli.test_figure import answered_first, asked, figure, held_together

LOADS = "loads --total '37.5 gal' --percent 3 --tank '4 gal'"
GROUND = "loads --area '3.2 ac' --output '25 gal/ac' --percent 2 --tank '4 gal'"
TOPUP = "topup --left '1.5 gal' --to '4 gal' --percent 2"
ANSWERED = [
    LOADS,
    GROUND,
    f"{GROUND} --carry '35 lb' --empty '11 lb'",
    "loads --area '100 x 60 ft' --output 25gpa --rate '2 qt/ac' --tank '4 gal' --carry '45 lb'",
    "loads --total '10 L' --percent 100 --tank '4 L'",
    TOPUP,
    "topup --left '1 gal' --to '4 gal' --percent 3 --left-percent 1",
    "topup --left '3 L' --to '4 L' --percent 20 --carrier oil",
    "carry --volume '4 gal'",
    "carry --volume '4 gal' --percent 20 --carrier oil --product triclopyr-bee-4-ec --empty '11 lb' --limit '40 lb'",
    "carry --limit '18 kg' --percent 3 --density '1.17 g/mL'",
]


@pytest.mark.parametrize("words", ANSWERED)
def test_an_answer_has_every_key_and_a_working_that_can_be_redone(words: str) -> None:
    assert held_together(words) or words == "carry --volume '4 gal'"


@pytest.mark.parametrize("words", ANSWERED)
def test_the_first_line_is_the_answer_and_what_to_mind_comes_last(words: str) -> None:
    said = answered_first(words)
    assert said.index("\nHow\n") < said.index("\nSources\n") < said.index("\nMind\n")
    if not words.startswith("carry"):
        body = asked(words)
        assert body["assumed"][0].startswith("strength ")
        assert any("gloves" in one for one in body["cautions"])


# Worked examples, end to end.


def test_a_partial_load_comes_last_and_has_its_own_product() -> None:
    body = asked(LOADS)
    each = [convert(one, "mL", "fl oz") for one in body["figures"]["product_in_loads_ml"]]
    assert body["value"] == 10
    assert body["says"].startswith("10 loads, 9 of 4 gal (15.1 L) and a last one of 1.5 gal")
    assert each == pytest.approx([15.36] * 9 + [5.76])
    assert convert(body["figures"]["product_ml"], "mL", "fl oz") == pytest.approx(144)


def test_ground_and_output_tell_how_much_is_to_be_mixed() -> None:
    found = asked(GROUND)["figures"]
    assert convert(found["total_ml"], "mL", "gal") == pytest.approx(80)
    assert len(found["loads_ml"]) == 20
    assert convert(found["product_ml"], "mL", "gal") == pytest.approx(1.6)


def test_a_rate_at_an_output_is_the_same_as_its_percent() -> None:
    by_rate = asked("loads --area '3.2 ac' --output 25gpa --rate '2 qt/ac' --tank '4 gal'")["figures"]
    assert by_rate["loads_ml"] == asked(GROUND)["figures"]["loads_ml"]
    assert by_rate["product_ml"] == pytest.approx(asked(GROUND)["figures"]["product_ml"])


def test_a_last_load_too_small_to_measure_is_mixed_a_little_larger() -> None:
    found = asked("loads --total '4.05 gal' --percent 0.5 --tank '4 gal'")["figures"]
    assert len(found["loads_ml"]) == 2
    assert found["loads_ml"][1] * 0.005 >= 1  # a millilitre is what a jug or spoon measures


def test_a_weight_that_is_accepted_leaves_the_tank_part_empty() -> None:
    words = f"{GROUND} --carry '35 lb' --empty '11 lb' --density '9.76 lb/gal'"
    body, said = asked(words), " ".join(figure(words).stdout.split())
    heaviest = max(body["figures"]["loads_ml"])
    assert convert(heaviest, "mL", "gal") < 4
    assert convert(heaviest, "mL", "gal") * (0.98 * 8.34 + 0.02 * 9.76) + 11 <= 35 + 1e-9
    assert "35 lb leaves room for" in said
    assert "so the tank is not filled" in said
    assert "within 60 lb" in " ".join(figure(words.replace("35 lb", "60 lb")).stdout.split())


def test_a_top_up_at_one_strength_is_the_product_of_what_is_added() -> None:
    body = asked(TOPUP)
    assert convert(body["figures"]["product_exact_ml"], "mL", "fl oz") == pytest.approx(2.5 * 128 * 0.02)
    assert body["figures"]["true_pct"] <= 2
    assert asked(f"{TOPUP} --left-percent 1")["figures"]["product_exact_ml"] > body["figures"]["product_exact_ml"]


def test_what_is_left_and_too_strong_is_told_how_to_be_thinned() -> None:
    said = figure("topup --left '1.5 gal' --to '4 gal' --percent 2 --left-percent 6").stderr
    assert "Fill to 4 gal 2 qt (17.1 L) without any product" in said  # 1.5 gal x 6 / 2
    assert "keep only 1 gal 1 qt 8 fl oz" in said  # 4 gal x 2 / 6 is 1.33 gal
    thinned = asked("topup --left '1.5 gal' --to '4.5 gal' --percent 2 --left-percent 6")
    assert thinned["says"].startswith("Add no product and 3 gal")


def test_a_load_of_water_weighs_what_water_weighs() -> None:
    body = asked("carry --volume '4 gal'")
    assert body["value"] == pytest.approx(33.4, abs=0.1)  # VADWR: 8.34 lb a gallon
    assert body["unit"] == "lb"
    assert "9 to 14 lb" in body["details"][1]
    assert "(read)" in body["assumed"][0]


def test_an_oil_mix_weighs_its_oil_and_its_product() -> None:
    body = asked("carry --volume '2.5 gal' --percent 20 --carrier oil --density '9.03 lb/gal'")
    assert body["value"] == pytest.approx(18.5, abs=0.3)  # 9.03 and 7.0 lb a gallon; the oil kept is 7.09
    assert "mineral basal oil of 0.85 g/mL (memory)" in body["assumed"]


def test_a_limit_tells_the_most_to_fill_and_what_is_over_it() -> None:
    over = asked("carry --volume '4 gal' --empty '11 lb' --limit '40 lb'")
    assert any("over 40 lb" in one and "fill at most 3 gal 1 qt 28 fl oz" in one for one in over["details"])
    alone = asked("carry --empty '11 lb' --limit '40 lb'")
    assert alone["value"] == pytest.approx(29 / 8.34, rel=1e-6)
    assert alone["unit"] == "gal"
    heavy = asked("carry --limit '40 lb'")
    assert any("14 lb" in one and "(memory)" in one for one in heavy["assumed"])


# Typed the way people write, all the same question.


@pytest.mark.parametrize(
    "words",
    [
        "loads --total '37.5 gallons' --percent 3% --tank 4-gal",
        "loads --total '37 1/2 gal' --percent '3 %' --tank '4 gal'",
        "loads --total '150 quarts' --percent 3.0 --tank '16 qt'",
        "loads --total '37 gal 2 qt' --percent '3% v/v' --tank 4gal",
        "loads --area '1.5 acres' --output 25gpa --percent 3 --tank '4 gal'",
        "loads --area '65,340 sq ft' --output '25 gal/acre' --percent 3 --tank '4 gal'",
        "loads --area '660 ft x 99 ft' --output '25 gallons per acre' --percent 3 --tank '4 gal'",
        "loads --area '660 x 99 ft' --output '25 gal/ac' --rate '3 qt/ac' --tank '4 gal'",
    ],
)
def test_however_it_is_written_they_are_the_same_loads(words: str) -> None:
    found = asked(words)["figures"]
    gallons = [round(convert(one, "mL", "gal"), 6) for one in found["loads_ml"]]
    assert gallons == [4.0] * 9 + [1.5]
    assert found["strength_pct"] == pytest.approx(3)


# Nonsense.


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("loads --total '37.5 gal' --percent 3 --tank '-1 gal'", "--tank: found '-1 gal'"),
        ("loads --total '37.5 gal' --percent 3 --tank 4", "--tank: found '4'; allowed: a volume"),
        ("loads --total '0 gal' --percent 3 --tank '4 gal'", "--total: found '0 gal'; allowed: more than 0"),
        ("loads --total '37.5 gal' --percent 150 --tank '4 gal'", "at most 100"),
        ("loads --total '37.5 gal' --tank '4 gal'", "--percent 2, or --rate '2 qt/ac' with --output"),
        ("loads --percent 3 --tank '4 gal'", "--total '37.5 gal', or --area '3.2 ac' with --output"),
        ("loads --total '9 gal' --area '3 ac' --percent 2 --tank '4 gal'", "--total and --area"),
        ("loads --area '3.2 ac' --percent 2 --tank '4 gal'", "the mix that you put out on it, such as 25 gal/ac"),
        ("loads --area '3.2' --output 25gpa --percent 2 --tank '4 gal'", "--area: found '3.2'; allowed: an area"),
        ("loads --area '3.2 ac' --output '25 gal' --percent 2 --tank '4 gal'", "'25 gal' is a volume"),
        ("loads --total '9 gal' --rate '2 qt/ac' --tank '4 gal'", "--rate without --output"),
        ("loads --total '9 gal' --percent 2 --output 25gpa --tank '4 gal'", "leave --output out"),
        ("loads --total '9 gal' --rate '200 gal/ac' --output 25gpa --tank '4 gal'", "more than the product as sold"),
        (f"{LOADS} --empty '11 lb'", "--empty with no --carry; allowed: the weight to keep to"),
        (f"{LOADS} --carry 40", "--carry: found '40'; allowed: a weight"),
        (f"{LOADS} --carry '10 lb' --empty '11 lb'", "the empty sprayer weighs 11 lb (4.99 kg) already"),
        ("loads --total '80000 gal' --percent 2 --tank '4 gal'", "more than 1000"),
        ("topup --left '4 gal' --to '4 gal' --percent 2", "the tank holds as much already"),
        ("topup --left '5 gal' --to '4 gal' --percent 2", "the tank holds as much already"),
        ("topup --left '3 gal' --to '4 gal' --percent 50 --left-percent 2", "it would need 1.94 gal"),
        ("topup --left '1.5 gal' --to '4 gal' --percent 0", "--percent: found '0%'"),
        ("topup --left 1.5 --to '4 gal' --percent 2", "--left: found '1.5'; allowed: a volume"),
        ("topup --left '1 gal' --to '4 lb' --percent 2", "--to: found '4 lb'"),
        ("topup --left '1 gal' --to '4 gal' --percent 2 --left-percent 150", "--left-percent: found '150%'"),
        ("topup --left '1 fl oz' --to '2 fl oz' --percent 0.5 --left-percent 0.1", "too little to measure"),
        ("carry", "neither --volume nor --limit"),
        ("carry --volume '4 lb'", "--volume: found '4 lb'; allowed: a volume"),
        ("carry --volume '4 gal' --limit 40", "--limit: found '40'; allowed: a weight"),
        ("carry --volume '4 gal' --limit '40 oz'", "oz wt"),
        ("carry --volume '4 gal' --limit '10 lb'", "the empty sprayer weighs 14 lb"),
        (
            "carry --volume '4 gal' --percent 2 --density 1.08",
            "--density: found '1.08'; allowed: the weight of the whole",
        ),
        ("carry --volume '4 gal' --percent 2 --density '4 lb ae/gal'", "the weight of the whole product"),
        ("carry --volume '4 gal' --percent 2 --density '90 lb/gal'", "such as 9.03 lb/gal"),
        ("carry --volume '4 gal' --product glyphosate-ipa-3-sl", "a product with no --percent"),
        ("carry --volume '4 gal' --percent 2 --product nonsense", "nonsense"),
        (
            "carry --volume '4 gal' --percent 2 --product glyphosate-ipa-3-sl --density '9 lb/gal'",
            "--density; allowed: one",
        ),
    ],
)
def test_a_question_that_cannot_be_answered_gets_one_helpful_sentence(words: str, told: str) -> None:
    said = figure(words)
    assert said.exit_code == 2, said.output
    assert told in said.stderr
    assert said.stdout == ""
    assert len(said.stderr.strip().splitlines()) == 1
    assert json.loads(figure(f"{words} --json").stdout)["message"] == said.stderr.strip()


# Laws.


@given(gallons=st.floats(0.5, 200), pct=st.floats(0.5, 99), tank=st.floats(1, 15))
@settings(max_examples=draws.of(60))
def test_loads_cover_the_need_and_no_mark_is_stronger_than_asked(gallons: float, pct: float, tank: float) -> None:
    words = ["loads", "--total", f"{gallons:.3f} gal", "--percent", f"{pct:.3f}", "--tank", f"{tank:.3f} gal"]
    found = json.loads(figure([*words, "--json"]).stdout)["figures"]
    assert sum(found["loads_ml"]) == pytest.approx(found["total_ml"])
    assert found["total_ml"] >= convert(float(f"{gallons:.3f}"), "gal", "mL") * (1 - 1e-9)
    assert max(found["loads_ml"]) <= convert(float(f"{tank:.3f}"), "gal", "mL") * (1 + 1e-9)
    trues = re.findall(r"By these marks: ([0-9.]+)%", " ".join(figure(words).stdout.split()))
    assert trues
    assert all(float(true) <= float(f"{pct:.3g}") for true in trues)


@given(left=st.floats(0.1, 4), more=st.floats(0.25, 10), left_pct=st.floats(0.1, 60), pct=st.floats(0.5, 60))
@settings(max_examples=draws.of(100))
def test_a_top_up_is_never_stronger_than_asked_and_loses_nothing(
    left: float, more: float, left_pct: float, pct: float
) -> None:
    words = (
        f"topup --left '{left:.3f} gal' --to '{left + more:.3f} gal' --percent {pct:.3f} --left-percent {left_pct:.3f}"
    )
    said = figure(f"{words} --json")
    assert said.exit_code in (0, 2)
    if said.exit_code:
        return
    found = json.loads(said.stdout)["figures"]
    left_ml = convert(float(f"{left:.3f}"), "gal", "mL")
    assert found["true_pct"] <= found["strength_pct"] * (1 + 1e-9)
    assert left_ml + found["product_ml"] + found["diluent_ml"] == pytest.approx(found["total_ml"])
    held = left_ml * float(f"{left_pct:.3f}") + 100 * found["product_ml"]
    assert held / found["total_ml"] == pytest.approx(found["true_pct"])


@given(limit=st.floats(15, 80), empty=st.floats(1, 14), pct=st.floats(1, 100))
@settings(max_examples=draws.of(50))
def test_what_is_filled_at_most_never_weighs_more_than_the_limit(limit: float, empty: float, pct: float) -> None:
    words = f"carry --limit '{limit:.3f} lb' --empty '{empty:.3f} lb' --percent {pct:.3f}"
    body = asked(words)
    fill = convert(body["value"], "gal", "L") * body["figures"]["density_kg_per_l"] + body["figures"]["empty_kg"]
    assert convert(fill, "kg", "lb") == pytest.approx(float(f"{limit:.3f}"))
    marks = re.match(r"Fill at most (.+?) \(", body["says"])
    assert marks
    again = asked(f"carry --volume '{marks[1]}' --empty '{empty:.3f} lb' --percent {pct:.3f}")
    assert again["value"] <= float(f"{limit:.3f}") * (1 + 1e-9)


PARTS = st.sampled_from([
    "0", "1", "2.5", "1/2", "-2", "1e9", "3", "40", "gal", "fl oz", "oz", "L", "lb", "kg", "lb/gal", "g/mL", "ft", "x",
    "by", "ac", "gal/ac", "gpa", "qt/ac", "%", "to", "-", "/", ":", "\u00bd", ",", "nan",
])  # fmt: skip
TYPED = st.one_of(st.lists(PARTS, max_size=4).map(" ".join), st.text(max_size=12))
OPTIONS = {
    "loads": ["--total", "--area", "--output", "--percent", "--rate", "--tank", "--carry", "--empty", "--density"],
    "topup": ["--left", "--to", "--percent", "--left-percent"],
    "carry": ["--volume", "--percent", "--density", "--empty", "--limit"],
}


@given(data=st.data())
@settings(max_examples=draws.of(200))
def test_no_words_bring_out_a_trace(data: st.DataObject) -> None:
    start = data.draw(st.sampled_from(ANSWERED))
    changed = data.draw(st.dictionaries(st.sampled_from(OPTIONS[start.split()[0]]), TYPED, max_size=2))
    said = figure([*shlex.split(start), *(f"{option}={text}" for option, text in changed.items())])
    assert said.exit_code in (0, 2), said.output
    assert "Traceback" not in said.output
