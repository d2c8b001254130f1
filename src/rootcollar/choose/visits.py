"""How often to come until enough stems are dead, and what all visits take: apart from what one visit takes.

Whoever survives is visited again and dies at the same share. Up to any share, a stem killed then costs what one visit
costs over the share that dies of it: the ranking by cost per stem killed ranks by the cost to the share too.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from rootcollar.choose.option import Choice
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import line_minutes, line_money, sum_worlds
from rootcollar.kernel.doubt import Worlds, sure
from rootcollar.kernel.formula import formula, note, use
from rootcollar.reference import middle

__all__ = [
    "all_visits", "day_money", "days_of_work", "minutes_of_days", "minutes_to_share", "money_to_share",
    "share_to_reach", "stem_visits", "unit_day_minutes", "visits_of", "visits_to_share",
]  # fmt: skip

_MIN_PER_H = 60  # definition
_ALL_BUT = 0.999999  # ours: keeps the logarithm finite where all die of a visit
_SLACK = 0.000000001  # ours: so that rounding in a logarithm adds no visit


@formula(
    "maximum(1, ceil(log(1 - share) / log(1 - minimum(kill, 0.999999)) - 0.000000001))",
    gives="visits",
    source="ours",
    kill=(0.01, 1),
    share=(0.5, 0.99),
)
def visits_to_share(kill: Worlds, share: float) -> Worlds:
    """Return the visits until a share of the stems is dead, whole ones, at least one.

    kill: share dying of each visit, above 0. share: to be dead at the end, below 1.
    """
    left = np.log(1 - np.minimum(kill, _ALL_BUT))
    found: Worlds = np.maximum(1, np.ceil(np.log(1 - share) / left - _SLACK))
    return found


@formula("(1 - (1 - kill) ** visits) / kill", gives="visits to a stem", source="ours", kill=(0.01, 1), visits=(1, 20))
def stem_visits(kill: Worlds, visits: Worlds) -> Worlds:
    """Return how often a stem is visited on average, dead ones no more. kill: share dying of each visit, above 0."""
    return (1 - (1 - kill) ** visits) / kill


@formula("once * times", gives="as once", source="ours", once=(0, 100000), times=(1, 20))
def all_visits(once: Worlds, times: Worlds) -> Worlds:
    """Return what all visits to a line take, in the unit of once. once: of one visit. times: visits to a stem."""
    return once * times


@formula(
    "maximum(visits, ceil(minutes / 60 / day_h))",
    gives="days",
    source="ours",
    minutes=(1, 60000),
    visits=(1, 20),
    day_h=(1, 100),
)
def days_of_work(minutes: Worlds, visits: Worlds, day_h: float) -> Worlds:
    """Return the days that all visits take, no fewer than visits. minutes: of all [min]. day_h: on stems a day [h]."""
    found: Worlds = np.maximum(visits, np.ceil(minutes / _MIN_PER_H / day_h))
    return found


@formula(
    "days * (set_up_min + travel_min)", gives="min", source="ours", days=(1, 100), set_up_min=(0, 300),
    travel_min=(0, 600),
)  # fmt: skip
def minutes_of_days(days: Worlds, set_up_min: float, travel_min: float) -> Worlds:
    """Return setting up and travel of some days [min of one person]. Both of one day, all people's together."""
    return days * (set_up_min + travel_min)


@formula("minutes / 60 * pay_per_h", gives="money", source="ours", minutes=(0, 60000), pay_per_h=(1, 100))
def day_money(minutes: Worlds, pay_per_h: float) -> Worlds:
    """Return what setting up and travel cost [money]. minutes: of one person [min]. pay_per_h: an hour of one."""
    return minutes / _MIN_PER_H * pay_per_h


def share_to_reach(setting: Setting) -> float:
    """Return the share of stems that is to be dead at the end: the crew's own, or ours."""
    own = setting.own.target_share
    return use(middle(setting.reference.placeholders["target"])) if own is None else own


def visits_of(line: Choice, setting: Setting) -> Worlds:
    """Return the visits to a line until the share is dead. Raises ValueError for a line that is left."""
    return visits_to_share(_kill(line), share_to_reach(setting))


def minutes_to_share(line: Choice, setting: Setting) -> Worlds:
    """Return the work of all visits to a line [min]. Raises ValueError for a line that is left."""
    times = stem_visits(line.per_stem.kill, visits_of(line, setting))
    return all_visits(line_minutes(line.stand.stems, line.per_stem.minutes), times)


def money_to_share(line: Choice, setting: Setting) -> Worlds:
    """Return what all visits to a line cost [money]. Raises ValueError for a line that is left."""
    times = stem_visits(line.per_stem.kill, visits_of(line, setting))
    return all_visits(line_money(line.stand.stems, line.per_stem.cost), times)


def unit_day_minutes(lines: Sequence[Choice], setting: Setting) -> Worlds:
    """Return setting up and travel of all days on lines of one unit [min]; 0 where own.toml says nothing of them.

    The lines are visited together: as often as the one that needs it most often.
    """
    own = setting.own
    if own.set_up_min is None and own.travel_min is None:
        return sure(0.0)
    whole = sum_worlds([minutes_to_share(one, setting) for one in lines])
    most = sure(1.0)
    for one in lines:
        most = np.maximum(most, visits_of(one, setting))
    day_h = use(middle(setting.reference.placeholders["day"])) if own.day_h is None else own.day_h
    return minutes_of_days(days_of_work(whole, most, day_h), own.set_up_min or 0.0, own.travel_min or 0.0)


def _kill(line: Choice) -> Worlds:
    return note("kill of a visit", "the share that this way was chosen by", line.per_stem.kill, "share")
