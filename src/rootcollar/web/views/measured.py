"""The working of what is known of a unit's ground: what was typed, what was drawn, and which of the two is used."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.kernel.units import convert, show
from rootcollar.site import MEASURED, Unit, how_measured
from rootcollar.web.desk import Open
from rootcollar.web.views.working import Drawer, Run, Step, drawer_of
from rootcollar.work import text

__all__ = ["TYPED", "area_run", "distance_run", "how_far", "measured_drawer", "property_drawer", "typed_run"]

_WORDS = {
    "area": "area", "water": "water", "well": "well", "trail": "trail", "keep": "tree or patch to keep",
    "power": "power line", "road": "road", "building": "building", "parking": "place where people park, sit or camp",
    "boundary": "line to another's ground",
}  # fmt: skip


def how_far(length_m: float | None) -> str:
    """Return a distance [m] in words; one of 0 as what it means."""
    return "touches it or lies within" if length_m == 0 else text.distance(length_m)


# By the key of ground.toml: the unit's own name for it, what it is, how it is told.
TYPED: Mapping[str, tuple[str, str, Callable[[float], str]]] = {
    "slope": ("slope_pct", "slope of {}, rise in a hundred", lambda pct: f"{pct:g} %"),
    "worked": ("worked_m2", "ground worked of {}", text.acres),
    "wanted_roots": ("wanted_roots_m", "distance from the stems of {} to a wanted tree or shrub", how_far),
    "ground_water": ("ground_water_m", "depth of ground water below {}", how_far),
}


def area_run(unit: Unit) -> Run:
    """Return a unit's area in words, which open where it is known."""
    return _run(unit, "area", text.acres(unit.area_m2))


def distance_run(unit: Unit, what: str) -> Run:
    """Return a unit's distance in words, which open unless nobody has looked. what: a distance of MEASURED."""
    return _run(unit, what, how_far(getattr(unit, MEASURED[what])))


def typed_run(unit: Unit, what: str) -> Run | None:
    """Return in words, which open, what is never measured but typed; None while nobody has. what: one of TYPED."""
    name, words, show_it = TYPED[what]
    found = getattr(unit, name)
    return None if found is None else Run(show_it(found), f"/ground/{unit.key}/working/{what}", words.format(unit.name))


def measured_drawer(here: Open, key: str, what: str) -> Drawer:
    """Return how a measure of a unit was come by. Raises NotFound for what is not there or not known."""
    units = here.project.ground.units
    if key not in units:
        raise NotFound("unit", key, list(units))
    typed = typed_run(units[key], what) if what in TYPED else None
    if typed is not None:
        step = Step("typed", f"{typed.words} as {what} in ground.toml")
        return Drawer(f"{typed.words}, {typed.about}", "", (step,), ())
    if what not in MEASURED or getattr(units[key], MEASURED[what]) is None:
        raise NotFound("known measure of this unit", what, [*MEASURED, *TYPED])
    return _drawer(here, key, what)


def property_drawer(here: Open) -> Drawer:
    """Return how the area of the whole property was added up. Raises NotFound while no area is known."""
    known = [one for one in here.project.ground.units.values() if one.area_m2]
    if not known:
        raise NotFound("known area", here.project.ground.name, [])
    parts = tuple(Step(one.name, f"{_acres(one.area_m2 or 0):.6g} ac") for one in known)
    whole = _acres(sum(one.area_m2 or 0 for one in known))
    added = " + ".join(f"{_acres(one.area_m2 or 0):.6g}" for one in known)
    return Drawer(
        f"{show(whole, 'ac', 2)}, area of all units",
        "",
        (*parts, Step("all units of known area", f"{added} = {whole:.6g} ac")),
        (),
    )


def _drawer(here: Open, key: str, what: str) -> Drawer:
    with watch() as steps:
        found = how_measured(here.project.ground, key, what)
    assert found.kept is not None
    area = what == "area"
    says = text.acres(found.kept) if area else how_far(found.kept)
    of = f"{_WORDS[what]} of {here.project.ground.units[key].name}"
    drawer = drawer_of(f"{says}, {of}", "", steps, here.setting.reference.sources)
    before = [] if found.typed is None else [Step("typed", f"{_said(found.typed, area)}, as {what} in ground.toml")]
    if found.drawn is not None and math.isinf(found.drawn):
        before.append(Step("looked for", f"no {_WORDS[what]} is drawn, and looked_for in ground.toml names {what}"))
    after = [Step("differ", "by more than a tape does; the smaller is used")] if found.note else []
    return replace(drawer, steps=(*before, *drawer.steps, *after, *_at_the_face(found.kept, area)))


def _at_the_face(kept: float, area: bool) -> tuple[Step, ...]:
    """Return the last step: from metres to what is shown."""
    if math.isinf(kept):
        return ()
    word, unit, metric, shown = ("acres", "ac", "m2", _acres(kept)) if area else ("feet", "ft", "m", _feet(kept))
    per = convert(1, unit, metric)
    return (Step(f"in {word}", f"{kept:.6g} {metric} / {per:.9g} = {shown:.6g} {unit}"),)


def _said(typed: float, area: bool) -> str:
    if area:
        return f"{typed:.6g} m2"
    return '"none", somebody looked' if math.isinf(typed) else f"{typed:.6g} m"


def _acres(area_m2: float) -> float:
    return convert(area_m2, "m2", "ac")


def _feet(length_m: float) -> float:
    return convert(length_m, "m", "ft")


def _run(unit: Unit, what: str, words: str) -> Run:
    if getattr(unit, MEASURED[what]) is None:
        return Run(words)
    return Run(words, f"/ground/{unit.key}/working/{what}", f"{_WORDS[what]} of {unit.name}")
