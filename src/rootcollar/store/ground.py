"""Rows of the ground: read as they stand, changed only by somebody who has seen how they stand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from types import MappingProxyType

import shapely
from shapely.geometry.base import BaseGeometry

from rootcollar.kernel.errors import BadInput, Fault, NotFound, Refusal
from rootcollar.store.base import Connection
from rootcollar.store.blob import SRS, pack, unpack
from rootcollar.store.layers import KEPT_BY_US, LAYERS, Column, Layer
from rootcollar.store.private import PRIVATE
from rootcollar.store.values import Cell, Value, from_cell, moment_text, plain_text, to_cell

__all__ = ["Row", "put_rows", "read_layer", "remove_row", "row_faults"]

_MOST_LON, _MOST_LAT = 180.0, 90.0  # degrees: the globe


@dataclass(frozen=True, slots=True)
class Row:
    """One thing on the ground. version: 0 for a new one, else as read; the file refuses a change to an older one.

    shape: longitude, latitude in degrees of WGS 84; None where none was drawn. values: by column of its layer; what
    is not there is not known. changed_at, changed_by: set by the file.
    """

    layer: str
    key: str
    shape: BaseGeometry | None = None
    values: Mapping[str, Value] = field(default_factory=lambda: MappingProxyType({}))
    version: int = 0
    changed_at: datetime | None = None
    changed_by: str = ""


def read_layer(base: Connection, layer: Layer) -> tuple[Row, ...]:
    """Return a layer's rows in the order of their keys. Raises BadInput with every cell that cannot be read."""
    columns = (*KEPT_BY_US, *layer.columns)
    names = ", ".join(f'"{column.name}"' for column in columns)
    rows: list[Row] = []
    faults: list[Fault] = []
    for line in base.execute(f'SELECT id, geom, {names} FROM "{layer.name}" ORDER BY key'):
        row = _row(layer, columns, line)
        if isinstance(row, Row):
            rows.append(row)
        else:
            faults += row
    if faults:
        raise BadInput(*faults)
    return tuple(rows)


def row_faults(row: Row) -> tuple[Fault, ...]:
    """Return all that keeps a row from being written."""
    if row.layer not in LAYERS:
        return (Fault(f"layer {row.layer!r}", ", ".join(LAYERS)),)
    layer = LAYERS[row.layer]
    return tuple(
        Fault(one.found, one.allowed, layer.name, row.key or "(no key)", one.field) for one in _faults(layer, row)
    )


def put_rows(base: Connection, rows: Sequence[Row], by: str, at: datetime) -> tuple[Row, ...]:
    """Write rows, new or changed, within the change that is under way; return them as they now stand.

    Raises BadInput with every fault of every row, and Refusal when somebody else has changed one since it was read.
    """
    faults = [fault for row in rows for fault in row_faults(row)]
    if not by.strip() or not plain_text(by):
        faults.append(Fault(repr(by), "the name of whoever changes it", field="by"))
    if faults:
        raise BadInput(*faults)
    now = tuple(_put(base, row, by, at) for row in rows)
    for layer in {row.layer for row in rows}:
        _touch(base, layer, at)
    return now


def remove_row(base: Connection, row: Row, at: datetime) -> None:
    """Take a row away that is still as it was read. Raises Refusal when it is not."""
    if row.layer not in LAYERS:
        raise NotFound("layer", row.layer, tuple(LAYERS))
    gone = base.execute(f'DELETE FROM "{row.layer}" WHERE key = ? AND version = ?', (row.key, row.version))
    if gone.rowcount != 1:
        raise _changed_meanwhile(base, row)
    _touch(base, row.layer, at)


