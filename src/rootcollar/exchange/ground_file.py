"""ground.toml: the property, its units, and what lies on it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from rootcollar.exchange.entry import Area, Day, Distance, Entry, Position, Text, check, refuse
from rootcollar.kernel.days import MONTHS
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.site import (
    FOR_WHOM,
    PURPOSES,
    SITE_CLASSES,
    SOILS,
    TAKEN,
    Feature,
    Ground,
    LonLat,
    Mixing,
    Permission,
    Taken,
    Unit,
    measure,
    outline_fault,
)

__all__ = ["WRITTEN_AS", "read_ground"]

KINDS = (
    "water", "well", "trail", "keep", "neighbour", "power", "road", "building", "parking", "boundary", "gate",
)  # fmt: skip
LOOKED_FOR = KINDS[:-1]

_KEY = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_NEAR_DEGREES = 0.5  # ours: a property does not reach further than this; more is a slip, or latitude typed first


def _key(raw: object) -> str:
    if not isinstance(raw, str) or not _KEY.fullmatch(raw.strip()):
        refuse(raw, 'a short key of small letters, figures and hyphens, such as "brook-edge"')
    return raw.strip()


def _state(raw: object) -> str:
    if not isinstance(raw, str) or not re.fullmatch("[A-Za-z]{2}", raw.strip()):
        refuse(raw, 'a state by its two letters, such as "WI"')
    return raw.strip().upper()


def _among(words: tuple[str, ...]) -> Callable[[object], object]:
    """Return a check that lets only these words pass."""

    def parse(raw: object) -> object:
        if raw not in words:
            refuse(raw, ", ".join(words))
        return raw

    return parse


def _outline(points: object) -> object:
    if not isinstance(points, list):
        refuse(points, "a list of corners, such as [[-89.90, 43.30], [-89.90, 43.31], [-89.89, 43.31]]")
    return points


Month = Literal[
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
]  # fmt: skip
_DISTANCE = 'a distance such as "60 ft", or "none" where you looked and there is none'


def _slope(raw: object) -> float:
    """A slope in percent, rise in a hundred; steep ground passes 100."""
    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*%\s*", raw) if isinstance(raw, str) else None
    if found is None:
        refuse(raw, 'rise in a hundred, in quotes, such as slope = "12%"')
    return float(found[1])


class _Permission(Entry):
    by: Text = Field(description='who allows the work, in quotes, such as by = "the owner"')
    until: Day = Field(description="a day without quotes, such as until = 2027-03-31")


class _Mixing(Entry):
    place: str = Field("", description='where it is mixed, in quotes, such as place = "the gravel at the gate"')
    well: Distance | None = Field(None, description=_DISTANCE)
    water: Distance | None = Field(None, description=_DISTANCE)
    sinkhole: Distance | None = Field(None, description=_DISTANCE)


class _Taken(Entry):
    what: Annotated[str, BeforeValidator(_among(TAKEN))] = Field(description=", ".join(TAKEN))
    first: Day | None = Field(None, description="the first day without quotes, such as first = 2027-06-01")
    last: Day | None = Field(None, description="the last day without quotes, such as last = 2027-09-30")

    @model_validator(mode="after")
    def _in_order(self) -> _Taken:
        if self.first and self.last and self.last < self.first:
            refuse(f"last = {self.last}, before first = {self.first}", "a last day on or after the first")
        return self


class _Said(Entry):
    """What is said of the whole property, or of one unit where it is otherwise."""

    for_whom: Annotated[str, BeforeValidator(_among(FOR_WHOM))] | None = Field(None, description=", ".join(FOR_WHOM))
    purpose: Annotated[str, BeforeValidator(_among(PURPOSES))] | None = Field(None, description=", ".join(PURPOSES))
    mixing: _Mixing | None = Field(
        None, description='mixing = { place = "the gate", well = "150 ft", water = "200 ft", sinkhole = "none" }'
    )
    taken: list[_Taken] | None = Field(None, description='[] for nothing, or a list such as [{ what = "hay" }]')


class _Unit(_Said):
    key: Annotated[str, BeforeValidator(_key)] = Field(description='a short key, such as key = "brook-edge"')
    name: Text = Field(description='a name in quotes, such as name = "Brook edge"')
    area: Area | None = Field(None, description='an area such as area = "3.2 ac"')
    polygon: Annotated[list[Position], BeforeValidator(_outline)] | None = Field(None, description="a list of corners")
    site_class: Annotated[str, BeforeValidator(_among(SITE_CLASSES))] | None = Field(
        None, description=", ".join(SITE_CLASSES)
    )
    slope: Annotated[float, BeforeValidator(_slope)] | None = Field(None, description='a slope such as slope = "12%"')
    permission: _Permission | None = Field(None, description='permission = { by = "the owner", until = 2027-03-31 }')
    water: Distance | None = Field(None, description=_DISTANCE)
    well: Distance | None = Field(None, description=_DISTANCE)
    trail: Distance | None = Field(None, description=_DISTANCE)
    keep: Distance | None = Field(None, description=_DISTANCE)
    wanted_beneath: bool | None = Field(None, description="true or false, without quotes")
    wanted_bare: list[Month] | None = Field(None, description='months in full, such as ["November", "December"]')
    worked: Area | None = Field(None, description='the ground the stems stand on, such as worked = "1.5 ac"')
    power: Distance | None = Field(None, description=_DISTANCE)
    road: Distance | None = Field(None, description=_DISTANCE)
    building: Distance | None = Field(None, description=_DISTANCE)
    parking: Distance | None = Field(None, description=_DISTANCE)
    boundary: Distance | None = Field(None, description=_DISTANCE)
    wanted_roots: Distance | None = Field(None, description=_DISTANCE)
    soil: Annotated[str, BeforeValidator(_among(SOILS))] | None = Field(None, description=", ".join(SOILS))
    ground_water: Distance | None = Field(None, description='a depth such as "12 ft", or "none" where none is met')

    @model_validator(mode="after")
    def _encloses(self) -> _Unit:
        fault = outline_fault(self.polygon) if self.polygon is not None else ""
        if fault:
            refuse(f"a polygon with {fault}", "corners in the order you would walk them, at least three")
        return self


# How each line of a unit is written, by its key.
WRITTEN_AS = {key: line.description or "" for key, line in _Unit.model_fields.items()}


class _Feature(Entry):
    name: Text = Field(description='a name in quotes, such as name = "the brook"')
    at: Position | None = Field(None, description="[longitude, latitude]")
    line: Annotated[list[Position], BeforeValidator(_outline)] | None = Field(None, description="a list of points")
    own: bool = Field(True, description="true, or false for a neighbour's; without quotes")

    @model_validator(mode="after")
    def _placed(self) -> _Feature:
        if (self.at is None) == (self.line is None):
            refuse("both at and line" if self.at else "neither at nor line",
                   "at = [longitude, latitude] for a spot, or line = [[..], [..]] for a line or an area")  # fmt: skip
        if self.line is not None and len(self.line) < 2:
            refuse(f"a line of {len(self.line)} points", "two points or more; at = [longitude, latitude] for a spot")
        return self


class _Emergency(Entry):
    hospital: str = Field(default="", description="text in quotes")
    poison_line: str = Field(default="", description="text in quotes")
    meeting_point: str = Field(default="", description="text in quotes")


class _Property(_Said):
    name: Text = Field(description='the name of the property in quotes, such as name = "Hobbin Wood"')
    state: Annotated[str, BeforeValidator(_state)] | None = Field(None, description='two letters, such as "WI"')
    county: Text | None = Field(None, description="a name in quotes")
    demo: bool = Field(False, description="true or false; true only in the demo folder")
    seed: int = Field(1, ge=0, description="a whole number of 0 or more, without quotes")
    history: Literal["complete", "not complete"] | None = Field(None, description='"complete" or "not complete"')
    looked_for: list[Annotated[str, BeforeValidator(_among(LOOKED_FOR))]] = Field([], description=", ".join(LOOKED_FOR))
    emergency: _Emergency = Field(_Emergency(), description="a block [emergency]")
    unit: list[_Unit] = Field(min_length=1, description="a block [[unit]] for each unit, with key and name")
    water: list[_Feature] = Field([], description="a block [[water]] for each brook, pond, spring")
    well: list[_Feature] = Field([], description="a block [[well]] for each well")
    trail: list[_Feature] = Field([], description="a block [[trail]] for each trail")
    keep: list[_Feature] = Field([], description="a block [[keep]] for each tree or patch to keep")
    neighbour: list[_Feature] = Field([], description="a block [[neighbour]] for each thing to spare beyond the line")
    power: list[_Feature] = Field([], description="a block [[power]] for each power line")
    road: list[_Feature] = Field([], description="a block [[road]] for each road")
    building: list[_Feature] = Field([], description="a block [[building]] for each building")
    parking: list[_Feature] = Field([], description="a block [[parking]] for each place where people park, sit or camp")
    boundary: list[_Feature] = Field([], description="a block [[boundary]] for the line to another's ground")
    gate: list[_Feature] = Field([], description="a block [[gate]] for each way in")


def read_ground(table: dict[str, Any], file: str) -> tuple[Ground, bool | None]:
    """Return the ground, measured, and the word on whether applied.csv is complete (None: nobody has said).

    Raises BadInput with all faults of the file.
    """
    entry = check(_Property, table, file)
    faults = [Fault(found, allowed, file, row, field) for found, allowed, row, field in _doubtful(entry)]
    if faults:
        raise BadInput(*faults)
    ground = Ground(
        name=entry.name, state=entry.state, county=entry.county, demo=entry.demo, seed=entry.seed,
        units={unit.key: _unit(unit, entry) for unit in entry.unit}, features=tuple(_features(entry)),
        looked_for=frozenset(entry.looked_for),
        emergency={name.replace("_", " "): text.strip() for name, text in entry.emergency},
    )  # fmt: skip
    try:
        measured = measure(ground)
    except BadInput as wrong:
        raise BadInput(*(Fault(one.found, one.allowed, file, one.row, one.field) for one in wrong.faults)) from None
    return measured, None if entry.history is None else entry.history == "complete"


def _doubtful(entry: _Property) -> Iterator[tuple[str, str, str, str]]:
    """Yield what the tables say together that cannot be so: (found, allowed, row, field)."""
    for word, of in (("key", [one.key for one in entry.unit]), ("name", [one.name.casefold() for one in entry.unit])):
        for said, times in Counter(of).items():
            if times > 1:
                yield f"{said!r} {times} times", f"each unit its own {word}", "[[unit]]", word
    for kind in LOOKED_FOR:
        if getattr(entry, kind) and kind not in entry.looked_for:
            yield (
                f"[[{kind}]] drawn, but {kind} not looked for everywhere",
                f'"{kind}" in looked_for once every unit was walked for it; until then type the distance in each unit',
                "", "looked_for",
            )  # fmt: skip
    places = list(_places(entry))
    for row, (lon, lat) in places[1:]:
        (first_lon, first_lat), first = places[0][1], places[0][0]
        if abs(lon - first_lon) > _NEAR_DEGREES or abs(lat - first_lat) > _NEAR_DEGREES:
            yield f"[{lon}, {lat}]", f"a place near {first} [{first_lon}, {first_lat}], longitude first", row, ""


def _places(entry: _Property) -> Iterator[tuple[str, LonLat]]:
    for unit in entry.unit:
        for position in (unit.polygon or [])[:1]:
            yield f"unit {unit.key}", position
    for feature in _features(entry):
        yield f"{feature.kind} {feature.name}", feature.line[0]


def _unit(one: _Unit, whole: _Property) -> Unit:
    """Return a unit; what it does not say for itself holds as said of the whole property."""
    mixing = one.mixing or whole.mixing
    taken = whole.taken if one.taken is None else one.taken
    return Unit(
        key=one.key, name=one.name, area_m2=one.area, polygon=tuple(one.polygon) if one.polygon else None,
        site_class=one.site_class, slope_pct=one.slope,
        permission=Permission(one.permission.by, one.permission.until) if one.permission else None,
        water_m=one.water, well_m=one.well, trail_m=one.trail, keep_m=one.keep, wanted_beneath=one.wanted_beneath,
        wanted_bare=frozenset(MONTHS.index(name) + 1 for name in one.wanted_bare) if one.wanted_bare else None,
        worked_m2=one.worked,
        power_m=one.power, for_whom=one.for_whom or whole.for_whom, purpose=one.purpose or whole.purpose,
        mixing=Mixing(mixing.place.strip(), mixing.well, mixing.water, mixing.sinkhole) if mixing else None,
        taken=None if taken is None else tuple(Taken(each.what, each.first, each.last) for each in taken),
        wanted_roots_m=one.wanted_roots, soil=one.soil, ground_water_m=one.ground_water,
        road_m=one.road, building_m=one.building, parking_m=one.parking, boundary_m=one.boundary,
    )  # fmt: skip


def _features(entry: _Property) -> Iterator[Feature]:
    for kind in KINDS:
        for one in getattr(entry, kind):
            yield Feature(kind, one.name, (one.at,) if one.at else tuple(one.line), one.own)  # type: ignore[arg-type]
