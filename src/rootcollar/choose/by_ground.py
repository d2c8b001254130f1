"""Work and money by the ground, not by the stem: hours by cover, goats by the hectare, pay by cross-section."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = ["acres_a_day", "cost_by_cross_section", "cover_lost_pct", "goat_days_per_ha", "hours_by_cover"]


@formula(
    "area_ha * cover_pct * h_per_ha_per_pct",
    gives="h",
    source="WARD11",
    area_ha=(0.01, 100),
    cover_pct=(0, 100),
    h_per_ha_per_pct=(0.1, 10),
)
def hours_by_cover(area_ha: float, cover_pct: float, h_per_ha_per_pct: float) -> float:
    """Return the work on a patch that goes with how much of the ground the plant covers [h].

    cover_pct: of the ground, before the first pass [%]. h_per_ha_per_pct: hours a hectare for each 1 % of cover.
    """
    return area_ha * cover_pct * h_per_ha_per_pct


@formula("100 * (1 - after_pct / before_pct)", gives="%", source="WARD11", before_pct=(1, 100), after_pct=(0, 100))
def cover_lost_pct(before_pct: float, after_pct: float) -> float:
    """Return how much of the cover is gone, of what there was [%]; below 0 where it grew. Both in % of the ground."""
    return 100 * (1 - after_pct / before_pct)


@formula(
    "cross_section_ft2 * usd_per_ft2", gives="USD", source="KOCH01", cross_section_ft2=(0, 500), usd_per_ft2=(0.1, 10)
)
def cost_by_cross_section(cross_section_ft2: float, usd_per_ft2: float) -> float:
    """Return the money for stems by the sum of their cross-sections [USD]. cross_section_ft2: basal area [sq ft]."""
    return cross_section_ft2 * usd_per_ft2


@formula("goats_per_ha * days", gives="goat-days/ha", source="GOAT-BT", goats_per_ha=(1, 500), days=(1, 120))
def goat_days_per_ha(goats_per_ha: float, days: float) -> float:
    """Return the grazing pressure of a stay [goat-days/ha]. days: the goats are on the patch [d]."""
    return goats_per_ha * days


@formula("hours * acres_per_h", gives="acres", source="SERA-GEN", hours=(1, 12), acres_per_h=(0.05, 5))
def acres_a_day(hours: float, acres_per_h: float) -> float:
    """Return the ground one worker does in a day [acres]. hours: of work in it [h]."""
    return hours * acres_per_h
