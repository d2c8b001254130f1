"""From a plan, a label sheet, a unit and a history to the facts that rules read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from typing import Any

from rootcollar.label.applied import Applied, History
from rootcollar.label.people import Handling, Person, treaters
from rootcollar.label.planned import CUT_AND_TREATED, Planned, UnitTotal
from rootcollar.label.rule import Facts
from rootcollar.shelf import FIELDS, SILENT, Line, Sheet, fields_of, twice
from rootcollar.site.ground import Unit

__all__ = ["Past", "Work", "place_facts", "template_facts", "total_facts"]


@dataclass(frozen=True, slots=True)
class Past:
    """Applications of the same ingredient on the same unit. complete: the user's word; on: the planned day."""

    rows: tuple[Applied, ...]
    complete: bool | None
    on: date | None


@dataclass(frozen=True, slots=True, eq=False)
class Work:
    """The planned work with a product on a unit, and what else is planned there with the same ingredient."""

    total: UnitTotal
    also: tuple[UnitTotal, ...] = ()


def template_facts(
    planned: Planned,
    sheet: Sheet | None,
    *,
    state: str | None,
    demo: bool,
    wear: frozenset[str] | None,
    people: tuple[Person, ...] | None = None,
) -> Facts:
    """Return the facts of a line of work wherever it is done: the plan, the label, the crew's wear.

    sheet: None while there is no label for the product, or where none is used. state, wear: None while not known.
    people: the crew, empty while nobody is written down; None at the bench, where no crew counts.
    A line that this method cannot have counts as silent; so does a whole block of directions where the label gives
    some, but none for this method.
    """
    recipe = planned.recipe
    known: dict[str, object | None] = {
        "plan.method": planned.method,
        "plan.species": planned.species,
        "plan.band_cm": planned.band_cm,
        "plan.strength_pct": recipe.strength_pct if recipe else None,
        "plan.carrier": recipe.carrier if recipe else None,
        "plan.dose": None if planned.dose_ml is None else (planned.dose_ml, planned.dose_per),
        "plan.height_m": planned.height_m,
        "plan.state": state,
        "plan.demo": demo,
        "people.wear": wear,
        "people.beside": (recipe is not None and planned.method in CUT_AND_TREATED, treaters(people or ())),
        "people.crew": people,
        "plan.stature": (planned.height_m, planned.band_cm[1]),
        "plan.leaks": (recipe.ingredient if recipe else "", planned.leaks),
    }
    partner = {"plan.partner": Line(planned.partner)}
    return {**_lines(known), **partner, **(_label(sheet, planned.method) if sheet else {})}


def place_facts(template: Facts, unit: Unit, *, on: date | None) -> Facts:
    """Return the facts of a line of work on a unit. on: the day (or first day of the season) of work, if known."""
    permission = unit.permission
    people, state = _said(template, "people.crew"), _said(template, "plan.state")
    known: dict[str, object | None] = {
        "plan.on": on,
        "place.site_class": unit.site_class,
        "place.area_m2": unit.area_m2 or None,
        "place.water_m": unit.water_m,
        "place.distances": {"surface water": unit.water_m, "well": unit.well_m},
        "place.permission_until": permission.until if permission else None,
        "place.handling": Handling.at(unit, people or (), on, state),
        "place.mixing": (unit.mixing, state),
        "place.trees": (unit.keep_m, unit.wanted_roots_m),
        "place.soil": (unit.soil, unit.ground_water_m),
        "place.power_m": unit.power_m,
        "place.beneath": {
            "trail": unit.trail_m,
            "road": unit.road_m,
            "building": unit.building_m,
            "parking": unit.parking_m,
            "boundary": unit.boundary_m,
            "power": unit.power_m,
        },
    }
    said_or_not: dict[str, Line[Any]] = {"place.permission": Line(permission), "place.taken": Line(unit.taken)}
    return {**template, **_lines(known), **said_or_not}


def total_facts(
    place: Facts, total: UnitTotal, history: History, *, on: date | None, also: Sequence[UnitTotal] = ()
) -> Facts:
    """Return the facts of a product's whole work on a unit.

    history: all known applications; only those of the same ingredient on the same unit count. also: other planned
    totals; those of the same ingredient on the same unit count too.
    """
    rows = tuple(one for one in history.rows if (one.unit, one.ingredient) == (total.unit, total.ingredient))
    beside = tuple(
        one for one in also if (one.unit, one.ingredient) == (total.unit, total.ingredient) and one is not total
    )
    known: dict[str, object | None] = {
        "total.work": Work(total, beside),
        "history.past": Past(rows, history.complete, on),
        "place.area_m2": total.area_m2 or None,
    }
    return {**place, **_lines(known)}


def _said(facts: Facts, path: str) -> Any:
    """Return what a fact says; None where it is not known."""
    return facts[path].says if path in facts else None


def _lines(known: dict[str, object | None]) -> dict[str, Line[Any]]:
    return {path: Line(value) for path, value in known.items() if value is not None}


def _label(sheet: Sheet, method: str) -> dict[str, Line[Any]]:
    facts: dict[str, Line[Any]] = {"sheet.key": Line(sheet.key), "sheet.second": Line(twice(sheet))}
    facts |= {f"sheet.{path}": line for path, line in sheet.lines.items()}
    own, foreign = _method_paths(method)
    facts |= dict.fromkeys(foreign, Line(SILENT))
    if sheet.methods:
        facts["sheet.methods"] = Line(frozenset(sheet.methods))
        if method not in sheet.methods:
            facts |= dict.fromkeys(own, Line(SILENT))
    facts |= {f"sheet.method.{path}": line for path, line in sheet.methods.get(method, {}).items()}
    return facts


@cache
def _method_paths(method: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the facts of a method's block that it can have, and those it cannot."""
    own = {f"method.{path}" for path in fields_of(method)}
    rows = [path for path, row in FIELDS.items() if row.in_method]
    return tuple(f"sheet.{one}" for one in rows if one in own), tuple(f"sheet.{one}" for one in rows if one not in own)
