"""What lines come to, worked out again from the tally, the dose and the prices, so that a watcher sees every part."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.choose import Choice, Setting, replay_minutes, replay_mix
from rootcollar.kernel.doubt import Worlds, sure
from rootcollar.kernel.formula import add_up, note
from rootcollar.work import text

__all__ = ["minutes_again", "poured_again", "stems_again"]

_ALL = "all of these lines"


def stems_again(lines: Sequence[Choice], setting: Setting) -> Worlds:
    """Return the stems of lines, each from its row of the tally."""
    return add_up([_counted(one, setting) for one in lines], "stems", _ALL) if lines else sure(0.0)


def poured_again(lines: Sequence[Choice], setting: Setting) -> Worlds:
    """Return the finished mix for lines that have a way [mL]."""
    done = [replay_mix(one, setting) for one in lines if one.option]
    return add_up(done, "mL", _ALL) if done else sure(0.0)


def minutes_again(lines: Sequence[Choice], setting: Setting) -> Worlds:
    """Return the work of one visit to lines that have a way [min]."""
    done = [replay_minutes(one, setting) for one in lines if one.option]
    return add_up(done, "min", _ALL) if done else sure(0.0)


def _counted(line: Choice, setting: Setting) -> Worlds:
    stand = line.stand
    plant = setting.reference.species[stand.species].common_name
    row = f"tally.csv, {stand.unit}, {plant}, {text.size(stand.band_cm)}"
    return note("counted", row, stand.stems, "stems")
