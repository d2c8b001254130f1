"""Figure drift-fall: why a coarse drop matters, as time and way of a falling drop in even wind."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.units import convert, show
from rootcollar.reference import Reference
from rootcollar.timing import carried_m, fall_s, settling_m_s

__all__ = ["SIZES_UM", "DriftFallAsk", "drift_fall"]

_BESIDE_UM = (20.0, 100.0, 200.0, 400.0)  # ours: from what hangs like smoke to what drops at once
SIZES_UM = (5.0, 2000.0)  # ours: the fit of drag holds between, and no nozzle makes larger
_MINUTE_S = 60.0  # by definition


@dataclass(frozen=True, slots=True)
class DriftFallAsk:
    """A drop. drop_um: across [um]. height_m: it starts at [m]. wind_m_s: even wind [m/s]."""

    given: Mapping[str, str]
    drop_um: float
    height_m: float
    wind_m_s: float
    system: System = "us"


def drift_fall(ask: DriftFallAsk, reference: Reference) -> Outcome[Answer]:
    """Return how long a drop falls and how far even wind takes it meanwhile, other sizes beside it."""
    way = _way(ask.drop_um, ask)
    return Outcome(Answer(
        question="How long does a drop fall, and how far does wind take it?",
        given=ask.given,
        says=f"A drop of {ask.drop_um:g} micrometres falls for {_time(_fall(ask.drop_um, ask))}, and even wind takes it"
        f" {_length(way, ask)} in that time",
        value=_fall(ask.drop_um, ask), unit="s",
        figures={"carried_m": way},
        details=tuple(_details(ask)),
        assumed=("a ball of water in air of 20 \u00b0C that neither rises nor whirls; it does not dry",),
        cautions=(
            "This is a picture of size, not a distance at which anything is out of reach: real air whirls and rises,"
            " drops dry and shrink, and vapour goes further than any drop.",
        ),
        note="a picture, not a distance to keep",
    ))  # fmt: skip


def _details(ask: DriftFallAsk) -> Iterator[str]:
    for size in _BESIDE_UM:
        if size != ask.drop_um:
            yield f"{size:g} micrometres: {_time(_fall(size, ask))}, {_length(_way(size, ask), ask)}."


def _fall(drop_um: float, ask: DriftFallAsk) -> float:
    return fall_s(ask.height_m, settling_m_s(drop_um))


def _way(drop_um: float, ask: DriftFallAsk) -> float:
    return carried_m(_fall(drop_um, ask), ask.wind_m_s)


def _length(metres: float, ask: DriftFallAsk) -> str:
    us, metric = show(convert(metres, "m", "ft"), "ft", 2), show(metres, "m", 2)
    return f"{us} ({metric})" if ask.system == "us" else f"{metric} ({us})"


def _time(seconds: float) -> str:
    return show(seconds, "s", 2) if seconds < _MINUTE_S * 2 else show(convert(seconds, "s", "min"), "min", 2)
