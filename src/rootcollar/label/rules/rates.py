"""How much on an acre in one treatment, and which acre counts."""

from __future__ import annotations

import numpy as np

from rootcollar.kernel.doubt import Worlds, band, best, sure
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units import convert, jug, show
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.facts import Work
from rootcollar.label.limits import Rate, RateLine, least_area_m2, most_mix_ml, read_rate
from rootcollar.label.rule import Basis, ask, exceeds, rule, stop, warn

__all__ = ["against", "beside_ml", "ground_m2", "most_in_one_treatment", "unlike", "which_acre"]

_ONCE = (
    "sheet.limits.per_application.amount", "sheet.limits.per_application.unit", "sheet.limits.basis",
    "sheet.ingredient",
)  # fmt: skip
_WHICH = "sheet.limits.area_basis"


@rule(
    "L12",
    "No more on an acre in one treatment than the label gives.",
    Basis("a maximum for each treatment is an element of directions for use [LRM11]; FIFRA 2(ee)"),
    silence={_WHICH: None},
    label=_ONCE,
    which=_WHICH,
    area_m2="place.area_m2",
    work="total.work",
)
def most_in_one_treatment(label: RateLine, which: str | None, area_m2: float, work: Work) -> Verdict | None:
    """Stop where the best figure of the plan passes the label's rate, warn where the doubt around it does."""
    rate = read_rate(label, work.total.ingredient)
    if isinstance(rate, Verdict):
        return rate
    if unlike(work):
        return unlike(work)
    ground = ground_m2(which, area_m2, work)
    return against(rate, sure(0) + rate.of(beside_ml(work), ground), work, ground, "in one treatment")


@rule(
    "L16",
    "It is clear which acre the label's rates count.",
    Basis("which acre counts is left to the label [LRM11]"),
    silence={_WHICH: None, **dict.fromkeys(_ONCE)},
    label=_ONCE,
    which=_WHICH,
    area_m2="place.area_m2",
    work="total.work",
)
def which_acre(label: RateLine, which: str | None, area_m2: float, work: Work) -> Verdict | None:
    """Ask over how much of the unit the stems stand, where the label counts the treated acre or does not say.

    The question carries the least ground on which the plan keeps to the label, so that a look answers it; and, where
    only the label is silent, what the plan comes to on the worked ground and on the unit.
    """
    if which == "site_acre" or (which and work.total.treated_m2):
        return None
    counts = "the label counts the acre treated" if which else "the label does not say which acre its rates count"
    if None in label:
        return ask(
            f"{counts}, and gives no rate for one treatment",
            "read the booklet once more; yes if the plan keeps to all it says",
        )
    rate = read_rate(label, work.total.ingredient)
    if isinstance(rate, Verdict):
        return rate
    if not rate.limit:
        return ask(f"{counts}, and its rate is 0", "read the rate on the label again", answerable=False)
    total = rate.of(work.total.product_ml, area_m2) + rate.of(beside_ml(work), area_m2)
    if work.total.treated_m2:
        on_worked = best(total) * (area_m2 / work.total.treated_m2)
        return ask(
            f"{counts}; the plan comes to {rate.show(on_worked)} on the {_acres(work.total.treated_m2)} worked and to "
            f"{rate.show(best(total))} on the unit's {_acres(area_m2)}; it is held to the label's "
            f"{rate.show(rate.limit)} on the ground worked",
            "read the booklet once more; yes if it truly does not say",
        )
    least = _ground_words(least_area_m2(area_m2, max(best(total), band(total).high), rate.limit))
    return ask(
        f"{counts}; the plan keeps to {rate.show(rate.limit)} only where its stems stand on {least} or more of the "
        f"unit's {_acres(area_m2)}",
        "write worked of the unit in ground.toml, the ground on which they stand; or yes if they are spread that wide; "
        "if they stand closer, plan less mix or another way",
    )


def _acres(area_m2: float) -> str:
    return show(convert(area_m2, "m2", "ac"), "ac", 2)


def _ground_words(area_m2: float) -> str:
    """Return an area in acres and whole square feet, the feet rounded up."""
    sq_ft = to_step(convert(area_m2, "m2", "sq ft"), 1, "up")
    return f"{_acres(convert(sq_ft, 'sq ft', 'm2'))} ({show(sq_ft, 'sq ft')})"


def ground_m2(which: str | None, area_m2: float, work: Work) -> float:
    """Return the ground on which rates count [m2].

    The label's own word goes first: the unit where it counts the acre of the site. Else the worked part where somebody
    has said how large it is (the stricter where the label is silent), else the unit. Never a sum of wetted patches.
    """
    treated_m2 = work.total.treated_m2
    return area_m2 if which == "site_acre" or not treated_m2 else treated_m2


def unlike(work: Work) -> Verdict | None:
    """Return the question where two products of one ingredient on the unit are counted in different terms."""
    total = work.total
    if all((one.acid_known and total.acid_known) or (one.product and one.product == total.product)
           for one in work.also):  # fmt: skip
        return None
    open_ = dict.fromkeys(one.product or one.ingredient for one in (total, *work.also) if not one.acid_known)
    return ask(
        f"two products of {total.ingredient} are planned on this unit, and how much acid is in a gallon of "
        f"{' and '.join(open_)} is not known",
        "type ae_lb_per_gal of it, from the label",
        answerable=False,
    )


def beside_ml(work: Work) -> Worlds:
    """Return what else is planned of the ingredient on the unit, as so much of this product [mL]."""
    parts = [one.product_ml * (one.ae_g_per_l / work.total.ae_g_per_l) for one in work.also]
    return np.asarray(sum(parts, start=sure(0)))


def against(rate: Rate, before: Worlds, work: Work, ground_m2: float, when: str) -> Verdict | None:
    """Return the objection to a plan's rate, with the most mix that keeps to the label; None where it does.

    before: what counts already, in the unit of `rate.limit`, worlds. ground_m2: on which it counts [m2]. when: the
    span of the limit, in words.
    """
    ours = rate.of(work.total.product_ml, ground_m2)
    total = ours + before
    if not exceeds(float(total.max()), rate.limit):
        return None
    high = band(total).high
    if not exceeds(max(best(total), high), rate.limit):
        return None
    label = f"the label's most {when} is {rate.show(rate.limit)}"
    label += f"; counted on {_whose(ground_m2, work)}"
    comes = f"the plan comes to {rate.show(best(total))}{_already(rate, before)}"
    pour = _pour(rate, ours, before, work)
    if exceeds(best(total), rate.limit):
        return stop(f"{comes}; {label}", pour)
    return warn(f"{comes}, and its doubt reaches {rate.show(high)}; {label}", pour)


def _whose(ground_m2: float, work: Work) -> str:
    """Return which ground counted, in words."""
    worked = ground_m2 == work.total.treated_m2 != work.total.area_m2
    return f"the {_acres(ground_m2)} worked" if worked else f"all {_acres(ground_m2)} of the unit"


def _already(rate: Rate, before: Worlds) -> str:
    return f", {rate.show(best(before))} of it from other work" if best(before) > 0 else ""


def _pour(rate: Rate, ours: Worlds, before: Worlds, work: Work) -> str:
    room = rate.limit - best(before)
    if not exceeds(room, 0) or not best(ours):
        return "put nothing more of this ingredient on this unit"
    most = jug(most_mix_ml(best(work.total.mix_ml), room, best(ours)), direction="down")
    strength = show(work.total.strength_pct, "%")
    return f"pour no more than {most.text} of the {strength} mix on this unit"
