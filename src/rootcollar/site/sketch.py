"""A unit as plain shapes in metres, for a sketch on paper."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from shapely import Polygon, box, line_merge, union_all
from shapely.geometry.base import BaseGeometry

from rootcollar.site.geometry import centre, flat, shape
from rootcollar.site.ground import Feature, Unit

__all__ = ["Plan", "sketch"]

Points = tuple[tuple[float, float], ...]

_MARGIN = 0.15  # of the unit's longer side, all round, so that what lies beside it shows (ours)
_ROUND_CORNER = 8  # pieces of a quarter circle: round enough for a pencil (ours)


@dataclass(frozen=True, slots=True)
class Plan:
    """A unit drawn flat; points are metres east and north of the plan's lower left corner, north is up.

    lines: (kind, name, points) of what lies within; one point is a spot. keep_out: (words, points) of set-back lines.
    """

    width_m: float
    height_m: float
    outline: Points
    lines: tuple[tuple[str, str, Points], ...] = ()
    keep_out: tuple[tuple[str, Points], ...] = ()


def sketch(
    unit: Unit, features: Iterable[Feature] = (), setbacks: Iterable[tuple[str, float, str]] = ()
) -> Plan | None:
    """Return the unit with a margin and the features within it; None while its outline has not been drawn.

    setbacks: (kind of feature, distance to keep [m], words), each drawn as a line around the features of that kind.
    """
    if not unit.polygon:
        return None
    around = centre(unit.polygon)
    outline = flat(unit.polygon, around)
    west, south, east, north = Polygon(outline).bounds
    margin = _MARGIN * max(east - west, north - south)
    frame = box(west - margin, south - margin, east + margin, north + margin)
    shapes = [(one, shape(flat(one.line, around))) for one in features]
    lines = [
        (one.kind, one.name, points)
        for one, drawn in shapes
        for points in _pieces((drawn.boundary if drawn.geom_type == "Polygon" else drawn).intersection(frame))
    ]
    keep_out = [
        (words, points)
        for kind, keep_m, words in setbacks
        for kept in [[drawn for one, drawn in shapes if one.kind == kind]]
        if kept  # nothing of the kind is mapped: there is no line to draw
        for points in _pieces(_around(kept, keep_m).intersection(frame))
    ]
    corner = (west - margin, south - margin)
    return Plan(
        width_m=east - west + 2 * margin,
        height_m=north - south + 2 * margin,
        outline=_from(corner, outline),
        lines=tuple((kind, name, _from(corner, points)) for kind, name, points in lines),
        keep_out=tuple((words, _from(corner, points)) for words, points in keep_out),
    )


def _around(drawn: Sequence[BaseGeometry], keep_m: float) -> BaseGeometry:
    """Return the line that keeps a distance [m] from all of the shapes."""
    return union_all([one.buffer(keep_m, quad_segs=_ROUND_CORNER) for one in drawn]).boundary


def _pieces(drawn: BaseGeometry) -> list[Points]:
    """Return the points of every piece of a shape that was cut by the frame."""
    if drawn.is_empty:
        return []
    whole = line_merge(drawn) if drawn.geom_type == "MultiLineString" else drawn
    parts = getattr(whole, "geoms", (whole,))
    return [tuple((float(x), float(y)) for x, y in part.coords) for part in parts]


def _from(corner: tuple[float, float], points: Sequence[tuple[float, float]]) -> Points:
    return tuple((x - corner[0], y - corner[1]) for x, y in points)
