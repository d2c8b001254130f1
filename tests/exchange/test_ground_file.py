"""ground.toml is read strictly, and every fault says where, what, and what is allowed."""

import math
import tomllib
from datetime import date

import pytest

from rootcollar.exchange.ground_file import read_ground
from rootcollar.kernel.errors import BadInput
from rootcollar.kernel.units import convert
from rootcollar.site import Mixing, Taken

LEAST = 'name = "W"\n[[unit]]\nkey = "bench"\nname = "The bench"\n'
SQUARE = "[[-89.901, 43.299], [-89.899, 43.299], [-89.899, 43.301], [-89.901, 43.301]]"


def _read(text: str):
    return read_ground(tomllib.loads(text), "ground.toml")


def _faults(text: str) -> list[tuple[str, str, str, str]]:
    with pytest.raises(BadInput) as caught:
        _read(text)
    assert all(fault.file == "ground.toml" and fault.allowed and fault.found for fault in caught.value.faults)
    return [(fault.row, fault.field, fault.found, fault.allowed) for fault in caught.value.faults]


def test_the_least_ground_leaves_everything_unknown():
    ground, complete = _read(LEAST)
    unit = ground.units["bench"]
    assert (ground.state, ground.county, complete, ground.demo) == (None, None, None, False)
    assert (unit.area_m2, unit.site_class, unit.slope_pct, unit.permission, unit.wanted_beneath) == (None,) * 5
    assert (unit.water_m, unit.well_m, unit.trail_m, unit.keep_m) == (None,) * 4
    assert set(ground.emergency.values()) == {""}


def test_a_full_unit_is_read_in_our_units():
    ground, complete = _read(
        'name = "W"\nstate = "wi"\ncounty = "Q"\nseed = 7\nhistory = "complete"\nlooked_for = ["well"]\n'
        '[emergency]\nmeeting_point = "the gate"\n'
        '[[unit]]\nkey = "bench"\nname = "The bench"\narea = "3.2 ac"\nsite_class = "natural_area"\nslope = "12%"\n'
        'permission = { by = "the owner", until = 2027-03-31 }\nwater = "60 ft"\ntrail = "None"\n'
        "wanted_beneath = true\n"
    )
    unit = ground.units["bench"]
    assert (ground.state, ground.county, ground.seed, complete) == ("WI", "Q", 7, True)
    assert ground.emergency == {"hospital": "", "poison line": "", "meeting point": "the gate"}
    assert unit.area_m2 == pytest.approx(convert(3.2, "ac", "m2"))
    assert unit.slope_pct == pytest.approx(12)
    assert (unit.permission.by, unit.permission.until) == ("the owner", date(2027, 3, 31))
    assert unit.water_m == pytest.approx(18.288)
    assert (unit.trail_m, unit.well_m, unit.keep_m) == (math.inf, math.inf, None)
    assert unit.wanted_beneath is True


def test_history_said_not_complete_is_not_unknown():
    assert _read('history = "not complete"\n' + LEAST)[1] is False


def test_features_are_spots_lines_and_neighbours():
    ground, _ = _read(
        'looked_for = ["water", "well"]\n' + LEAST + f"polygon = {SQUARE}\n"
        '[[water]]\nname = "brook"\nline = [[-89.902, 43.299], [-89.902, 43.301]]\n'
        '[[well]]\nname = "theirs"\nat = [-89.897, 43.3]\nown = false\n[[gate]]\nname = "gate"\nat = [-89.9, 43.302]\n'
    )
    assert [(one.kind, one.name, len(one.line), one.own) for one in ground.features] == [
        ("water", "brook", 2, True), ("well", "theirs", 1, False), ("gate", "gate", 1, True),
    ]  # fmt: skip
    assert ground.units["bench"].water_m == pytest.approx(81, rel=0.01)
    assert ground.units["bench"].well_m == pytest.approx(162, rel=0.01)


def test_a_polygon_may_be_closed_or_not():
    closed = SQUARE[:-1] + ", [-89.901, 43.299]]"
    areas = [_read(LEAST + f"polygon = {one}\n")[0].units["bench"].area_m2 for one in (SQUARE, closed)]
    assert areas[0] == pytest.approx(areas[1])


