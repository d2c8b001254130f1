"""Rounding is to a step a person can measure, in the direction that keeps a limit."""

import math
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.rounding import to_step

Direction = Literal["nearest", "down", "up"]
VALUES = st.floats(-1e6, 1e6)
STEPS = st.sampled_from([0.01, 0.1, 1 / 8, 1 / 4, 0.5, 1.0, 5.0, 29.5735295625, 100.0])
DIRECTIONS = st.sampled_from(["nearest", "down", "up"])


@pytest.mark.parametrize(
    ("value", "step", "nearest", "down", "up"),
    [(1.24, 0.25, 1.25, 1.0, 1.25), (2.5, 1, 3, 2, 3), (-2.5, 1, -2, -3, -2), (7, 5, 5, 5, 10), (0, 5, 0, 0, 0),
     (0.3, 0.1, 0.3, 0.3, 0.3), (0.15, 0.1, 0.2, 0.1, 0.2), (0.1 + 0.2, 0.1, 0.3, 0.3, 0.3)],
)  # fmt: skip
def test_each_direction_goes_its_way(value: float, step: float, nearest: float, down: float, up: float) -> None:
    got = [to_step(value, step), to_step(value, step, "down"), to_step(value, step, "up")]
    assert got == pytest.approx([nearest, down, up], rel=1e-12)


@given(VALUES, STEPS)
def test_down_never_passes_and_up_never_falls_short(value: float, step: float) -> None:
    hair = step * 1e-8
    assert to_step(value, step, "down") <= value + hair
    assert to_step(value, step, "up") >= value - hair


@given(VALUES, STEPS, DIRECTIONS)
def test_rounding_moves_less_than_a_step_and_nearest_at_most_half(value: float, step: float, way: Direction) -> None:
    moved = abs(to_step(value, step, way) - value)
    assert moved <= (step / 2 if way == "nearest" else step) + step * 1e-7


@given(st.integers(-100_000, 100_000), STEPS, DIRECTIONS)
def test_a_whole_number_of_steps_stays_as_it_is(count: int, step: float, way: Direction) -> None:
    assert to_step(count * step, step, way) == count * step


@given(VALUES, VALUES, STEPS, DIRECTIONS)
def test_more_is_never_rounded_to_less(one: float, other: float, step: float, way: Direction) -> None:
    less, more = sorted((one, other))
    assert to_step(less, step, way) <= to_step(more, step, way)


@given(VALUES, STEPS)
def test_down_and_up_hold_the_nearest_between_them(value: float, step: float) -> None:
    down, near, up = (to_step(value, step, way) for way in ("down", "nearest", "up"))
    assert down <= near <= up


@pytest.mark.parametrize(
    ("value", "step"), [(1, 0), (1, -1), (1, math.nan), (math.nan, 1), (math.inf, 1), (-math.inf, 1)]
)
def test_what_cannot_be_stepped_is_refused(value: float, step: float) -> None:
    with pytest.raises(ValueError, match="a finite value and a step above 0"):
        to_step(value, step)
