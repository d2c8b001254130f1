"""Minutes of one visit to one stem: guesses put together step by step, or the crew's own time, taken whole.

An own time was measured with slope, thorns and the walk in it, so nothing is put on it again.
"""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.choose.effort import apart_m, off_path_kmh, stem_min, walk_min, work_min
from rootcollar.choose.option import Way
from rootcollar.choose.own import Time
from rootcollar.choose.setting import Setting
from rootcollar.choose.steps import alone, both_visits
from rootcollar.choose.words import method_alone
from rootcollar.kernel.doubt import Worlds, drawn, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import note, use
from rootcollar.kernel.sources import Cited
from rootcollar.reference import EffortRow, Span, middle
from rootcollar.site import Unit
from rootcollar.survey.stand import Stand

_SHARP = frozenset({"thorns", "spiny_leaves"})  # hazards of a plant that slow the hands
_NONE = sure(0.0)
_AS_LONG = sure(1.0)

__all__ = [
    "OnGround",
    "minutes_on",
    "minutes_per_stem",
    "on_ground",
    "own_time",
    "steep_more",
    "walk_over",
    "work_of_steps",
    "work_per_stem",
]


@dataclass(frozen=True, slots=True, eq=False)
class OnGround:
    """What the ground of a stand does to a visit. walk: from a stem to the next [min]. slope_pct: of the ground [%].

    steep_more: share more work on a slope of 100 %.
    """

    walk: Worlds
    slope_pct: Worlds
    steep_more: Worlds


def minutes_per_stem(way: Way, stand: Stand, setting: Setting) -> Worlds:
    """Return what one visit to one stem of a stand takes where it stands [min]; of two steps, what both take.

    Raises Refusal where nobody has guessed or measured one for its size.
    """
    if len(way.treatment) > 1:
        return both_visits(*(minutes_per_stem(one, stand, setting) for one in alone(way)))
    own = own_time(way, stand, setting)
    if own is not None:
        return _own(own)
    return minutes_on(work_per_stem(way, stand, setting), on_ground(stand, setting))


def minutes_on(work: Worlds, ground: OnGround) -> Worlds:
    """Return what one visit to one stem takes [min]. work: on level ground, once one stands at the stem [min]."""
    return stem_min(work, ground.steep_more, ground.slope_pct, ground.walk)


def work_per_stem(way: Way, stand: Stand, setting: Setting) -> Worlds:
    """Return the work on one stem like a stand's on level ground, once one stands at it, walk aside [min].

    The same wherever the stand lies; of two steps, of both. Raises Refusal where nobody has guessed or measured one for
    its size.
    """
    if len(way.treatment) > 1:
        return both_visits(*work_of_steps(way, stand, setting))
    at_stem = _at_stem(way, stand, setting)
    slash, fruit = _slash(way, stand, setting), _fruit(way, stand, setting)
    return work_min(at_stem, slash, fruit, _thorns(way, stand, setting))


def work_of_steps(way: Way, stand: Stand, setting: Setting) -> tuple[Worlds, ...]:
    """Return the work on one stem of either of two steps, as `work_per_stem`; nothing of a way of one visit."""
    return tuple(work_per_stem(one, stand, setting) for one in alone(way)) if len(way.treatment) > 1 else ()


def on_ground(stand: Stand, setting: Setting) -> OnGround:
    """Return what the ground of a stand does to a visit: of slope and stems on the ground of the unit that is worked.

    What is not known of the unit is a guess with its doubt, never level and never near.
    """
    unit = setting.ground.units[stand.unit]
    slope = _slope(unit, setting)
    walk = walk_min(_apart_m(stand, unit, setting), *_speeds(slope, setting), _guess("in_brush", setting))
    return OnGround(walk, slope, steep_more(setting))


def steep_more(setting: Setting) -> Worlds:
    """Return the share of work that a slope of 100 % adds, the same worlds everywhere."""
    return _guess("steep_more", setting)


def walk_over(length_m: float, unit: Unit, setting: Setting) -> Worlds:
    """Return the walk of a length over a unit, as often uphill as downhill [min]. length_m: of the way [m]."""
    return walk_min(sure(length_m), *_speeds(_slope(unit, setting), setting), _guess("in_brush", setting))


def _slope(unit: Unit, setting: Setting) -> Worlds:
    if unit.slope_pct is None:
        return _guess("slope_pct", setting)
    return note("slope", f"of {unit.name}, as ground.toml has it", sure(unit.slope_pct), "%")


