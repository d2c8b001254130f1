"""Dose rules of each kind, from the reference, for the tests of this folder."""

from __future__ import annotations

from rootcollar.dose import Asked, DoseRule, rule_for
from rootcollar.kernel.doubt import Doubt
from rootcollar.reference import load

REFERENCE = load()
DOUBT = Doubt(7, n=200)


def rule(
    method: str, ingredient: str, carrier: str, strength_pct: float, species: str = "", own: float | None = None
) -> DoseRule:
    asked = Asked(method, ingredient, carrier, strength_pct, species)
    facts, coverages = REFERENCE.methods[method], REFERENCE.coverage.values()
    return rule_for(asked, facts=facts, coverages=coverages, doubt=DOUBT, own=own)


BASAL = rule("basal_bark", "triclopyr", "oil", 20)
CUTS = rule("hack_squirt", "glyphosate", "water", 50)
CUTS_BY_THREE = rule("hack_squirt", "imazapyr", "water", 50)
STUMP = rule("cut_stump", "glyphosate", "water", 50)
STUMP_IN_OIL = rule("cut_stump", "triclopyr", "oil", 20)
VINE = rule("vine_cut", "glyphosate", "water", 50)
LEAVES = rule("foliar", "glyphosate", "water", 2)
BY_STEM = {"basal": BASAL, "cuts": CUTS, "by three": CUTS_BY_THREE, "stump": STUMP, "oil": STUMP_IN_OIL, "vine": VINE}
IN = 2.54
