"""Packets to look into: made from the demo property as the job makes them, with few draws of the doubt."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from functools import cache

from rootcollar.choose import Prescription, Setting, prescribe
from rootcollar.shelf import Second, Sheet, asked_again
from rootcollar.work import Packet, PacketAsked, Project, clear, packet
from tests.choose.hobbin import DAY, hobbin, only, plan, retyped, setting_of


def made(
    project: Project,
    units: Sequence[str] = (),
    day: date | None = None,
    prescription: Prescription | None = None,
    known: Setting | None = None,
) -> Packet:
    """Return the packet of a project for some units (none named: all, in the plan's order)."""
    setting = known or setting_of(project, day or DAY)
    whole = prescription or prescribe(project.stands, setting)
    wanted = tuple(units) or tuple(key for key, _ in whole.order)
    lines = tuple(one for one in whole.choices if one.stand.unit in wanted)
    return packet(PacketAsked(clear(lines, setting), lines, wanted, whole, setting, project.crew, day, DAY))


@cache
def hobbin_packet(*units: str) -> Packet:
    """Return the demo's packet for some units, no day set."""
    return made(hobbin(), units, prescription=plan())


@cache
def hobbin_setting() -> Setting:
    """Return the demo's setting."""
    return setting_of(hobbin())


def real_looking(sheet: Sheet, number: str) -> Sheet:
    """Return a sheet with a number of the form of a real one; company 99999 is made up here and sells nothing."""
    return retyped(sheet, identity__epa_reg_no=number)


def read_again(sheet: Sheet) -> Sheet:
    """Return a sheet with a second reading that agrees with it."""
    lines = {one.ask: one.first for one in asked_again(sheet)}
    return replace(sheet, second=Second("Elspeth Tarn", date(2026, 3, 1), lines))


def earnest() -> Project:
    """Return the ridge as a property that is not the demo, on a shelf whose sheets look real."""
    project = only(hobbin(), "ridge")
    shelf = {
        key: read_again(real_looking(sheet, f"99999-{number}"))
        for number, (key, sheet) in enumerate(project.shelf.items(), 1)
    }
    return replace(project, shelf=shelf, ground=replace(project.ground, demo=False))
