"""Examples of the rules on how much on an acre, in a treatment and in a year."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from rootcollar.kernel.doubt import sure
from rootcollar.label.applied import Applied
from rootcollar.label.example import Case, Example
from rootcollar.label.facts import Past, Work
from rootcollar.label.planned import UnitTotal
from rootcollar.shelf import Active

__all__ = ["AMOUNTS"]

_ACRE_M2, _AE_G_PER_L = 4046.8564224, 359.479  # 3.00 lb ae/gal
_ON, _MARCH = date(2026, 7, 15), date(2026, 3, 12)
_ACTIVES = (Active("exemplamine", "amine salt", 43.2, 31.0, 4.18, 3.0, "silent"),)
_QUART_ML, _GALLON_ML = 946.0, 3785.0
_NOTHING = Past((), True, _ON)
_ONCE = (3.0, "lb/acre", "ae", _ACTIVES)
_YEARLY = (6.0, "lb/acre", "ae", _ACTIVES)


def _work(product_ml: float) -> Work:
    """A 2 % mix on an acre, all of it treated."""
    mix_ml = product_ml * 50
    return Work(
        UnitTotal(
            "bench", "exemplamine", _AE_G_PER_L, 2.0, sure(mix_ml), sure(product_ml), _ACRE_M2, 1, ("a",), _ACRE_M2
        )
    )


def _since(ae_g: float) -> Past:
    return Past((Applied(_MARCH, "bench", "exemplamine", ae_g, _ACRE_M2),), True, _ON)


def _on_an_acre(product_ml: float, **more: Any) -> Mapping[str, Any]:
    return {"which": "site_acre", "area_m2": _ACRE_M2, "work": _work(product_ml), **more}


AMOUNTS: Mapping[str, Example] = {
    "L12": Example(
        Case(
            "a quart of a 3 lb ae/gal product on an acre, the label gives 3 lb ae", _on_an_acre(_QUART_ML, label=_ONCE)
        ),
        Case("1.2 gal of it on an acre", _on_an_acre(1.2 * _GALLON_ML, label=_ONCE)),
    ),
    "L13": Example(
        Case(
            "1 gal on an acre with nothing before, the label gives 6 lb ae in a year",
            _on_an_acre(_GALLON_ML, label=_YEARLY, window="12 months", past=_NOTHING),
        ),
        Case(
            "1 gal on an acre that had 4.4 lb ae of the same acid in March",
            _on_an_acre(_GALLON_ML, label=_YEARLY, window="12 months", past=_since(2000.0)),
        ),
    ),
    "L14": Example(
        Case(
            "the first treatment, the label allows one in a year",
            {
                "most": 1,
                "window": "12 months",
                "deviations": (),
                "area_m2": _ACRE_M2,
                "past": _NOTHING,
                "work": _work(_QUART_ML),
            },
        ),
        Case(
            "the second treatment of the same acre",
            {
                "most": 1,
                "window": "12 months",
                "deviations": (),
                "area_m2": _ACRE_M2,
                "past": _since(100.0),
                "work": _work(_QUART_ML),
            },
        ),
    ),
    "L15": Example(
        Case(
            "60 days between treatments are asked, and 125 lie between",
            {"least_days": 60, "area_m2": _ACRE_M2, "past": _since(100.0), "work": _work(_QUART_ML)},
        ),
        Case(
            "150 days between treatments are asked, and 125 lie between",
            {"least_days": 150, "area_m2": _ACRE_M2, "past": _since(100.0), "work": _work(_QUART_ML)},
        ),
    ),
    "L16": Example(
        Case("the label counts the acre of the site", _on_an_acre(_QUART_ML, label=_ONCE)),
        Case("the label does not say which acre counts", {**_on_an_acre(_QUART_ML, label=_ONCE), "which": None}),
    ),
}
