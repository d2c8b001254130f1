"""Figure delta-t: how fast a drop dries in this air, as wet bulb and Delta T, with what is said of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.formula import use
from rootcollar.kernel.units import convert
from rootcollar.reference import Reference, named, spans
from rootcollar.timing import delta_t_c, dew_point_c, pressure_pa, wet_bulb_c

__all__ = ["DeltaTAsk", "delta_t"]

_C, _F = "\u00b0C", "\u00b0F"


@dataclass(frozen=True, slots=True)
class DeltaTAsk:
    """The air. air_c: [degC]. humidity_pct: relative humidity [%]. height_m: of the place above the sea [m]."""

    given: Mapping[str, str]
    air_c: float
    humidity_pct: float
    height_m: float | None = None
    system: System = "us"


def delta_t(ask: DeltaTAsk, reference: Reference) -> Outcome[Answer]:
    """Return Delta T and the wet bulb of this air. Raises Refusal for air that nobody works in."""
    wet = wet_bulb_c(ask.air_c, ask.humidity_pct, pressure_pa(ask.height_m or 0.0))
    apart = delta_t_c(ask.air_c, wet)
    return Outcome(Answer(
        question="How fast does a drop dry in this air?",
        given=ask.given,
        says=f"Delta T {apart:.1f} \u00b0C apart: {_class(apart, reference)}",
        value=apart, unit="\u00b0C",
        figures={"wet_bulb_c": wet, "dew_point_c": dew_point_c(ask.air_c, ask.humidity_pct)},
        details=tuple(_details(ask, wet)),
        assumed=("the pressure of the sea's height",) if ask.height_m is None else (),
        cautions=(
            "Delta T is advice from field crops, never a leave to spray: wind, still air, heat and rain count for"
            " themselves, and the label goes before all of them.",
        ),
        note="advice only",
    ))  # fmt: skip


def _class(apart: float, reference: Reference) -> str:
    rows = reference.weather["delta_t"]
    best, most = (spans(named(rows, name))[0] for name in ("best", "most"))
    low, high, end = use(best).low or 0.0, use(best).high or 0.0, use(most).high or 0.0
    if apart < low:
        return f"below {low:g}, where drops last long and small ones travel in still air ({best.mark}, {best.source})"
    if apart <= high:
        return f"between {low:g} and {high:g}, as wanted ({best.mark}, {best.source})"
    if apart <= end:
        return f"above {high:g}, where drops dry fast ({best.mark}, {best.source})"
    return f"above {end:g}, which the source advises against ({most.mark}, {most.source})"


def _details(ask: DeltaTAsk, wet: float) -> Iterator[str]:
    dew = dew_point_c(ask.air_c, ask.humidity_pct)
    yield f"Wet bulb {_degrees(wet, ask)}, dew point {_degrees(dew, ask)}."


def _degrees(celsius: float, ask: DeltaTAsk) -> str:
    us, metric = f"{convert(celsius, _C, _F):.1f} {_F}", f"{celsius:.1f} {_C}"
    return f"{us} ({metric})" if ask.system == "us" else f"{metric} ({us})"
