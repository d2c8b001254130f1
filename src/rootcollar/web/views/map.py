"""The ground as a map: drawn flat for a page without scripts, and as GeoJSON for one that can be moved."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from rootcollar.kernel.units import convert
from rootcollar.site import Feature, Unit, flat
from rootcollar.site.geometry import centre, shape
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.ground import units_ground

__all__ = ["KINDS", "Drawn", "GroundMap", "Place", "as_geojson", "drawn", "kinds"]

KINDS = {
    "water": "Water", "well": "Well", "trail": "Trail", "keep": "To keep", "neighbour": "Neighbour",
    "power": "Power line", "road": "Road", "building": "Building", "parking": "Parking", "boundary": "Boundary",
    "gate": "Gate",
}  # fmt: skip

_WIDE = 1000  # width of the drawing, in its own steps; all sizes below are in these
_EDGE = 60  # free all round, so that a name at the edge stands whole
_TALLEST, _LEAST = 1200, 400  # a long strip of ground still fits a page, a flat one still holds its names
_LETTER, _LINE = 11, 24  # breadth and height of a letter of a name, about
_SCALES_FT = (20, 50, 100, 200, 500, 1000, 2000, 5000, 10000)
_BAR = 260  # the scale's bar is at most so long

Point = tuple[float, float]
Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Label:
    """A name and where it stands: the middle of its line."""

    words: str
    x: int
    y: int


@dataclass(frozen=True, slots=True)
class DrawnUnit:
    """A unit on the map: its outline as SVG points, its name, how many things are still open there."""

    key: str
    outline: str
    label: Label
    open: int


@dataclass(frozen=True, slots=True)
class DrawnFeature:
    """What lies there: a spot, a line or an area. points: of SVG; at: of the spot; label: None for want of room."""

    kind: str
    form: Literal["spot", "line", "area"]
    points: str
    at: tuple[int, int]
    label: Label | None


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of feature, for the list of what the marks mean. spots, lines: how it stands on this map."""

    kind: str
    word: str
    names: tuple[str, ...]
    spots: bool
    lines: bool


@dataclass(frozen=True, slots=True)
class Drawn:
    """The whole map: its size, what lies on it, and its scale: words and the length of the bar."""

    width: int
    height: int
    units: tuple[DrawnUnit, ...]
    features: tuple[DrawnFeature, ...]
    scale: str
    bar: int


@of_what_lies_open
def drawn(here: Open) -> Drawn | None:
    """Return the map, north up; None while no outline and no feature has a position."""
    ground = here.project.ground
    units = [unit for unit in ground.units.values() if unit.polygon]
    lines = [*(unit.polygon or () for unit in units), *(one.line for one in ground.features)]
    if not lines:
        return None
    frame = _Frame([point for line in lines for point in line])
    known = {one.key: one.open for one in units_ground(here)}
    names = _Names(frame.width, frame.height)
    features = [(one, frame.put(one.line)) for one in ground.features]
    for _, points in features:
        names.keep_free(points)
    shown = tuple(_unit(unit, frame, names, known[unit.key]) for unit in units)
    found = tuple(_feature(one, points, names) for one, points in features)
    scale_ft = max((one for one in _SCALES_FT if frame.steps(one) <= _BAR), default=_SCALES_FT[0])
    return Drawn(frame.width, frame.height, shown, found, _scale(scale_ft), round(frame.steps(scale_ft)))


def _scale(feet: int) -> str:
    return f"{feet:,} ft ({convert(feet, 'ft', 'm'):,.0f} m)"


class _Frame:
    """From positions to places on the drawing."""

    def __init__(self, places: Sequence[Point]) -> None:
        self._around = centre(places)
        points = flat(places, self._around)
        self._west, east = min(x for x, _ in points), max(x for x, _ in points)
        south, self._north = min(y for _, y in points), max(y for _, y in points)
        inner = _WIDE - 2 * _EDGE
        self._per_m = min(inner / max(east - self._west, 1), (_TALLEST - 2 * _EDGE) / max(self._north - south, 1))
        self.width = _WIDE
        self.height = max(_LEAST, round((self._north - south) * self._per_m) + 2 * _EDGE)
        self._left = (_WIDE - (east - self._west) * self._per_m) / 2

    def put(self, line: Sequence[Point]) -> tuple[Point, ...]:
        """Return positions as places: right and down from the upper left corner."""
        return tuple(
            (self._left + (x - self._west) * self._per_m, _EDGE + (self._north - y) * self._per_m)
            for x, y in flat(line, self._around)
        )

    def steps(self, feet: float) -> float:
        """Return how long a distance is drawn."""
        return convert(feet, "ft", "m") * self._per_m


