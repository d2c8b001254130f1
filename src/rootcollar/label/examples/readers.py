"""Example of the rule on who has read the label."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from rootcollar.label.example import Case, Example
from rootcollar.shelf import FIELDS, Again, Twice

__all__ = ["READERS"]

_HIGH = FIELDS["method.concentration.high"]
_LINE = Again("method.foliar.concentration.high", f"foliar: {_HIGH.words}", "ways of using it", _HIGH, "2", "2", "6")

READERS: Mapping[str, Example] = {
    "P09": Example(
        Case(
            "two people read 2 % as the strongest leaf spray",
            {"second": Twice("Ottoline Fernwick", "Elspeth Tarn", (_LINE,)), "demo": False},
        ),
        Case(
            "the second person read 20 %",
            {"second": Twice("Ottoline Fernwick", "Elspeth Tarn", (replace(_LINE, second="20"),)), "demo": False},
        ),
    )
}
