"""Figure degree-days: warmth of one day above a threshold, by every way in use side by side."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.units import convert
from rootcollar.reference import Reference
from rootcollar.timing import capped_c, met_approximation_c, simple_c, sine_c

__all__ = ["DegreeDaysAsk", "degree_days"]

_F_PER_C = convert(1, "\u00b0C", "\u00b0F") - convert(0, "\u00b0C", "\u00b0F")  # of a step, not of a temperature


@dataclass(frozen=True, slots=True)
class DegreeDaysAsk:
    """A day. low_c, high_c: its least and most [degC]. base_c, cap_c: lower and upper threshold [degC]."""

    given: Mapping[str, str]
    low_c: float
    high_c: float
    base_c: float
    cap_c: float | None = None
    system: System = "us"


def degree_days(ask: DegreeDaysAsk, reference: Reference) -> Outcome[Answer]:
    """Return the day's warmth by each way. Raises Refusal for a day, or thresholds, the wrong way round."""
    sine = sine_c(ask.low_c, ask.high_c, ask.base_c, ask.cap_c)
    ways = {"by its middle": simple_c(ask.low_c, ask.high_c, ask.base_c)}
    if ask.cap_c is not None:
        ways["by its middle, both ends drawn to the thresholds"] = capped_c(
            ask.low_c, ask.high_c, ask.base_c, ask.cap_c
        )
    else:
        ways["by a weather service's short way"] = met_approximation_c(ask.low_c, ask.high_c, ask.base_c)
    show = _in_us if ask.system == "us" else _in_metric
    return Outcome(Answer(
        question="How much warmth above the threshold did this day bring?",
        given=ask.given,
        says=f"{show(sine)}, the day taken as a sine",
        value=sine, unit="degree-days \u00b0C",
        details=tuple(f"{way[0].upper()}{way[1:]}: {show(found)}." for way, found in ways.items()),
        assumed=("one day; a sum over a season keeps to one way throughout",)
        + (() if ask.cap_c is None else ("above the upper threshold the day counts no more (cut off flat)",)),
        cautions=(
            "No published total says when these shrubs leaf out: both are yours to set, and to check by eye.",
        ),
        note="a total means nothing without its way and its threshold",
    ))  # fmt: skip


def _in_metric(found: float) -> str:
    return f"{found:.1f} degree-days of \u00b0C"


def _in_us(found: float) -> str:
    return f"{found * _F_PER_C:.1f} degree-days of \u00b0F ({found:.1f} of \u00b0C)"