def test_every_fault_is_told_at_once_with_its_block():
    found = _faults(
        'name = "W"\nstate = "Wisconsin"\nseed = -1\nhistory = "all"\n'
        '[[unit]]\nkey = "Bench 1"\nname = ""\narea = "3 oz"\nslopee = "3%"\nwater = 60\nwanted_beneath = "yes"\n'
        '[[unit]]\nkey = "two"\nname = "Two"\npermission = { by = "x", until = "soon" }\nsite_class = "park"\n'
        'keep = "near"\npolygon = [[43.3, -189.9], [1, 2], "x"]\n'
    )
    assert {(row, field) for row, field, _, _ in found} == {
        ("", "state"), ("", "seed"), ("", "history"),
        ("[[unit]] 1 (Bench 1)", "key"), ("[[unit]] 1 (Bench 1)", "name"), ("[[unit]] 1 (Bench 1)", "area"),
        ("[[unit]] 1 (Bench 1)", "slopee"), ("[[unit]] 1 (Bench 1)", "water"),
        ("[[unit]] 1 (Bench 1)", "wanted_beneath"), ("[[unit]] 2 (two)", "permission.until"),
        ("[[unit]] 2 (two)", "site_class"), ("[[unit]] 2 (two)", "keep"), ("[[unit]] 2 (two)", "polygon.1"),
        ("[[unit]] 2 (two)", "polygon.3"),
    }  # fmt: skip
    said = {field: (what, allowed) for _, field, what, allowed in found}
    assert said["slopee"] == ("the key slopee", "slope")
    assert said["water"][0] == "60" and '"60 ft"' in said["water"][1]
    assert "none" in said["keep"][1]
    assert "natural_area" in said["site_class"][1]
    assert "longitude first" in said["polygon.1"][1]
    assert said["seed"] == ("-1", "a whole number of 0 or more, without quotes")


@pytest.mark.parametrize(
    ("text", "field", "word"),
    [
        ('name = "W"\n', "unit", "[[unit]]"),
        ('name = "W"\nunit = []\n', "unit", "[[unit]]"),
        ('name = "W"\nunit = "bench"\n', "unit", "[[unit]]"),
        ('name = "W"\nunits = 1\n' + LEAST.split("\n", 1)[1], "units", "unit"),
        (LEAST + 'area = "0 ac"\n', "area", "more than 0"),
        (LEAST + 'water = "-5 ft"\n', "water", "0 or more"),
        (LEAST + "polygon = [[-89.9, 43.3], [-89.8, 43.3]]\n", "", "three"),
        (LEAST + "polygon = []\n", "", "three"),
        (LEAST + "polygon = [[-89.9, 43.3], [-89.8, 43.4], [-89.9, 43.4], [-89.8, 43.3]]\n", "", "in the order"),
        (LEAST + "polygon = [[nan, 43.3], [-89.8, 43.4], [-89.9, 43.4]]\n", "polygon.1", "degrees"),
        ('looked_for = ["wells"]\n' + LEAST, "looked_for, item 1", "well"),
        (LEAST + '[[gate]]\nname = "g"\n', "", "at ="),
        (LEAST + '[[gate]]\nname = "g"\nat = [-89.9, 43.3]\nline = [[-89.9, 43.3], [-89.8, 43.3]]\n', "", "at ="),
        (LEAST + '[[gate]]\nname = "g"\nline = [[-89.9, 43.3]]\n', "", "two points"),
        (LEAST + '[[unit]]\nkey = "bench"\nname = "Other"\n', "key", "its own key"),
        (LEAST + '[[unit]]\nkey = "other"\nname = "the BENCH"\n', "name", "its own name"),
        (LEAST + '[[well]]\nname = "w"\nat = [-89.9, 43.3]\n', "looked_for", "walked"),
        (LEAST + f"polygon = {SQUARE}\n" + '[[gate]]\nname = "g"\nat = [43.3, -89.9]\n', "", "longitude first"),
        (LEAST + f'polygon = {SQUARE}\narea = "3 ac"\n', "area", "near the one drawn"),
        ('purpose = "wood"\n' + LEAST, "purpose", "produce, nature"),
        (LEAST + 'for_whom = "me"\n', "for_whom", "own, employer"),
        (LEAST + 'soil = "good"\n', "soil", "loamy sand"),
        (LEAST + 'taken = [{ what = "wood" }]\n', "taken.1.what", "nuts"),
        (LEAST + 'taken = [{ what = "hay", first = 2027-06-01, last = 2027-05-01 }]\n', "taken.1", "on or after"),
        (LEAST + 'mixing = { well = "far" }\n', "mixing.well", "none"),
        (LEAST + '[[power]]\nname = "p"\nat = [-89.9, 43.3]\n', "looked_for", "walked"),
    ],
)
def test_what_cannot_be_so_is_refused_in_words(text, field, word):
    found = _faults(text)
    assert any(at == field and word in allowed for _, at, _, allowed in found), found


