"""Two steps in the terminal: when both can be, what is owed of them, and how long what was treated stays uncut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from rootcollar.choose import Choice, Prescription, Setting, owed_steps, step_days, way_words
from rootcollar.cli.laid_out import wrapped
from rootcollar.reference import load
from rootcollar.work.steps_words import steps_words

__all__ = ["owed_json", "steps_json", "summary"]


def summary(plan: Prescription, setting: Setting) -> Iterator[str]:
    """Yield when both steps of the plan's ways of two visits can be, then what is owed; nothing where there is none."""
    units = setting.ground.units
    two = [one for one in plan.choices if one.option and one.way.step and one.is_work]
    if two:
        yield ""
        yield "Two steps: what is done first kills nothing; without the second it is not begun"
    for words, lines in _together(two, setting).items():
        where = ", ".join(dict.fromkeys(units[one.stand.unit].name for one in lines))
        plants = ", ".join(dict.fromkeys(load().species[one.stand.species].common_name for one in lines))
        yield from wrapped(f"{plants} on {where}: {way_words(lines[0].way)}. {words}.", "   ")
    if owed := owed_steps(plan.choices, setting):
        yield ""
        yield "Second steps owed"
        for one in owed:
            yield from wrapped(f"{units[one.unit].name if one.unit in units else one.unit}: {one.words}.", "   ")


def _together(lines: Sequence[Choice], setting: Setting) -> dict[str, list[Choice]]:
    found: dict[str, list[Choice]] = {}
    for one in lines:
        found.setdefault(". ".join(steps_words(one, setting)[:2]), []).append(one)
    return found


def owed_json(plan: Prescription, setting: Setting) -> list[dict[str, Any]]:
    """Return the second steps that are owed as plain values, days as text."""
    return [
        {
            "unit": one.unit,
            "species": one.species,
            "first": one.row.first,
            "first_done": one.first.isoformat(),
            "second": one.row.second,
            "between": _days(one.spans),
            "missed": one.missed,
            "words": one.words,
        }
        for one in owed_steps(plan.choices, setting)
    ]


def steps_json(choice: Choice, setting: Setting) -> dict[str, Any]:
    """Return both steps of a line as plain values; and how long what is treated stays uncut, in words."""
    said = steps_words(choice, setting)
    row = choice.way.step
    if row is None:
        return {"steps": None, "steps_words": list(said)}
    found, days = step_days(choice.way, setting.on), row.wait_days.value if row.wait_days else None
    return {
        "steps": {
            "first": row.first,
            "first_months": sorted(choice.way.treatment[0].months),
            "first_between": _days((found.first,)) if found else [],
            "second": row.second,
            "second_months": sorted(choice.way.visit.months),
            "second_between": _days(found.second) if found else [],
            "wait_days": {"least": days.low, "most": days.high} if days else None,
            "regrowth_m": {"least": row.regrowth_m.value.low, "most": row.regrowth_m.value.high},
            "kills": row.kills,
            "source": load().sources[row.source].cite,
            "mark": str(row.mark),
        },
        "steps_words": list(said),
    }


def _days(spans: Sequence[tuple[Any, Any]]) -> list[list[str]]:
    return [[start.isoformat(), end.isoformat()] for start, end in spans]
