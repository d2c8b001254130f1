"""A unit's ground as its page shows it: what is known, what is not known yet and where to write it, what is asked."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.exchange import WRITTEN_AS
from rootcollar.kernel.doubt import Worlds, band
from rootcollar.site import Mixing, Permission, Taken, Unit
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.questions import Question, questions
from rootcollar.work import text

__all__ = ["Fact", "UnitGround", "units_ground"]

_DISTANCES = {
    "water": "Water", "well": "Well", "trail": "Trail", "keep": "Tree or patch to keep", "power": "Power line",
    "wanted_roots": "Wanted tree or shrub, from the stems", "ground_water": "Ground water below",
}  # fmt: skip

_FOR_WHOM = {
    "own": "itself, on its own land", "employer": "its employer", "hire": "pay, on another's land",
    "volunteers": "nothing, on another's land", "agency": "a public agency",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing about a unit. says: "" while nobody has said it; key, how: how it is written in ground.toml."""

    words: str
    says: str
    key: str
    how: str


@dataclass(frozen=True, slots=True)
class UnitGround:
    """A unit: what is known in one sentence and in pairs, what is still asked, what is counted there.

    counted: (plant, size, stems with their doubt).
    """

    key: str
    name: str
    about: str
    facts: tuple[Fact, ...]
    asked: tuple[Question, ...]
    counted: tuple[tuple[str, str, str], ...]

    @property
    def missing(self) -> tuple[Fact, ...]:
        """What nobody has said yet."""
        return tuple(one for one in self.facts if not one.says)

    @property
    def open(self) -> int:
        """How many things are still to be found out: what is not known and what a rule asks."""
        return len(self.missing) + len(self.asked)


@of_what_lies_open
def units_ground(here: Open) -> tuple[UnitGround, ...]:
    """Return every unit of the property, in the order of ground.toml."""
    return tuple(_unit(here, unit) for unit in here.project.ground.units.values())


def _unit(here: Open, unit: Unit) -> UnitGround:
    facts = _facts(here, unit)
    asked = tuple(one for one in questions(here) if unit.key in dict(one.abouts))
    species = here.setting.reference.species
    counted = tuple(
        (species[one.species].common_name, text.size(one.band_cm), _count(one.stems))
        for one in sorted(here.project.stands, key=lambda one: (one.species, one.band_cm))
        if one.unit == unit.key
    )
    return UnitGround(unit.key, unit.name, _about(unit), facts, asked, counted)


def _about(unit: Unit) -> str:
    area = text.acres(unit.area_m2) if unit.area_m2 is not None else "area not known"
    told = [area, (unit.site_class or "kind of place not said").replace("_", " ")]
    told += [] if unit.slope_pct is None else [f"slope {unit.slope_pct:g} %"]
    return f"{', '.join(told)}; water {text.distance(unit.water_m)}, well {text.distance(unit.well_m)}."


def _facts(here: Open, unit: Unit) -> tuple[Fact, ...]:
    beneath = {None: "", True: "yes", False: "nothing wanted"}
    told = [
        ("Area", "" if unit.area_m2 is None else text.acres(unit.area_m2), "area"),
        ("Kind of place", (unit.site_class or "").replace("_", " "), "site_class"),
        ("Slope", "" if unit.slope_pct is None else f"{unit.slope_pct:g} %", "slope"),
        ("Permission", _permission(here, unit.permission), "permission"),
        *((words, _distance(getattr(unit, f"{key}_m")), key) for key, words in _DISTANCES.items()),
        ("Wanted plants beneath", beneath[unit.wanted_beneath], "wanted_beneath"),
        ("Soil", unit.soil or "", "soil"),
        ("Worked for", text.purpose(unit.purpose) if unit.purpose else "", "purpose"),
        ("The crew works for", _FOR_WHOM[unit.for_whom] if unit.for_whom else "", "for_whom"),
        ("Mixed at", _mixing(unit.mixing), "mixing"),
        ("Taken from it", _taken(unit.taken), "taken"),
    ]
    return tuple(Fact(words, says, key, WRITTEN_AS[key]) for words, says, key in told)


def _distance(length_m: float | None) -> str:
    if length_m == 0:
        return "touches it or lies within"
    return "" if length_m is None else text.distance(length_m)


def _mixing(mixing: Mixing | None) -> str:
    if mixing is None:
        return ""
    told = (("well", mixing.well_m), ("water", mixing.water_m), ("sinkhole", mixing.sinkhole_m))
    return f"{mixing.place or 'a place'}: {', '.join(f'{word} {text.distance(away_m)}' for word, away_m in told)}"


def _taken(taken: tuple[Taken, ...] | None) -> str:
    if not taken:
        return "" if taken is None else "nothing"
    return ", ".join(
        f"{one.what.replace('_', ' ')}"
        + (f" from {one.first.isoformat()}" if one.first else "")
        + (f" to {one.last.isoformat()}" if one.last else "")
        for one in taken
    )


def _permission(here: Open, permission: Permission | None) -> str:
    if permission is None:
        return ""
    word = "until" if permission.until >= here.on else "ran out on"
    return f"{permission.by}, {word} {permission.until.isoformat()}"


def _count(stems: Worlds) -> str:
    here = band(stems)
    return f"{here.best:,.0f}" + (f" ({here.low:,.0f}–{here.high:,.0f})" if here.low != here.high else "")
