"""From plots to stems: estimates with intervals whose kind is named, and the worlds that they make.

The libraries behind it take a while to load, so the room above does not load it by itself.
"""

from rootcollar.survey.estimate.bunches import Bunch, bunches, ratio, two_stage
from rootcollar.survey.estimate.clumped import Clumping, clumped, clumping_of
from rootcollar.survey.estimate.cover import SCALES, Quadrat, lines_cover, quadrats_cover
from rootcollar.survey.estimate.estimate import (
    USUAL,
    Curve,
    Estimate,
    Limits,
    by_t,
    by_t_of_log,
    limits,
    on_area,
    per_area,
    scaled,
    with_curve,
)  # fmt: skip
from rootcollar.survey.estimate.none_found import counted_by_chance, most_if_clumped, most_with_none, none_found
from rootcollar.survey.estimate.plots import after_strata, simple, standard_error, strata
from rootcollar.survey.estimate.quarters import QuarterPoint, quarters, vacant_factor
from rootcollar.survey.estimate.usual import of_classes, usual
from rootcollar.survey.estimate.worlds import worlds_of, worlds_together

__all__ = [
    "Estimate", "Curve", "Limits", "USUAL", "limits", "on_area", "per_area", "scaled", "with_curve", "by_t",
    "by_t_of_log", "simple", "standard_error", "strata", "after_strata", "ratio", "bunches", "two_stage", "Bunch",
    "clumped", "clumping_of", "Clumping", "none_found", "counted_by_chance", "most_with_none", "most_if_clumped",
    "quarters", "QuarterPoint", "vacant_factor", "lines_cover", "quadrats_cover", "Quadrat", "SCALES", "worlds_of",
    "worlds_together", "usual", "of_classes",
]  # fmt: skip
