"""Figure a calibration: what a sprayer and the person with it put out, what a tank covers, how much product that is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import NOT_CHECKED, Answer, Poured, System, bench_cautions, volume
from rootcollar.jobs.figure_area import measured_m2
from rootcollar.jobs.figure_words import flow, ground, length, output, speed, time
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, jug, show
from rootcollar.mix import (
    above_new_pct,
    course_m,
    flow_ml_per_s,
    in_time_ml,
    mean_of,
    moving_l_per_ha,
    off_mean_pct,
    output_l_per_ha,
    pct_from_rate,
    product_in_ml,
    share_of_mix_pct,
    speed_m_per_s,
    tank_area_m2,
    tank_s,
)
from rootcollar.reference import Reference, numbers

__all__ = ["CalibrationAsk", "calibration", "course"]

_PLOT_M2 = convert(1 / 128, "ac", "m2")  # fluid ounces caught in its time are gallons an acre [NCSU, UFAL]
_NOT_FROM_LABEL = "from your own measure"
_WATER = "Calibrate with clean water, at the pressure and pace of the day."


@dataclass(frozen=True, slots=True)
class CalibrationAsk:
    """What was measured. caught_ml, or used_ml on the plot. plot: one area [m2], two sides [m], or empty: 1/128 acre.

    runs_s: times of the plot, or of the walked course [s]. caught_s: of the catch, where it took another time [s].
    Moving: swath_m, flow_ml_s or a catch, and speed_m_s, or walked_m in the time of a run. What for: tank_ml,
    rate_l_per_ha of product. new_ml_s: flow of the nozzle when new [mL/s].
    """

    given: Mapping[str, str]
    caught_ml: float | None = None
    used_ml: float | None = None
    plot: tuple[float, ...] = ()
    runs_s: tuple[float, ...] = ()
    caught_s: float | None = None
    swath_m: float | None = None
    flow_ml_s: float | None = None
    speed_m_s: float | None = None
    walked_m: float | None = None
    tank_ml: float | None = None
    rate_l_per_ha: float | None = None
    new_ml_s: float | None = None
    system: System = "us"


@dataclass(frozen=True, slots=True)
class _Measured:
    """What the measures come to; None where they do not tell it. run_s: mean [s]. speed_m_s: of a moving sprayer."""

    run_s: float | None
    flow_ml_s: float | None
    speed_m_s: float | None
    out: float


def calibration(ask: CalibrationAsk, reference: Reference) -> Outcome[Answer]:
    """Return the output, what a tank covers and lasts, and the product in it.

    Raises Refusal for more product than mix.
    """
    found = _measure(ask)
    unit = "gal/ac" if ask.system == "us" else "L/ha"
    pct = _pct(ask, found.out)
    covers, lasts = _tank(ask, found)
    runs, too_different = _runs(ask.runs_s, found.run_s, reference)
    doubt = ", if these runs can be relied on" if too_different else ""
    figures = {
        "output_l_per_ha": found.out, "output_gal_per_ac": convert(found.out, "L/ha", "gal/ac"),
        "mean_run_s": found.run_s, "flow_ml_per_s": found.flow_ml_s, "speed_m_per_s": found.speed_m_s,
        "tank_area_m2": covers, "tank_s": lasts, "strength_pct": pct,
    }  # fmt: skip
    return Outcome(Answer(
        question="How much do this person and sprayer put on an area?",
        given=ask.given,
        says=f"You put out {output(found.out, ask.system)}{doubt}",
        value=convert(found.out, "L/ha", unit), unit=unit,
        figures={name: value for name, value in figures.items() if value is not None},
        details=(
            *_tank_words(ask, covers, lasts),
            *(() if pct is None else _product_words(ask, pct)),
            *_pace(ask, found),
            *runs,
            *_nozzle(ask, found.flow_ml_s, reference),
        ),
        assumed=_assumed(ask, found, pct),
        cautions=(*_cautions(ask, reference), *(() if pct is None else bench_cautions(reference))),
        note=_NOT_FROM_LABEL if pct is None else NOT_CHECKED,
        poured=None if pct is None else Poured(pct, "water"),
    ))  # fmt: skip


def course(ask: CalibrationAsk, reference: Reference) -> Outcome[Answer]:
    """Return the length to walk so that a swath makes the plot. swath_m is given."""
    assert ask.swath_m is not None
    walk_m = course_m(_plot_m2(ask), ask.swath_m)
    unit = "ft" if ask.system == "us" else "m"
    width = length(ask.swath_m, ask.system)
    return Outcome(Answer(
        question=f"How long is a course {width} wide, to calibrate on?",
        given=ask.given,
        says=f"Walk {length(walk_m, ask.system)} of a course {width} wide: that is {_plot_words(ask)}",
        value=convert(walk_m, "m", unit), unit=unit,
        figures={"course_m": walk_m, "plot_m2": _plot_m2(ask)},
        details=("Time the walk while you spray it evenly, then catch the spray for as many seconds.",),
        assumed=_plot_assumed(ask),
        cautions=_cautions(ask, reference),
        note="by plane geometry",
    ))  # fmt: skip


def _measure(ask: CalibrationAsk) -> _Measured:
    run_s = mean_of(ask.runs_s) if ask.runs_s else None
    flow_ml_s, speed_m_s = _flow(ask, run_s), _speed(ask, run_s)
    if speed_m_s is None or flow_ml_s is None or ask.swath_m is None:
        return _Measured(run_s, flow_ml_s, None, output_l_per_ha(_on_plot_ml(ask, run_s, flow_ml_s), _plot_m2(ask)))
    return _Measured(run_s, flow_ml_s, speed_m_s, moving_l_per_ha(flow_ml_s, speed_m_s, ask.swath_m))


def _flow(ask: CalibrationAsk, run_s: float | None) -> float | None:
    """Return the flow [mL/s]: as told, or from the catch in its own seconds, else in those of the plot or course."""
    if ask.flow_ml_s is not None:
        return ask.flow_ml_s
    seconds = run_s if ask.caught_s is None else ask.caught_s
    return None if ask.caught_ml is None or seconds is None else flow_ml_per_s(ask.caught_ml, seconds)


def _speed(ask: CalibrationAsk, run_s: float | None) -> float | None:
    if ask.walked_m is None or run_s is None:
        return ask.speed_m_s
    return speed_m_per_s(ask.walked_m, run_s)


def _on_plot_ml(ask: CalibrationAsk, run_s: float | None, flow_ml_s: float | None) -> float:
    """Return what came out on the plot [mL]: used, or caught; by the flow where the catch took another time."""
    if ask.caught_s is not None and flow_ml_s is not None and run_s is not None:
        return in_time_ml(flow_ml_s, run_s)
    measured_ml = ask.caught_ml if ask.used_ml is None else ask.used_ml
    assert measured_ml is not None
    return measured_ml


def _plot_m2(ask: CalibrationAsk) -> float:
    return measured_m2(ask.plot) if ask.plot else _PLOT_M2


def _plot_words(ask: CalibrationAsk) -> str:
    return ground(measured_m2(ask.plot), ask.system) if ask.plot else f"1/128 acre, {ground(_PLOT_M2, ask.system)}"


def _tank(ask: CalibrationAsk, found: _Measured) -> tuple[float | None, float | None]:
    """Return the ground a tank covers [m2] and the time it lasts [s]."""
    if ask.tank_ml is None:
        return None, None
    lasts = None if found.flow_ml_s is None else tank_s(ask.tank_ml, found.flow_ml_s)
    return tank_area_m2(ask.tank_ml, found.out), lasts


def _tank_words(ask: CalibrationAsk, covers: float | None, lasts: float | None) -> tuple[str, ...]:
    if ask.tank_ml is None or covers is None:
        return ()
    said = f"A tank of {volume(ask.tank_ml, ask.system)} covers {ground(covers, ask.system)}"
    return (f"{said}." if lasts is None else f"{said} and lasts {time(lasts)} of spraying.",)


def _pct(ask: CalibrationAsk, out: float) -> float | None:
    """Return the strength that a rate of product comes to [%]; None where no rate was told."""
    if ask.rate_l_per_ha is None:
        return None
    pct = pct_from_rate(ask.rate_l_per_ha, out)
    if pct >= 100:
        raise Refusal(
            f"{ask.given['rate']} of product at {output(out, ask.system)}",
            limit="that is more product than there is mix",
            do="Look at the rate's unit again, or walk slower so that more mix goes on an acre.",
        )
    return pct


def _product_words(ask: CalibrationAsk, pct: float) -> tuple[str, ...]:
    """Return what to pour for a rate of product, by a mark of the jug that is never more than it."""
    each, per = ("gal", "gallon") if ask.system == "us" else ("L", "litre")
    in_each = volume(product_in_ml(convert(1, each, "mL"), pct), ask.system)
    first = f"Product at {ask.given['rate']}: {in_each} in each {per} of finished mix, {show(pct, '%')}."
    if ask.tank_ml is None:
        return (first,)
    want = product_in_ml(ask.tank_ml, pct)
    mark = jug(want, ask.system, "down")
    true = show(share_of_mix_pct(mark.ml, ask.tank_ml), "%")
    pour = f"pour {mark.text}, by this mark {true}" if mark.ml > 0 else "too little for a jug: use a syringe"
    return first, f"Product in a full tank: {volume(want, ask.system)}; {pour}."


def _pace(ask: CalibrationAsk, found: _Measured) -> tuple[str, ...]:
    lines = [] if found.flow_ml_s is None else [f"Flow {flow(found.flow_ml_s, ask.system)}."]
    if found.speed_m_s is not None:
        lines.append(f"Speed {speed(found.speed_m_s, ask.system)}.")
    elif ask.swath_m is not None:
        walk = length(course_m(_plot_m2(ask), ask.swath_m), ask.system)
        lines.append(f"As a walking course {length(ask.swath_m, ask.system)} wide, the plot is {walk} long.")
    return tuple(lines)


def _runs(runs_s: tuple[float, ...], mean_s: float | None, reference: Reference) -> tuple[tuple[str, ...], bool]:
    """Return what several runs have in common, in words, and whether they are too far apart."""
    if len(runs_s) < 2 or mean_s is None:
        return (), False
    off = max(off_mean_pct(one, mean_s) for one in runs_s)
    most = use(_figure("run_off_mean_pct", reference))
    said = f"{len(runs_s)} runs, {show(mean_s, 's')} on average, the farthest {show(off, '%', 2)} off it"
    if off > most:
        return (
            f"{said}: too different, more than {show(most, '%')} (ours). Walk again before you rely on this.",
        ), True
    return (f"{said}: alike.",), False


def _nozzle(ask: CalibrationAsk, flow_ml_s: float | None, reference: Reference) -> tuple[str, ...]:
    if ask.new_ml_s is None or flow_ml_s is None:
        return ()
    above, worn = above_new_pct(flow_ml_s, ask.new_ml_s), _figure("nozzle_worn_pct", reference)
    most = f"{show(use(worn), '%')} ({worn.mark})"
    if above > worn.value:
        return (f"The nozzle gives {show(above, '%', 2)} more than new, over {most}: it is worn, replace it.",)
    if -above > worn.value:
        return (f"The nozzle gives {show(-above, '%', 2)} less than new, over {most}: clean it and its filter.",)
    return (f"The nozzle is within {most} of new.",)


def _figure(name: str, reference: Reference) -> Cited[float]:
    return numbers([row.figure for row in reference.mixing["calibration"] if row.name == name])[0]


def _plot_assumed(ask: CalibrationAsk) -> tuple[str, ...]:
    return () if ask.plot else ("a plot of 1/128 acre, 340 sq ft; --plot '20 ft x 20 ft' for another",)


def _assumed(ask: CalibrationAsk, found: _Measured, pct: float | None) -> tuple[str, ...]:
    lines = [] if pct is None else [f"strength {show(pct, '%')} of the finished mix, thinned with water"]
    lines += _plot_assumed(ask) if found.speed_m_s is None else ()
    if ask.caught_ml is not None and ask.caught_s is None:
        took = "as long as spraying the plot" if found.run_s is None else f"the same {show(found.run_s, 's')}"
        lines.append(f"the catch took {took}; --caught-in where it did not")
    return tuple(lines)


def _cautions(ask: CalibrationAsk, reference: Reference) -> tuple[str, ...]:
    words = {row.name: f"{row.figure.value} ({row.figure.source})" for row in reference.mixing["calibration"]}
    once = (f"One run only: {words['repeat']}.",) if len(ask.runs_s) == 1 else ()
    each = words["each_operator"]
    return (*once, f"{each[:1].upper()}{each[1:]}.", _WATER)
