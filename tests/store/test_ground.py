"""Rows of the ground come back as they were put, and nobody writes over a change they have not seen."""

from dataclasses import fields, replace
from datetime import date
from pathlib import Path

import pytest
import shapely

from rootcollar.kernel.errors import BadInput, Refusal
from rootcollar.site import Feature, Mixing, Permission, Unit
from rootcollar.store import LAYERS, Row, open_file
from tests.store.making import LATER, NOW, ROWS, made

NO_ZONE = NOW.replace(tzinfo=None)


def test_rows_come_back_as_they_were_put(tmp_path: Path) -> None:
    with open_file(made(tmp_path)) as file:
        kept = file.snapshot()
    back = {(row.layer, row.key): row for rows in kept.ground.values() for row in rows}
    assert set(back) == {(row.layer, row.key) for row in ROWS}
    for row in ROWS:
        found = back[row.layer, row.key]
        assert (found.shape, dict(found.values)) == (row.shape, dict(row.values))
        assert (found.version, found.changed_at, found.changed_by) == (1, NOW, "Ann")


def test_a_column_stands_ready_for_all_that_is_known_of_a_unit() -> None:
    columns = {column.name for column in LAYERS["unit"].columns} | {"key"}
    parts = {f"permission_{one.name}" for one in fields(Permission)} | {f"mixing_{one.name}" for one in fields(Mixing)}
    drawn = {"polygon", "permission", "mixing"}
    assert ({one.name for one in fields(Unit)} - drawn) | parts <= columns
    for layer in ("water", "way", "mark"):
        assert {one.name for one in fields(Feature)} - {"line"} <= {column.name for column in LAYERS[layer].columns}


def test_a_change_makes_a_new_version(tmp_path: Path) -> None:
    with open_file(made(tmp_path)) as file:
        bench = file.snapshot().ground["unit"][0]
        (changed,) = file.put([replace(bench, values={"name": "Upper bench"})], "Ben", LATER)
        assert file.snapshot().ground["unit"][0] == changed
        assert (changed.version, changed.changed_by, changed.changed_at) == (2, "Ben", LATER)


def test_who_has_not_seen_the_last_change_writes_nothing(tmp_path: Path) -> None:
    path = made(tmp_path)
    with open_file(path) as one, open_file(path) as other:
        seen = one.snapshot().ground["unit"]
        other.put([replace(seen[0], values={"name": "theirs"})], "Ben", LATER)
        both = [replace(seen[1], values={"name": "mine"}), replace(seen[0], values={"name": "mine"})]
        with pytest.raises(Refusal, match="you change version 1, but it stands at version 2, by Ben"):
            one.put(both, "Ann", LATER)
        with pytest.raises(Refusal, match="stands at version 2"):
            one.remove(seen[0], LATER)
        now = one.snapshot().ground["unit"]
        assert [row.values["name"] for row in now] == ["theirs", "Brook edge, not drawn yet"]


def test_a_key_is_given_once_and_a_row_is_removed_once(tmp_path: Path) -> None:
    with open_file(made(tmp_path)) as file:
        with pytest.raises(Refusal, match="you change a new row, but it stands at version 1, by Ann"):
            file.put([Row("unit", "bench")], "Ann", LATER)
        bench = file.snapshot().ground["unit"][0]
        file.remove(bench, LATER)
        assert [row.key for row in file.snapshot().ground["unit"]] == ["edge"]
        with pytest.raises(Refusal, match="it is not there"):
            file.remove(bench, LATER)
        with pytest.raises(Refusal, match="it is not there"):
            file.put([bench], "Ann", LATER)


def test_all_that_is_wrong_with_rows_is_told_at_once_and_none_is_written(tmp_path: Path) -> None:
    wrong = [
        Row("stem", "s9", shapely.Point(1, 2)),
        Row("stem", " s2", shapely.box(0, 0, 1, 1), {"dbh_cm": "thick", "girth": 3.0}),
        Row("stem", "s3", shapely.Point(43.3, -189.9), {"found_on": NO_ZONE, "dbh_cm": float("nan")}),
        Row("stem", "s4", shapely.from_wkt("POINT EMPTY"), {"tag": "a\0b"}),
        Row("track", "t9", None, {"began": NO_ZONE, "ended": date(2026, 7, 1)}),
        Row("tree", "t"),
    ]
    with open_file(made(tmp_path)) as file:
        with pytest.raises(BadInput) as told:
            file.put(wrong, "Ann", LATER)
        fields_told = [(fault.row, fault.field) for fault in told.value.faults]
        assert fields_told == [
            (" s2", "key"), (" s2", "dbh_cm"), (" s2", ""), (" s2", "shape"),
            ("s3", "found_on"), ("s3", "dbh_cm"), ("s3", "shape"), ("s4", "tag"), ("s4", "shape"),
            ("t9", "began"), ("t9", "ended"), ("", ""),
        ]  # fmt: skip
        with pytest.raises(BadInput, match="the name of whoever changes it"):
            file.put(wrong[:1], "", LATER)
        assert [row.key for row in file.snapshot().ground["stem"]] == ["s1"]
