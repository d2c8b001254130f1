"""Areas and distances on the ground, from positions in degrees."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import pairwise

from pyproj import Geod, Transformer
from shapely import LinearRing, LineString, Point, Polygon, is_valid_reason
from shapely.geometry.base import BaseGeometry

from rootcollar.site.ground import LonLat

__all__ = ["area_m2", "centre", "distance_m", "flat", "nearest", "outline_fault", "shape", "unflat"]

_EARTH = Geod(ellps="WGS84")
_CORNERS = 3  # of a triangle, the least that encloses ground (definition)


def area_m2(polygon: Sequence[LonLat]) -> float:
    """Return the area of a polygon on the WGS 84 ellipsoid, its sides geodesics [m2].

    polygon: corners in degrees, in either direction, the first repeated at the end or not.

    >>> round(area_m2([(-89.9, 43.3), (-89.9, 43.301), (-89.899, 43.301), (-89.899, 43.3)]))
    9015
    """
    lons, lats = zip(*polygon, strict=True)
    return abs(float(_EARTH.polygon_area_perimeter(lons, lats)[0]))


def centre(points: Iterable[LonLat]) -> LonLat:
    """Return the middle of the box around the points [degrees]. Raises ValueError for no points."""
    lons, lats = zip(*points, strict=True)
    return (min(lons) + max(lons)) / 2, (min(lats) + max(lats)) / 2


def flat(points: Iterable[LonLat], around: LonLat) -> tuple[tuple[float, float], ...]:
    """Return positions as metres east and north of a centre, azimuthal equidistant on WGS 84.

    Within 20 km of the centre a length comes out less than two parts in a million from the geodesic.
    """
    lons, lats = zip(*points, strict=True)
    east, north = _onto_plane(around).transform(lons, lats)
    return tuple(zip(map(float, east), map(float, north), strict=True))


def unflat(places: Iterable[tuple[float, float]], around: LonLat) -> tuple[LonLat, ...]:
    """Return positions in degrees of places in metres east and north of a centre: the way back from `flat`.

    Raises ValueError for no places.
    """
    east, north = zip(*places, strict=True)
    lons, lats = _onto_plane(around).transform(east, north, direction="INVERSE")
    return tuple(zip(map(float, lons), map(float, lats), strict=True))


@lru_cache(maxsize=16)
def _onto_plane(around: LonLat) -> Transformer:
    lon, lat = around
    plane = f"+proj=aeqd +lat_0={lat!r} +lon_0={lon!r} +datum=WGS84 +units=m +no_defs"
    return Transformer.from_crs("EPSG:4326", plane, always_xy=True)


def shape(points: Sequence[tuple[float, float]], *, filled: bool = False) -> BaseGeometry:
    """Return a shape on the plane: one point, a line, or an area where the points close or filled is asked."""
    if len(points) == 1:
        return Point(points[0])
    if filled or (len(points) > _CORNERS and points[0] == points[-1]):
        return Polygon(points)
    return LineString(points)


def distance_m(polygon: Sequence[LonLat], lines: Iterable[Sequence[LonLat]]) -> float:
    """Return the distance from a polygon to the nearest of the lines [m], as `nearest`."""
    return nearest(polygon, lines)[0]


def nearest(polygon: Sequence[LonLat], lines: Iterable[Sequence[LonLat]]) -> tuple[float, int]:
    """Return the distance from a polygon to the nearest of the lines [m], and which one that is, counted from 0.

    0 m where one touches it or lies within. Measured on the plane around the polygon's own middle. Infinite, and -1,
    when there are no lines.
    """
    around = centre(polygon)
    unit = shape(flat(polygon, around), filled=True)
    found = ((float(unit.distance(shape(flat(line, around)))), at) for at, line in enumerate(lines))
    return min(found, default=(float("inf"), -1))


def outline_fault(polygon: Sequence[LonLat]) -> str:
    """Return why a polygon encloses no ground that can be measured, in words; "" when it does."""
    corners = list(polygon[:-1] if len(polygon) > 1 and polygon[0] == polygon[-1] else polygon)
    if len(set(corners)) < _CORNERS:
        return "fewer than three different corners"
    if any(one == two for one, two in pairwise(corners)):
        return "the same corner twice in a row"
    if not LinearRing(corners).is_simple:
        return f"sides that cross or touch each other ({is_valid_reason(Polygon(corners))})"
    return ""
