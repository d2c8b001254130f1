"""Examples of the rules on power lines, height, falling trees, the mixing place, what is taken, roots and soil."""

from __future__ import annotations

import math
from collections.abc import Mapping
from datetime import date

from rootcollar.label.example import Case, Example
from rootcollar.shelf import Distance
from rootcollar.site.ground import Mixing, Taken

__all__ = ["PLACE"]

_WORK = date(2026, 7, 15)
_SETBACK = {"setback": (Distance("well", 50.0),)}
_HAY = {"days": (None, None, 14, None, None), "on": _WORK}
_ROOTS = {"uptake": True, "keep_ft": 10.0, "leaks": ("", False)}
_WARNS = {"cautions": (True, False)}
_KILLED_STANDING = {"method": "hack_squirt", "stature": (9.0, 25.4)}
_FAR = dict.fromkeys(("trail", "road", "building", "parking", "boundary", "power"), math.inf)

PLACE: Mapping[str, Example] = {
    "P07": Example(
        Case("shrubs of 2 m, the line 30 m away", {"power_m": 30.0, "stature": (2.0, 5.0)}),
        Case("shrubs of 2 m, the line 4 m away", {"power_m": 4.0, "stature": (2.0, 5.0)}),
    ),
    "P10": Example(
        Case("stems of 6 to 10 in, 9 m tall, cut off and the stumps treated, the trail 6 m away", {
            **_KILLED_STANDING, "method": "cut_stump", "beneath": {**_FAR, "trail": 6.0},
        }),
        Case("the same, killed standing with filled cuts", {**_KILLED_STANDING, "beneath": {**_FAR, "trail": 6.0}}),
    ),
    "P08": Example(
        Case("leaf spray on plants of 1.2 m", {"method": "foliar", "stature": (1.2, 2.0)}),
        Case("leaf spray on plants of 2 m", {"method": "foliar", "stature": (2.0, 2.0)}),
    ),
    "L39": Example(
        Case("mixed 150 ft from everything", {**_SETBACK, "where": (Mixing("the gate", 45.72, 45.72, 45.72), "WI")}),
        Case("mixed 30 ft from a well, the label says 50 ft", {
            **_SETBACK, "where": (Mixing("the yard", 9.144, 45.72, 45.72), "WI"),
        }),
    ),
    "L43": Example(
        Case("hay is cut in August, the label says 14 days", {**_HAY, "taken": (Taken("hay", date(2026, 8, 1)),)}),
        Case("hay is cut a week after the work", {**_HAY, "taken": (Taken("hay", date(2026, 7, 22)),)}),
    ),
    "L44": Example(
        Case("the nearest wanted tree is 60 ft off, the label says 10 ft", {**_ROOTS, "trees": (None, 18.288)}),
        Case("a wanted tree stands 5 ft off, on no map", {**_ROOTS, "trees": (None, 1.524)}),
    ),
    "L45": Example(
        Case("loam, ground water at 20 ft", {**_WARNS, "soil": ("loam", 6.096)}),
        Case("loamy sand, where the label warns of sand", {**_WARNS, "soil": ("loamy sand", 6.096)}),
    ),
}  # fmt: skip
