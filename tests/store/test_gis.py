"""Any map program reads the layers with right types and places, and what it edits there is seen and kept."""

from datetime import date
from pathlib import Path
from sqlite3 import connect

import numpy as np
import pyogrio
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from rootcollar.kernel.errors import BadInput
from rootcollar.store import LAYERS, Row, new_file, open_file
from tests import draws
from tests.store.making import LATER, NOW, ROWS, draft, made
from tests.store.test_blob import SHAPES

TYPES = {
    "TEXT": ("OFTString", "OFSTNone"), "DOUBLE": ("OFTReal", "OFSTNone"), "INTEGER": ("OFTInteger64", "OFSTNone"),
    "BOOLEAN": ("OFTInteger", "OFSTBoolean"), "DATE": ("OFTDate", "OFSTNone"), "DATETIME": ("OFTDateTime", "OFSTNone"),
}  # fmt: skip


def test_the_head_of_the_file_says_what_it_is(tmp_path: Path) -> None:
    head = made(tmp_path).read_bytes()[:100]
    assert head.startswith(b"SQLite format 3\0")
    assert head[68:72] == b"GPKG"
    assert int.from_bytes(head[60:64], "big") == 10300


@pytest.mark.parametrize("layer", LAYERS.values(), ids=lambda layer: layer.name)
def test_every_column_of_every_layer_is_read_as_its_type(tmp_path: Path, layer) -> None:  # type: ignore[no-untyped-def]
    told, _, shapes, columns = pyogrio.raw.read(made(tmp_path), layer=layer.name)
    wanted = [("key", "TEXT"), ("version", "INTEGER"), ("changed_at", "DATETIME"), ("changed_by", "TEXT")]
    wanted += [(column.name, column.kind) for column in layer.columns]
    assert list(told["fields"]) == [name for name, _ in wanted]
    assert list(zip(told["ogr_types"], told["ogr_subtypes"], strict=True)) == [TYPES[kind] for _, kind in wanted]
    assert told["crs"] == "EPSG:4326"
    assert told["geometry_type"].upper() == layer.shape.replace("GEOMETRY", "UNKNOWN")
    rows = sorted((row for row in ROWS if row.layer == layer.name), key=lambda row: row.key)
    assert [None if wkb is None else shapely.from_wkb(wkb) for wkb in shapes] == [row.shape for row in rows]
    by_name = dict(zip(told["fields"], columns, strict=True))
    assert list(by_name["key"]) == [row.key for row in rows]


def test_numbers_days_and_moments_are_read_as_they_were_put(tmp_path: Path) -> None:
    path = made(tmp_path)
    told, _, _, columns = pyogrio.raw.read(path, layer="unit", where="key = 'bench'")
    unit = dict(zip(told["fields"], columns, strict=True))
    assert unit["area_m2"][0] == 9000
    assert unit["water_m"][0] == float("inf")
    assert np.isnan(unit["well_m"][0])
    assert unit["wanted_beneath"][0]
    assert unit["permission_until"][0].astype(date) == date(2027, 3, 31)
    told, _, _, columns = pyogrio.raw.read(path, layer="track")
    track = dict(zip(told["fields"], columns, strict=True))
    assert track["began"][0] == np.datetime64("2026-07-01T09:00:00.000")


def test_the_box_around_a_layer_is_right_after_closing(tmp_path: Path) -> None:
    path = made(tmp_path)
    base = connect(path)
    sides = base.execute("SELECT min_x, min_y, max_x, max_y FROM gpkg_contents WHERE table_name = 'unit'").fetchone()
    assert sides == (-89.90, 43.30, -89.89, 43.31)
    with open_file(path) as file:
        bench = file.snapshot().ground["unit"][0]
        file.remove(bench, LATER)
    found = base.execute("SELECT min_x, last_change FROM gpkg_contents WHERE table_name = 'unit'").fetchone()
    base.close()
    assert found == (None, "2026-07-01T10:00:00.000Z")


def test_the_journal_is_read_too(tmp_path: Path) -> None:
    path = made(tmp_path)
    with open_file(path) as file:
        (entry,) = file.say("phone", [draft()])
    told, _, _, columns = pyogrio.raw.read(path, layer="journal")
    journal = dict(zip(told["fields"], columns, strict=True))
    assert journal["body"][0] == entry.body
    assert journal["hash"][0] == entry.hash


@settings(max_examples=draws.of(20), suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(shapes=st.lists(SHAPES, min_size=1, max_size=8))
def test_any_shape_is_read_by_another_program(
    tmp_path_factory: pytest.TempPathFactory, shapes: list[BaseGeometry]
) -> None:
    on_globe = [one for one in shapes if not one.is_empty and max(map(abs, one.bounds)) <= 90]
    path = new_file(tmp_path_factory.mktemp("any") / "any.gpkg", "Any", NOW)
    with open_file(path) as file:
        file.put([Row("mark", f"m{n:03}", one) for n, one in enumerate(on_globe)], "Ann", NOW)
    _, _, found, _ = pyogrio.raw.read(path, layer="mark")
    assert [shapely.to_wkb(shapely.from_wkb(one)) for one in found] == [shapely.to_wkb(one) for one in on_globe]


def test_what_a_map_program_adds_gets_a_key_and_a_version(tmp_path: Path) -> None:
    path = made(tmp_path)
    pyogrio.raw.write(
        path, np.array([shapely.to_wkb(shapely.Point(-89.9, 43.3))], dtype=object),
        [np.array(["an ash"], dtype=object)], ["name"],
        layer="mark", geometry_type="Unknown", crs="EPSG:4326", append=True,
    )  # fmt: skip
    with open_file(path) as file:
        (ash,) = (row for row in file.snapshot().ground["mark"] if row.values.get("name") == "an ash")
        assert ash.key.startswith("mark-")
        assert ash.changed_by == "another program"
        (back,) = file.put([Row("mark", ash.key, ash.shape, {"name": "white ash"}, ash.version)], "Ann", LATER)
        assert back.version == ash.version + 1


def test_what_a_map_program_changes_is_a_new_version(tmp_path: Path) -> None:
    path = made(tmp_path)
    base = connect(path)
    base.execute("UPDATE mark SET name = 'the old oak' WHERE key = 'oak'")
    base.commit()
    base.close()
    with open_file(path) as file:
        (oak,) = file.snapshot().ground["mark"]
        assert (oak.version, oak.changed_by, oak.values["name"]) == (2, "another program", "the old oak")


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ("area_m2 = 'large'", "unit, bench, area_m2: found 'large'; allowed: a number"),
        ("permission_until = '31.3.2027'", "permission_until"),
        ("wanted_beneath = 7", "wanted_beneath: found 7"),
        ("geom = x'00'", "unit, bench: found something else where a shape should stand"),
    ],
)
def test_what_another_program_left_unreadable_is_named_by_row_and_column(
    tmp_path: Path, change: str, told: str
) -> None:
    path = made(tmp_path)
    base = connect(path)
    base.execute("UPDATE unit SET " + change + " WHERE key = 'bench'")  # noqa: S608 (ours, above)
    base.commit()
    base.close()
    with open_file(path) as file, pytest.raises(BadInput) as fault:
        file.snapshot()
    assert told in str(fault.value)