def _apart_m(stand: Stand, unit: Unit, setting: Setting) -> Worlds:
    ground_m2, which = (unit.worked_m2, "worked") if unit.worked_m2 else (unit.area_m2, "area")
    if not ground_m2:
        return _guess("apart_m", setting)
    ground = note("ground", f"{which} of {unit.name}, as ground.toml has it", ground_m2, "m2")
    return apart_m(ground, stand.stems, _published("tour", setting))


def _speeds(slope: Worlds, setting: Setting) -> tuple[Worlds, Worlds]:
    """Return how fast a walker goes off the path, up and down a slope [km/h]. slope: of the ground [%]."""
    fastest, at, slower, off_path = (
        _published(name, setting) for name in ("fastest_kmh", "fastest_slope", "slower", "off_path")
    )
    up, down = (off_path_kmh(one, fastest, at, slower, off_path) for one in (slope, -slope))
    return up, down


def _published(name: str, setting: Setting) -> float:
    return use(middle(setting.reference.walking[name]))


def own_time(way: Way, stand: Stand, setting: Setting) -> Time | None:
    """Return the crew's own time of a whole visit to one stem that fits a stand best; None where there is none."""
    return _own_of("stem", way, stand, setting)


def _own_of(what: str, way: Way, stand: Stand, setting: Setting) -> Time | None:
    if not setting.own.times:
        return None
    return setting.own.time(what, way.visit.method, stand.species, stand.unit, _thickness_cm(stand))


def _own(time: Time) -> Worlds:
    return note("own time", time.words, sure(time.minutes), "min")


def _at_stem(way: Way, stand: Stand, setting: Setting) -> Worlds:
    method, thick = way.visit.method, _thickness_cm(stand)
    rows = [row for row in setting.reference.labour if row.method == method and row.diameter_cm.holds(thick)]
    if not rows:
        raise Refusal(
            f"time for {method} on stems of this size", limit="no guess is kept for it", do="put in your own times"
        )
    cited = Cited(rows[0].minutes, "min", rows[0].source, rows[0].mark, f"work on one stem, {method_alone(way)}")
    return _drawn(f"minutes/{method}", cited, setting)


def _slash(way: Way, stand: Stand, setting: Setting) -> Worlds:
    """Return the work for what is cut from one stem [min]; none by a way that cuts nothing down."""
    own = _own_of("slash", way, stand, setting)
    if own is not None:
        return _own(own)
    row = _row("slash", way, stand, setting)
    return _drawn(f"slash/{way.visit.method}", _cited(row, "min"), setting) if row else _NONE


def _fruit(way: Way, stand: Stand, setting: Setting) -> Worlds:
    """Return the work to bag the fruit of one stem [min]: none where there is none, perhaps where nobody looked."""
    row = _row("fruit", way, stand, setting)
    if stand.fruiting is False or row is None:
        return _NONE
    own = _own_of("fruit", way, stand, setting)
    cited = _cited(row, "min")
    if stand.fruiting is None:
        most = own.minutes if own else row.figure.best
        perhaps = Span(0.0, most, 0.0)
        held = f"nobody looked for fruit, so perhaps none and perhaps as much as the guess; {row.words}"
        cited = Cited(perhaps, "min", row.source, row.mark, held)
    elif own is not None:
        return _own(own)
    return _drawn(f"fruit/{way.visit.method}", cited, setting)


def _thorns(way: Way, stand: Stand, setting: Setting) -> Worlds:
    """Return how many times as long the work takes for the thorns of the plant; once where no source tells of any."""
    sharp = next((one for one in setting.reference.species[stand.species].hazards if one.kind in _SHARP), None)
    row = _row("thorns", way, stand, setting)
    if sharp is None or row is None:
        return _AS_LONG
    told = f"{sharp.detail} ({sharp.mark} [{sharp.source}]); {row.words}"
    cited = Cited(row.figure, "times as long", row.source, row.mark, told)
    return _drawn(f"thorns/{way.visit.method}", cited, setting)


def _row(kind: str, way: Way, stand: Stand, setting: Setting) -> EffortRow | None:
    rows = setting.reference.effort[kind]
    return next((row for row in rows if row.holds(way.visit.method, _thickness_cm(stand))), None)


def _cited(row: EffortRow, unit: str) -> Cited[Span]:
    return Cited(row.figure, unit, row.source, row.mark, row.words)


def _guess(name: str, setting: Setting) -> Worlds:
    return _drawn(f"walking/{name}", setting.reference.walking[name], setting)


def _drawn(unknown: str, cited: Cited[Span], setting: Setting) -> Worlds:
    figure, span = use(middle(cited)), cited.value
    if span.low is None or span.high is None or span.low == span.high:
        return sure(figure)
    return drawn(setting.doubt, unknown, span.low, figure, span.high)


def _thickness_cm(stand: Stand) -> float:
    return sum(stand.band_cm) / 2