class _Names:
    """Where names stand: none over another, nor over a mark."""

    def __init__(self, width: int, height: int) -> None:
        self._width, self._height = width, height
        self._taken: list[Box] = []

    def keep_free(self, points: Sequence[Point]) -> None:
        """Let no name stand over a spot."""
        if len(points) == 1:
            (x, y), half = points[0], _LETTER
            self._taken.append((x - half, y - half, x + half, y + half))

    def stand(self, words: str, wanted: Iterable[Point]) -> Label | None:
        """Return a name at the first of the wanted places, moved in from the edge, that is free; None for none."""
        half, up = len(words) * _LETTER / 2, _LINE / 2
        for left, y in wanted:
            x = min(max(left, half), self._width - half)
            box = (x - half, y - up, x + half, y + up)
            if box[1] >= 0 and box[3] <= self._height and not any(_meet(box, other) for other in self._taken):
                self._taken.append(box)
                return Label(words, round(x), round(y))
        return None


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _unit(unit: Unit, frame: _Frame, names: _Names, still_open: int) -> DrawnUnit:
    points = frame.put(unit.polygon or ())
    inside = shape(points, filled=True).representative_point()
    x, y = float(inside.x), float(inside.y)
    wanted = ((x, y + off * _LINE) for off in (0, 1, -1, 2, -2, 3, -3))
    label = names.stand(unit.name, wanted) or Label(unit.name, round(x), round(y))
    return DrawnUnit(unit.key, _points(points), label, still_open)


def _feature(one: Feature, points: Sequence[Point], names: _Names) -> DrawnFeature:
    closed = len(points) > 3 and one.line[0] == one.line[-1]
    form: Literal["spot", "line", "area"] = "spot" if len(points) == 1 else "area" if closed else "line"
    label = names.stand(one.name, _beside(one.name, points))
    x, y = points[0]
    return DrawnFeature(one.kind, form, _points(points), (round(x), round(y)), label)


def _beside(words: str, points: Sequence[Point]) -> Iterator[Point]:
    """Yield where a name may stand beside a spot, or over and under each point of a line, its middle first."""
    half = len(words) * _LETTER / 2 + _LINE
    middle = len(points) // 2
    for x, y in sorted(points, key=lambda point: abs(points.index(point) - middle)):
        yield from ((x, y + _LINE), (x, y - _LINE), (x + half, y), (x - half, y))


def _points(points: Sequence[Point]) -> str:
    return " ".join(f"{x:.0f},{y:.0f}" for x, y in points)


@of_what_lies_open
def kinds(here: Open) -> tuple[Kind, ...]:
    """Return what lies on the ground, kind by kind, with the names of what there is; a neighbour's is said so."""
    found = here.project.ground.features
    return tuple(
        _kind(kind, word, some) for kind, word in KINDS.items() if (some := [f for f in found if f.kind == kind])
    )


def _kind(kind: str, word: str, some: Sequence[Feature]) -> Kind:
    names = tuple(one.name if one.own or kind == "neighbour" else f"{one.name} (not ours)" for one in some)
    spots = sum(len(one.line) == 1 for one in some)
    return Kind(kind, word, names, spots > 0, spots < len(some))


@dataclass(frozen=True, slots=True)
class Geometry:
    """A shape as GeoJSON has it: a Point, a LineString, or a Polygon whose ring ends where it begins."""

    type: Literal["Point", "LineString", "Polygon"]
    coordinates: list[Any]


@dataclass(frozen=True, slots=True)
class About:
    """What a place is. key: of a unit, "" else; open: how many things are still to be found out of a unit."""

    kind: str
    name: str
    key: str = ""
    own: bool = True
    open: int = 0


@dataclass(frozen=True, slots=True)
class Place:
    """A unit or a feature, as a GeoJSON feature."""

    geometry: Geometry
    properties: About
    type: Literal["Feature"] = "Feature"


@dataclass(frozen=True, slots=True)
class GroundMap:
    """All that has a position on a property, as a GeoJSON collection: positions in degrees, longitude first."""

    features: list[Place]
    type: Literal["FeatureCollection"] = "FeatureCollection"


@of_what_lies_open
def as_geojson(here: Open) -> GroundMap:
    """Return units, then features, as GeoJSON."""
    places = []
    known = {one.key: one.open for one in units_ground(here)}
    for unit in here.project.ground.units.values():
        if unit.polygon:
            ring = unit.polygon if unit.polygon[0] == unit.polygon[-1] else (*unit.polygon, unit.polygon[0])
            about = About("unit", unit.name, unit.key, open=known[unit.key])
            places.append(Place(Geometry("Polygon", [[list(one) for one in ring]]), about))
    places += [Place(_geometry(one), About(one.kind, one.name, own=one.own)) for one in here.project.ground.features]
    return GroundMap(places)


def _geometry(one: Feature) -> Geometry:
    points = [list(point) for point in one.line]
    if len(points) == 1:
        return Geometry("Point", points[0])
    # A boundary goes around everything: as a shape it would take every click that is meant for a unit.
    closed = len(points) > 3 and points[0] == points[-1] and one.kind != "boundary"
    return Geometry("Polygon", [points]) if closed else Geometry("LineString", points)
