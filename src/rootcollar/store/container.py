"""The GeoPackage around our tables: its marks in the file's head, its own tables, and the box around each layer.

Source: OGC GeoPackage 1.3, clauses 1.1.1 (file), 1.1.2 (reference systems), 1.1.3 (contents), 2.1.5 (geometry columns).
No index of shapes: its triggers call functions that plain SQLite has not, and a whole layer is read in less than a
second.
"""

from __future__ import annotations

from datetime import datetime

import numpy as np
import shapely

from rootcollar.kernel.errors import BadInput
from rootcollar.store.base import Connection
from rootcollar.store.blob import SRS, wkb_of
from rootcollar.store.layers import LAYERS, Layer
from rootcollar.store.values import moment_text

__all__ = ["APPLICATION_ID", "GEOPACKAGE_VERSION", "box_of", "fit_boxes", "list_layer", "list_table", "make_container"]

APPLICATION_ID = 0x47504B47  # "GPKG", bytes 68 to 71 of the file
GEOPACKAGE_VERSION = 10300  # 1.3.0; our own version stands in a table of our own, because this place is taken

_WGS_84 = (
    'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],'
    'AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],'
    'UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AXIS["Latitude",NORTH],AXIS["Longitude",EAST],'
    'AUTHORITY["EPSG","4326"]]'
)

# The three that the standard wants, in its own words.
_SYSTEMS = (
    ("Undefined Cartesian", -1, "NONE", -1, "undefined", "any flat place nobody has named"),
    ("Undefined geographic", 0, "NONE", 0, "undefined", "any degrees nobody has named"),
    ("WGS 84 geodetic", SRS, "EPSG", SRS, _WGS_84, "longitude and latitude in degrees"),
)

_TABLES = (
    """CREATE TABLE gpkg_spatial_ref_sys (
        srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL PRIMARY KEY, organization TEXT NOT NULL,
        organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT)""",
    """CREATE TABLE gpkg_contents (
        table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE,
        description TEXT DEFAULT '', last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
        min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER,
        CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))""",
    """CREATE TABLE gpkg_geometry_columns (
        table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL,
        z TINYINT NOT NULL, m TINYINT NOT NULL,
        CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name), CONSTRAINT uk_gc_table_name UNIQUE (table_name),
        CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
        CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))""",
)

Box = tuple[float | None, float | None, float | None, float | None]


def make_container(base: Connection) -> None:
    """Make the standard's own tables in a new file. The marks in the head are part of the same change."""
    base.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    base.execute(f"PRAGMA user_version = {GEOPACKAGE_VERSION}")
    for table in _TABLES:
        base.execute(table)
    base.executemany("INSERT INTO gpkg_spatial_ref_sys VALUES (?, ?, ?, ?, ?, ?)", _SYSTEMS)


def list_layer(base: Connection, layer: Layer, now: datetime) -> None:
    """Tell map programs of a layer; as yet nothing lies on it."""
    _list(base, layer.name, "features", layer.says, now)
    base.execute("UPDATE gpkg_contents SET srs_id = ? WHERE table_name = ?", (SRS, layer.name))
    base.execute(
        "INSERT INTO gpkg_geometry_columns VALUES (?, 'geom', ?, ?, 0, 0)", (layer.name, layer.shape, SRS)
    )  # no heights, no measures


def list_table(base: Connection, name: str, says: str, now: datetime) -> None:
    """Tell map programs of a table without shapes."""
    _list(base, name, "attributes", says, now)


def _list(base: Connection, name: str, kind: str, says: str, now: datetime) -> None:
    base.execute(
        "INSERT INTO gpkg_contents (table_name, data_type, identifier, description, last_change) "
        "VALUES (?, ?, ?, ?, ?)",
        (name, kind, name, says, moment_text(now)),
    )


def fit_boxes(base: Connection) -> None:
    """Write the box around what lies on each layer where the standard wants it; map programs zoom to it."""
    for name in LAYERS:
        base.execute(
            "UPDATE gpkg_contents SET min_x = ?, min_y = ?, max_x = ?, max_y = ? WHERE table_name = ?",
            (*box_of(base, name), name),
        )


def box_of(base: Connection, layer: str) -> Box:
    """Return least x, least y, most x, most y of a layer; four times None when nothing on it has a shape.

    A shape that cannot be read counts as none here: naming it is the doctor's.
    """
    found = []
    for (blob,) in base.execute(f'SELECT geom FROM "{layer}" WHERE geom IS NOT NULL'):
        try:
            found.append(wkb_of(blob)[0])
        except BadInput:
            continue
    shapes = shapely.from_wkb(np.array(found, dtype=object), on_invalid="ignore")
    drawn = shapes[~(shapely.is_missing(shapes) | shapely.is_empty(shapes))]
    if not drawn.size:
        return None, None, None, None
    box = shapely.total_bounds(drawn)
    left, low, right, high = (float(side) for side in box)
    return left, low, right, high
