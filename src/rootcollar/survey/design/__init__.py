"""Design: how many plots, how large, where.

Question: which plots tell how many stems stand here, as closely and as surely as is wanted?
Inputs: a guess of density and spread, the wanted closeness, areas and outlines of units, a seed.
Outputs: plot sizes and radii, numbers of plots, their sharing out among strata, and plot middles in degrees.
Sources: MU-NR3110, USFS-CSE (read), cochran1977 (memory); the rule of 5 to 15 stems a plot (memory).
Refuses: to move a plot that a grid has laid, or to guess a spread from one plot.
"""

from rootcollar.survey.design.grid import Grid, PlotPoint, grid_in, grid_spacing_m, lay_grid
from rootcollar.survey.design.number import USUALLY_SURE_PCT, PlotsNeeded, plots_needed, plots_that_fit, spread_pct
from rootcollar.survey.design.share import SHARED_BY, SharedBy, Stratum, share_out, stratum_part, stratum_plots
from rootcollar.survey.design.size import PARTS_OF_ACRE, PlotSize, expected_stems, fit_size, stands_for_per_acre

__all__ = [
    "Grid", "PlotPoint", "lay_grid", "grid_in", "grid_spacing_m",
    "PlotsNeeded", "plots_needed", "plots_that_fit", "spread_pct", "USUALLY_SURE_PCT",
    "Stratum", "SharedBy", "SHARED_BY", "share_out", "stratum_part", "stratum_plots",
    "PARTS_OF_ACRE", "PlotSize", "fit_size", "expected_stems", "stands_for_per_acre",
]  # fmt: skip
