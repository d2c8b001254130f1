"""How much in a year, how often, how soon again: what counts is everything already put on the unit."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.units import show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.applied import Applied
from rootcollar.label.facts import Past, Work
from rootcollar.label.limits import Rate, RateLine, read_rate
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, stop
from rootcollar.label.rules.rates import against, beside_ml, ground_m2

__all__ = ["applied_before", "in_window", "most_in_a_year", "often_enough", "soon_again"]

_YEAR = (
    "sheet.limits.per_year.amount", "sheet.limits.per_year.unit", "sheet.limits.basis", "sheet.ingredient",
)  # fmt: skip
_WINDOW = "sheet.limits.per_year.window"
_WHICH = "sheet.limits.area_basis"
_DEVIATION = "sheet.limits.deviation_forbidden"
_SPANS = {"calendar year": "in a year", "season": "in a season", "12 months": "in 12 months"}
_LONGEST = "12 months"  # holds every calendar year and every season, so silence is taken as this (ours)


@rule(
    "L13",
    "No more of the ingredient on an acre in a year than the label gives, all products together.",
    Basis("a maximum for a year is an element of directions for use [LRM11]; all products together is ours"),
    silence={_WINDOW: _LONGEST, _WHICH: None},
    label=_YEAR,
    window=_WINDOW,
    which=_WHICH,
    area_m2="place.area_m2",
    past="history.past",
    work="total.work",
)
def most_in_a_year(
    label: RateLine, window: str, which: str | None, area_m2: float, past: Past, work: Work
) -> Verdict | None:
    """Stop where past and plan together pass the year's rate; ask where the past is not known to be complete."""
    rate = read_rate(label, work.total.ingredient)
    if isinstance(rate, Verdict):
        return rate
    undated = _undated(past)
    if undated:
        return undated
    rows = in_window(past.rows, past.on, window)
    if which != "site_acre" and not all(row.area_m2 > 0 for row in rows):
        return ask("an application on this unit has no area", "write its area in applied.csv", answerable=False)
    ground = ground_m2(which, area_m2, work)
    earlier = sure(applied_before(rate, rows, area_m2 if which == "site_acre" else None, work))
    found = against(rate, earlier + rate.of(beside_ml(work), ground), work, ground, _SPANS[window])
    if found is not None and found.level is Level.STOP:
        return found
    return _incomplete(past) or found


@rule(
    "L14",
    "No more treatments in a year than the label gives; fewer are lawful, unless it forbids a lower frequency.",
    Basis("40 CFR 156.10(i)(2)(vii); FIFRA 2(ee)(1) for fewer", Seen.EDITION),
    when_silent=Level.OK,
    silence={_WINDOW: _LONGEST, _DEVIATION: ()},
    most="sheet.limits.max_applications_per_year",
    window=_WINDOW,
    deviations=_DEVIATION,
    area_m2="place.area_m2",
    past="history.past",
    work="total.work",
)
def often_enough(
    most: int, window: str, deviations: tuple[str, ...], area_m2: float, past: Past, work: Work
) -> Verdict | None:
    """Stop where the plan makes more treatments of the same ground than the label gives for a year.

    Ask whether the others follow, where it makes fewer and the label forbids that.
    """
    undated = _undated(past)
    if undated:
        return undated
    rows = in_window(past.rows, past.on, window)
    count = len({row.on for row in rows}) + work.total.passes
    if count < most and "lower_frequency" in deviations:
        return _incomplete(past) or ask(
            f"the label forbids fewer treatments than its {most} in a year; with this plan there are {count}",
            "yes if the others of the year will be made; else another product",
        )
    if count <= most:
        return _incomplete(past)
    said = f"with this plan there are {count} treatments of the unit in a year; the label's most is {most}"
    if not rows or _same_ground(rows, area_m2, work):
        return stop(said, "leave it until the year is over, or another way")
    return ask(f"{said}, if all are on the same ground", "yes if this plan treats other ground than they did")


@rule(
    "L15",
    "Treatments are as far apart as the label says.",
    Basis("40 CFR 156.10(i)(2)(vii)", Seen.EDITION),
    when_silent=Level.OK,
    least_days="sheet.limits.min_days_between",
    area_m2="place.area_m2",
    past="history.past",
    work="total.work",
)
def soon_again(least_days: int, area_m2: float, past: Past, work: Work) -> Verdict | None:
    """Stop where the same ground was treated fewer days ago than the label says."""
    undated = _undated(past)
    if undated:
        return undated
    near = [row for row in past.rows if past.on and abs((past.on - row.on).days) < least_days]
    if not near:
        return _incomplete(past)
    last = max(row.on for row in near)
    days = abs((past.on - last).days) if past.on else 0
    said = (
        f"the unit was treated on {last.isoformat()}, {show(days, 'day')} from this work; the label wants "
        f"{show(least_days, 'day')} between treatments"
    )
    if _same_ground(near, area_m2, work):
        return stop(said, "choose a later day, or make the ground not treated then a unit of its own")
    return ask(said, "yes if this plan treats other ground than that day's work did")


def in_window(rows: Iterable[Applied], on: date | None, window: str) -> tuple[Applied, ...]:
    """Return the applications that fall in the same year as the day of work.

    window: "calendar year"; "12 months" or "season", both taken as the 12 months either side, the longest reading.
    on: None only where there are no rows.
    """
    if on is None:
        return tuple(rows)
    if window == "calendar year":
        return tuple(row for row in rows if row.on.year == on.year)
    return tuple(row for row in rows if _within_a_year(row.on, on))


def _within_a_year(one: date, other: date) -> bool:
    """Whether two days are less than twelve calendar months apart."""
    first, last = sorted((one, other))
    return (last.year - first.year, last.month, last.day) < (1, first.month, first.day)


def applied_before(rate: Rate, rows: Iterable[Applied], area_m2: float | None, work: Work) -> float:
    """Return what earlier work comes to, in the unit of `rate.limit`. area_m2: None counts each on its own ground."""
    total = 0.0
    for row in rows:
        product_ml = sure(row.ae_g / work.total.ae_g_per_l * 1000)
        total += best(rate.of(product_ml, row.area_m2 if area_m2 is None else area_m2))
    return total


def _same_ground(rows: Iterable[Applied], area_m2: float, work: Work) -> bool:
    """Whether plan and earlier work cannot lie side by side in the unit: together they are more than its ground."""
    return exceeds((work.total.treated_m2 or area_m2) + sum(row.area_m2 for row in rows), area_m2)


def _undated(past: Past) -> Verdict | None:
    if past.on is not None or not past.rows:
        return None
    return ask(
        "the unit has been treated before with this ingredient, and the day of the planned work is not known",
        "give the day of work",
        answerable=False,
    )


def _incomplete(past: Past) -> Verdict | None:
    if past.complete:
        return None
    known = "is said to be incomplete" if past.complete is False else "may be incomplete: nobody has said"
    return ask(
        f"the list of what was applied on this unit before {known}",
        'write what is missing in applied.csv, then history = "complete" in ground.toml; yes if nothing is missing',
    )
