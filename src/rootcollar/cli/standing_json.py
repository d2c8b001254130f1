"""The trees that earlier work killed on their feet, as `choose --json` tells of them."""

from __future__ import annotations

from datetime import date
from typing import Any

from rootcollar.label import Applied
from rootcollar.work import Project
from rootcollar.work.standing import dead_standing, not_said

__all__ = ["standing_json"]


def standing_json(project: Project, on: date | None) -> dict[str, Any]:
    """Return what stands dead on each unit, and of which treatments that is not known. on: the day somebody goes."""
    units, history = project.ground.units, project.history
    return {
        "dead_standing": [_tree(one) for key in units for one in dead_standing(key, history, on)],
        "dead_standing_not_known": [
            {"unit": key, "treated": day.isoformat()} for key in units for day in not_said(key, history, on)
        ],
    }


def _tree(one: Applied) -> dict[str, Any]:
    """Return trees killed on their feet and not down yet; null where nobody wrote it."""
    return {
        "unit": one.unit,
        "species": one.species or None,
        "method": one.method,
        "diameter_cm": list(one.diameter_cm) if one.diameter_cm else None,
        "stems": one.stems,
        "treated": one.on.isoformat(),
    }
