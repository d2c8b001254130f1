"""Is the mix as strong as the label says?"""

from __future__ import annotations

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import Basis, exceeds, rule, stop, warn
from rootcollar.label.words import apart

__all__ = ["no_stronger", "no_weaker"]

_FORBIDDEN = "sheet.method.less_than_low_forbidden"
_DEVIATION = "sheet.limits.deviation_forbidden"
_SET = "sheet.limits.dilution_set_by_label"


@rule(
    "L08",
    "The mix is no stronger than the label's strongest.",
    Basis("not among the departures of FIFRA 2(ee)"),
    most_pct="sheet.method.concentration.high",
    planned_pct="plan.strength_pct",
)
def no_stronger(most_pct: float, planned_pct: float) -> Verdict | None:
    """Stop on a mix stronger than the label gives for the method."""
    if not exceeds(planned_pct, most_pct):
        return None
    planned, most = apart(planned_pct, most_pct, "%")
    return stop(f"{planned} is above the label's strongest, {most} v/v for this method", f"mix at {most} or weaker")


@rule(
    "L09",
    "A mix weaker than the label's weakest is lawful and recorded.",
    Basis("FIFRA 2(ee)(1)"),
    when_silent=Level.OK,
    silence={_FORBIDDEN: False, _DEVIATION: (), _SET: False},
    least_pct="sheet.method.concentration.low",
    forbidden=_FORBIDDEN,
    deviations=_DEVIATION,
    set_by_label=_SET,
    planned_pct="plan.strength_pct",
)
def no_weaker(
    least_pct: float, forbidden: bool, deviations: tuple[str, ...], set_by_label: bool, planned_pct: float
) -> Verdict | None:
    """Stop on a weaker mix where the label forbids it; warn elsewhere: the law lets it, and it is to be recorded."""
    if not exceeds(least_pct, planned_pct):
        return None
    planned, least = apart(planned_pct, least_pct, "%")
    weaker = f"{planned} is below the label's weakest, {least} v/v for this method"
    if forbidden or set_by_label or "lower_concentration" in deviations:
        return stop(f"{weaker}, and it forbids a weaker mix", f"mix at {least} or stronger")
    return warn(
        f"{weaker}; the law lets a mix be weaker [FIFRA 2(ee)(1)], but stems may live",
        f"write this departure into the record, or mix at {least}",
    )
