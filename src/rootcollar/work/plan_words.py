"""The figures of whole-property plans in words, the same in the terminal and in the app."""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.choose import Choice, PropertyPlan, Setting, side_words, way_words
from rootcollar.kernel.doubt import Worlds, band, best
from rootcollar.work import text

__all__ = ["PLAN_WORDS", "figure_words", "held_words", "line_words", "way_of_line", "without_words"]

PLAN_WORDS: Mapping[str, str] = {
    "cost": "Cost, all visits", "visits": "Visits to units", "years": "Years", "herbicide": "Herbicide as sold",
    "side": "Hit beside", "left": "Stems left", "mixes": "Mixes to carry",
}  # fmt: skip
_ONE = {"visits": "visit", "years": "year", "left": "stem", "mixes": "mix"}
_MANY = {"visits": "visits", "years": "years", "left": "stems", "mixes": "mixes"}


def figure_words(what: str, figure: Worlds) -> tuple[str, str]:
    """Return a figure of a plan in words, and its 10-90 % band, "" without doubt. what: one of PLAN_WORDS."""
    here = band(figure)
    if what == "herbicide":
        return text.gallons(here.best), text.span(figure)
    if what == "side":
        return side_words(figure)
    sign = "$" if what == "cost" else ""
    said, low, high = (f"{sign}{one:,.0f}" for one in (here.best, here.low, here.high))
    unit = _ONE if said == "1" else _MANY
    return f"{said} {unit[what]}" if what in unit else said, f"{low}–{high.lstrip('$')}" if low != high else ""


def held_words(plan: PropertyPlan) -> str:
    """Return how many lines of a plan a question holds; nothing where none is held."""
    held = len(plan.held)
    if not held:
        return ""
    lines = "line is" if held == 1 else "lines are"
    return f"{held} of its {len(plan.lines)} {lines} held until a question is answered; they are counted all the same"


def without_words(plan: PropertyPlan) -> str:
    """Return how many stands have no way under a plan; nothing where all have one."""
    few = len(plan.without)
    return (
        f"{few} {'stand has' if few == 1 else 'stands have'} no way under it, and all their stems are left"
        if few
        else ""
    )


def line_words(line: Choice, setting: Setting) -> str:
    """Return which stems a line is of: unit, plant, size, how many."""
    stand = line.stand
    plant = setting.reference.species[stand.species].common_name
    return (
        f"{setting.ground.units[stand.unit].name}: {plant} {text.size(stand.band_cm)}, {best(stand.stems):,.0f} stems"
    )


def way_of_line(line: Choice) -> str:
    """Return what is done to a line in words."""
    return way_words(line.way) if line.option else "left"
