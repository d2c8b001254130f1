"""Examples of the rules on water, wells and whoever holds the ground."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from rootcollar.label.example import Case, Example
from rootcollar.shelf import Distance
from rootcollar.site.ground import Permission

__all__ = ["GROUND"]

_UNTIL = date(2026, 12, 31)
_BUFFER = {"buffers": (Distance("surface water", 25.0, ("foliar",)),), "method": "foliar"}

GROUND: Mapping[str, Example] = {
    "L37a": Example(
        Case(
            "leaf spray 33 ft from a brook, the label keeps 25 ft",
            {**_BUFFER, "distances": {"surface water": 10.0, "well": None}},
        ),
        Case("leaf spray 20 ft from it", {**_BUFFER, "distances": {"surface water": 6.0, "well": None}}),
    ),
    "L37b": Example(
        Case("the unit lies 10 ft from water", {"direct": "prohibited", "water_m": 3.0}),
        Case("the unit touches water", {"direct": "prohibited", "water_m": 0.0}),
    ),
    "P01": Example(
        Case("the owner allows it", {"permission": Permission("the owner", _UNTIL)}),
        Case("nobody has allowed it", {"permission": None}),
    ),
    "P02": Example(
        Case("allowed to the end of the year, worked in July", {"until": _UNTIL, "on": date(2026, 7, 15)}),
        Case("allowed to the end of the year, worked in January after", {"until": _UNTIL, "on": date(2027, 1, 15)}),
    ),
}
