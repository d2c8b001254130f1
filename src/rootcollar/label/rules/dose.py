"""Is there no more mix in one cut, on one stump, than the label says, and no less where it forbids a lower dose?"""

from __future__ import annotations

from rootcollar.kernel.formula import formula
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, stop

__all__ = ["most_by_diameter_ml", "no_more_in_one_place"]

_DOSE = ("sheet.method.dose.amount", "sheet.method.dose.unit", "sheet.method.dose.per")
_DEVIATION = "sheet.limits.deviation_forbidden"
_WHOLE_STEM = frozenset({"stem", "stump"})


@formula("ml_per_in * diameter_in", gives="mL", source="arithmetic", ml_per_in=(0.1, 10), diameter_in=(0.1, 40))
def most_by_diameter_ml(ml_per_in: float, diameter_in: float) -> float:
    """Return the most mix on a stem [mL] where the label gives so much for each inch of diameter.

    ml_per_in: of mix for an inch [mL/in]. diameter_in: of the stem [in].
    """
    return ml_per_in * diameter_in


@rule(
    "L11",
    "No more mix in one place than the label gives; less is lawful, unless it forbids a lower dose.",
    Basis("the label; 40 CFR 156.10(i)(2)(v); FIFRA 2(ee)(1) for less", Seen.EDITION),
    when_silent=Level.OK,
    silence={_DEVIATION: ()},
    label=_DOSE,
    deviations=_DEVIATION,
    dose="plan.dose",
    band_cm="plan.band_cm",
)
def no_more_in_one_place(
    label: tuple[float, str, str], deviations: tuple[str, ...], dose: tuple[float, str], band_cm: tuple[float, float]
) -> Verdict | None:
    """Stop where the plan puts more into a cut or on a stump than the label; ask where they count different places.

    Stop on less, too, where the label forbids a lower dose.
    """
    amount, unit, per = label
    planned_ml, place = dose
    most_ml = convert(amount, unit, "mL")
    given = f"{show(amount, unit)} per {per}"
    if per == "in dbh" and place in _WHOLE_STEM:
        thinnest_in = convert(band_cm[0], "cm", "in")
        most_ml = most_by_diameter_ml(most_ml, thinnest_in)
        given += f", so {show(most_ml, 'mL')} on a stem of {show(thinnest_in, 'in')}"
    elif per != place and not {per, place} <= _WHOLE_STEM:
        return ask(
            f"the label gives {given}; the plan counts {show(planned_ml, 'mL')} per {place or 'place'}",
            "reckon one into the other; yes if the plan keeps to it",
        )
    if "lower_dose" in deviations and exceeds(most_ml, planned_ml):
        return stop(
            f"{show(planned_ml, 'mL')} per {place} is below the label's {given}, and it forbids a lower dose",
            f"{show(most_ml, 'mL')} per {place}",
        )
    if not exceeds(planned_ml, most_ml):
        return None
    return stop(
        f"{show(planned_ml, 'mL')} per {place} is above the label's {given}",
        f"at most {show(most_ml, 'mL')} per {place}",
    )
