"""Plots on the ground: their sizes, slopes and edges, what was counted on them, and what is wrong with it."""

from rootcollar.survey.plots.checks import Known, check_survey
from rootcollar.survey.plots.clump import Clump, one_diameter_cm, stem_face_cm2, together
from rootcollar.survey.plots.edge import inside_share, mirage, uncorrected, walk_through
from rootcollar.survey.plots.geometry import SlopeWay, along_slope_m, limit_m, one_radius_m, per_ha_each, radius_m
from rootcollar.survey.plots.plot import Counted, Group, Plot, Ring, Table, expanded
from rootcollar.survey.plots.strips import Belt, Line, cover_pct, covered_m, level_m

__all__ = [
    "Plot", "Ring", "Counted", "Group", "Table", "expanded", "Known", "check_survey", "SlopeWay", "radius_m",
    "per_ha_each", "one_radius_m", "along_slope_m", "limit_m", "walk_through", "mirage", "uncorrected",
    "inside_share", "Belt", "Line", "level_m", "cover_pct", "covered_m", "Clump", "stem_face_cm2", "one_diameter_cm",
    "together",
]  # fmt: skip
