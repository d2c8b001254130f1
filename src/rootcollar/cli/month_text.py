"""What can be done in a month, told in the terminal: unit by unit, what is best then first, and when the rest is."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rootcollar.choose import MonthLine, Prescription, Setting, in_month, instruction, way_words
from rootcollar.cli.laid_out import wrapped
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.verdict import Level
from rootcollar.work import Project, text

__all__ = ["as_json", "summary"]

_GROUPS = (("best now", True, True), ("open now", True, False), ("not now", False, False))


def summary(project: Project, plan: Prescription, month: int, setting: Setting) -> Iterator[str]:
    """Yield the lines: units in the order to work them; of each what is best in the month, what is open, what is not.

    month: 1 to 12.
    """
    yield f"{project.ground.name}: what can be done in {MONTHS[month - 1]}"
    for place, (key, _) in enumerate(plan.order, start=1):
        lines = in_month([one for one in plan.choices if one.stand.unit == key], month, setting)
        yield ""
        yield f"{place}. {project.ground.units[key].name}"
        if not lines:
            yield "   nothing has an open way here"
        for title, is_open, is_best in _GROUPS:
            mine = [one for one in lines if (one.is_open, one.is_open and one.is_best) == (is_open, is_best)]
            if mine:
                yield f"   {title}"
            for one in mine:
                yield from _told(one, setting)
    yield ""
    yield from wrapped("Months are read from sources and go by leaf-out, frost and sap: look at the wood itself.", "")


def _told(one: MonthLine, setting: Setting) -> Iterator[str]:
    stand = one.choice.stand
    plant = setting.reference.species[stand.species].common_name
    held = {Level.STOP: " STRUCK OUT by a rule.", Level.ASK: " HELD until answered."}.get(one.choice.level, "")
    verb, _ = instruction(one.choice.way)
    yield from wrapped(f"{verb}: {plant} {text.size(stand.band_cm)}.{held} {one.said.because}.", "      ")
    if not one.is_best:
        yield from wrapped(
            f"{'best' if one.best.sourced else 'as good'}: {name_months(one.best.months)}: {one.best.because}.",
            "          ",
        )
    if one.instead is not None:
        yield from wrapped(f"open now instead: {one.instead.words}.", "          ")


def as_json(plan: Prescription, month: int, setting: Setting) -> dict[str, Any]:
    """Return the same as plain values, lines in the order of the plan. month: 1 to 12."""
    return {
        "month": month,
        "lines": [
            {
                "line": one.choice.stand.key,
                "unit": one.choice.stand.unit,
                "level": one.choice.level.word,
                "way": way_words(one.choice.way),
                "state": one.said.state,
                "because": one.said.because,
                "best_now": one.is_open and one.is_best,
                "best_months": sorted(one.best.months),
                "best_because": one.best.because,
                "instead": way_words(one.instead.way) if one.instead else "",
                "instead_per_kill": one.instead.per_kill if one.instead else None,
            }
            for one in in_month(plan.choices, month, setting)
        ],
    }
