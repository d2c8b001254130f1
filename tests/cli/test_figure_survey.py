"""Quick questions of a survey: plots, stems, clean visits and the areas of a patch, each with its working."""

from __future__ import annotations

import json
import re

import pytest

from rootcollar.kernel.units import convert
from tests.cli.test_figure import answered_first, asked, figure, held_together

FREESE = "10 9 10 9 11 16 11 7 12 12 11 3 5 11 14 8 13 12 20 10"
ASKED = [
    "plot-radius --plot '1/20 ac'",
    "plot-radius --plot '100 m2' --slope '20 deg'",
    "plot-radius --per-acre 200 --slope 30%",
    "plots-needed --spread 80% --within 20% --plot '1/20 ac' --ground '40 ac'",
    "plots-needed --counts '3 0 5 2' --within 25% --sure 80%",
    "stems --counts '3 0 5 2 7 1 0 4' --plot '1/20 ac' --ground '12 ac'",
    "stems --counts '0, 0, 0' --plot '100 m2'",
    "clean-visits --found 60% --species 'common buckthorn'",
    "clean-visits --track '2 mi' --width '30 ft' --ground '10 ac' --seed-years 0 --visits-a-year 2",
    "area-infested --gross '12 ac' --infested 40% --cover 25%",
    "area-infested --gross '0.05 ac' --gone yes",
]


@pytest.mark.parametrize("words", ASKED)
def test_an_answer_holds_together_and_every_step_can_be_redone(words: str) -> None:
    assert held_together(words)
    assert "\nHow\n" in answered_first(words)


@pytest.mark.parametrize(
    ("words", "value", "unit", "within"),
    [
        ("plot-radius --plot '1/20 ac'", 26.3, "ft", 0.05),  # USFS-CSE
        ("plot-radius --plot '1/5 ac' --slope 50%", 55.7, "ft", 0.1),  # USFS-CSE
        ("plot-radius --plot '1/100 ac' --slope 28.5%", 12.0, "ft", 0.05),  # USFS-CSE, row of 27 to 30 %
        ("plot-radius --plot '100 m2'", 5.642, "m", 0.001),
        ("plots-needed --spread 80% --within 20%", 64, "plots", 0),  # MU-NR3110, worked out
        ("plots-needed --spread 80% --within 20% --plot '1/20 ac' --ground '40 ac'", 60, "plots", 0),
        ("plots-needed --spread 120% --within 20% --plot '1/20 ac' --ground '40 ac'", 120, "plots", 0),
        (f"stems --counts '{FREESE}' --plot '1 ac' --ground '100 ac'", 10.7, "stems/ac", 1e-9),  # freese1962
        ("clean-visits --found 60% --seed-years 0", 4, "visits", 0),
        ("clean-visits --found 40% --before 80% --seed-years 2", 9, "visits", 0),
        ("clean-visits --found 60% --seed-years 6", 6, "visits", 0),
        ("area-infested --gross '12 ac' --infested 40% --cover 25%", 4.8, "ac", 1e-9),
    ],
)
def test_a_known_example_comes_out(words: str, value: float, unit: str, within: float) -> None:
    body = asked(words)
    assert body["value"] == pytest.approx(value, abs=within)
    assert body["unit"] == unit


def test_freeses_total_and_interval() -> None:
    body = asked(f"stems --counts '{FREESE}' --plot '1 ac' --ground '100 ac'")
    assert body["figures"]["total_stems"] == pytest.approx(1070)
    assert body["figures"]["low_95_per_acre"] == pytest.approx(9.16, abs=0.005)
    assert body["figures"]["high_95_per_acre"] == pytest.approx(12.24, abs=0.005)
    assert 9.16 < body["low"] < 10.7 < body["high"] < 12.24  # the band of 10 to 90 % lies within
    assert "simple random, interval by Student's t" in body["note"]


def test_none_found_is_not_none_there() -> None:
    body = asked("stems --counts '0 0 0 0 0' --plot '1/20 ac' --ground '10 ac'")
    assert body["says"].startswith("None found on 5 plots; up to 12 stems on an acre, 120 in all")
    assert body["high"] > 0


def test_plots_that_all_hold_the_same_are_luck_and_a_full_count_is_not() -> None:
    luck = asked("stems --counts '5 5 5' --plot '1/20 ac'")
    assert any("luck, not knowledge" in one for one in luck["cautions"])
    counts = " ".join(["3", "5"] * 10)
    whole = asked(f"stems --counts '{counts}' --plot '1/20 ac' --ground '1 ac'")
    assert whole["figures"]["total_stems"] == pytest.approx(80)
    assert whole["figures"]["low_95_per_acre"] == pytest.approx(whole["figures"]["high_95_per_acre"])
    assert not any("luck" in one for one in whole["cautions"])


