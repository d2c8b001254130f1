"""Ground that the rules on place object to, or let be: rule, what is changed, its word, words that stand in it."""

import math
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from rootcollar.kernel.verdict import Level
from rootcollar.shelf import SILENT, Distance, Line
from rootcollar.site import Taken
from tests.label.sample import MIXING, lines

OK, WARN, ASK, STOP = Level

Changes = Mapping[str, Line[Any]]

FT_M = 0.3048
NO_DISTANCE = lines(sheet__soil__keep_from_desirable_roots_ft=SILENT)
NO_UPTAKE = lines(sheet__soil__root_uptake=False)
NO_HARVEST = lines(sheet__food_and_stock__pre_harvest_days=SILENT)
NO_CAUTION = lines(sheet__soil__sandy_or_shallow_groundwater_caution=False)


def mixing(state: str | None = "WV", **changes: Any) -> Changes:
    """Return the fact of another mixing place, distances in feet."""
    return lines(place__mixing=(replace(MIXING, **changes), state))


def taken(*what: Taken) -> Changes:
    """Return the fact of what is taken from the unit."""
    return lines(place__taken=what)


def trees(keep_ft: float | None, wanted_ft: float | None) -> Changes:
    """Return the fact of how far trees to keep and wanted trees stand [ft]."""
    return lines(place__trees=tuple(None if one is None else one * FT_M for one in (keep_ft, wanted_ft)))


def stature(height_ft: float | None, thick_cm: float = 5.0) -> Changes:
    """Return the fact of how tall [ft] and thick [cm] the plants are."""
    return lines(plan__stature=(None if height_ft is None else height_ft * FT_M, thick_cm))


def beneath(method: str = "basal_bark", **away_ft: float | None) -> Changes:
    """Return the facts of a way that leaves trees standing, and how near lies what they could hit [ft]; none else."""
    kinds = ("trail", "road", "building", "parking", "boundary", "power")
    away: dict[str, float | None] = dict.fromkeys(kinds, math.inf)
    away |= {what: None if far is None else far * FT_M for what, far in away_ft.items()}
    return lines(plan__method=method, place__beneath=away)


JUNE = date(2027, 6, 1)

