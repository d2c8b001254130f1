"""What is printed can be read back, and what is poured never passes a limit."""

import math
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.errors import UnitError
from rootcollar.kernel.units import jug, read, show

SHOWN = [
    (2.5, "gal", "2.5 gal"), (1.5, "in", "1 1/2 in"), (0.875, "in", "7/8 in"), (1.38, "in", "1.38 in"),
    (3, "in", "3 in"), (3.81 / 2.54, "in", "1 1/2 in"), (20, "%", "20%"), (20, "% v/v", "20% v/v"),
    (43560, "sq ft", "43,560 sq ft"),
    (12345.6, "gal", "12,346 gal"), (0.000123, "ac", "0.000123 ac"), (3, "lb ae/gal", "3 lb ae/gal"),
    (2.003, "gallons per acre", "2 gal/ac"), (0, "gal", "0 gal"), (-0.0001, "C", "-0.0001 °C"), (-0.0, "C", "0 °C"),
    (0.9999, "gal", "1 gal"), (99.96, "gal", "100 gal"), (1e15, "mL", "1,000,000,000,000,000 mL"),
    (1, "days", "1 day"), (2, "days", "2 days"), (0.5, "cup", "1/2 cup"), (1.5, "cup", "1 1/2 cups"),
    (0, "stem", "0 stems"), (1.0001, "stem", "1 stem"), (12, "stem", "12 stems"), (1, "qt/100 gal", "1 qt/100 gal"),
    (-0.5, "in", "-1/2 in"),
    (7, "mL/stem", "7 mL/stem"), (75, "F", "75 °F"), (1200.5, "in", "1,200 in"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "unit", "text"), SHOWN)
def test_a_value_is_shown_as_people_write_it(value: float, unit: str, text: str) -> None:
    assert show(value, unit) == text


def test_digits_are_kept_as_asked() -> None:
    assert [show(3.785411784, "L", digits) for digits in (1, 2, 4, 8)] == ["4 L", "3.8 L", "3.785 L", "3.7854118 L"]
    with pytest.raises(ValueError, match="at least 1"):
        show(1, "L", 0)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_never_printed(value: float) -> None:
    with pytest.raises(UnitError):
        show(value, "gal")


UNITS = [
    "mm", "in", "ft", "mi", "cm", "m2", "ha", "ac", "sq ft", "mL", "L", "gal", "qt", "pt", "cup", "fl oz", "Tbsp",
    "tsp", "g", "kg", "lb", "oz wt", "s", "min", "h", "day", "mph", "km/h", "m/s", "°C", "°F", "g ae/L",
    "lb ai/gal", "gal/ac", "L/ha", "lb ae/ac", "qt product/ac", "gal/min", "mL/stem", "stem", "fl oz/1,000 sq ft",
]  # fmt: skip


@given(st.floats(1e-6, 1e9), st.sampled_from(UNITS), st.integers(1, 6))
def test_what_is_shown_reads_back_within_its_printed_digits(value: float, unit: str, digits: int) -> None:
    text = show(value, unit, digits)
    assert "e" not in text.split(" ")[0]
    back = read(text)
    assert back.to(unit) == pytest.approx(value, abs=min(0.5, 0.5 * 10 ** (1 - digits) * value) * 1.0001 + 1e-12)
    assert show(back.to(unit), unit, digits) == text


@given(st.integers(1, 799))
def test_eighths_of_an_inch_read_back_exactly(eighths: int) -> None:
    assert read(show(eighths / 8, "in")).to("in") == pytest.approx(eighths / 8, rel=1e-15)


