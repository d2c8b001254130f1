"""Examples of the rules on the sheet itself, on the mix, and on what is carried."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from rootcollar.hazard import Package
from rootcollar.kernel.doubt import sure
from rootcollar.kernel.units import convert
from rootcollar.label.aboard import Aboard, Jugs
from rootcollar.label.example import Case, Example
from rootcollar.label.facts import Work
from rootcollar.label.planned import Partnered, UnitTotal
from rootcollar.reference import load

__all__ = ["CARRIED"]

_ACRE_M2, _GAL_ML = convert(1, "ac", "m2"), convert(1, "gal", "mL")
_LAW = load().hazard
_EYE_II = ("III", "III", "IV", "II", "IV")
_BARE = ("long sleeves", "long trousers", "shoes and socks", "chemical-resistant gloves")
_GUARDED = (*_BARE, "protective eyewear")
_FLOOR = {
    "respirator": "none", "word": "WARNING", "ready": False, "said": _EYE_II, "rows": tuple(_LAW["wear_floor"]),
}  # fmt: skip
_ALONG = Aboard(("brass",), 6 * _GAL_ML, 6 * _GAL_ML, 2, soap=True, labels=True)
_WASH = {"mixing": _GUARDED, "applying": _BARE, "rows": tuple(_LAW["wash"])}
_CLASSED = {"dot_class": "9", "group": "III", "rows": tuple(_LAW["transport"])}
_MIX = {"named": ("otheramine",), "partner": Partnered(("otheramine 2 SL", "otheramine"))}
_FORBIDS = ("lower_dose", "lower_frequency")


def _work(mix_gal: float, passes: int = 1) -> Work:
    """A 2 % mix on an acre, all of it treated."""
    mix_ml = mix_gal * _GAL_ML
    return Work(
        UnitTotal(
            "bench", "exemplamine", 360.0, 2.0, sure(mix_ml), sure(mix_ml / 50), _ACRE_M2, passes, ("a",), _ACRE_M2
        )
    )


CARRIED: Mapping[str, Example] = {
    "L20": Example(
        Case("WARNING, and the worst category is II", {"word": "WARNING", "symbol": False, "said": _EYE_II}),
        Case("CAUTION, and eye irritation is of category II", {"word": "CAUTION", "symbol": False, "said": _EYE_II}),
    ),
    "L21": Example(
        Case("eye category II, eyewear typed for every task", {"lists": (_GUARDED,) * 3, **_FLOOR}),
        Case("eye category II, no eyewear typed to apply", {"lists": (_GUARDED, _BARE, _GUARDED), **_FLOOR}),
    ),
    "L46": Example(
        Case("a partner that the label names", {"forbidden": (), **_MIX}),
        Case("a partner that the label forbids", {"forbidden": ("otheramine",), **_MIX}),
    ),
    "L48": Example(
        Case("8 h of work with a load, a mix may stand 24 h", {"hours": 24.0, "load": ("4 gal", 8.0)}),
        Case("8 h of work with a load, a mix may stand 4 h", {"hours": 4.0, "load": ("4 gal", 8.0)}),
    ),
    "L49": Example(
        Case("a brass nozzle, the label forbids galvanized", {"forbidden": ("galvanized",), "along": (_ALONG, 2)}),
        Case(
            "a galvanized tank, the label forbids galvanized",
            {"forbidden": ("galvanized",), "along": (replace(_ALONG, metals=("galvanized tank",)), 2)},
        ),
    ),
    "L50": Example(
        Case("work in July, usable to the end of the year", {"last": date(2026, 12, 31), "on": date(2026, 7, 15)}),
        Case("work in July, usable to the end of June", {"last": date(2026, 6, 30), "on": date(2026, 7, 15)}),
    ),
    "L51": Example(
        Case("a classed product in a jug of 2.5 gal", {"jugs": ((Package("a jug", 2.5 * _GAL_ML),), 11.0), **_CLASSED}),
        Case("a classed product in a drum of 15 gal", {"jugs": ((Package("a drum", 15 * _GAL_ML),), 70.0), **_CLASSED}),
    ),
    "L52": Example(
        Case("two who treat, 6 gal of water, soap, 6 gal for eyes", {"along": (_ALONG, 2), **_WASH}),
        Case("three who treat, with the same water", {"along": (_ALONG, 3), **_WASH}),
    ),
    "L53": Example(
        Case("the booklet rides along", {"photos": (), "along": (_ALONG, 2)}),
        Case("neither booklet nor a file of it", {"photos": (), "along": (replace(_ALONG, labels=False), 2)}),
    ),
    "L60": Example(
        Case("the jug's label is the one typed", {"version": "2025-01", "jugs": Jugs(("2025-01",))}),
        Case("the jug's label is older than the one typed", {"version": "2025-01", "jugs": Jugs(("2019-03",))}),
    ),
    "L09a": Example(
        Case("12 gal on an acre, the label gives from 10", {"least": 10.0, "deviations": _FORBIDS, "work": _work(12)}),
        Case("8 gal on an acre, and a lower dose is forbidden", {"least": 10.0, "deviations": _FORBIDS,
                                                                "work": _work(8)}),
    ),
}  # fmt: skip
