"""Plots that hang over the edge: stems near it are counted twice, so that the edge is not left short.

A plot is never shifted inward: that leaves the ground at the edge out and biases the count.
Sources: walk-through, Ducey, Gove & Valentine 2004; mirage, Schmid-Haas 1969 (both read in outline).
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon, STRtree, contains_xy, points

__all__ = ["Places", "inside_share", "mirage", "uncorrected", "walk_through"]

Places = NDArray[np.float64]
"""Positions on a level map [m]: one row a place, columns east and north."""

_HAIR = 1e-9  # what floating point may be off at the rim of a plot [m]
_SQUARE = 1e-6  # what floating point may be off at a square corner, sides multiplied [m2]


def uncorrected(centres: Places, stems: Places, radius_m: float, tract: Polygon) -> Places:
    """Return the stems in each plot, each once: too few at the edge. Arguments as `walk_through`."""
    which, _ = _in_plots(centres, stems[_inside(stems, tract)], radius_m)
    return np.bincount(which, minlength=len(centres)).astype(np.float64)


def walk_through(centres: Places, stems: Places, radius_m: float, tract: Polygon) -> Places:
    """Return the stems counted from each plot centre by walking through.

    From the centre to a stem that is in, and as far again: where that ends outside the tract, the stem counts twice.
    Edges may be crooked, and nobody leaves the tract; only stems closer to a corner than the radius come out a little
    short. centres: inside the tract. radius_m: of the plot, level [m].
    """
    ours = stems[_inside(stems, tract)]
    which, stem = _in_plots(centres, ours, radius_m)
    ends = 2 * ours[stem] - centres[which]
    twice = 1.0 + ~_inside(ends, tract)
    return np.asarray(np.bincount(which, weights=twice, minlength=len(centres)), dtype=np.float64)


def mirage(centres: Places, stems: Places, radius_m: float, tract: Polygon) -> Places:
    """Return the stems counted from each plot centre with the mirage way, for a tract with square outward corners.

    The centre is mirrored over each straight side within the radius, and over both sides at a corner, and the stems of
    the tract in the mirrored plot count again. Arguments as `walk_through`.
    Raises ValueError for a tract that is not a rectangle: elsewhere the way is biased; walk through instead.
    """
    corners = np.asarray(tract.exterior.coords)[:-1]
    sides = np.roll(corners, -1, axis=0) - corners
    square = len(corners) == 4 and np.allclose((sides * np.roll(sides, -1, axis=0)).sum(axis=1), 0, atol=_SQUARE)
    if not square or tract.interiors:
        raise ValueError("the mirage way needs straight sides and square corners; walk through instead")
    over = [_mirror(corners[i], sides[i]) for i in range(len(corners))]
    images: list[Callable[[Places], Places]] = [*over]
    images += [_both(over[i - 1], over[i]) for i in range(len(over))]
    total = uncorrected(centres, stems, radius_m, tract)
    for image in images:
        total = total + uncorrected(image(centres), stems, radius_m, tract)
    return total


def inside_share(distance_m: float, radius_m: float) -> float:
    """Return the share of a round plot inside a straight edge at that distance [m] from its centre, the centre inside.

    >>> round(inside_share(0.5, 1.0), 4)
    0.8045
    """
    if distance_m >= radius_m:
        return 1.0
    angle = math.acos(distance_m / radius_m)
    return 1 - (angle - math.sin(angle) * math.cos(angle)) / math.pi


def _in_plots(centres: Places, stems: Places, radius_m: float) -> NDArray[np.intp]:
    """Return pairs of centre and stem within the radius of each other, as two rows of their numbers."""
    tree = STRtree(np.asarray(points(stems), dtype=object))
    return np.asarray(tree.query(points(centres), predicate="dwithin", distance=radius_m + _HAIR))


def _inside(places: Places, tract: Polygon) -> NDArray[np.bool_]:
    return np.asarray(contains_xy(tract, places[:, 0], places[:, 1]))


def _mirror(corner: Places, side: Places) -> Callable[[Places], Places]:
    along = side / np.hypot(*side)

    def image(places: Places) -> Places:
        away = places - corner
        return np.asarray(corner + 2 * (away @ along)[:, None] * along - away)

    return image


def _both(first: Callable[[Places], Places], then: Callable[[Places], Places]) -> Callable[[Places], Places]:
    return lambda places: then(first(places))
