"""Areas at the bench: shapes as people write them, and both areas of a slope."""

from __future__ import annotations

import json

import pytest

from rootcollar.kernel.units import convert
from tests.cli.test_figure import KEYS, asked, figure, nodes


@pytest.mark.parametrize(
    ("words", "square_feet", "within"),
    [
        ("'100 ft x 60 ft'", 6000, 1e-6),
        ("'100 x 60 ft'", 6000, 1e-6),
        ("'100ft by 60ft'", 6000, 1e-6),
        ("\"100' \u00d7 60'\"", 6000, 1e-6),
        ("'33 1/3 yd x 60 ft'", 6000, 1e-6),
        ("'1,200 in x 60 ft'", 6000, 1e-6),
        ("--strip '1 mi' '8.25 ft'", 43560, 1e-6),  # UNL
        ("--strip '1/4 mile' '33 feet'", 43560, 1e-6),  # UNL
        ("'209 x 209 ft'", 43560, 130),  # VADWR
        ("--diameter '235 ft'", 43560, 190),  # VADWR
        ("--radius '117.5 ft'", 43560, 190),
        ("--sides '60 ft, 80 ft, 100 ft'", 2400, 1e-6),
        ("--sides '60,80,100 ft'", 2400, 1e-6),
        ("--sides '20 yd; 80 ft; 100 ft'", 2400, 1e-6),
        ("--sides '60 x 80 x 100 ft'", 2400, 1e-6),
        ("--oval '60 x 40 ft'", 1884.96, 0.01),
    ],
)
def test_a_shape_has_its_area_however_it_is_written(words: str, square_feet: float, within: float) -> None:
    body = asked(f"area {words}")
    assert set(body) == KEYS
    assert convert(body["value"], "ac", "sq ft") == pytest.approx(square_feet, abs=within)
    assert len(nodes(body["working"])) > 1


def test_a_slope_gives_both_areas_and_says_which_is_which() -> None:
    body = asked("area '100 ft x 60 ft' --slope 30%")
    assert convert(body["value"], "ac", "sq ft") == pytest.approx(6000 / (1 + 0.3**2) ** 0.5)
    assert convert(body["figures"]["along_slope_m2"], "m2", "sq ft") == pytest.approx(6000)
    assert "level, as on a map" in body["says"]
    assert "along the slope" in body["says"]
    told = " ".join(body["details"])
    assert "no label or source read for this says" in told
    assert "(practice of surveying)" in told
    assert any("with the tape along the ground" in one for one in body["assumed"])


def test_degrees_and_percent_of_one_slope_agree() -> None:
    by_degrees, by_percent = (asked(f"area '30 x 20 m' --slope {slope}")["value"] for slope in ("'45 deg'", "100%"))
    assert by_degrees == pytest.approx(by_percent)
    assert asked("area '30 x 20 m' --slope 45\u00b0")["value"] == pytest.approx(by_percent)


def test_metric_sizes_get_metric_areas() -> None:
    body = asked("area '30 m x 20 m'")
    assert (body["value"], body["unit"]) == (pytest.approx(600), "m2")
    assert body["says"].startswith("600 m2 (0.148 ac; 6,458 sq ft)")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("area", "no shape; allowed: one shape: '100 ft x 60 ft'"),
        ("area '100 ft'", "SIZE: found '100 ft'; allowed: two sides"),
        ("area '100 x 60'", "has no unit"),
        ("area '0 x 60 ft'", "more than 0"),
        ("area '100 x 60 ft' --diameter '3 ft'", "a size and --diameter"),
        ("area --diameter 40", "--diameter: found '40'; allowed: a length"),
        ("area --radius '2 gal'", "--radius: found '2 gal'"),
        ("area --sides '60, 80 ft'", "--sides: found '60, 80 ft'; allowed: three sides"),
        ("area --sides '1,200 ft, 900 ft, 800 ft'", "without a comma inside a number"),
        ("area --sides '60, 80, 150 ft'", "they do not close"),
        ("area --sides '60, 80, 140 ft'", "they do not close"),
        ("area --oval '60 ft'", "--oval: found '60 ft'; allowed: two sides"),
        ("area --strip '1 mi' '0 ft'", "--strip: found '0 ft'; allowed: more than 0"),
        ("area '100 x 60 ft' --slope 30", "30% for a rise in a hundred, or 30 deg for degrees?"),
        ("area '100 x 60 ft' --slope '95 deg'", "degrees below 90"),
        ("area '100 x 60 ft' --slope '300%'", "steeper than 200 % is a cliff"),
        ("area '100 x 60 ft' --slope=-5%", "--slope: found '-5%'"),
        ("area '100 x 60 ft' --slope steep", "a rise in a hundred, such as 30%"),
    ],
)
def test_a_question_that_cannot_be_answered_gets_one_helpful_sentence(words: str, told: str) -> None:
    said = figure(words)
    assert said.exit_code == 2, said.output
    assert told in said.stderr
    assert said.stdout == ""
    assert len(said.stderr.strip().splitlines()) == 1
    assert json.loads(figure(f"{words} --json").stdout)["message"] == said.stderr.strip()