def _row(layer: Layer, columns: tuple[Column, ...], line: tuple[Cell, ...]) -> Row | list[Fault]:
    number, blob, *cells = line
    found: dict[str, Value] = {}
    faults: list[Fault] = []
    shape = None
    for column, cell in zip(columns, cells, strict=True):
        if cell is None:
            continue
        try:
            found[column.name] = from_cell(column, cell)
        except BadInput as wrong:
            faults += wrong.faults
    if blob is not None:
        try:
            shape, srs = unpack(blob)
            faults += [] if srs == SRS else [Fault(f"reference system {srs}", f"{SRS}, longitude and latitude")]
        except BadInput as wrong:
            faults += wrong.faults
    key = found.pop("key", None)
    name = str(key or number)
    if key is None and not faults:
        faults.append(Fault("no key", "a key of its own", field="key"))
    if faults:
        return [Fault(one.found, one.allowed, layer.name, name, one.field) for one in faults]
    version, at, who = (found.pop(word, None) for word in ("version", "changed_at", "changed_by"))
    return Row(layer.name, key, shape, MappingProxyType(found), version, at, who or "")  # type: ignore[arg-type]


def _faults(layer: Layer, row: Row) -> Iterator[Fault]:
    if not row.key.strip() or row.key != row.key.strip():
        yield Fault(repr(row.key), "a short key without blanks around it", field="key")
    columns = {column.name: column for column in layer.columns}
    for name, value in row.values.items():
        if name not in columns:
            yield Fault(f"column {name!r}", ", ".join(columns))
            continue
        try:
            to_cell(columns[name], value)
        except BadInput as wrong:
            yield from wrong.faults
    if row.values.get("private") not in (None, *PRIVATE):
        yield Fault(repr(row.values["private"]), ", ".join(PRIVATE), field="private")
    if row.shape is not None:
        yield from _shape_faults(layer, row.shape)


def _shape_faults(layer: Layer, shape: BaseGeometry) -> Iterator[Fault]:
    kind = shape.geom_type.upper()
    if layer.shape not in ("GEOMETRY", kind):
        yield Fault(f"a {kind}", f"a {layer.shape}", field="shape")
    if shape.is_empty:
        yield Fault("an empty shape", "a shape, or none", field="shape")
        return
    corners = shapely.get_coordinates(shape)
    if not ((abs(corners[:, 0]) <= _MOST_LON) & (abs(corners[:, 1]) <= _MOST_LAT)).all():
        yield Fault("a corner off the globe", "degrees: longitude first, latitude second", field="shape")


def _put(base: Connection, row: Row, by: str, at: datetime) -> Row:
    layer = LAYERS[row.layer]
    cells: dict[str, Cell] = {
        "geom": None if row.shape is None else pack(row.shape),
        "version": row.version + 1,
        "changed_at": moment_text(at),
        "changed_by": by,
        **{column.name: None for column in layer.columns},
        **{
            column.name: to_cell(column, row.values[column.name])
            for column in layer.columns
            if column.name in row.values
        },
    }
    if row.version:
        sets = ", ".join(f'"{name}" = ?' for name in cells)
        text = f'UPDATE "{layer.name}" SET {sets} WHERE key = ? AND version = ?'
        done = base.execute(text, (*cells.values(), row.key, row.version)).rowcount == 1
    else:
        cells["key"] = row.key
        names, marks = ", ".join(f'"{name}"' for name in cells), ", ".join("?" for _ in cells)
        text = f'INSERT INTO "{layer.name}" ({names}) VALUES ({marks}) ON CONFLICT (key) DO NOTHING'
        done = base.execute(text, tuple(cells.values())).rowcount == 1
    if not done:
        raise _changed_meanwhile(base, row)
    return Row(row.layer, row.key, row.shape, row.values, row.version + 1, at, by)


def _changed_meanwhile(base: Connection, row: Row) -> Refusal:
    found = base.execute(f'SELECT version, changed_by FROM "{row.layer}" WHERE key = ?', (row.key,)).fetchone()
    now = "it is not there" if found is None else f"it stands at version {found[0]}, by {found[1] or 'nobody named'}"
    was = "a new row" if not row.version else f"version {row.version}"
    return Refusal(
        f"{row.layer} {row.key}",
        limit=f"you change {was}, but {now}",
        do="Nothing was written. Look at it as it stands, then change that.",
    )


def _touch(base: Connection, layer: str, at: datetime) -> None:
    base.execute("UPDATE gpkg_contents SET last_change = ? WHERE table_name = ?", (moment_text(at), layer))
