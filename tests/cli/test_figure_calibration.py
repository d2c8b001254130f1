"""Calibration, plants and proving batches: asked as people write, refused in a sentence where it is nonsense."""

from __future__ import annotations

import json
import shlex
import tomllib
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.exchange.own_file import read_own
from rootcollar.kernel.units import convert
from tests import draws
from tests.cli.test_figure import answered_first, asked, figure, held_together, nodes

THE_CALL = "calibration --plot '18.5 ft x 18.5 ft' --seconds 75 --caught '150 fl oz' --tank '25 gal'"
CATCH = "calibration --seconds 75 --caught '150 fl oz'"
WALK = "calibration --swath '36 in' --flow '0.25 gpm'"
BATCH = "calibration --used '12 fl oz' --stems '2 in' --count 25 --method basal-bark --strength 20"
ANSWERED = [
    THE_CALL,
    f"{CATCH} --rate '2 qt/ac' --tank '4 gal' --new-flow '1 gal/min'",
    f"{WALK} --feet 100 --seconds 34 --seconds 36",
    "calibration --swath '36 in' --speed '2 mph' --caught '32 fl oz' --caught-in 1:00 --tank '15 L'",
    "calibration --used '1.5 gal' --area '1000 sq ft'",
    "calibration --used '6 gal' --plants 50 --count 250 --strength 1.5 --tank '4 gal'",
    "calibration --used '1 L' --plants 10",
    BATCH,
    "calibration --used '300 mL' --stems '8 cm' --count 20 --method cut-stump --strength 50",
    "calibration --swath '6 ft'",
]


@pytest.mark.parametrize("words", ANSWERED)
def test_an_answer_has_every_key_and_a_working_that_can_be_redone(words: str) -> None:
    assert held_together(words)


@pytest.mark.parametrize("words", ANSWERED)
def test_the_first_line_is_the_answer_and_what_to_mind_comes_last(words: str) -> None:
    said = answered_first(words)
    assert said.index("\nHow\n") < said.index("\nSources\n") < said.index("\nMind\n")


def test_a_plot_a_watch_and_a_jug_tell_output_reach_and_time() -> None:
    body = asked(THE_CALL)
    assert body["value"] == pytest.approx(150 / 128 * 43560 / 342.25)  # gallons, over acres of the plot
    assert body["unit"] == "gal/ac"
    assert body["figures"]["output_l_per_ha"] == pytest.approx(convert(body["value"], "gal/ac", "L/ha"))
    assert convert(body["figures"]["tank_area_m2"], "m2", "ac") == pytest.approx(25 / body["value"])
    assert body["figures"]["tank_s"] == pytest.approx(25 * 128 / 150 * 75)
    said = " ".join(figure(THE_CALL).stdout.split())
    assert "You put out 149 gal/ac (1,395 L/ha)" in said
    assert "covers 0.168 ac (7,301 sq ft; 678 m2) and lasts 26.7 min of spraying" in said


# Published worked examples, end to end.


@pytest.mark.parametrize(
    ("words", "gal_per_ac", "within"),
    [
        ("--caught '7.5 fl oz' --seconds 16 --seconds 18", 7.5, 1e-9),  # NCSU
        ("--caught '25 fl oz' --seconds 30", 25, 1e-9),  # UFAL
        ("--flow '3.75 gpm' --speed '5 mph' --swath '222 in'", 20, 0.1),  # ALBW, printed 20
        ("--flow '480 fl oz/min' --speed '5 mph' --swath '18.5 ft'", 20, 0.1),  # ALBW
        ("--flow '0.25 gpm' --speed '2 mph' --swath '36 in'", 20.6, 0.05),  # rule of MESA
        ("--used '1.5 gal' --area '1000 sq ft'", 65.3, 0.05),  # arithmetic
    ],
)
def test_a_printed_example_comes_out_as_printed(words: str, gal_per_ac: float, within: float) -> None:
    assert asked(f"calibration {words}")["value"] == pytest.approx(gal_per_ac, abs=within)


def test_a_rate_by_the_acre_becomes_product_in_a_gallon_and_in_a_tank() -> None:
    words = "calibration --caught '7.5 fl oz' --seconds 17 --rate '8 fl oz/ac' --tank '3 gal'"  # NCSU: 1.06 and 3.2
    body, said = asked(words), " ".join(figure(words).stdout.split())
    assert body["figures"]["strength_pct"] == pytest.approx(100 * 8 / 7.5 / 128)
    assert "1.07 fl oz (31.5 mL) in each gallon" in said
    assert "3.2 fl oz (94.6 mL); pour 3 1/8 fl oz (92 mL), by this mark 0.814%" in said
    assert any("gloves" in one for one in body["cautions"])


