"""A grid of plots with a random start, laid over ground of any outline."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, cos, floor, radians, sin, sqrt

from shapely import Polygon, contains_xy

from rootcollar.kernel.doubt import Doubt
from rootcollar.kernel.formula import formula
from rootcollar.site import LonLat, flat
from rootcollar.site.geometry import centre, unflat

__all__ = ["Grid", "PlotPoint", "grid_in", "grid_spacing_m", "lay_grid"]

Place = tuple[float, float]  # metres east, metres north of a centre

_MOST_NODES = 20_000  # ours: more plots than anybody lays; a slip of typing
_WIDTH = 2  # figures in the number of a plot, at least; all of a unit alike, so that keys sort as they are walked


@dataclass(frozen=True, slots=True)
class PlotPoint:
    """The middle of one plot. key: as "bench-03". unit: the ground it lies on. lon, lat: degrees, WGS 84."""

    key: str
    unit: str
    lon: float
    lat: float


@dataclass(frozen=True, slots=True)
class Grid:
    """The plots of one unit, in the order of a walk to and fro.

    wanted: how many were asked for; a grid with a random start gives some more or fewer, and none is added or moved.
    spacing_m: between plots [m]. bearing_deg: of the lines that are walked, east of north [degrees].
    start: of the random start, within one spacing, east and north along the lines [m].
    """

    unit: str
    points: tuple[PlotPoint, ...]
    wanted: int
    spacing_m: float
    bearing_deg: float
    start: Place


@formula("sqrt(area_m2 / plots)", gives="m", source="geometry", area_m2=(500, 500_000), plots=(2, 200))
def grid_spacing_m(area_m2: float, plots: float) -> float:
    """Return the spacing of a square grid that gives so many plots on average [m]. area_m2: of the ground [m2]."""
    return sqrt(area_m2 / plots)


def lay_grid(unit: str, outline: Sequence[LonLat], plots: int, doubt: Doubt, bearing_deg: float = 0.0) -> Grid:
    """Return the plots of one unit on a square grid with a random start, the same for the same seed and unit.

    outline: corners of the unit [degrees]. plots: wanted, at least 1. bearing_deg: of the lines to walk; across the
    contours is best, where the ground rises. Nodes inside are kept, none is added or moved: a plot moved inward makes
    the count wrong. Raises ValueError for plots out of bounds.
    """
    if not 1 <= plots <= _MOST_NODES:
        raise ValueError(f"want 1 to {_MOST_NODES} plots, got {plots}")
    around = centre(outline)
    ground = Polygon(flat(outline, around))
    spacing = grid_spacing_m(float(ground.area), plots)
    across, along = (_one(doubt, f"grid/{unit}/{way}") * spacing for way in ("across", "along"))
    places = grid_in(ground, spacing, (across, along), bearing_deg)
    spots = unflat(places, around) if places else ()
    wide = max(_WIDTH, len(str(len(spots))))
    points = tuple(PlotPoint(f"{unit}-{number:0{wide}d}", unit, *spot) for number, spot in enumerate(spots, 1))
    return Grid(unit, points, plots, spacing, bearing_deg, (across, along))


def grid_in(ground: Polygon, spacing_m: float, start: Place, bearing_deg: float = 0.0) -> tuple[Place, ...]:
    """Return the nodes of a square grid inside a polygon on the plane [m], line by line, to and fro.

    start: of the grid, across and along its lines from the plane's centre [m]. bearing_deg: of the lines, east of
    north. Raises ValueError for a spacing that is not above 0, or so narrow that more than 20,000 nodes were tried.
    """
    turn = radians(bearing_deg)
    corners = [_turned(x, y, turn) for x, y in ground.exterior.coords]
    if not spacing_m > 0:
        raise ValueError(f"want a spacing above 0, got {spacing_m}")
    lines, steps = (_span([corner[way] for corner in corners], spacing_m, start[way]) for way in (0, 1))
    if len(lines) * len(steps) > 10 * _MOST_NODES:
        raise ValueError(f"a spacing of {spacing_m:g} m gives too many plots")
    found: list[Place] = []
    for line in lines:
        walk = steps if (line - lines[0]) % 2 == 0 else reversed(steps)
        nodes = ((start[0] + line * spacing_m, start[1] + step * spacing_m) for step in walk)
        places = [_turned(across, along, -turn) for across, along in nodes]
        found += [place for place in places if contains_xy(ground, *place)]
    return tuple(found)


def _one(doubt: Doubt, unknown: str) -> float:
    """One draw in (0, 1), the same for the same seed and name."""
    return float(Doubt(doubt.seed, 1).ranks(unknown)[0])


def _span(values: Sequence[float], spacing: float, start: float) -> range:
    return range(ceil((min(values) - start) / spacing), floor((max(values) - start) / spacing) + 1)


def _turned(x: float, y: float, turn: float) -> Place:
    """A place seen in axes turned clockwise: (across, along) of lines that run that far east of north."""
    return x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)
