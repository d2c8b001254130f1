"""The seven layers of the ground, column by column: what any map program shows and edits.

Types are the GeoPackage standard's own words; any other, and map programs leave the column out without a word.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

__all__ = ["COMMON", "KEPT_BY_US", "LAYERS", "Column", "Kind", "Layer"]

Kind = Literal["TEXT", "DOUBLE", "INTEGER", "BOOLEAN", "DATE", "DATETIME"]


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its name, ending in its unit; its type as the standard writes it; what it says."""

    name: str
    kind: Kind
    says: str


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer: its name, the kind of shape ("GEOMETRY": any), what lies on it, its columns."""

    name: str
    shape: str
    says: str
    own: tuple[Column, ...]

    @property
    def columns(self) -> tuple[Column, ...]:
        """Every column a person fills: those of all layers, then its own."""
        return (*COMMON, *self.own)


def _columns(text: str) -> tuple[Column, ...]:
    """Return columns written one a line: name, type, what it says."""
    lines = (line.split(maxsplit=2) for line in text.splitlines() if line.strip())
    return tuple(Column(name, kind, says) for name, kind, says in lines)  # type: ignore[arg-type]


COMMON = _columns("""
    name     TEXT  what people call it
    note     TEXT  anything else worth saying
    private  TEXT  what must be left out of a copy that is sent: one of the words of PRIVATE
""")

# What the file itself keeps of each row, beside `id` and the shape.
KEPT_BY_US = _columns("""
    key         TEXT      short and unique in its layer; given by itself when a map program adds a row
    version     INTEGER   one more at each change, whoever makes it
    changed_at  DATETIME  when it was last changed
    changed_by  TEXT      by whom
""")

_UNIT = _columns("""
    area_m2             DOUBLE   measured by the user
    worked_m2           DOUBLE   the ground on which the stems stand and that is worked
    site_class          TEXT     the kind of site, in a label's words
    slope_pct           DOUBLE   rise in a hundred
    soil                TEXT     texture
    ground_water_m      DOUBLE   depth at its highest
    permission_by       TEXT     who allows the work
    permission_until    DATE     its last day
    for_whom            TEXT     for whom the crew works here
    purpose             TEXT     what the ground is worked for
    taken               TEXT     what is grazed, cut or gathered, as JSON; [] for nothing
    water_m             DOUBLE   distance to water; infinite: looked, there is none; empty: nobody has looked
    well_m              DOUBLE   to a well
    trail_m             DOUBLE   to a trail
    keep_m              DOUBLE   to a plant to keep
    power_m             DOUBLE   to a power line
    road_m              DOUBLE   to a road
    building_m          DOUBLE   to a building
    parking_m           DOUBLE   to where people stay, in cars or without
    boundary_m          DOUBLE   to another's ground
    wanted_roots_m      DOUBLE   from the stems to the nearest wanted tree or shrub
    wanted_beneath      BOOLEAN  wanted plants grow beneath the stems
    wanted_bare         TEXT     months, 1 to 12, in which nothing wanted beneath has leaves, as JSON
    mixing_place        TEXT     where mixes are made
    mixing_well_m       DOUBLE   from there to a well
    mixing_water_m      DOUBLE   to water
    mixing_sinkhole_m   DOUBLE   to a sinkhole
""")

_PLACED = """
    kind  TEXT     what it is
    own   BOOLEAN  on this property; no: a neighbour's
"""

_COUNTED = """
    unit  TEXT  key of the unit it lies in
"""

LAYERS: Mapping[str, Layer] = {
    layer.name: layer
    for layer in (
        Layer("unit", "POLYGON", "ground that is worked as one", _UNIT),
        Layer("water", "GEOMETRY", "brooks, ponds, springs, wet ground", _columns(_PLACED)),
        Layer("way", "LINESTRING", "trails, roads, power lines", _columns(_PLACED)),
        Layer(
            "mark",
            "GEOMETRY",
            "wells, gates, trees and patches to keep, what to spare beyond the line",
            _columns(_PLACED),
        ),
        Layer("plot", "GEOMETRY", "where stems were counted", _columns(f"""{_COUNTED}
            form        TEXT    circle, strip or whole unit
            area_m2     DOUBLE  the ground counted
            counted_on  DATE    when
            counted_by  TEXT    by whom
        """)),
        Layer("stem", "POINT", "single stems worth a place of their own", _columns(f"""{_COUNTED}
            species      TEXT    the species' code
            dbh_cm       DOUBLE  diameter
            measured_at  TEXT    breast height or root collar
            tag          TEXT    what is tied to it
            found_on     DATE    when
        """)),
        Layer("track", "MULTILINESTRING", "where somebody walked", _columns("""
            began      DATETIME  its first point
            ended      DATETIME  its last
            device     TEXT      what recorded it
            walked_by  TEXT      who walked
        """)),
    )
}  # fmt: skip
