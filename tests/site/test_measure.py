"""What the map fills in, and which of two measures is kept."""

import math
from dataclasses import fields

import pytest

from rootcollar.kernel.errors import BadInput
from rootcollar.kernel.units import convert
from rootcollar.site import Feature, Ground, Unit, measure
from rootcollar.site.measure import MEASURED

SQUARE = ((-89.901, 43.299), (-89.899, 43.299), (-89.899, 43.301), (-89.901, 43.301))  # about 162 m by 222 m
BROOK = Feature("water", "brook", ((-89.9025, 43.298), (-89.9025, 43.302)))


def _ground(unit: Unit, *features: Feature, looked_for: tuple[str, ...] = ()) -> Ground:
    return Ground("G", "WI", {unit.key: unit}, features, frozenset(looked_for))


def _measured(unit: Unit, *features: Feature, looked_for: tuple[str, ...] = ()) -> tuple[Unit, tuple[str, ...]]:
    ground = measure(_ground(unit, *features, looked_for=looked_for))
    return ground.units[unit.key], ground.notes


def test_a_drawn_unit_gets_its_area_and_distances():
    unit, notes = _measured(Unit("u", "U", polygon=SQUARE), BROOK, looked_for=("water",))
    assert unit.area_m2 == pytest.approx(162.2 * 222.2, rel=0.005)
    assert unit.water_m == pytest.approx(121.6, rel=0.005)
    assert notes == ()


def test_nobody_looked_is_not_none_there():
    unit, _ = _measured(Unit("u", "U", polygon=SQUARE))
    assert (unit.water_m, unit.well_m, unit.trail_m, unit.keep_m) == (None, None, None, None)
    unit, _ = _measured(Unit("u", "U", polygon=SQUARE), looked_for=("well",))
    assert unit.well_m == math.inf
    assert unit.water_m is None


def test_an_undrawn_unit_beside_drawn_water_is_not_known():
    unit, _ = _measured(Unit("u", "U"), BROOK, looked_for=("water", "well"))
    assert unit.area_m2 is None
    assert unit.water_m is None
    assert unit.well_m == math.inf


def test_a_neighbours_well_counts():
    well = Feature("well", "theirs", ((-89.898, 43.3),), own=False)
    unit, _ = _measured(Unit("u", "U", polygon=SQUARE), well, looked_for=("well",))
    assert unit.well_m == pytest.approx(81.1, rel=0.005)


@pytest.mark.parametrize(("typed_m", "kept_m"), [(50.0, 50.0), (math.inf, 121.6), (500.0, 121.6)])
def test_of_two_distances_the_smaller_is_kept_and_noted(typed_m, kept_m):
    unit, notes = _measured(Unit("u", "U", polygon=SQUARE, water_m=typed_m), BROOK, looked_for=("water",))
    assert unit.water_m == pytest.approx(kept_m, rel=0.005)
    assert "smaller" in notes[0] and "water" in notes[0]


def test_distances_that_mean_the_same_are_not_noted():
    unit, notes = _measured(Unit("u", "U", polygon=SQUARE, water_m=120.0), BROOK, looked_for=("water",))
    assert unit.water_m == 120
    assert notes == ()


def test_the_smaller_area_is_kept_because_it_keeps_the_yearly_limit():
    drawn = _measured(Unit("u", "U", polygon=SQUARE))[0].area_m2
    small, notes = _measured(Unit("u", "U", polygon=SQUARE, area_m2=0.8 * drawn))
    assert small.area_m2 == pytest.approx(0.8 * drawn)
    assert len(notes) == 1
    large, notes = _measured(Unit("u", "U", polygon=SQUARE, area_m2=1.2 * drawn))
    assert large.area_m2 == pytest.approx(drawn)
    assert len(notes) == 1
    near, notes = _measured(Unit("u", "U", polygon=SQUARE, area_m2=1.02 * drawn))
    assert near.area_m2 == pytest.approx(drawn)
    assert notes == ()


@pytest.mark.parametrize("times", [0.4, 2.5])
def test_an_area_typed_that_cannot_be_the_one_drawn_is_a_fault(times):
    drawn = _measured(Unit("u", "U", polygon=SQUARE))[0].area_m2
    with pytest.raises(BadInput, match="unit u, area"):
        measure(_ground(Unit("u", "U", polygon=SQUARE, area_m2=times * drawn)))


def test_every_measured_distance_is_a_line_of_the_unit():
    assert set(MEASURED.values()) <= {one.name for one in fields(Unit)}


def test_a_typed_area_stands_where_nothing_is_drawn():
    unit, _ = _measured(Unit("u", "U", area_m2=convert(3.2, "ac", "m2")))
    assert convert(unit.area_m2, "m2", "ac") == pytest.approx(3.2)


def test_a_unit_within_a_closed_boundary_is_as_far_from_it_as_from_its_nearest_side():
    """A closed line is an area to everything else; within a boundary lies one's own ground."""
    around = ((-89.9025, 43.29), (-89.8, 43.29), (-89.8, 43.31), (-89.9025, 43.31), (-89.9025, 43.29))
    for line in (around, around[::-1]):
        unit, _ = _measured(
            Unit("u", "U", polygon=SQUARE), Feature("boundary", "the line", line), looked_for=("boundary",)
        )
        assert unit.boundary_m == pytest.approx(121.6, rel=0.005)
    patch = Feature("keep", "a patch", around)
    assert _measured(Unit("u", "U", polygon=SQUARE), patch, looked_for=("keep",))[0].keep_m == 0


def test_a_boundary_marked_by_one_stake_is_a_spot():
    stake = Feature("boundary", "a stake", ((-89.898, 43.3),))
    unit, _ = _measured(Unit("u", "U", polygon=SQUARE), stake, looked_for=("boundary",))
    assert unit.boundary_m == pytest.approx(81.1, rel=0.005)
