"""A unit's ground as its page shows it: what is known, what is not known yet and where to write it, what is asked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from rootcollar.exchange import WRITTEN_AS
from rootcollar.kernel.days import name_months
from rootcollar.site import MEASURED, Mixing, Permission, Taken, Unit
from rootcollar.survey import Stand
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.measured import area_run, distance_run, typed_run
from rootcollar.web.views.questions import Question, questions
from rootcollar.web.views.standing import dead_trees
from rootcollar.web.views.working import Run, counted
from rootcollar.work import text

__all__ = ["Fact", "UnitGround", "units_ground"]

_DISTANCES = {
    "water": "Water", "well": "Well", "trail": "Trail", "keep": "Tree or patch to keep", "power": "Power line",
    "road": "Road", "building": "Building", "parking": "Where people park, sit or camp", "boundary": "Another's ground",
    "wanted_roots": "Wanted tree or shrub, from the stems", "ground_water": "Ground water below",
}  # fmt: skip

_FOR_WHOM = {
    "own": "itself, on its own land", "employer": "its employer", "hire": "pay, on another's land",
    "volunteers": "nothing, on another's land", "agency": "a public agency",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing about a unit. says: None while nobody has said it; key, how: how it is written in ground.toml."""

    words: str
    says: Run | None
    key: str
    how: str


@dataclass(frozen=True, slots=True)
class UnitGround:
    """A unit: what is known in one sentence and in pairs, what is still asked, what is counted there.

    counted: (plant, size, stems, their doubt). standing: the warning of trees that were killed there and still stand.
    """

    key: str
    name: str
    about: tuple[Run, ...]
    facts: tuple[Fact, ...]
    asked: tuple[Question, ...]
    counted: tuple[tuple[str, str, Run, str], ...]
    standing: tuple[str, ...] = ()

    @property
    def missing(self) -> tuple[Fact, ...]:
        """What nobody has said yet."""
        return tuple(one for one in self.facts if one.says is None)

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
    stands = sorted(here.project.stands, key=lambda one: (one.species, one.band_cm))
    rows = tuple(_count(one, species[one.species].common_name) for one in stands if one.unit == unit.key)
    return UnitGround(unit.key, unit.name, tuple(_about(unit)), facts, asked, rows, dead_trees(here, unit.key))


def _about(unit: Unit) -> Iterator[Run]:
    yield area_run(unit) if unit.area_m2 is not None else Run("area not known")
    yield Run(f", {(unit.site_class or 'kind of place not said').replace('_', ' ')}")
    slope = typed_run(unit, "slope")
    if slope is not None:
        yield from (Run(", slope "), slope)
    yield from (Run("; water "), distance_run(unit, "water"), Run(", well "), distance_run(unit, "well"), Run("."))


def _facts(here: Open, unit: Unit) -> tuple[Fact, ...]:
    beneath = {None: "", True: "yes", False: "nothing wanted"}
    told = [
        ("Area", None if unit.area_m2 is None else area_run(unit), "area"),
        ("Ground worked", typed_run(unit, "worked"), "worked"),
        ("Kind of place", _said((unit.site_class or "").replace("_", " ")), "site_class"),
        ("Slope", typed_run(unit, "slope"), "slope"),
        ("Permission", _said(_permission(here, unit.permission)), "permission"),
        *((words, _distance(unit, key), key) for key, words in _DISTANCES.items()),
        ("Wanted plants beneath", _said(beneath[unit.wanted_beneath]), "wanted_beneath"),
        *_bare(unit),
        ("Soil", _said(unit.soil or ""), "soil"),
        ("Worked for", _said(text.purpose(unit.purpose) if unit.purpose else ""), "purpose"),
        ("The crew works for", _said(_FOR_WHOM[unit.for_whom] if unit.for_whom else ""), "for_whom"),
        ("Mixed at", _said(_mixing(unit.mixing)), "mixing"),
        ("Taken from it", _said(_taken(unit.taken)), "taken"),
    ]
    return tuple(Fact(words, says, key, WRITTEN_AS[key]) for words, says, key in told)


def _bare(unit: Unit) -> Iterator[tuple[str, Run | None, str]]:
    if unit.wanted_beneath:
        yield "They have no leaves in", _said(name_months(unit.wanted_bare) if unit.wanted_bare else ""), "wanted_bare"


def _said(words: str) -> Run | None:
    return Run(words) if words else None


def _distance(unit: Unit, what: str) -> Run | None:
    if what not in MEASURED:
        return typed_run(unit, what)
    return None if getattr(unit, MEASURED[what]) is None else distance_run(unit, what)


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


def _count(stand: Stand, plant: str) -> tuple[str, str, Run, str]:
    stems, doubt = counted(stand.stems)
    size = text.size(stand.band_cm)
    return plant, size, Run(stems, f"/choose/working/stems/{stand.key}", f"stems of {plant}, {size}"), doubt