PLACE_EXAMPLES: list[tuple[str, Changes, Level, str]] = [
    ("P07", lines(place__power_m=math.inf), OK, ""),
    ("P07", lines(place__power_m=0.0), STOP, "leave these to the line's owner"),
    ("P07", lines(place__power_m=14.9 * FT_M), STOP, "10 ft more must lie between"),
    ("P07", lines(place__power_m=15 * FT_M) | stature(5), OK, ""),
    ("P07", lines(place__power_m=50 * FT_M) | stature(None, 30.0), STOP, "98 ft high"),
    ("P07", lines(place__power_m=109 * FT_M) | stature(None, 30.0), OK, ""),
    (
        "P10",
        beneath(trail=29.9) | stature(30, 25.4),
        ASK,
        "30 ft tall to die on their feet and fall later; within two of",
    ),
    ("P10", beneath(trail=0) | stature(30, 25.4), ASK, "lies a trail (touching or within)"),
    ("P10", beneath(road=20, boundary=10) | stature(30, 25.4), ASK, "a road (20 ft), another's ground (10 ft)"),
    ("P10", beneath(building=20) | stature(30, 25.4), ASK, "a building (20 ft)"),
    ("P10", beneath(parking=20) | stature(30, 25.4), ASK, "people park, sit or camp (20 ft)"),
    ("P10", beneath(power=50) | stature(30, 25.4), ASK, "two of their lengths of the unit lies a power line (50 ft)"),
    ("P10", beneath(power=50) | stature(30, 25.4), ASK, "leave them to its owner, whose tree trimmers"),
    ("P10", beneath(trail=30) | stature(30, 25.4), ASK, "within two of their lengths of the unit lies a trail (30 ft)"),
    ("P10", beneath(trail=59.9) | stature(30, 25.4), ASK, "a trail (60 ft)"),
    ("P10", beneath(trail=60) | stature(30, 25.4), WARN, "whoever works here next year works among them"),
    ("P10", beneath() | stature(30, 25.4), WARN, "so that every later sheet warns of them"),
    ("P10", beneath(road=None, boundary=None) | stature(30, 25.4), ASK, "write road, boundary of the unit"),
    ("P10", beneath(trail=70, road=None) | stature(30, 25.4), ASK, "nobody has said how near a road lies"),
    (
        "P10",
        beneath(trail=40, road=None) | stature(30, 25.4),
        ASK,
        "a trail (40 ft), and nobody has said how near a road",
    ),
    (
        "P10",
        beneath(trail=80) | stature(None, 25.4),
        ASK,
        "nobody has counted how tall they are, and near the unit lies",
    ),
    ("P10", beneath(trail=80) | stature(None, 25.4), ASK, "write their height in tally.csv"),
    ("P10", beneath(trail=700) | stature(None, 25.4), ASK, "a trail (700 ft)"),
    ("P10", beneath(trail=800) | stature(None, 25.4), WARN, "works among them"),
    ("P10", beneath() | stature(None, 25.4), WARN, "leaves trees to die on their feet"),
    ("P10", beneath("hack_squirt", trail=20) | stature(30, 25.4), ASK, "hack and squirt leaves"),
    ("P10", beneath("girdle", trail=20) | stature(30, 25.4), ASK, "girdle leaves"),
    ("P10", beneath("cut_stump", trail=20, road=None) | stature(30, 25.4), OK, ""),
    ("P10", beneath("foliar", trail=0) | stature(30, 25.4), OK, ""),
    ("P10", beneath(trail=0) | stature(30, 10.16), OK, ""),
    ("P10", beneath(trail=0) | stature(30, 10.2), ASK, "30 ft tall"),
    ("P10", beneath(trail=0) | stature(10, 25.4), OK, ""),
    ("P10", beneath(trail=0) | stature(10.1, 25.4), ASK, "10 ft tall"),
    ("P10", beneath(trail=None) | stature(8, 25.4), OK, ""),
    ("P08", stature(5.1), STOP, "above the shoulder (5 ft)"),
    ("P08", stature(5.0), OK, ""),
    ("P08", stature(None), ASK, "how tall the plants are"),
    ("P08", stature(20.0) | lines(plan__method="basal_bark"), OK, ""),
    ("L39", lines(place__mixing=(None, "WV")), ASK, "nobody has said where it is mixed"),
    ("L39", mixing(well_m=49 * FT_M), STOP, "the label says to mix 50 ft from well"),
    ("L39", mixing(water_m=49 * FT_M), STOP, "50 ft from surface water"),
    ("L39", mixing(well_m=99 * FT_M), WARN, "100 ft is advised"),
    ("L39", mixing(well_m=101 * FT_M), OK, ""),
    ("L39", mixing(sinkhole_m=99 * FT_M), WARN, "nearest sinkhole"),
    ("L39", mixing(sinkhole_m=None), ASK, "nearest sinkhole"),
    ("L39", mixing(sinkhole_m=None, well_m=49 * FT_M), STOP, "from well"),
    ("L39", mixing(water_m=40 * FT_M) | lines(sheet__water__mixing_setback_ft=SILENT), WARN, "50 ft is advised"),
    ("L39", mixing("ME", water_m=40 * FT_M) | lines(sheet__water__mixing_setback_ft=SILENT), STOP, "Maine keeps"),
    ("L39", mixing("CA", well_m=90 * FT_M), ASK, "California keeps"),
    ("L39", lines(sheet__water__mixing_setback_ft=(Distance("tile inlets", 66.0),)), ASK, "not measured"),
    ("L43", lines(place__taken=None), ASK, "nobody has said whether anything is taken"),
    (
        "L43",
        lines(place__taken=None, sheet__food_and_stock__hay_cut_days=0, sheet__food_and_stock__slaughter_days=SILENT)
        | NO_HARVEST
        | {"sheet.food_and_stock.grazing_days.lactating": Line(0)},
        OK,
        "",
    ),
    ("L43", taken(Taken("hay", date(2026, 7, 28))), STOP, "not before 2026-07-29"),
    ("L43", taken(Taken("hay", date(2026, 7, 29))), OK, ""),
    ("L43", taken(Taken("hay", JUNE)), OK, ""),
    ("L43", taken(Taken("milk_grazing")), STOP, "milk stock grazes here all the time"),
    ("L43", taken(Taken("milk_grazing", last=date(2026, 7, 14))), OK, ""),
    ("L43", taken(Taken("grazing")), OK, ""),
    ("L43", taken(Taken("slaughter", date(2026, 7, 17))), STOP, "3 days"),
    ("L43", taken(Taken("nuts", JUNE)) | NO_HARVEST, ASK, "the label gives no days to wait"),
    ("L43", taken(Taken("sap")) | lines(sheet__food_and_stock__pre_harvest_days=30), STOP, "sap is drawn"),
    ("L43", taken(Taken("grazing"), Taken("hay")), STOP, "hay is cut"),
    ("L44", trees(None, None), ASK, "mapped or not, stands within 10 ft"),
    ("L44", trees(math.inf, None), ASK, "mapped or not"),
    ("L44", trees(9.9, None), STOP, "keeps it 10 ft from the roots"),
    ("L44", trees(math.inf, 9.9), STOP, "one stands at 9.9 ft"),
    ("L44", trees(9.9, math.inf), STOP, "keeps it 10 ft"),
    ("L44", trees(10.0, 10.0), OK, ""),
    ("L44", trees(None, 49.0) | NO_DISTANCE, WARN, "the label gives no distance"),
    ("L44", trees(None, 51.0) | NO_DISTANCE, OK, ""),
    ("L44", trees(None, None) | NO_DISTANCE, ASK, "within 50 ft"),
    ("L44", trees(None, None) | NO_DISTANCE | NO_UPTAKE, OK, ""),
    (
        "L44",
        trees(None, None) | NO_DISTANCE | NO_UPTAKE | lines(plan__leaks=("imazapyr", True)),
        ASK,
        "imazapyr can leave roots",
    ),
    ("L45", lines(place__soil=("sand", None)), WARN, "the soil is sand"),
    ("L45", lines(place__soil=("clay", 2.0)), WARN, "ground water stands at 6.6 ft"),
    ("L45", lines(place__soil=("clay", None)), ASK, "ground_water"),
    ("L45", lines(place__soil=(None, 9.0)), ASK, "soil"),
    ("L45", lines(place__soil=(None, None)), ASK, "soil and ground_water"),
    ("L45", lines(place__soil=("clay", 9.0)), OK, ""),
    ("L45", lines(place__soil=("sand", 1.0)) | NO_CAUTION, WARN, ""),
    ("L45", lines(place__soil=("sand", 1.0), sheet__water__groundwater_advisory=SILENT) | NO_CAUTION, OK, ""),
]
