"""What is grazed, cut or gathered on treated ground waits as long as the label says."""

from __future__ import annotations

from datetime import date, timedelta

from rootcollar.kernel.units import show
from rootcollar.kernel.verdict import Verdict, worst_first
from rootcollar.label.rule import Basis, Seen, ask, rule, stop
from rootcollar.site.ground import Taken

__all__ = ["taken_late_enough"]

_FOOD = "sheet.food_and_stock."
_MILK, _OTHER = f"{_FOOD}grazing_days.lactating", f"{_FOOD}grazing_days.other"
_HAY, _SLAUGHTER, _HARVEST = f"{_FOOD}hay_cut_days", f"{_FOOD}slaughter_days", f"{_FOOD}pre_harvest_days"
_LINES = (_MILK, _OTHER, _HAY, _SLAUGHTER, _HARVEST)

# Which of the label's five figures holds for what is taken.
_WHICH = {"milk_grazing": 0, "grazing": 1, "hay": 2, "slaughter": 3, "nuts": 4, "fruit": 4, "sap": 4, "gathering": 4}
_CALLED = {
    "milk_grazing": "milk stock grazes", "grazing": "stock grazes", "hay": "hay is cut", "slaughter": "stock goes to "
    "slaughter", "nuts": "nuts are gathered", "fruit": "fruit is gathered", "sap": "sap is drawn",
    "gathering": "something is gathered",
}  # fmt: skip


@rule(
    "L43",
    "Harvest, grazing, hay, sap and slaughter wait as many days as the label says.",
    Basis("the label; 40 CFR 156.10(i)(2)(x)(A)", Seen.EDITION),
    silence=dict.fromkeys(_LINES),
    days=_LINES,
    taken="place.taken",
    on="plan.on",
)
def taken_late_enough(days: tuple[int | None, ...], taken: tuple[Taken, ...] | None, on: date) -> Verdict | None:
    """Stop where something is taken from the unit before the label's days are over; ask where nobody has said."""
    if taken is None:
        if not any(days):
            return None
        return ask(
            "the label gives days before stock grazes or something is cut or gathered; nobody has said whether "
            "anything is taken here",
            'write taken in ground.toml: taken = [] if nothing is, else such as [{ what = "hay", first = 2027-06-01 }]',
            answerable=False,
        )
    found = [verdict for one in taken if (verdict := _one(one, days[_WHICH[one.what]], on))]
    return worst_first(found)[0] if found else None


def _one(one: Taken, days: int | None, on: date) -> Verdict | None:
    if one.last is not None and one.last < on:
        return None
    called = _CALLED[one.what]
    if days is None:
        return ask(f"{called} here, and the label gives no days to wait",
                   "look through the whole booklet once more; yes if it neither forbids it nor gives days")  # fmt: skip
    open_on = on + timedelta(days=days)
    if days == 0 or (one.first is not None and one.first >= open_on):
        return None
    begins = "all the time" if one.first is None else f"from {one.first.isoformat()}"
    return stop(
        f"{called} here {begins}; the label wants {show(days, 'day')} after the work on {on.isoformat()}, so not "
        f"before {open_on.isoformat()}",
        "keep stock and people off until then and write the first day in taken, or work at another time",
    )
