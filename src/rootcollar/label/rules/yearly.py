"""How much in a year, how often, how soon again: what counts is everything already put on the unit."""

from __future__ import annotations

from collections.abc import Iterable

from rootcollar.kernel.doubt import sure
from rootcollar.kernel.units import show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.applied import Applied
from rootcollar.label.earlier import Earlier, applied_before, in_window
from rootcollar.label.facts import Past, Work
from rootcollar.label.limits import Rate, RateLine, read_rate
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, stop
from rootcollar.label.rules.rates import against, beside_ml, ground_m2, unlike
from rootcollar.label.words import listing

__all__ = ["most_in_a_year", "often_enough", "soon_again"]

_YEAR = (
    "sheet.limits.per_year.amount", "sheet.limits.per_year.unit", "sheet.limits.basis", "sheet.ingredient",
)  # fmt: skip
_WINDOW = "sheet.limits.per_year.window"
_WHICH = "sheet.limits.area_basis"
_DEVIATION = "sheet.limits.deviation_forbidden"
_SPANS = {"calendar year": "in a year", "season": "in a season", "12 months": "in 12 months"}
_OTHERS = "contractors, tenants, neighbours or utilities along their lines"
_LONGEST = "12 months"  # holds every calendar year and every season, so silence is taken as this (ours)


@rule(
    "L13",
    "No more of the ingredient on an acre in a year than the label gives, all products together.",
    Basis(
        "a maximum for a year is an element of directions for use [LRM11]; all products of one acid together, in acid, "
        "is ours"
    ),
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
    """Stop where past and plan together pass the year's rate; ask where the past is not known to be complete.

    Earlier work that cannot be reckoned asks, unless the rest of it passes the rate already.
    """
    rate = read_rate(label, work.total.ingredient)
    if isinstance(rate, Verdict):
        return rate
    if unlike(work):
        return unlike(work)
    undated = _undated(past)
    if undated:
        return undated
    rows = in_window(past.rows, past.on, window)
    if which != "site_acre" and not all(row.area_m2 > 0 for row in rows):
        return ask("an application on this unit has no area", "write its area in applied.csv", answerable=False)
    before = applied_before(rate, rows, work.total, area_m2, area_m2 if which == "site_acre" else None)
    found = _together(rate, before.sure, which, area_m2, work, window)
    if found is not None and found.level is Level.STOP:
        return found
    worst = found
    if before.at_most > before.sure:
        worst = _together(rate, before.at_most, which, area_m2, work, window)
    return _unreckoned(before, rows, worst) or _incomplete(past) or worst


def _together(rate: Rate, before: float, which: str | None, area_m2: float, work: Work, window: str) -> Verdict | None:
    """Return the objection to earlier work (in the unit of the limit), the unit's other work and the plan together."""
    ground = ground_m2(which, area_m2, work)
    return against(rate, sure(before) + rate.of(beside_ml(work), ground), work, ground, _SPANS[window])


def _unreckoned(before: Earlier, rows: Iterable[Applied], worst: Verdict | None) -> Verdict | None:
    """Return the question about earlier work that cannot be counted, or that would pass the rate were it all acid."""
    if before.unknown:
        return ask(
            f"how much acid the work of {_days(before.unknown)} put on this unit cannot be reckoned",
            "write its amount as acid (ae) in applied.csv, or type ae_lb_per_gal of the products on their sheets",
            answerable=False,
        )
    if worst is None or worst.level is not Level.STOP:
        return None
    salts = [row for row in rows if not row.acid_known]
    return ask(
        f"the work of {_days(salts)} is written as active ingredient; if all of it counts as acid, {worst.because}",
        "write it as acid (ae) in applied.csv, or name its product and type ae_lb_per_gal on that sheet",
        answerable=False,
    )


def _days(rows: Iterable[Applied]) -> str:
    return listing(dict.fromkeys(row.on.isoformat() for row in rows))


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
    known = "is said to be incomplete"
    if past.complete is None:
        known = f"may be incomplete: nobody has said whether {_OTHERS} put on more"
    return ask(
        f"the list of what was applied on this unit before {known}",
        f'ask {_OTHERS}; write what is missing in applied.csv, then history = "complete" in ground.toml; yes if '
        "nothing is missing",
    )