def test_a_course_is_as_long_as_340_over_its_width() -> None:
    assert asked("calibration --swath '6 ft'")["value"] == pytest.approx(56.7, abs=0.05)  # NCSU
    assert "the plot is 56.7 ft (17.3 m) long" in " ".join(figure(f"{CATCH} --swath '6 ft'").stdout.split())


def test_plants_times_what_one_took_is_the_job() -> None:
    body = asked("calibration --used '6 gal' --plants 50 --count 250 --strength 1.5")
    assert convert(body["figures"]["total_ml"], "mL", "gal") == pytest.approx(30)
    assert convert(body["figures"]["product_ml"], "mL", "fl oz") == pytest.approx(57.6)


# Typed the way people write.


@pytest.mark.parametrize(
    "words",
    [
        "--plot '18.5 x 18.5 ft' --seconds '75 s' --caught '150 fl oz'",
        "--plot '18.5ft by 18.5ft' --seconds 1:15 --caught '150 floz'",
        "--plot \"18.5' \u00d7 18.5'\" --seconds '1:15 min' --caught '150 fl. oz.'",
        "--plot '18 1/2 ft x 18 1/2 ft' --seconds '75 sec' --caught '1 gal 22 fl oz'",
        "--plot '18.5 feet X 18.5 feet' --seconds '1 min 15 s' --caught '150 fluid ounces'",
        "--plot '342.25 sq ft' --seconds '75 seconds' --caught '150 fl oz'",
        "--plot '342.25 ft\u00b2' --seconds '1 1/4 min' --caught '4 qt 22 fl oz'",
        "--plot '18.5 ft x 18.5' --seconds 74 --seconds 76 --caught '150 fl oz'",
        "--plot '18.5x18.5ft' --seconds 75 --caught '60 fl oz' --caught-in 30",
        "--plot '222 in x 222 in' --seconds 75 --caught '48 fl oz' --caught-in 0:24",
        "--plot '18\u00bd x 18\u00bd ft' --caught '150 fl oz'",
        "--feet 18.5 --swath '18.5 ft' --seconds 75 --caught '150 fl oz'",
        "--feet '18.5 ft' --swath '222 in' --seconds 75 --flow '120 fl oz/min'",
        "--feet \"18.5'\" --swath '18.5 ft' --seconds 1:15 --caught '2 fl oz' --caught-in 1",
        "--used '150 fl oz' --area '18.5 ft x 18.5 ft'",
        "--used '150 fl oz' --area '342.25 square feet'",
    ],
)
def test_however_it_is_written_it_is_the_same_calibration(words: str) -> None:
    assert asked(f"calibration {words}")["value"] == pytest.approx(150 / 128 * 43560 / 342.25)


