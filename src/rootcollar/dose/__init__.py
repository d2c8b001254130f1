"""Dose: how much on one cut, one stump, one base, one crown.

Question: how much finished mix does one stem of this size take, and how sure is that?
Inputs: diameters or a size band [cm], the method's figures and the coverages of the reference, the strength.
Outputs: a `DoseRule` (which figures, why), and millilitres as worlds, of one stem, of a band, of many stems.
Sources: cuts by the inch [PSU-HS, PNW-STEM]; bark wetted [MO-314]; where nothing was published a wide band of ours.
A band is taken as even within: exact means, not the dose of its midpoint.
Refuses: stems outside what the method is for, naming the next method; a strength no coverage is kept for. Coverage is
bound to strength and nozzle and never crosses over; a crew's own proving batch replaces it.
"""

from rootcollar.dose.amount import in_cuts_ml
from rootcollar.dose.geometry import hole_ml, holes
from rootcollar.dose.proving import Proving, own_figure
from rootcollar.dose.rule import BY_CUTS, Asked, DoseRule, proved, rule_for
from rootcollar.dose.stems import per_stem_ml, stems_ml, surface_cm2, total_ml

__all__ = [
    "BY_CUTS", "Asked", "DoseRule", "Proving", "hole_ml", "holes", "in_cuts_ml", "own_figure", "per_stem_ml",
    "proved", "rule_for", "stems_ml", "surface_cm2", "total_ml",
]  # fmt: skip
