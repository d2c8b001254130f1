"""Ground to choose on: the demo property read once, and one plain unit on which nothing but the plant decides."""

import math
from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from rootcollar.choose import Choice, Prescription, Setting, Way, decide, prescribe, products, ways_for
from rootcollar.choose.months import in_season
from rootcollar.exchange import read_folder
from rootcollar.kernel.doubt import Doubt, sure
from rootcollar.label import History
from rootcollar.reference import find_species, load
from rootcollar.shelf import Line, Sheet
from rootcollar.site import Ground, Mixing, Permission, Unit
from rootcollar.survey import Stand, stand_key
from rootcollar.work import Project

DAY = date(2026, 9, 15)
FEW = 20  # draws of the doubt: enough for a plan to be whole, few enough for many plans
IN_CM, FT_M = 2.54, 0.3048

PLAIN = Unit(
    "plain", "The plain", 40_000.0, site_class="natural_area", permission=Permission("the owner", date(2030, 1, 1)),
    water_m=math.inf, well_m=math.inf, trail_m=math.inf, keep_m=math.inf, wanted_beneath=False,
    power_m=math.inf, for_whom="own", purpose="nature", mixing=Mixing("the gate", math.inf, math.inf, math.inf),
    taken=(), wanted_roots_m=math.inf, soil="loam", ground_water_m=math.inf,
)  # fmt: skip


@cache
def hobbin() -> Project:
    """Return the demo property, with few draws of the doubt."""
    project = read_folder(Path(str(files("rootcollar.exchange") / "hobbin_wood")))
    return replace(
        project, stands=tuple(replace(one, stems=one.stems[: FEW + 1]) for one in project.stands)
    )  # fmt: skip


def setting_of(project: Project, on: date = DAY) -> Setting:
    """Return what choosing knows of a project, with few draws of the doubt."""
    reference = load()
    return Setting(
        reference, project.ground, project.shelf, products(project.shelf, reference), project.crew.wear,
        project.answers, project.history, Doubt(project.ground.seed, FEW), on,
        people=project.crew.people, own=project.own, aboard=project.crew.aboard, stock=project.stock,
    )  # fmt: skip


@cache
def plan() -> Prescription:
    """Return the plan of the demo property."""
    return prescribe(hobbin().stands, setting_of(hobbin()))


def at(key: str, prescription: Prescription | None = None) -> Choice:
    """Return the line of a stand."""
    return next(one for one in (prescription or plan()).choices if one.stand.key == key)


def only(project: Project, *units: str) -> Project:
    """Return the project with the stands of some units only."""
    return replace(project, stands=tuple(one for one in project.stands if one.unit in units))


def with_units(project: Project, *keys: str, **facts: Any) -> Project:
    """Return the project with other facts of some units (none named: of all)."""
    units = {
        key: replace(unit, **facts) if not keys or key in keys else unit for key, unit in project.ground.units.items()
    }
    return replace(project, ground=replace(project.ground, units=units))


def retyped(sheet: Sheet, **says: Any) -> Sheet:
    """Return a sheet with other lines; a path is written with two underscores for each point, None: not read."""
    changed = {path.replace("__", "."): says[path] for path in says}
    lines = {path: line for path, line in sheet.lines.items() if path not in changed}
    lines |= {path: Line(value) for path, value in changed.items() if value is not None}
    return replace(sheet, lines=lines)


def plain_setting(shelf: Iterable[Sheet] = (), *, demo: bool = True, **facts: Any) -> Setting:
    """Return a setting with the plain unit, changed by facts, and a shelf."""
    sheets = {one.key: one for one in shelf}
    ground = Ground("The plain", "WI", {"plain": replace(PLAIN, **facts)}, demo=demo)
    wear = hobbin().crew.wear
    return Setting(
        load(), ground, sheets, products(sheets, load()), wear, (), History((), complete=True), Doubt(1, FEW), DAY,
        people=hobbin().crew.people[:1],  # the one who is certified
        aboard=hobbin().crew.aboard,
    )  # fmt: skip


def stand(
    plant: str, thin_in: float, thick_in: float, *, count: float = 10, crown_ft: float | None = 4, tall_ft: float = 5
) -> Stand:
    """Return a stand on the plain unit. Sizes in inches and feet; crown None: not in the tally."""
    key = find_species(plant).key
    band_cm = (thin_in * IN_CM, thick_in * IN_CM)
    crown_m = None if crown_ft is None else crown_ft * FT_M
    return Stand(stand_key("plain", key, band_cm), "plain", key, band_cm, sure(count), None, crown_m, tall_ft * FT_M)


def ways(plant: str, method: str, ingredient: str | None = None) -> list[Way]:
    """Return the ways of one visit by a method (and ingredient) for a plant, from an empty shelf, within seasons."""
    species = find_species(plant)
    found = [in_season(way, species, load()) for way in ways_for(species, (), load())]
    return [
        one
        for one in found
        if one.visit.method == method
        and one.step is None
        and (ingredient is None or (one.visit.recipe and one.visit.recipe.ingredient == ingredient))
    ]


def chosen(one: Stand, setting: Setting | None = None) -> Choice:
    """Return the choice for one stand on the plain unit."""
    return decide(one, setting or plain_setting())


def aside(choice: Choice, method: str) -> list[str]:
    """Return why each way by a method was set aside."""
    return [one.because for one in choice.set_aside if one.way.visit.method == method]


def open_methods(choice: Choice) -> set[str]:
    """Return the methods that are chosen, kept as fallback, or only dearer or without a label: not shut."""
    ways_open = [one.way for one in choice.set_aside if one.because.startswith(("dearer", "no label sheet"))]
    ways_open += [one.way for one in (choice.option, choice.fallback and choice.fallback.option) if one]
    return {one.visit.method for one in ways_open}
