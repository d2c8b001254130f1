"""Plans for the whole property side by side: the one that was chosen, and what else could be."""

from __future__ import annotations

from rootcollar.choose import Prescription, PropertyPlan, Setting, plans
from rootcollar.work import Project

__all__ = ["side_by_side"]


def side_by_side(project: Project, setting: Setting, chosen: Prescription) -> tuple[PropertyPlan, ...]:
    """Return the plans for a property, as chosen first. chosen: its prescription, weighed in the same setting."""
    return plans(project.stands, setting, chosen)
