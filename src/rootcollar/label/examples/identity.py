"""Examples of the rules on which label it is, and on whether its figures agree."""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.label.example import Case, Example
from rootcollar.shelf import Active

__all__ = ["IDENTITY"]

_REAL, _LOCAL = "12345-67", "OR-000000"
_ACTIVE = Active("exemplamine", "amine salt", 43.2, 31.0, 4.18, 3.0, "silent")
_TWICE = Active("exemplamine", "amine salt", 43.2, 31.0, 4.18, 4.0, "silent")

IDENTITY: Mapping[str, Example] = {
    "L01": Example(
        Case("the whole booklet was read", {"complete": True}), Case("the front was read", {"complete": False})
    ),
    "L02": Example(
        Case(f"the number {_REAL}", {"kind": "epa", "reg_no": _REAL, "sln_no": ""}),
        Case("an establishment number in its place", {"kind": "epa", "reg_no": "00000-ZZ-0", "sln_no": ""}),
    ),
    "L03": Example(
        Case("a placeholder number on the invented demo ground", {"reg_no": "00000-00000", "demo": True}),
        Case("a placeholder number on real ground", {"reg_no": "00000-00000", "demo": False}),
    ),
    "L04": Example(
        Case("registered in WI, the ground lies in WI", {"states": ("WI",), "sln_no": "", "state": "WI"}),
        Case("a special local need label of OR on ground in WI", {"states": ("WI",), "sln_no": _LOCAL, "state": "WI"}),
    ),
    "L17": Example(
        Case("9.68 lb/gal, 31.0 % acid, 3.00 lb ae/gal", {"actives": (_ACTIVE,), "other": 56.8, "density": 9.68}),
        Case("the same, but 4.00 lb ae/gal was typed", {"actives": (_TWICE,), "other": 56.8, "density": 9.68}),
    ),
}
