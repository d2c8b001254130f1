"""Examples of the rules on the crew and what they wear."""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.label.example import Case, Example

__all__ = ["PEOPLE"]

_ITEMS = ("long sleeves", "chemical-resistant gloves")
_WORN = {"tasks": (_ITEMS, _ITEMS, _ITEMS), "glove_types": ("nitrile",), "respirator": "none"}

PEOPLE: Mapping[str, Example] = {
    "L22": Example(
        Case(
            "sleeves and nitrile gloves are there, as the label says",
            {**_WORN, "wear": frozenset({*_ITEMS, "nitrile gloves"})},
        ),
        Case("the gloves are missing", {**_WORN, "wear": frozenset({"long sleeves"})}),
    ),
    "P06": Example(
        Case("a cut to be treated, and one who may treat", {"beside": (True, 1)}),
        Case("a cut to be treated, and nobody who may", {"beside": (True, 0)}),
    ),
}
