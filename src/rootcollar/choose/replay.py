"""A line's numbers worked out again from its stand and its way, so that a watcher sees how they were come by."""

from __future__ import annotations

from rootcollar.choose.beside import line_side_m2, side_area
from rootcollar.choose.cost import cost_per_kill
from rootcollar.choose.figures import cost_of_stem, mix_per_stem
from rootcollar.choose.kill import kill_pool, kill_share
from rootcollar.choose.option import Choice, Way
from rootcollar.choose.prices import line_labour, line_mix_cost
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import minutes_per_stem
from rootcollar.choose.sums import line_minutes, line_mix_ml, line_money
from rootcollar.choose.visits import all_visits, stem_visits, visits_of
from rootcollar.kernel.doubt import Worlds
from rootcollar.survey.stand import Stand

__all__ = [
    "replay_all_cost", "replay_all_minutes",
    "replay_cost", "replay_labour", "replay_minutes", "replay_mix", "replay_mix_cost", "replay_per_kill",
    "replay_side", "replay_stem_cost",
]  # fmt: skip


def replay_mix(choice: Choice, setting: Setting) -> Worlds:
    """Return a line's mix again [mL]. Raises ValueError for a line that is left."""
    return line_mix_ml(choice.stand.stems, mix_per_stem(choice.way, choice.stand, setting).ml)


def replay_minutes(choice: Choice, setting: Setting) -> Worlds:
    """Return the work of one visit to a line again [min]. Raises ValueError for a line that is left."""
    return line_minutes(choice.stand.stems, minutes_per_stem(choice.way, choice.stand, setting))


def replay_cost(choice: Choice, setting: Setting) -> Worlds:
    """Return what one visit to a line costs again [money]. Raises ValueError for a line that is left."""
    return line_money(choice.stand.stems, replay_stem_cost(choice.way, choice.stand, setting))


def replay_side(choice: Choice, setting: Setting) -> Worlds:
    """Return the ground hit beside a line by one visit again [m2]. Raises ValueError for a line that is left."""
    return line_side_m2(choice.stand.stems, side_area(choice.way, setting))


def replay_all_minutes(choice: Choice, setting: Setting) -> Worlds:
    """Return the work of all visits to a line again [min]. Raises ValueError for a line that is left."""
    once = replay_minutes(choice, setting)
    return all_visits(once, stem_visits(choice.per_stem.kill, visits_of(choice, setting)))


def replay_all_cost(choice: Choice, setting: Setting) -> Worlds:
    """Return what all visits to a line cost again [money]. Raises ValueError for a line that is left."""
    once = replay_cost(choice, setting)
    return all_visits(once, stem_visits(choice.per_stem.kill, visits_of(choice, setting)))


def replay_stem_cost(way: Way, stand: Stand, setting: Setting) -> Worlds:
    """Return what one visit to one stem costs again [money], by any way that was weighed for it."""
    minutes, mix = minutes_per_stem(way, stand, setting), mix_per_stem(way, stand, setting)
    return cost_of_stem(way, minutes, mix.ml, setting)


def replay_labour(choice: Choice, setting: Setting) -> Worlds:
    """Return what the work of one visit to a line costs again [money]. Raises ValueError for a line that is left."""
    minutes_per_stem(choice.way, choice.stand, setting)
    return line_labour(choice, setting)


def replay_mix_cost(choice: Choice, setting: Setting) -> Worlds:
    """Return what the mix of one visit to a line costs again [money]. Raises ValueError for a line that is left."""
    mix_per_stem(choice.way, choice.stand, setting)
    return line_mix_cost(choice, setting)


def replay_per_kill(way: Way, stand: Stand, setting: Setting) -> Worlds:
    """Return what a stem killed costs again [money], by any way that was weighed for it."""
    pool = kill_pool(way, setting.reference.species[stand.species], setting.reference)
    return cost_per_kill(replay_stem_cost(way, stand, setting), kill_share(pool, setting.doubt))
