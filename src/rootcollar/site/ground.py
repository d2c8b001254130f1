"""Ground: what lies on a property. None means nobody has looked; an infinite distance means looked, none there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from rootcollar.shelf import SITE_CLASSES

__all__ = [
    "FOR_WHOM", "PURPOSES", "SITE_CLASSES", "SOILS", "TAKEN", "Feature", "FeatureKind", "Ground", "LonLat", "Mixing",
    "Permission", "Taken", "Unit",
]  # fmt: skip

LonLat = tuple[float, float]  # degrees east, degrees north, WGS 84
FeatureKind = Literal[
    "water", "well", "trail", "keep", "neighbour", "power", "road", "building", "parking", "boundary", "gate"
]

# For whom the crew works on this ground: the owner, the owner's people, for pay, for nothing, or a public agency.
FOR_WHOM = ("own", "employer", "hire", "volunteers", "agency")

# What the ground is worked for; the first alone is the producing of agricultural plants, timber among them.
PURPOSES = ("produce", "nature", "grounds", "right_of_way", "pasture", "public_programme")

TAKEN = ("milk_grazing", "grazing", "hay", "slaughter", "nuts", "fruit", "sap", "gathering")

# Textures, coarsest first, as the soil survey names them.
SOILS = ("sand", "loamy sand", "sandy loam", "loam", "silt loam", "clay loam", "clay", "peat or muck")


@dataclass(frozen=True, slots=True)
class Permission:
    """Who allows the work here, and until when."""

    by: str
    until: date


@dataclass(frozen=True, slots=True)
class Mixing:
    """Where mixes are made for a unit, and how far [m] that is from a well, from water and from a sinkhole."""

    place: str = ""
    well_m: float | None = None
    water_m: float | None = None
    sinkhole_m: float | None = None


@dataclass(frozen=True, slots=True)
class Taken:
    """What is grazed, cut or gathered on a unit, one of TAKEN; first and last day, None: all the time."""

    what: str
    first: date | None = None
    last: date | None = None


@dataclass(frozen=True, slots=True)
class Feature:
    """Something with a place: water, a well, a trail, a tree or patch to keep, a power line, a road, a building, where
    people park, sit or camp, the line between this property and the next, the gate.

    line: one point, or the points of a line or (closed) of an area. own: on this property or a neighbour's.
    """

    kind: FeatureKind
    name: str
    line: tuple[LonLat, ...]
    own: bool = True


@dataclass(frozen=True, slots=True)
class Unit:
    """A piece of ground that is worked as one. None: not known yet.

    site_class: one of SITE_CLASSES. Distances from its edge [m]: infinite where somebody looked and there is none,
    0 where it touches or lies within. worked_m2: the ground in it on which the stems stand and that is worked [m2].
    for_whom, purpose: of FOR_WHOM and PURPOSES. taken: empty, nothing is.
    wanted_roots_m: from the stems to treat to the nearest tree or shrub wanted, mapped or not. soil: one of SOILS.
    ground_water_m: how deep ground water stands at its highest. parking_m: to where people stay, in cars or without.
    boundary_m: to another's ground. wanted_bare: months, 1 to 12, in which nothing wanted beneath has leaves; None: not
    said.
    """

    key: str
    name: str
    area_m2: float | None = None
    polygon: tuple[LonLat, ...] | None = None
    site_class: str | None = None
    slope_pct: float | None = None
    permission: Permission | None = None
    water_m: float | None = None
    well_m: float | None = None
    trail_m: float | None = None
    keep_m: float | None = None
    wanted_beneath: bool | None = None
    worked_m2: float | None = None
    power_m: float | None = None
    for_whom: str | None = None
    purpose: str | None = None
    mixing: Mixing | None = None
    taken: tuple[Taken, ...] | None = None
    wanted_roots_m: float | None = None
    soil: str | None = None
    ground_water_m: float | None = None
    road_m: float | None = None
    building_m: float | None = None
    parking_m: float | None = None
    boundary_m: float | None = None
    wanted_bare: frozenset[int] | None = None


@dataclass(frozen=True, slots=True)
class Ground:
    """A property: where it is, its units, and the features that bind the work.

    looked_for: kinds of feature that somebody has looked for on all of it. notes: what was found odd in reading it,
    in sentences to be printed. typed: the units as they were before the map filled anything in, by key.
    """

    name: str
    state: str | None
    units: Mapping[str, Unit]
    features: tuple[Feature, ...] = ()
    looked_for: frozenset[str] = frozenset()
    demo: bool = False
    seed: int = 1
    emergency: Mapping[str, str] | None = None
    county: str | None = None
    notes: tuple[str, ...] = ()
    typed: Mapping[str, Unit] = field(default_factory=dict)
