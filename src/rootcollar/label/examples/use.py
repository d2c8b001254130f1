"""Examples of the rules on place, plant, method, strength and dose."""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.label.example import Case, Example
from rootcollar.shelf import SiteLine

__all__ = ["USE"]

_FORESTS = (SiteLine("forests", "forest", True),)
_SHRUB = "shrub example"
_WEAKER = {"least_pct": 1.0, "forbidden": False, "deviations": (), "set_by_label": False}
_METHODS = {"prohibited": ("aerial",), "only": False, "listed": frozenset({"foliar", "cut_stump"})}
_ANY_STEM = {"thin_in": 0.5, "thick_in": 6.0}
_CUT = {"label": (1.0, "mL", "cut"), "deviations": (), "band_cm": (2.5, 5.0)}

USE: Mapping[str, Example] = {
    "L05": Example(
        Case("forest, and the label names forests", {"sites": _FORESTS, "site_class": "forest"}),
        Case("a lawn, and the label names forests alone", {"sites": _FORESTS, "site_class": "residential"}),
    ),
    "L06": Example(
        Case("a listed shrub", {"listed": (_SHRUB,), "only": True, "names": (_SHRUB,)}),
        Case("an unlisted shrub", {"listed": (_SHRUB,), "only": False, "names": ("other shrub",)}),
    ),
    "L07": Example(
        Case("leaf spray, which the label gives", {**_METHODS, "method": "foliar"}),
        Case("wiping, of which the label is silent", {**_METHODS, "method": "wipe"}),
    ),
    "L08": Example(
        Case("2 % planned, the label gives up to 2 %", {"most_pct": 2.0, "planned_pct": 2.0}),
        Case("2.5 % planned, the label gives up to 2 %", {"most_pct": 2.0, "planned_pct": 2.5}),
    ),
    "L09": Example(
        Case("1 % planned, the label gives from 1 %", {**_WEAKER, "planned_pct": 1.0}),
        Case("0.8 % planned, the label gives from 1 %", {**_WEAKER, "planned_pct": 0.8}),
    ),
    "L10": Example(
        Case("mixed with water, as the label gives", {"listed": ("water",), "carrier": "water"}),
        Case("mixed with oil, where the label gives water", {"listed": ("water",), "carrier": "oil"}),
    ),
    "L11": Example(
        Case("1 mL in a cut, the label gives 1 mL", {**_CUT, "dose": (1.0, "cut")}),
        Case("1.5 mL in a cut, the label gives 1 mL", {**_CUT, "dose": (1.5, "cut")}),
    ),
    "L47a": Example(
        Case("stems of 1 to 2 in, the label gives 0.5 to 6 in", {**_ANY_STEM, "band_cm": (2.54, 5.08)}),
        Case("stems of 6 to 8 in, the label gives 0.5 to 6 in", {**_ANY_STEM, "band_cm": (15.24, 20.32)}),
    ),
    "L47b": Example(
        Case("plants of 2 m, the label gives up to 15 ft", {"tallest_ft": 15.0, "height_m": 2.0}),
        Case("plants of 5 m, the label gives up to 15 ft", {"tallest_ft": 15.0, "height_m": 5.0}),
    ),
    "P03": Example(
        Case("a surfactant is demanded at 0.5 %", {"needed": True, "percent": 0.5}),
        Case("a surfactant is demanded, no percent given", {"needed": True, "percent": None}),
    ),
}
