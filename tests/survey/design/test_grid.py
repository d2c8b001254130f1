"""Grids: on average as many as wanted, none outside, none moved, the same for the same seed."""

from itertools import pairwise
from math import dist

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon, contains_xy

from rootcollar.kernel.doubt import Doubt
from rootcollar.site import flat
from rootcollar.site.geometry import centre, unflat
from rootcollar.survey.design import grid_in, lay_grid
from tests import draws

HOLLOW = ((-89.9, 43.3), (-89.9, 43.304), (-89.896, 43.304), (-89.899, 43.302), (-89.896, 43.3))
GROUND = Polygon([(0, 0), (310, 40), (240, 200), (120, 130), (20, 260)])


def test_on_average_there_are_as_many_as_wanted() -> None:
    found = [len(lay_grid("bench", HOLLOW, 20, Doubt(seed), 25).points) for seed in range(draws.of(80, 60))]
    assert np.mean(found) == pytest.approx(20, abs=4 * np.std(found) / len(found) ** 0.5)
    assert len(set(found)) > 1  # the number that falls inside varies, and is told as it is


@settings(max_examples=draws.of(60))
@given(st.integers(1, 80), st.integers(0, 999), st.floats(0, 180))
def test_every_plot_lies_inside_one_spacing_from_its_neighbours(plots: int, seed: int, bearing: float) -> None:
    grid = lay_grid("bench", HOLLOW, plots, Doubt(seed), bearing)
    around = centre(HOLLOW)
    ground = Polygon(flat(HOLLOW, around))
    places = flat([(one.lon, one.lat) for one in grid.points], around) if grid.points else ()
    assert all(ground.buffer(1e-3).contains(Point(place)) for place in places)
    for one, other in pairwise(places):
        assert dist(one, other) >= grid.spacing_m * (1 - 1e-4)
    keys = [one.key for one in grid.points]
    assert keys == sorted(set(keys))  # in the order of the walk


def test_the_same_seed_gives_the_same_plots_and_another_unit_others() -> None:
    one, again, other = (lay_grid(unit, HOLLOW, 9, Doubt(5)) for unit in ("bench", "bench", "slope"))
    assert one == again
    assert one.start != other.start
    assert lay_grid("bench", HOLLOW, 9, Doubt(6)).start != one.start
    assert all(0 < part < one.spacing_m for part in one.start)
    assert one == lay_grid("bench", HOLLOW, 9, Doubt(5, n=7))  # how many worlds are drawn elsewhere moves no plot


def test_lines_run_along_the_bearing() -> None:
    for bearing, still in ((90, 1), (0, 0)):  # along an east-west line the way north stays, and the other way round
        pairs = list(pairwise(grid_in(GROUND, 20, (3, 7), bearing)))
        along = [pair for pair in pairs if abs(pair[0][still] - pair[1][still]) < 1e-9]
        assert len(along) > 0.7 * len(pairs)
        assert all(
            dist(*pair) / 20 == pytest.approx(round(dist(*pair) / 20)) for pair in along
        )  # a hollow leaves some out


@settings(max_examples=draws.of(40))
@given(st.floats(10, 60), st.floats(0, 1), st.floats(0, 1), st.floats(0, 360))
def test_the_start_and_the_turn_lose_no_node(spacing: float, east: float, north: float, bearing: float) -> None:
    start = east * spacing, north * spacing
    turn = np.deg2rad(bearing)
    a, b = (start[way] + spacing * np.arange(-60, 60) for way in (0, 1))
    across, along = (part.ravel() for part in np.meshgrid(a, b))
    east, north_ = across * np.cos(turn) + along * np.sin(turn), along * np.cos(turn) - across * np.sin(turn)
    least, most = (int(contains_xy(GROUND.buffer(wide), east, north_).sum()) for wide in (-1e-6, 1e-6))
    assert least <= len(grid_in(GROUND, spacing, start, bearing)) <= most


def test_the_way_to_the_plane_and_back_is_the_same_place() -> None:
    around = centre(HOLLOW)
    assert np.allclose(unflat(flat(HOLLOW, around), around), HOLLOW, atol=1e-9)


@pytest.mark.parametrize("plots", [0, -3, 20_001])
def test_no_plots_or_far_too_many_are_refused(plots: int) -> None:
    with pytest.raises(ValueError, match="want 1 to"):
        lay_grid("bench", HOLLOW, plots, Doubt(1))


@pytest.mark.parametrize("spacing", [0, -1, 0.01])
def test_a_spacing_that_gives_no_grid_is_refused(spacing: float) -> None:
    with pytest.raises(ValueError, match=r"above 0|too many"):
        grid_in(GROUND, spacing, (0, 0))