# Nonsense, and things that do not go together: one sentence each.


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("calibration", "--caught with --seconds; --swath with --flow and --speed; or --used"),
        ("calibration --seconds 75", "found --seconds; allowed: one way"),
        ("calibration --area '1 ac'", "found --area; allowed: one way"),
        ("calibration --seconds 0 --caught '150 fl oz'", "--seconds: found '0 s'; allowed: more than 0"),
        ("calibration --seconds=-5 --caught '150 fl oz'", "--seconds: found '-5 s'; allowed: a time of 0 or more"),
        ("calibration --seconds 1:75 --caught '150 fl oz'", "minutes and seconds, such as 1:15"),
        ("calibration --seconds '75 ft' --caught '150 fl oz'", "'75 ft' is a length"),
        ("calibration --seconds 75 --caught '150 oz'", "fl oz, a volume, or oz wt, a weight?"),
        ("calibration --seconds 75 --caught 150", "--caught: found '150'; allowed: a volume"),
        ("calibration --seconds 75 --caught '0 fl oz'", "--caught: found '0 fl oz'; allowed: more than 0"),
        (f"{CATCH} --tank '-1 gal'", "--tank: found '-1 gal'; allowed: a volume of 0 or more"),
        (f"{CATCH} --plot '18.5 ft'", "or two sides, such as 100 ft x 60 ft"),
        (f"{CATCH} --plot '18.5 x 18.5'", "has no unit"),
        (f"{CATCH} --plot '3 x 4 x 5 ft'", "--plot: found '3 x 4 x 5 ft'; allowed: two sides"),
        (f"{CATCH} --rate '2 qt'", "--rate: found '2 qt'; allowed: a volume per area"),
        ("calibration --caught '1 fl oz' --rate '2 gal/ac'", "more product than there is mix"),
        ("calibration --caught '32 fl oz' --caught-in 30", "both: --seconds for the plot, --caught-in for the catch"),
        ("calibration --caught '32 fl oz' --new-flow '1 gpm'", "the time of the catch too"),
        (f"{CATCH} --used '1 gal'", "--used with --caught; allowed: one way of measuring"),
        (f"{CATCH} --plants 5", "--plants with --caught; allowed: a catch"),
        ("calibration --used '1 gal'", "one of them beside --used"),
        ("calibration --used '1 gal' --area '1 ac' --plants 5", "--area and --plants"),
        ("calibration --used '1 gal' --plants 5 --rate '2 qt/ac'", "--rate with --used and --plants"),
        ("calibration --used '1 gal' --plants 2.5", "--plants: found '2.5'; allowed: a whole number of plants"),
        ("calibration --used '1 gal' --plants 0", "--plants: found '0'; allowed: more than 0"),
        ("calibration --flow '0.25 gpm' --speed '2 mph'", "no --swath; allowed: the width that is sprayed"),
        (WALK, "neither --speed nor --feet"),
        (f"{WALK} --feet 100", "both: how far, and how long it took"),
        (f"{WALK} --feet 100 --seconds 34 --speed '2 mph'", "--speed and --feet"),
        (f"{WALK} --speed '2 mph' --seconds 34", "--seconds with --speed"),
        (f"{WALK} --speed '2 mph' --plot '10 x 10 ft'", "--plot with a moving sprayer"),
        (f"{WALK} --speed '2 mph' --caught '1 qt'", "--flow and --caught"),
        (f"{WALK} --speed '2 mph' --caught-in 30", "--caught-in with --flow"),
        (f"{WALK} --speed '2 ft'", "--speed: found '2 ft'; allowed: a speed"),
        ("calibration --swath '3 ft' --speed '2 mph' --caught '1 qt'", "--caught without --caught-in"),
        (BATCH.replace("--strength 20", "--strength 150"), "at most 100"),
        (BATCH.replace("--strength 20", ""), "a proving batch without --strength"),
        (BATCH.replace("'2 in'", "'1-2 in'"), "one diameter, the mean of the stems you measured"),
        (BATCH.replace("'2 in'", "2"), "--stems: found '2'; allowed: a length"),
        (BATCH.replace("'2 in'", "'9 in'"), "hack-and-squirt or cut stump"),
        (f"{BATCH} --carrier none", "undiluted is 100 %"),
        (f"{BATCH} --product nonsense", "nonsense"),
        (f"{BATCH} --tank '4 gal'", "--tank with --used and --stems"),
    ],
)
def test_a_question_that_cannot_be_answered_gets_one_helpful_sentence(words: str, told: str) -> None:
    said = figure(words)
    assert said.exit_code == 2, said.output
    assert told in said.stderr
    assert said.stdout == ""
    assert len(said.stderr.strip().splitlines()) == 1
    assert json.loads(figure(f"{words} --json").stdout)["message"] == said.stderr.strip()


# What is said beside the answer.


def test_runs_that_differ_too_much_are_said_in_the_first_line() -> None:
    alike, apart = (
        figure(f"calibration --seconds 75 --seconds {other} --caught '1 gal'").stdout for other in (80, 110)
    )
    assert "alike" in alike
    assert "if these runs can be relied on" in apart.partition("\n\n")[0]
    assert "Walk again" in apart


def test_one_run_alone_is_said_to_be_one() -> None:
    assert any(one.startswith("One run only") for one in asked(CATCH)["cautions"])
    assert not any(one.startswith("One run only") for one in asked(f"{CATCH} --seconds 76")["cautions"])


@pytest.mark.parametrize(("flow", "says"), [("0.28", "it is worn"), ("0.25", "within 10%"), ("0.2", "clean it")])
def test_a_nozzle_is_told_by_what_it_gave_when_new(flow: str, says: str) -> None:
    said = figure(f"calibration --swath '3 ft' --speed '2 mph' --flow '{flow} gpm' --new-flow '0.25 gpm'").stdout
    assert says in " ".join(said.split())
    assert "(memory)" in said


