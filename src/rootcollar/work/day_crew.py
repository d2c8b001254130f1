"""The people on the day sheet: who may do what, and where they are when something goes wrong."""

from __future__ import annotations

from collections.abc import Callable

from rootcollar.choose import Setting
from rootcollar.kernel.tongue import Tongue
from rootcollar.site import Unit
from rootcollar.work.crew import Crew, Person

__all__ = ["emergency_rows", "role_rows"]

_NOBODY = "______"  # a line to write a name on


def role_rows(crew: Crew, cuts: bool, tongue: Tongue) -> tuple[tuple[str, str], ...]:
    """Return who does what. cuts: whether anybody may have to saw or cut.

    Nobody under 18 is named to mix or treat. Who leads, who treats, and on a day with cuts who saws is a line to write
    on where nobody is written down for it. Whoever supervises under a licence and leads is named once.
    """
    roles: dict[str, Callable[[Person], bool]] = {
        "lead": lambda one: "lead" in one.may and one.treats,
        "treat": lambda one: "treat" in one.may and one.treats,
        "saw": lambda one: "saw" in one.may,
        "cut": lambda one: "cut" in one.may,
        "supervise": lambda one: "supervise" in one.may and "lead" not in one.may,
        "minor": lambda one: one.minor,
    }
    names = {
        role: ", ".join(_name(one, role, tongue) for one in crew.people if holds(one)) for role, holds in roles.items()
    }
    if not cuts:
        del names["saw"], names["cut"]
    open_lines = {"lead", "treat", *(() if names.get("cut") else ("saw",))}
    rows = [(role, f"{who}: " if who else f"{_NOBODY} ") for role, who in names.items() if who or role in open_lines]
    told = [(tongue.say(f"role.{role}"), who + tongue.say(f"does.{role}")) for role, who in rows]
    return (*told, (tongue.say("role.all"), tongue.say("does.all_with_cuts" if cuts else "does.all")))


def _name(person: Person, role: str, tongue: Tongue) -> str:
    holds = role == "lead" and "supervise" in person.may
    return tongue.say("role.holder", name=person.name) if holds else person.name


def emergency_rows(unit: Unit, setting: Setting, tongue: Tongue) -> tuple[tuple[str, str], ...]:
    """Return where the place is and whom to call, as written in the ground's file; else a line to write on."""
    known = setting.ground.emergency or {}
    gate = next((one for one in setting.ground.features if one.kind == "gate"), None)
    spot = gate.line[0] if gate else (unit.polygon[0] if unit.polygon else None)
    place = ""
    if spot:
        place = f"{abs(spot[1]):.4f} {'N' if spot[1] >= 0 else 'S'}, {abs(spot[0]):.4f} {'E' if spot[0] >= 0 else 'W'}"
    where = tongue.say("emergency.position_of", place=gate.name) if gate else tongue.say("emergency.position")
    return (
        (where, place),
        (tongue.say("emergency.meet"), known.get("meeting point", "")),
        (tongue.say("emergency.hospital"), known.get("hospital", "")),
        (tongue.say("emergency.poison"), known.get("poison line", "")),
    )
