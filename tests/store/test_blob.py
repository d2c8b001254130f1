"""Shapes go into the file and come back, and other programs read and write the same bytes."""

import struct
from pathlib import Path
from sqlite3 import connect

import numpy as np
import pyogrio
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from rootcollar.kernel.errors import BadInput
from rootcollar.store.blob import pack, unpack

_degrees = st.floats(-180, 180, allow_nan=False)
_place = st.tuples(_degrees, _degrees)
_line = st.lists(_place, min_size=2, max_size=6).map(shapely.LineString)
_box = st.tuples(_degrees, _degrees, st.floats(0.001, 2), st.floats(0.001, 2)).map(
    lambda side: shapely.box(side[0], side[1], side[0] + side[2], side[1] + side[3])
)
_simple = st.one_of(_place.map(shapely.Point), _line, _box)
SHAPES = st.one_of(
    _simple,
    st.lists(_place.map(shapely.Point), max_size=4).map(shapely.MultiPoint),
    st.lists(_line, max_size=3).map(shapely.MultiLineString),
    st.lists(_simple, max_size=4).map(shapely.GeometryCollection),
    st.sampled_from(["POINT EMPTY", "POLYGON EMPTY", "MULTIPOLYGON EMPTY"]).map(shapely.from_wkt),
)


@given(SHAPES)
def test_a_shape_comes_back_as_it_went_in(shape: BaseGeometry) -> None:
    blob = pack(shape)
    back, srs = unpack(blob)
    assert srs == 4326
    assert back.geom_type == shape.geom_type
    assert shapely.to_wkb(back) == shapely.to_wkb(shape)
    empty, boxed = bool(blob[3] & 0x10), blob[3] >> 1 & 7 == 1
    assert empty == shape.is_empty
    if boxed:
        left, low, right, high = shape.bounds
        assert struct.unpack("<4d", blob[8:40]) == (left, right, low, high)
    assert boxed == (not shape.is_empty and shape.geom_type != "Point")


def test_a_point_is_the_29_bytes_of_the_standard() -> None:
    told = "4750 0001 e610 0000 0101 0000 0000 0000 0000 6054 c000 0000 0000 2043 40"
    assert pack(shapely.Point(-81.5, 38.25)) == bytes.fromhex(told)


def test_every_kind_of_box_and_both_orders_of_bytes_are_read() -> None:
    point = shapely.Point(-81.5, 38.25)
    for kind, size in enumerate((0, 32, 48, 48, 64)):
        for order, letter in ((1, "<"), (0, ">")):
            head = struct.pack(f"{letter}2sBBi", b"GP", 0, order | kind << 1, 4326)
            wkb = bytes(shapely.to_wkb(point, byte_order=order))
            assert unpack(head + bytes(size) + wkb) == (point, 4326)


@pytest.mark.parametrize(
    "blob",
    [
        b"", b"GP", None, "GP", b"XX" + bytes(27), b"GP\x01\x01" + bytes(25), b"GP\x00\x21" + bytes(25),
        b"GP\x00\x0b" + bytes(90), b"GP\x00\x01" + bytes(4) + b"\x01\x02",
    ],
)  # fmt: skip
def test_other_bytes_are_named_as_no_shape(blob: object) -> None:
    with pytest.raises(BadInput, match="shape"):
        unpack(blob)


@given(SHAPES, st.data())
def test_a_spoilt_shape_is_read_or_named_and_nothing_else(shape: BaseGeometry, data: st.DataObject) -> None:
    blob = bytearray(pack(shape))
    for at in data.draw(st.lists(st.integers(0, len(blob) - 1), min_size=1, max_size=4)):
        blob[at] = data.draw(st.integers(0, 255))
    try:
        back, _ = unpack(bytes(blob[: data.draw(st.integers(0, len(blob)))]))
    except BadInput as told:
        assert "shape" in str(told)
    else:
        assert isinstance(back, BaseGeometry)


def test_heights_are_left_out() -> None:
    assert unpack(pack(shapely.Point(1, 2, 300)))[0].equals_exact(shapely.Point(1, 2))
    assert not unpack(pack(shapely.Point(1, 2, 300)))[0].has_z


def test_shapes_of_another_program_are_read(tmp_path: Path) -> None:
    shapes = [shapely.Point(-89.9, 43.3), shapely.box(0, 0, 1, 2), shapely.LineString([(0, 0), (3, 4)])]
    path = tmp_path / "other.gpkg"
    pyogrio.raw.write(
        path, np.array([shapely.to_wkb(one) for one in shapes], dtype=object), [np.arange(3)], ["n"], layer="any",
        geometry_type="Unknown", crs="EPSG:4326",
    )  # fmt: skip
    base = connect(path)
    found = [unpack(blob) for (blob,) in base.execute('SELECT geom FROM "any" ORDER BY n')]
    base.close()
    assert found == [(one, 4326) for one in shapes]