POURED = [
    (3, "nearest", "3 mL"), (12, "nearest", "12 mL (2 3/8 tsp)"),
    (13, "nearest", "13 mL (2 5/8 tsp)"), (13, "up", "13 mL (2 3/4 tsp)"),
    (29.5735295625, "nearest", "1 fl oz (30 mL)"), (29.57, "up", "1 fl oz (30 mL)"),
    (29.5735295625, "down", "1 fl oz (29 mL)"), (100, "nearest", "3 3/8 fl oz (100 mL)"),
    (186.3, "nearest", "6 1/4 fl oz (185 mL)"),
    (473.176473, "nearest", "16 fl oz (473 mL)"), (600, "down", "20 fl oz (591 mL)"),
    (946.352946, "nearest", "1 qt (946 mL)"), (1064, "nearest", "1 qt 4 fl oz (1.06 L)"),
    (3785.411784, "down", "1 gal (3.78 L)"), (20000, "down", "5 gal 1 qt 4 fl oz (19.9 L)"), (0, "nearest", "0 mL"),
    (0.04, "down", "0 mL"), (0.04, "up", "0.1 mL"),
]  # fmt: skip
Direction = Literal["nearest", "down", "up"]


@pytest.mark.parametrize(("volume_ml", "direction", "text"), POURED)
def test_a_volume_is_told_in_the_marks_of_the_cup(volume_ml: float, direction: Direction, text: str) -> None:
    assert jug(volume_ml, "us", direction).text == text


@pytest.mark.parametrize(
    ("volume_ml", "text"), [(3.14, "3.1 mL"), (12.3, "12.5 mL"), (97.6, "98 mL"), (151.4, "150 mL"), (757.1, "760 mL"),
                            (3785.4, "3.8 L"), (22222, "22 L")])  # fmt: skip
def test_a_metric_cup_has_metric_marks(volume_ml: float, text: str) -> None:
    assert jug(volume_ml, "metric").text == text


@pytest.mark.parametrize("volume_ml", [-1, math.nan, math.inf])
def test_only_a_volume_can_be_poured(volume_ml: float) -> None:
    with pytest.raises(ValueError, match="0 mL or more"):
        jug(volume_ml)


VOLUMES = st.floats(0, 500_000) | st.floats(0, 40) | st.sampled_from([29.5735295625, 118.29411825, 3785.411784])
SYSTEMS = st.sampled_from(["us", "metric"])
HAIR = 1 + 1e-9


def told_ml(text: str) -> list[float]:
    """Return the volumes a jug text names, the first and the one in brackets [mL]."""
    return [read(part).to("mL") for part in text.rstrip(")").split(" (")]


@given(VOLUMES, SYSTEMS)
def test_poured_down_no_word_of_it_passes_the_maximum(volume_ml: float, system: Literal["us", "metric"]) -> None:
    poured = jug(volume_ml, system, "down")
    assert poured.ml <= volume_ml * HAIR
    assert max(told_ml(poured.text)) <= volume_ml * HAIR + 1e-9


@given(VOLUMES, SYSTEMS)
def test_poured_up_no_word_of_it_falls_short(volume_ml: float, system: Literal["us", "metric"]) -> None:
    poured = jug(volume_ml, system, "up")
    assert poured.ml >= volume_ml / HAIR - 1e-9
    assert min(told_ml(poured.text)) >= volume_ml / HAIR - 1e-9


@given(VOLUMES, SYSTEMS, st.sampled_from(["nearest", "down", "up"]))
def test_the_exact_volume_is_the_first_one_told(
    volume_ml: float, system: Literal["us", "metric"], direction: Direction
) -> None:
    poured = jug(volume_ml, system, direction)
    assert told_ml(poured.text)[0] == pytest.approx(poured.ml, rel=1e-9, abs=1e-9)


@given(st.floats(5, 500_000), SYSTEMS)
def test_every_word_of_the_nearest_mark_is_within_a_tenth(volume_ml: float, system: Literal["us", "metric"]) -> None:
    poured = jug(volume_ml, system)
    assert poured.ml == pytest.approx(volume_ml, rel=0.07)
    assert told_ml(poured.text) == pytest.approx([volume_ml] * len(told_ml(poured.text)), rel=0.1)


@given(VOLUMES, VOLUMES, SYSTEMS, st.sampled_from(["nearest", "down", "up"]))
def test_more_is_never_told_as_less(
    one_ml: float, other_ml: float, system: Literal["us", "metric"], direction: Direction
) -> None:
    less, more = sorted((one_ml, other_ml))
    assert jug(less, system, direction).ml <= jug(more, system, direction).ml * HAIR