def test_features_drawn_and_none_looked_for_cannot_pass_for_all_there_are():
    """The nearest well drawn need not be the nearest there is."""
    ((_, field, found, allowed),) = _faults(LEAST + '[[well]]\nname = "w"\nat = [-89.9, 43.3]\n')
    assert field == "looked_for" and "well" in found and '"well"' in allowed


def test_steep_ground_passes_a_hundred_percent_and_a_slope_without_percent_is_refused() -> None:
    unit = 'name = "W"\n[[unit]]\nkey = "a"\nname = "A"\n'
    assert _read(unit + 'slope = "120%"\n')[0].units["a"].slope_pct == 120
    with pytest.raises(BadInput, match="rise in a hundred"):
        _read(unit + 'slope = "12"\n')


def test_what_is_said_of_the_whole_property_holds_for_a_unit_until_it_says_its_own() -> None:
    ground, _ = _read(
        'name = "W"\nlooked_for = ["power"]\nfor_whom = "own"\npurpose = "nature"\ntaken = []\n'
        'mixing = { place = "the gate", well = "100 ft", sinkhole = "none" }\n'
        '[[unit]]\nkey = "a"\nname = "A"\n'
        '[[unit]]\nkey = "b"\nname = "B"\nfor_whom = "hire"\npurpose = "produce"\nmixing = { well = "none" }\n'
        'taken = [{ what = "sap", first = 2027-02-01, last = 2027-04-15 }]\nsoil = "sand"\nground_water = "none"\n'
        'wanted_roots = "60 ft"\n'
    )
    one, other = ground.units.values()
    assert (one.for_whom, one.purpose, one.taken, one.power_m) == ("own", "nature", (), math.inf)
    assert one.mixing == Mixing("the gate", pytest.approx(30.48), None, math.inf)
    assert (one.soil, one.ground_water_m, one.wanted_roots_m) == (None, None, None)
    assert (other.for_whom, other.purpose, other.mixing) == ("hire", "produce", Mixing("", math.inf, None, None))
    assert other.taken == (Taken("sap", date(2027, 2, 1), date(2027, 4, 15)),)
    assert (other.soil, other.ground_water_m, other.wanted_roots_m) == ("sand", math.inf, pytest.approx(18.288))


def test_the_nearest_power_line_drawn_is_measured() -> None:
    ground, _ = _read(
        'looked_for = ["power"]\n' + LEAST + f"polygon = {SQUARE}\n"
        '[[power]]\nname = "the line"\nline = [[-89.902, 43.299], [-89.902, 43.301]]\nown = false\n'
    )
    assert ground.units["bench"].power_m == pytest.approx(81, rel=0.01)


def test_what_a_tree_could_fall_on_is_typed_like_any_distance() -> None:
    typed = 'road = "40 ft"\nbuilding = "none"\nparking = "90 ft"\n'
    one = _read(LEAST + typed)[0].units["bench"]
    assert (one.road_m, one.building_m, one.parking_m) == (pytest.approx(12.192), math.inf, pytest.approx(27.432))
    assert one.boundary_m is None  # nobody has looked


def test_what_a_tree_could_fall_on_is_measured_where_it_is_drawn() -> None:
    ground, _ = _read(
        'looked_for = ["road", "building", "parking"]\n' + LEAST + f"polygon = {SQUARE}\n"
        '[[road]]\nname = "the lane"\nline = [[-89.902, 43.299], [-89.902, 43.301]]\n'
        '[[building]]\nname = "the shed"\nat = [-89.902, 43.300]\n'
    )
    one = ground.units["bench"]
    assert (one.road_m, one.building_m) == (pytest.approx(81, rel=0.01), pytest.approx(81, rel=0.01))
    assert (one.parking_m, one.boundary_m) == (math.inf, None)
