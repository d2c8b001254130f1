"""What a label says, for paper: its own words in quotes with the page, and what nobody has read named as that."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from rootcollar.kernel.formula import note
from rootcollar.kernel.units import show
from rootcollar.reference import Figure
from rootcollar.shelf import FIELDS, NOT_READ, SILENT, Line, Sheet, Silent, actives, entry_hours, is_placeholder
from rootcollar.work.worked import number

__all__ = [
    "ADVICE",
    "NO_SHEET",
    "SILENT_WORDS",
    "active_words",
    "came",
    "closed_for",
    "figure",
    "page_words",
    "quoted",
    "registration",
]

NO_SHEET = "no label sheet typed: read the label"
SILENT_WORDS = "the label is silent"
ADVICE = "Advice, not the label's words. Where the label or its safety sheet says otherwise, it holds."


def quoted(sheet: Sheet | None, path: str) -> str:
    """Return the label's words at a path in quotes, with the page; or that it is silent, or not read."""
    line = sheet.line(path) if sheet else None
    if sheet is None or line is None:
        return NO_SHEET if sheet is None else NOT_READ
    if line.says is SILENT:
        return SILENT_WORDS
    words = ", ".join(line.says) if isinstance(line.says, tuple) else str(line.says)
    return f"“{words}”{_page(line.page)}" if words else SILENT_WORDS


def figure(sheet: Sheet | None, path: str) -> str:
    """Return the label's figure at a path with its unit and page; or that it is silent, or not read."""
    says = sheet.says(path) if sheet else None
    if sheet is None or says is None:
        return quoted(sheet, path)
    line = sheet.line(path)
    return f"{show(says, FIELDS[path].unit)}{page_words(line)}"


def closed_for(sheets: Sequence[Sheet]) -> str | None:
    """Return for how long nobody may enter, the longest of some labels; None while it is not known of any of them."""
    hours = entry_hours(sheets)
    if hours is None:
        return None

    def again() -> float:
        lines = [(one.product, one.line("entry.rei_hours")) for one in sheets]
        each = [
            note("the label", f"{name}{page_words(line)}", float(line.says), "h")
            for name, line in lines
            if line and not isinstance(line.says, Silent)
        ]
        return note("the longest of these", ", ".join(f"{one:.6g}" for one in each), max(each), "h")

    return number(hours, lambda one: show(one, "h"), "h", again)


def registration(sheet: Sheet | None) -> str:
    """Return the registration number as a tag says it; nothing, to write by hand, where nobody has typed one."""
    if sheet is None:
        return ""
    if sheet.says("identity.registration") == "exempt_25b":
        return "none (minimum-risk product)"
    number = str(sheet.says("identity.epa_reg_no") or "")
    special = sheet.says("identity.sln_no")
    words = f"{number} (placeholder, demo only)" if is_placeholder(number) else number
    return f"{words}, {special}" if special else words


def active_words(sheet: Sheet | None, ingredient: str) -> str:
    """Return the active ingredients with percent by weight and acid in a gallon, as printed."""
    told = []
    for one in actives(sheet) if sheet else ():
        name = f"{one.common_name} {one.form or ''}".strip() if one.common_name else ingredient
        parts = [name, *([show(one.ai_percent, "%")] if one.ai_percent is not None else [])]
        pounds, basis = (one.ae_lb_per_gal, "ae") if one.ae_lb_per_gal is not None else (one.ai_lb_per_gal, "ai")
        parts += [f"{pounds:g}\N{NO-BREAK SPACE}lb\N{NO-BREAK SPACE}{basis}/gal"] if pounds is not None else []
        told.append(", ".join(parts))
    return "; ".join(told) or ingredient


def came(fact: Figure) -> str:
    """Return where a figure comes from, as it is printed: SOURCE, mark."""
    return f"{fact.source}, {fact.mark}"


def page_words(line: Line[Any] | None) -> str:
    """Return where on the label a line stands, in brackets; nothing where nobody has written that."""
    return _page(line.page) if line else ""


def _page(page: str) -> str:
    return f" (label page {page})" if page else ""
