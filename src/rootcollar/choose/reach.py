"""How far a mix goes under the label's rates: told beforehand, for each mix of a unit and each size of stem."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from rootcollar.choose.judge import unit_totals
from rootcollar.choose.option import Choice
from rootcollar.choose.setting import Setting
from rootcollar.kernel.doubt import best
from rootcollar.kernel.formula import unwatched
from rootcollar.label import Most, Past, UnitTotal, Work, most_mix
from rootcollar.label.limits import stems_at_most

__all__ = ["NO_LABEL", "Reach", "mosts", "reach_again", "reaches"]

NO_LABEL = "no label sheet typed: read the label"


@dataclass(frozen=True, slots=True)
class Reach:
    """Where a line's treatment meets one of its label's rates.

    most: the most mix under it. stems_per_acre: of this size at this dose alone [stems/ac]; None where not known.
    worked: whether it counts on the worked part of the unit, not on all of it.
    """

    most: Most
    stems_per_acre: float | None
    worked: bool


def mosts(total: UnitTotal, totals: Sequence[UnitTotal], setting: Setting) -> tuple[Most, ...]:
    """Return the most of a mix on a unit under each of its label's rates, the unit's other work as planned."""
    sheet = setting.sheet(total.product)
    if sheet is None:
        return (Most(None, NO_LABEL),)
    same = (total.unit, total.ingredient)
    beside = tuple(one for one in totals if (one.unit, one.ingredient) == same and one is not total)
    rows = tuple(one for one in setting.history.rows if (one.unit, one.ingredient) == same)
    return most_mix(sheet, Work(total, beside), Past(rows, setting.history.complete, setting.on))


def reaches(choices: Sequence[Choice], setting: Setting) -> Mapping[str, tuple[Reach, ...]]:
    """Return, by line, where its treatment meets the label's rates; lines without mix have none."""
    totals, by_key = unit_totals(choices, setting), {one.stand.key: one for one in choices}
    found: dict[str, tuple[Reach, ...]] = {}
    for total in totals:
        for key in total.lines:
            found[key] = tuple(_reach(one, total, by_key[key]) for one in mosts(total, totals, setting))
    return found


def reach_again(line: Choice, choices: Sequence[Choice], setting: Setting) -> tuple[Reach, ...]:
    """Return where one line's treatment meets its label's rates, reckoned again, to be watched."""
    with unwatched():
        totals = unit_totals(choices, setting)
    total = next(one for one in totals if line.stand.key in one.lines)
    return tuple(_reach(one, total, line) for one in mosts(total, totals, setting))


def _reach(most: Most, total: UnitTotal, line: Choice) -> Reach:
    on_acre, each = most.on_acre_ml, best(line.per_stem.mix_ml)
    stems = None if on_acre is None or not each else stems_at_most(on_acre, each)
    return Reach(most, stems, most.ground_m2 is not None and most.ground_m2 != total.area_m2)
