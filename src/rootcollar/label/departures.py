"""The departures from a label that FIFRA 2(ee) lets: one table, what loses each, and which of them a plan makes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from rootcollar.kernel.units import convert
from rootcollar.label.rule import Facts, exceeds
from rootcollar.label.words import flat, method_words
from rootcollar.shelf import SILENT

__all__ = ["DEPARTURES", "NEVER", "Departure", "departures"]

Says = Callable[[str], Any]


@dataclass(frozen=True, slots=True)
class Departure:
    """One lawful departure. law: its place. lost_when: what takes it away. rules: those that weigh it.

    made: what a plan departs in, in words, "" where it does not; it is given what the facts say by path, None for
    what is silent or not known.
    """

    name: str
    words: str
    law: str
    lost_when: str
    rules: tuple[str, ...]
    made: Callable[[Says], str]


def departures(facts: Facts) -> tuple[tuple[Departure, str], ...]:
    """Return the departures that a plan makes, with its words, for the record; whether it may, the rules say."""

    def says(path: str) -> Any:
        line = facts.get(path)
        return None if line is None or line.says is SILENT else line.says

    if "sheet.key" not in facts:
        return ()
    found = ((one, one.made(says)) for one in DEPARTURES)
    return tuple((one, f"{says('sheet.key')}: {words}") for one, words in found if words)


def _weaker(says: Says) -> str:
    least, planned = says("sheet.method.concentration.low"), says("plan.strength_pct")
    if least is None or planned is None or not exceeds(least, planned):
        return ""
    return f"mixed at {planned:.3g} %, the label's weakest is {least:.3g} %"


def _less(says: Says) -> str:
    amount, unit, per = (says(f"sheet.method.dose.{one}") for one in ("amount", "unit", "per"))
    planned_ml, place = says("plan.dose") or (None, "")
    if (
        amount is None
        or unit is None
        or planned_ml is None
        or per != place
        or not exceeds(convert(amount, unit, "mL"), planned_ml)
    ):
        return ""
    return f"{planned_ml:.3g} mL per {place}, the label gives {convert(amount, unit, 'mL'):.3g} mL"


def _unlisted_plant(says: Says) -> str:
    listed, names = says("sheet.pests.listed"), says("plan.species")
    if not names or {flat(one) for one in listed or ()} & {flat(one) for one in names}:
        return ""
    return f"{names[0]} is not on the label's list"


def _unlisted_method(says: Says) -> str:
    listed, method = says("sheet.methods"), says("plan.method")
    return "" if not listed or method in listed else f"the label gives no directions for {method_words(method)}"


def _fertiliser(says: Says) -> str:
    partner = says("plan.partner")
    return f"mixed with {partner.names[0]}, a fertiliser" if partner and partner.fertiliser else ""


_FORBIDS = "the label forbids departing from it"
DEPARTURES: tuple[Departure, ...] = (
    Departure("lower_concentration", "a weaker mix", "FIFRA 2(ee)(1)", _FORBIDS, ("L09",), _weaker),
    Departure("lower_dose", "less in one place or on an acre", "FIFRA 2(ee)(1)", _FORBIDS, ("L11", "L09a"), _less),
    Departure("lower_frequency", "fewer treatments", "FIFRA 2(ee)(1)", _FORBIDS, ("L14",), lambda says: ""),
    Departure(
        "unlisted_plant", "a plant not listed, in a place that is", "FIFRA 2(ee)(2)",
        "the label may be used on listed plants only", ("L06",), _unlisted_plant,
    ),
    Departure(
        "unlisted_method", "a method not listed", "FIFRA 2(ee)(3)",
        "the label forbids it, or allows listed methods only", ("L07",), _unlisted_method,
    ),
    Departure(
        "fertiliser", "a mix with fertiliser", "FIFRA 2(ee)(4)", "the label forbids the mix", ("L46",), _fertiliser
    ),
)  # fmt: skip

# What no departure covers, and the rule that stops it.
NEVER = {
    "a stronger mix": "L08", "more in one place": "L11", "more on an acre": "L12", "more in a year": "L13",
    "more treatments": "L14", "treatments sooner after another": "L15", "a place not listed": "L05",
}  # fmt: skip
