"""Is there no less spray on an acre than the label gives, where it forbids a lower dose?"""

from __future__ import annotations

from rootcollar.kernel.doubt import best
from rootcollar.kernel.formula import formula
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.facts import Work
from rootcollar.label.rule import Basis, ask, exceeds, rule, stop

__all__ = ["spray_gal_per_acre", "spray_not_below"]

_DEVIATION = "sheet.limits.deviation_forbidden"


@formula("mix_gal / area_ac", gives="gal/ac", source="arithmetic", mix_gal=(0.1, 100), area_ac=(0.01, 10))
def spray_gal_per_acre(mix_gal: float, area_ac: float) -> float:
    """Return the spray on an acre [gal/ac]. mix_gal: finished mix [gal]. area_ac: the ground it is put on [ac]."""
    return mix_gal / area_ac


@rule(
    "L09a",
    "Less spray on an acre than the label gives is lawful, unless it forbids a lower dose.",
    Basis("FIFRA 2(ee)(1)"),
    when_silent=Level.OK,
    silence={_DEVIATION: ()},
    least="sheet.method.spray_volume_gal_per_acre.low",
    deviations=_DEVIATION,
    work="total.work",
)
def spray_not_below(least: float, deviations: tuple[str, ...], work: Work) -> Verdict | None:
    """Stop on less spray where the label forbids a lower dose; ask where nobody has said how much ground is sprayed."""
    if "lower_dose" not in deviations:
        return None
    given = f"the label gives {show(least, 'gal/ac')} of spray and more, and forbids a lower dose"
    if not work.total.treated_m2:
        return ask(f"{given}; how much ground is sprayed is not known", "yes if no less is put out on what is sprayed")
    acres = convert(work.total.treated_m2, "m2", "ac")
    planned = spray_gal_per_acre(convert(best(work.total.mix_ml), "mL", "gal"), acres)
    if not exceeds(least, planned):
        return None
    return stop(f"the plan comes to {show(planned, 'gal/ac')}; {given}", "more spray at less strength, or another way")