def test_clumped_stems_get_a_warning_and_even_ones_none() -> None:
    clumped, even = (" ".join(asked(f"stems --counts '{c}' --plot '1/20 ac'")["cautions"]) for c in
                     ("0 0 25 1 0 0 14 0", "5 4 6 5 5 4 6 5"))  # fmt: skip
    assert "These stems clump" in clumped
    told = " ".join(asked("stems --counts '0 0 31 0 2 0 0 17 0 1 0 40' --plot '1/20 ac'")["details"])
    low, high = (float(one.replace(",", "")) for one in re.findall(r"gives ([0-9,.]+) to ([0-9,.]+) on", told)[0])
    plain = asked("stems --counts '0 0 31 0 2 0 0 17 0 1 0 40' --plot '1/20 ac'")["figures"]
    assert 0 < low < 152 < high and high > plain["high_95_per_acre"]  # skewed as clumped counts are, never below 0
    assert "clump" not in even


def test_the_plot_for_a_density_says_how_many_stems_it_expects() -> None:
    body = asked("plot-radius --per-acre 200")
    assert convert(body["figures"]["area_m2"], "m2", "ac") == pytest.approx(1 / 20)
    assert "about 10 stems are expected" in body["details"][0]
    assert "no usual plot comes nearer" in asked("plot-radius --per-acre 3")["details"][0]


def test_the_longest_life_of_seed_that_any_source_gives_counts() -> None:
    body = asked("clean-visits --found 90% --species 'common buckthorn'")
    assert body["figures"]["seed_years"] == 6  # 1 to 2, at least 2, 5 to 6
    assert body["value"] == 6
    assert "seed that lives 6 years decides" in body["says"]
    assert "mn_dnr" in {one["key"] for one in body["sources"]}
    assert "from memory, confirm it" in body["assumed"][0]
    assert sum("Seed of common buckthorn" in one for one in body["details"]) == 3


def test_seed_that_lives_at_least_so_long_is_told_so() -> None:
    body = asked("clean-visits --found 90% --species 'scotch broom'")
    assert body["figures"]["seed_years"] == 60
    assert any("may live longer" in one for one in body["assumed"])


def test_a_track_and_a_width_give_the_chance_to_find() -> None:
    body = asked("clean-visits --track '1000 m' --width '10 m' --ground '1 ha' --seed-years 1")
    assert body["figures"]["found_pct"] == pytest.approx(63.21, abs=0.005)


def test_the_record_of_a_patch_that_is_gone_and_of_one_not_judged() -> None:
    assert asked("area-infested --gross '2 ac' --gone yes")["value"] == 0
    body = asked("area-infested --gross '2 ac'")
    assert "canopy not told" in body["says"]
    assert "canopy_m2" not in body["figures"]
    assert "infested whole" in body["assumed"][0]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("plot-radius", "neither --plot nor --per-acre"),
        ("plot-radius --plot '1/20 ac' --per-acre 30", "--plot and --per-acre"),
        ("plot-radius --plot '10 ft'", "--plot: found '10 ft'"),
        ("plot-radius --plot '1/20 ac' --slope 300%", "is a cliff"),
        ("plots-needed --within 20%", "neither --spread nor --counts"),
        ("plots-needed --within 20% --spread 80 --plot '1/20 ac'", "both or neither"),
        ("plots-needed --within 100% --spread 80%", "--within: found '100%'; allowed: above 0, below 100 %"),
        ("plots-needed --within 20% --spread wide", "--spread: found 'wide'; allowed: a percent"),
        ("plots-needed --within 20% --spread nan", "--spread: found 'nan'"),
        ("plots-needed --within 20% --spread 5000%", "at most 1000 %"),
        ("plots-needed --within 1% --spread 800%", "more than 5,000 plots"),
        ("plots-needed --within 20% --counts '0 0 0'", "found no stem"),
        ("plots-needed --within 20% --counts '4 4 4'", "tell no spread"),
        ("plots-needed --within 20% --spread 80% --plot '1 ac' --ground '0.5 ac'", "a plot that fits"),
        ("stems --counts '3' --plot '1/20 ac'", "two plots or more"),
        ("stems --counts '3 x 5' --plot '1/20 ac'", "--counts: found 'x'; allowed: a whole number"),
        ("stems --counts '3 2.5' --plot '1/20 ac'", "--counts: found '2.5'"),
        ("stems --counts '3 2 4' --plot '1 ac' --ground '2 ac'", "only 2 fit"),
        ("clean-visits --seed-years 3", "neither --found nor --track"),
        ("clean-visits --found 60%", "is not to be left out"),
        ("clean-visits --found 100% --seed-years 3", "below 100 %"),
        ("clean-visits --found 60% --seed-years soon", "--seed-years: found 'soon'"),
        ("clean-visits --found 60% --species 'amur honeysuckle'", "unknown is not none"),
        ("clean-visits --track '1 mi' --seed-years 3", "no --width and --ground"),
        ("clean-visits --found 0.01% --before 99% --left 1% --seed-years 3", "tell next to nothing"),
        ("area-infested --gross '12 ac' --infested 0%", "more than 0"),
        ("area-infested --gross '0.05 ac' --infested 50%", "infested whole"),
        ("area-infested --gross '12 ac' --gone yes --cover 20%", "--gone with --infested or --cover"),
    ],
)
def test_a_question_that_cannot_be_answered_gets_one_helpful_sentence(words: str, told: str) -> None:
    said = figure(words)
    assert said.exit_code == 2, said.output
    assert told in said.stderr
    assert said.stdout == ""
    assert json.loads(figure(f"{words} --json").stdout)["message"] == said.stderr.strip()
