"""The most of a mix that keeps to each of the label's rates on a unit, whether the plan comes near it or not."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.earlier import applied_before, in_window
from rootcollar.label.facts import Past, Work
from rootcollar.label.limits import Rate, most_mix_ml, product_l_per_ha, read_rate
from rootcollar.label.rules.rates import beside_ml, ground_m2, unlike
from rootcollar.shelf import Sheet, actives

__all__ = ["Most", "most_mix"]

_SPANS = {"per_application": "in one treatment", "per_year": "in a year"}
_ANY_YEAR = "12 months"  # the longest reading, where the label does not say what it calls a year (ours)


@dataclass(frozen=True, slots=True)
class Most:
    """The most mix under one rate [mL], all of the unit's other work as planned; None where it cannot be reckoned.

    words: the rate in the label's own unit and the span it holds for, or why it cannot be reckoned. when: the span.
    ground_m2: on which it counts [m2].
    """

    mix_ml: float | None
    words: str
    when: str = ""
    ground_m2: float | None = None

    @property
    def on_acre_ml(self) -> float | None:
        """The same on each acre of that ground [mL/ac]; None where it cannot be reckoned."""
        if self.mix_ml is None or not self.ground_m2:
            return None
        return convert(best(product_l_per_ha(sure(self.mix_ml), self.ground_m2)), "L/ha", "mL/ac")


def most_mix(sheet: Sheet, work: Work, past: Past) -> tuple[Most, ...]:
    """Return the most of a mix under the label's rate for one treatment and for a year.

    It counts on the ground that the rules count on (L12, L13): the treated part where somebody has said how large it
    is, else the whole unit.
    """
    return tuple(_most(sheet, span, work, past) for span in _SPANS)


def _most(sheet: Sheet, span: str, work: Work, past: Past) -> Most:
    when = _SPANS[span]
    parts = [f"limits.{span}.amount", f"limits.{span}.unit", "limits.basis"]
    if any(sheet.line(path) is None for path in parts):
        return Most(None, f"the most {when} is not read on the label", when)
    amount, unit, basis = map(sheet.says, parts)
    if None in (amount, unit, basis):
        return Most(None, f"the label gives no most {when}", when)
    area_m2 = work.total.area_m2
    if not area_m2:
        return Most(None, "the size of the unit is not known", when)
    rate = read_rate((amount, unit, basis, actives(sheet)), work.total.ingredient)
    if isinstance(rate, Verdict):
        return Most(None, rate.because, when)
    open_ = unlike(work)
    if open_ is not None:
        return Most(None, open_.because, when)
    ground = ground_m2(sheet.says("limits.area_basis"), area_m2, work)
    before = best(rate.of(beside_ml(work), ground))
    if span == "per_year":
        earlier = _this_year(sheet, rate, work, past)
        if earlier is None:
            return Most(None, "what was put on this unit before cannot be reckoned from applied.csv", when)
        before += earlier
    ours = best(rate.of(work.total.product_ml, ground))
    if not ours:
        return Most(None, "no mix is planned", when)
    most = most_mix_ml(best(work.total.mix_ml), max(rate.limit - before, 0), ours)
    return Most(most, f"{rate.show(rate.limit)} {when}", when, ground)


def _this_year(sheet: Sheet, rate: Rate, work: Work, past: Past) -> float | None:
    """What earlier work comes to; None where one of them cannot be counted."""
    window = sheet.says("limits.per_year.window") or _ANY_YEAR
    whole = work.total.area_m2 if sheet.says("limits.area_basis") == "site_acre" else None
    rows = in_window(past.rows, past.on, window)
    if whole is None and any(not row.area_m2 > 0 for row in rows):
        return None
    if work.total.area_m2 is None:
        return None
    before = applied_before(rate, rows, work.total, work.total.area_m2, whole)
    return None if before.unknown else before.at_most
