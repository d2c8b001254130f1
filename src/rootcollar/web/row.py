"""What every page says of the property: its name, its banner, and one fact beneath each step."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from rootcollar.kernel.errors import BadInput
from rootcollar.kernel.units import convert, show
from rootcollar.web.desk import Desk, Open, of_what_lies_open
from rootcollar.web.views.questions import questions
from rootcollar.web.views.working import work_of

__all__ = ["Shared", "shared_facts"]

_DEMO = "INVENTED PLACE, INVENTED LABELS: for looking around, not for work."


@dataclass(frozen=True, slots=True)
class Shared:
    """What the head of a page shows. there: whether a property lies open at all; row: a fact for each step.

    area: of all units together, "" where none is known; about: what else is to be said of the property.
    """

    name: str = "Rootcollar"
    about: str = ""
    area: str = ""
    banner: str = ""
    there: bool = False
    row: Mapping[str, str] = field(default_factory=dict)


def shared_facts(desk: Desk) -> Shared:
    """Return the head of a page; of a folder whose files have faults only its name."""
    if not desk.there:
        return Shared()
    try:
        here = desk.look()
    except BadInput:
        row = dict.fromkeys(("ground", "count", "choose", "prepare"), "")
        return Shared(desk.folder.name, "a file needs mending", there=True, row=row)
    ground = here.project.ground
    areas = [unit.area_m2 for unit in ground.units.values() if unit.area_m2]
    area = show(convert(sum(areas), "m2", "ac"), "ac", 2) if areas else ""
    return Shared(ground.name, "", area, _DEMO if ground.demo else "", True, _row(here))


@of_what_lies_open
def _row(here: Open) -> Mapping[str, str]:
    units = here.project.ground.units
    counted = {stand.unit for stand in here.project.stands}
    asks = len(questions(here))
    clear = {line.stand.unit for line in work_of(here)}
    return {
        "ground": f"{len(units)} {'unit' if len(units) == 1 else 'units'}",
        "count": f"{len(counted)} of {len(units)} counted",
        "choose": f"{asks} {'question' if asks == 1 else 'questions'} open" if asks else "no question open",
        "prepare": f"work on {len(clear)} {'unit' if len(clear) == 1 else 'units'}",
    }
