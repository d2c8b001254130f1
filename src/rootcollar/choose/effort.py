"""What a visit to a stem takes: work at the stem with what is cut, thorns, steep ground, and the walk to the next."""

from __future__ import annotations

import numpy as np

from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula

_MIN_PER_H = 60  # definition
_M_PER_KM = 1000  # definition

__all__ = ["apart_m", "off_path_kmh", "stem_min", "walk_min", "work_min"]


@formula(
    "tour * sqrt(ground_m2 / maximum(stems, 1))",
    gives="m",
    source="BHH59",
    ground_m2=(1, 1000000),
    stems=(1, 10000),
    tour=(0.7, 0.72),
)
def apart_m(ground_m2: float, stems: Worlds, tour: float) -> Worlds:
    """Return how far it is from a stem to the next on the shortest way through all of them, strewn at random [m].

    ground_m2: on which they stand [m2]. stems: how many. tour: share of the root of the ground of one stem.
    Stems in groups are nearer to each other than that.
    """
    found: Worlds = tour * np.sqrt(ground_m2 / np.maximum(stems, 1))
    return found


@formula(
    "fastest_kmh * off_path * exp(-slower * maximum(slope_pct / 100 - fastest_slope, fastest_slope - slope_pct / 100))",
    gives="km/h",
    source="TOBLER93",
    slope_pct=(-100, 100),
    fastest_kmh=(5, 6),
    fastest_slope=(-0.06, -0.04),
    slower=(3, 4),
    off_path=(0.5, 1),
)
def off_path_kmh(slope_pct: Worlds, fastest_kmh: float, fastest_slope: float, slower: float, off_path: float) -> Worlds:
    """Return the speed of a walker off the path [km/h].

    slope_pct: rise in a hundred [%], below 0 downhill. fastest_kmh: on a path [km/h], at fastest_slope [rise over run].
    slower: how fast it falls away from there [per rise over run]. off_path: share of the speed on a path.
    """
    found: Worlds = fastest_kmh * off_path * np.exp(-slower * np.abs(slope_pct / 100 - fastest_slope))
    return found


@formula(
    "apart_m / 1000 * 60 * (1 / up_kmh + 1 / down_kmh) / 2 * maximum(in_brush, 1)",
    gives="min",
    source="arithmetic",
    apart_m=(0.1, 200),
    up_kmh=(0.1, 6),
    down_kmh=(0.1, 6),
    in_brush=(1, 5),
)
def walk_min(apart_m: Worlds, up_kmh: Worlds, down_kmh: Worlds, in_brush: Worlds) -> Worlds:
    """Return the walk from a stem to the next, as often uphill as downhill [min].

    apart_m: from one to the next [m]. up_kmh, down_kmh: speed of a walker off the path [km/h]. in_brush: times as
    long in brush and with gear, never less than once.
    """
    found: Worlds = apart_m / _M_PER_KM * _MIN_PER_H * (1 / up_kmh + 1 / down_kmh) / 2 * np.maximum(in_brush, 1)
    return found


@formula(
    "(at_stem + slash + fruit) * maximum(thorns, 1)",
    gives="min",
    source="ours",
    at_stem=(0.1, 60),
    slash=(0, 60),
    fruit=(0, 10),
    thorns=(1, 3),
)
def work_min(at_stem: Worlds, slash: Worlds, fruit: Worlds, thorns: Worlds) -> Worlds:
    """Return the work on one stem on level ground, once one stands at it [min].

    at_stem: of the way of working [min]. slash: for what is cut [min]. fruit: to bag it [min]. thorns: times as long,
    never less than once.
    """
    found: Worlds = (at_stem + slash + fruit) * np.maximum(thorns, 1)
    return found


@formula(
    "work * (1 + steep_more * slope_pct / 100) + walk",
    gives="min",
    source="ours",
    work=(0.1, 120),
    steep_more=(0, 2),
    slope_pct=(0, 100),
    walk=(0, 30),
)
def stem_min(work: Worlds, steep_more: Worlds, slope_pct: Worlds, walk: Worlds) -> Worlds:
    """Return what a visit to one stem takes [min].

    work: on level ground [min]. steep_more: share more on a slope of 100 %. slope_pct: of the ground [%]. walk: [min].
    """
    return work * (1 + steep_more * slope_pct / 100) + walk
