"""Areas and distances on the ground: laws, and second opinions from the geodesic and from a UTM map."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pyproj import Geod, Transformer
from shapely import Polygon

from rootcollar.site import area_m2, distance_m, flat, outline_fault

HERE = (-89.9, 43.3)
GEOD = Geod(ellps="WGS84")

# At least four steps, none over 164 degrees: such a ring goes once around its middle and never crosses itself.
turns = st.lists(st.tuples(st.floats(0.3, 1), st.floats(0.4, 1)), min_size=4, max_size=12)


def _ring(spread: list[tuple[float, float]], around: tuple[float, float] = HERE) -> list[tuple[float, float]]:
    """Return a ring of at most 0.01 degrees across."""
    total = sum(step for _, step in spread)
    at, ring = 0.0, []
    for reach, step in spread:
        at += step / total * 2 * math.pi
        ring.append((around[0] + 0.005 * reach * math.cos(at), around[1] + 0.005 * reach * math.sin(at)))
    return ring


@given(turns, st.integers(0, 20), st.booleans(), st.booleans())
def test_an_area_is_the_same_from_any_corner_in_either_direction_closed_or_not(spread, start, back, closed):
    ring = _ring(spread)
    other = ring[start % len(ring) :] + ring[: start % len(ring)]
    other = other[::-1] if back else other
    other = [*other, other[0]] if closed else other
    assert area_m2(other) == pytest.approx(area_m2(ring), rel=1e-9)
    assert area_m2(ring) > 0


@given(turns)
def test_an_area_agrees_with_shapely_on_a_utm_map(spread):
    """Library check: UTM zone 16 stretches lengths by 1 - 0.0004 at its middle to 1.001 at its edge."""
    ring = _ring(spread, (-88.0, 43.3))
    on_map = Transformer.from_crs("EPSG:4326", "EPSG:32616", always_xy=True)
    drawn = Polygon([on_map.transform(*corner) for corner in ring]).area
    scale = on_map_scale(ring[0], on_map)
    assert area_m2(ring) == pytest.approx(drawn / scale**2, rel=1e-4)


def on_map_scale(at: tuple[float, float], on_map: Transformer) -> float:
    """Return how much longer a metre is on the map, measured along a geodesic of 100 m."""
    lon, lat, _ = GEOD.fwd(*at, 45, 100)
    (x, y), (u, v) = on_map.transform(*at), on_map.transform(lon, lat)
    return math.hypot(u - x, v - y) / 100


@given(st.floats(0, 360), st.floats(1, 20_000))
def test_the_plane_keeps_lengths_from_its_centre(azimuth, length_m):
    """Library check against the geodesic of pyproj.Geod."""
    lon, lat, _ = GEOD.fwd(*HERE, azimuth, length_m)
    ((east, north),) = flat([(lon, lat)], HERE)
    assert math.hypot(east, north) == pytest.approx(length_m, rel=1e-8)


@given(st.floats(0, 360), st.floats(0, 360), st.floats(100, 20_000), st.floats(10, 500))
def test_the_plane_keeps_lengths_within_20_km_to_two_parts_in_a_million(azimuth, turn, away_m, length_m):
    lon, lat, _ = GEOD.fwd(*HERE, azimuth, away_m - 10)
    there = GEOD.fwd(lon, lat, turn, length_m)[:2]
    if GEOD.inv(*HERE, *there)[2] > 20_000:
        return
    (x, y), (u, v) = flat([(lon, lat), there], HERE)
    assert math.hypot(u - x, v - y) == pytest.approx(length_m, rel=2e-6, abs=1e-5)


@given(st.floats(5, 2000), st.sampled_from([0, 90, 180, 270]))
def test_a_distance_is_the_geodesic_from_the_nearest_side(away_m, azimuth):
    """Library check: a small square, a spot straight out from the middle of a side."""
    east, west = (GEOD.fwd(*HERE, one, 50)[0] for one in (90, 270))
    north, south = (GEOD.fwd(*HERE, one, 50)[1] for one in (0, 180))
    square = [(west, south), (east, south), (east, north), (west, north)]
    spot = GEOD.fwd(*HERE, azimuth, 50 + away_m)[:2]
    assert distance_m(square, [[spot]]) == pytest.approx(away_m, abs=0.01)


@given(turns, st.integers(0, 20))
def test_a_distance_is_nothing_where_a_line_comes_to_a_corner(spread, corner):
    ring = _ring(spread)
    one = ring[corner % len(ring)]
    outward = (2 * one[0] - HERE[0], 2 * one[1] - HERE[1])
    assert distance_m(ring, [[one]]) == 0
    assert distance_m(ring, [[outward, one]]) == 0
    assert distance_m(ring, [[outward]]) > 0


@given(turns, st.integers(0, 20), st.floats(0, 1))
def test_a_distance_is_under_two_centimetres_for_a_spot_on_a_side(spread, corner, along):
    """Not nothing: a side is straight on the plane, the spot was put between its ends in degrees."""
    ring = _ring(spread)
    one, two = ring[corner % len(ring)], ring[(corner + 1) % len(ring)]
    spot = (one[0] + along * (two[0] - one[0]), one[1] + along * (two[1] - one[1]))
    assert distance_m(ring, [[spot]]) < 0.02  # sides of up to 800 m


def test_a_spot_within_is_at_no_distance_and_a_unit_within_a_pond_too():
    square = [(-89.901, 43.299), (-89.899, 43.299), (-89.899, 43.301), (-89.901, 43.301)]
    assert distance_m(square, [[HERE]]) == 0
    pond = [(-89.91, 43.29), (-89.89, 43.29), (-89.89, 43.31), (-89.91, 43.31), (-89.91, 43.29)]
    assert distance_m(square, [pond]) == 0
    assert distance_m(square, [pond[:-1]]) > 500  # not closed: a line around it, not a pond


def test_no_lines_are_infinitely_far():
    assert distance_m([(0, 0), (0, 1), (1, 1)], []) == math.inf


@pytest.mark.parametrize(
    ("ring", "said"),
    [
        ([(0, 0), (1, 1)], "three"),
        ([(0, 0), (1, 1), (0, 0)], "three"),
        ([(0, 0), (1, 1), (0, 1), (1, 0)], "cross"),
        ([(0, 0), (1, 0), (2, 0)], "touch"),
        ([(0, 0), (1, 0), (1, 0), (1, 1)], "twice"),
    ],
)
def test_an_outline_that_encloses_nothing_is_said_so(ring, said):
    assert said in outline_fault(ring)


@given(turns)
def test_an_outline_that_encloses_ground_has_no_fault(spread):
    ring = _ring(spread)
    assert outline_fault(ring) == outline_fault([*ring, ring[0]]) == ""
