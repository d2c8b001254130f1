"""What counts already of an ingredient on a unit: earlier work in the label's own year, in acid, on its own ground."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from rootcollar.kernel.doubt import best, sure
from rootcollar.label.applied import Applied
from rootcollar.label.limits import Rate
from rootcollar.label.planned import UnitTotal

__all__ = ["Earlier", "applied_before", "in_window", "within_a_year"]


@dataclass(frozen=True, slots=True)
class Earlier:
    """What earlier work comes to, in the unit of a rate's limit.

    sure: what can be reckoned. at_most: the same with active ingredient whose acid is not known counted as acid, which
    is never too little. unknown: applications that cannot be counted at all.
    """

    sure: float
    at_most: float
    unknown: tuple[Applied, ...] = ()


def applied_before(
    rate: Rate, rows: Iterable[Applied], total: UnitTotal, unit_m2: float, whole_m2: float | None
) -> Earlier:
    """Return what earlier work comes to in the terms of a label's rate and of a plan's product.

    Salts and esters count by their acid, so all products of one acid add up. unit_m2: the unit's ground [m2]; no
    earlier work counts on more. whole_m2: None counts each on its own ground [m2].
    """
    known = at_most = 0.0
    unknown = []
    for row in rows:
        if row.ae_g is None or not (_alike(row, total) or total.acid_known):
            unknown.append(row)
            continue
        ground_m2 = min(row.area_m2, unit_m2) if whole_m2 is None else whole_m2
        comes = best(rate.of(sure(row.ae_g / total.ae_g_per_l * 1000), ground_m2))
        known += comes if _alike(row, total) else 0.0
        at_most += comes
    return Earlier(known, at_most, tuple(unknown))


def _alike(row: Applied, total: UnitTotal) -> bool:
    """Whether both are counted in the same terms: in acid, or as the same product's active ingredient."""
    if row.acid_known and total.acid_known:
        return True
    return row.acid_known == total.acid_known and bool(row.product) and row.product == total.product


def in_window(rows: Iterable[Applied], on: date | None, window: str) -> tuple[Applied, ...]:
    """Return the applications that fall in the same year as the day of work.

    window: "calendar year"; "12 months" or "season", both taken as the 12 months either side, the longest reading.
    on: None only where there are no rows.
    """
    if on is None:
        return tuple(rows)
    if window == "calendar year":
        return tuple(row for row in rows if row.on.year == on.year)
    return tuple(row for row in rows if within_a_year(row.on, on))


def within_a_year(one: date, other: date) -> bool:
    """Return whether two days are less than twelve calendar months apart."""
    first, last = sorted((one, other))
    return (last.year - first.year, last.month, last.day) < (1, first.month, first.day)