def test_a_proving_batch_is_set_beside_the_guess_and_can_be_kept() -> None:
    body = asked(f"{BATCH} --product 'triclopyr-bee-4-ec'")
    assert body["figures"]["per_stem_ml"] == pytest.approx(convert(12 / 25, "fl oz", "mL"))
    assert any(one.startswith("It takes the place of the kept guess") for one in body["details"])
    kept = _kept(body).proving[0]
    assert (kept.method, kept.carrier, kept.strength_pct, kept.product) == (
        "basal_bark", "oil", 20, "triclopyr-bee-4-ec",
    )  # fmt: skip
    assert kept.used_ml == pytest.approx(convert(12, "fl oz", "mL"))
    assert kept.sizes == (pytest.approx((5.08, 25)),)


def test_a_batch_at_a_strength_nobody_guessed_is_the_only_figure() -> None:
    body = asked("calibration --used '300 mL' --stems '8 cm' --count 20 --method cut-stump --strength 15")
    assert "the only figure there is" in body["details"][0]
    assert body["unit"] == "mL/cm2"
    assert any("20 stems are few" in one for one in body["cautions"])


def _kept(body: dict[str, Any]) -> Any:
    """Return what own.toml makes of the lines, with what they leave to the writer filled in."""
    at = body["details"].index("[[proving]]")
    text = "\n".join(body["details"][at:]).replace("THE DAY, SUCH AS ", "")
    return read_own(tomllib.loads(text), "own.toml", ())


# Laws, and no words that bring out a trace.


@given(ounces=st.floats(1, 2000), wide=st.floats(3, 100), seconds=st.integers(5, 300), tank=st.floats(0.5, 50))
@settings(max_examples=draws.of(40))
def test_a_tank_is_empty_when_its_ground_is_sprayed(ounces: float, wide: float, seconds: int, tank: float) -> None:
    catch = f"--seconds {seconds} --caught '{ounces:.3f} fl oz' --tank '{tank:.3f} gal'"
    found = asked(f"calibration --plot '{wide:.3f} x 20 ft' {catch}")["figures"]
    on_ground = found["output_l_per_ha"] * found["tank_area_m2"] / 10
    assert (
        on_ground == pytest.approx(found["flow_ml_per_s"] * found["tank_s"]) == pytest.approx(tank * 3785.411784, 1e-3)
    )


@given(rate=st.floats(1, 300), tank=st.floats(0.5, 50))
@settings(max_examples=draws.of(40))
def test_what_is_poured_for_a_rate_is_never_more_than_the_rate(rate: float, tank: float) -> None:
    words = [
        "calibration",
        "--caught",
        "25 fl oz",
        "--rate",
        f"{rate:.3f} fl oz/ac",
        "--tank",
        f"{tank:.3f} gal",
        "--json",
    ]
    body = json.loads(figure(words).stdout)
    true = [node["result"] for node in nodes(body["working"]) if node["formula"] == "mix.batch.share_of_mix_pct"]
    assert true
    assert max(true) <= body["figures"]["strength_pct"] * (1 + 1e-9)


PARTS = st.sampled_from([
    "0", "1", "75", "1/2", "-2", "1e9", "1:15", "1:75", "20", "gal", "fl oz", "oz", "L", "in", "ft", "x", "by", "sq ft",
    "ac", "gal/ac", "gpm", "mph", "s", "min", "%", "to", "-", "/", ":", "\u00d7", "\u00bd", "\u2032", ",", "nan",
])  # fmt: skip
TYPED = st.one_of(st.lists(PARTS, max_size=4).map(" ".join), st.text(max_size=12))
OPTIONS = [
    "--plot", "--seconds", "--caught", "--caught-in", "--tank", "--rate", "--swath", "--flow", "--speed", "--feet",
    "--new-flow", "--used", "--area", "--plants", "--stems", "--count", "--strength",
]  # fmt: skip


@given(start=st.sampled_from(ANSWERED), changed=st.dictionaries(st.sampled_from(OPTIONS), TYPED, max_size=2))
@settings(max_examples=draws.of(150))
def test_no_words_bring_out_a_trace(start: str, changed: dict[str, str]) -> None:
    said = figure([*shlex.split(start), *(f"{option}={text}" for option, text in changed.items())])
    assert said.exit_code in (0, 2), said.output
    assert "Traceback" not in said.output
