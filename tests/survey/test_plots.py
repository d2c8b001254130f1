"""Plots on the ground: sizes, slopes, edges, strips and clumps."""

import math

import numpy as np
import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st
from shapely import MultiPoint, Polygon, contains_xy, distance, points
from shapely.affinity import rotate

from rootcollar.kernel.errors import BadInput
from rootcollar.survey.plots import (
    Belt,
    Clump,
    Line,
    covered_m,
    inside_share,
    limit_m,
    mirage,
    one_radius_m,
    radius_m,
    together,
    uncorrected,
    walk_through,
)  # fmt: skip
from tests import draws

CROOKED = Polygon([(0, 0), (70, -8), (95, 20), (90, 62), (48, 70), (40, 58), (6, 66)])
OBLONG = Polygon([(0, 0), (80, 0), (80, 55), (0, 55)])
STEP_M = 0.31


def grid(tract: Polygon, start: tuple[float, float]) -> np.ndarray:
    east, north, farthest_east, farthest_north = tract.bounds
    xs = np.arange(east + start[0] * STEP_M, farthest_east, STEP_M)
    ys = np.arange(north + start[1] * STEP_M, farthest_north, STEP_M)
    places = np.stack(np.meshgrid(xs, ys), axis=-1).reshape(-1, 2)
    return places[contains_xy(tract, places[:, 0], places[:, 1])]


def stems_in(tract: Polygon, seed: int, at_edge: bool) -> np.ndarray:
    """40 stems, most of them near the edge, where it matters, but not in a corner; or 300 anywhere."""
    rng = np.random.default_rng(seed)
    east, north, farthest_east, farthest_north = tract.bounds
    places = rng.uniform((east, north), (farthest_east, farthest_north), (6000, 2))
    places = places[contains_xy(tract, places[:, 0], places[:, 1])]
    if not at_edge:
        return places[:300]
    near = distance(points(places), tract.exterior) < 5
    apart = distance(points(places), MultiPoint(tract.exterior.coords)) > 9
    return np.concatenate((places[near & apart][:30], places[~near][:10]))


def bias(way, tract, seed, start, at_edge=True, radius=6.0):
    """How far the mean over all centres of a fine grid is from the truth, as a share of it."""
    stems, centres = stems_in(tract, seed, at_edge), grid(tract, start)
    per_m2 = way(centres, stems, radius, tract).mean() / (math.pi * radius**2)
    return per_m2 / (len(stems) / tract.area) - 1


@pytest.mark.slow
@settings(max_examples=draws.of(6), deadline=None, phases=[Phase.generate])
@given(st.integers(0, 9999), st.tuples(st.floats(0.2, 0.8), st.floats(0.2, 0.8)))
def test_walking_through_is_unbiased_on_a_crooked_tract(seed, start):
    assert abs(bias(walk_through, CROOKED, seed, start)) < 0.005


@pytest.mark.slow
@pytest.mark.parametrize(("seed", "start"), [(1, (0.5, 0.5)), (2, (0.35, 0.6)), (3, (0.65, 0.4))])
def test_both_ways_are_unbiased_on_an_oblong_tract(seed, start):
    for way in (walk_through, mirage):
        assert abs(bias(way, OBLONG, seed, start)) < 0.005


def test_without_correction_stems_at_the_edge_are_missed():
    assert bias(uncorrected, CROOKED, 1, (0.5, 0.5)) < -0.1
    # stems everywhere: about 2 r / (3 pi) times edge over area too few
    expected = -2 * 6 / (3 * math.pi) * OBLONG.length / OBLONG.area
    assert bias(uncorrected, OBLONG, 5, (0.5, 0.5), at_edge=False) == pytest.approx(expected, abs=0.02)


@pytest.mark.slow
def test_in_corners_walking_through_is_short_by_very_little():
    for tract in (OBLONG, CROOKED):
        assert -0.004 < bias(walk_through, tract, 4, (0.5, 0.5), at_edge=False) < 0.002
    assert abs(bias(mirage, OBLONG, 4, (0.5, 0.5), at_edge=False)) < 0.002


@pytest.mark.slow
def test_mirrors_are_for_square_corners_turned_or_not():
    turned = rotate(OBLONG, 30)
    assert abs(bias(mirage, turned, 3, (0.2, 0.7))) < 0.005
    with pytest.raises(ValueError, match="walk through"):
        mirage(np.zeros((1, 2)), np.zeros((1, 2)), 5, CROOKED)


def test_a_stem_halfway_to_the_edge_counts_once_and_one_beyond_it_twice():
    centre, stems = np.array([[4.0, 27.0]]), np.array([[2.1, 27.0], [1.9, 27.0], [7.0, 27.0]])
    assert [walk_through(centre, stems[[i]], 6, OBLONG).tolist() for i in range(3)] == [[1], [2], [1]]


@pytest.mark.parametrize(("apart", "share"), [(0, 0.5), (0.25, 0.6575), (0.5, 0.8045), (0.75, 0.9279), (1, 1), (2, 1)])
def test_share_of_a_circle_inside_a_straight_edge(apart, share):
    assert inside_share(apart, 1.0) == pytest.approx(share, abs=5e-5)


def test_the_two_ways_on_a_slope_differ_and_keep_the_level_area():
    level = radius_m(400)
    ways = ("one larger radius", "level distances")
    one, up = (limit_m(level, 50, way) / level for way in ways)
    assert (one, up) == (pytest.approx(1.0574, abs=1e-4), pytest.approx(1.1180, abs=1e-4))
    assert limit_m(level, 50, "level distances", 90) == pytest.approx(level)
    # both are a circle's area on the map: the ground, times the cosine
    cos = math.cos(math.atan(0.5))
    assert math.pi * limit_m(level, 50, "one larger radius") ** 2 * cos == pytest.approx(400)
    assert math.pi * limit_m(level, 50, "level distances") * level * cos == pytest.approx(400)
    assert one_radius_m(level, 0) == level


@pytest.mark.parametrize(("slope", "way"), [(-5, "level distances"), (250, "level distances"), (20, "by eye")])
def test_a_slope_below_nothing_or_an_unknown_way_is_refused(slope, way):
    with pytest.raises(BadInput, match="slope"):
        limit_m(10, slope, way)


def test_a_belt_is_as_large_as_its_shadow():
    assert Belt("a", 2.0, 50.0).area_m2 == 100
    assert Belt("a", 2.0, 50.0, 80).area_m2 == pytest.approx(100 / math.hypot(1, 0.8))


def test_overlapping_crowns_on_a_line_cover_their_ground_once():
    assert covered_m([Line("a", 20, ((1, 3), (2, 5), (4, 4.5))), Line("b", 20)]) == (4, 0)
    with pytest.raises(BadInput) as wrong:
        covered_m([Line("a", 20, ((5, 3), (1, 2), (15, 21)), "row 2"), Line("b", 0, (), "row 3")])
    assert [fault.row for fault in wrong.value.faults] == ["row 2", "row 2", "row 3"]


def test_a_clump_is_one_plant_with_the_faces_of_all_its_stems():
    clump = Clump((8, 6), "breast height")
    assert clump.face_cm2 == pytest.approx(78.54, abs=0.005)
    assert clump.diameter_cm == pytest.approx(10)
    assert together((clump, Clump((3,), "breast height")))[:2] == (2, 3)


def test_heights_of_clumps_are_never_mixed():
    with pytest.raises(BadInput, match="row 7.*never mixed"):
        together((Clump((8, 6), "breast height"), Clump((3,), "root collar", "row 7")))
    with pytest.raises(BadInput, match="clump 1"):
        together((Clump((), "root collar"),))
