"""One plan, one unit, one history that keep to the invented sample label, to be changed fact by fact."""

import math
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from rootcollar.hazard import Package
from rootcollar.kernel.doubt import sure
from rootcollar.kernel.verdict import Verdict
from rootcollar.label import (
    Aboard,
    Applied,
    Facts,
    Handling,
    History,
    Jugs,
    Licence,
    Partnered,
    Person,
    Planned,
    UnitTotal,
    aboard_facts,
    law_facts,
    place_facts,
    template_facts,
    total_facts,
    weigh_day,
    weigh_place,
    weigh_template,
    weigh_totals,
)
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import load
from rootcollar.shelf import Line, Sheet
from rootcollar.site.ground import Mixing, Permission, Unit
from tests.shelf.sample import sample_sheet

ACRE_M2 = 4046.8564224
INCH_CM = 2.54
AE_G_PER_L = 359.479  # 3.00 lb ae/gal
DAY = date(2026, 7, 15)

WEAR = frozenset(
    {
        "long sleeves", "long trousers", "shoes and socks", "chemical-resistant gloves", "protective eyewear",
        "chemical-resistant apron", "nitrile >= 14 mil gloves",
    }
)  # fmt: skip

RECIPE = Recipe("sample", "exemplamine-3-sl", "exemplamine", AE_G_PER_L, 2.0, "water", 0.5)
PLANNED = Planned(
    "foliar", ("shrub example", "Exemplum fruticosum"), RECIPE, (INCH_CM, 2 * INCH_CM), 1.0, "cut", height_m=1.5
)
CARD = Licence("00-000", "Forest pest control", "WV", "commercial")
ANN = Person("Ann", frozenset({"lead", "treat"}), date(2027, 3, 31), CARD, date(2026, 2, 1))
BO = Person("Bo", frozenset({"treat"}), trained_on=date(2026, 2, 1))
PEOPLE = (ANN, BO)
MIXING = Mixing("the gate", 60.0, 60.0, math.inf)
UNIT = Unit(
    "bench", "North bench", ACRE_M2, site_class="forest", permission=Permission("the owner", date(2026, 12, 31)),
    water_m=30.0, well_m=100.0, power_m=math.inf, for_whom="own", purpose="produce", mixing=MIXING, taken=(),
    wanted_roots_m=math.inf, soil="loam", ground_water_m=9.0, trail_m=math.inf, road_m=math.inf, building_m=math.inf,
    parking_m=math.inf, boundary_m=math.inf,
)  # fmt: skip
HANDLING = Handling.at(UNIT, PEOPLE, DAY, "WV")
HISTORY = History((), complete=True)
GAL_ML = 3785.411784
ABOARD = Aboard(("brass",), 6 * GAL_ML, 6 * GAL_ML, 2, soap=True, labels=True)  # for two who treat
PARTNER = Partnered(("Other Product", "otheramine"))


def lines(**says: Any) -> dict[str, Line[Any]]:
    """Return lines by path, written with two underscores for each point."""
    return {path.replace("__", "."): Line(value) for path, value in says.items()}


# The lines that the sample leaves unread or silent for a block of directions, filled in mildly.
FILLED = lines(
    sheet__method__less_than_low_forbidden=False,
    sheet__method__stem_diameter_in__low=0.5,
    sheet__method__stem_diameter_in__high=6.0,
    sheet__method__max_target_height_ft=15.0,
    sheet__method__dose__amount=1.0,
    sheet__method__dose__unit="mL",
    sheet__method__dose__per="cut",
    sheet__identity__sln_no="WV-000000",
    sheet__food_and_stock__pre_harvest_days=7,
    sheet__identity__not_for_use_after=date(2030, 1, 1),
    sheet__method__spray_volume_gal_per_acre__low=5.0,
    sheet__mixing__tank_mix_allowed_named=("otheramine products",),
    plan__partner=PARTNER,
    sheet__mixing__mixture_storage_hours=24.0,
    sheet__transport__packing_group="III",
    sheet__transport__dot_class="9",
    day__load=("4 gal", 8.0),
    day__jugs=((Package("a jug of 2.5 gal", 2.5 * GAL_ML, 11.0),), 11.0),
)


def total(product_ml: float = 200.0, **changes: Any) -> UnitTotal:
    """Return the sum of a unit's work with the sample: 2 % mix on one acre, all of it treated."""
    made = UnitTotal(
        "bench", "exemplamine", AE_G_PER_L, 2.0, sure(product_ml * 50), sure(product_ml), ACRE_M2, 1, ("a",), ACRE_M2
    )
    return replace(made, **changes)


def applied(on: date, ae_g: float = 100.0, area_m2: float = ACRE_M2, **changes: Any) -> Applied:
    """Return an earlier application of the sample's ingredient on the unit."""
    return replace(Applied(on, "bench", "exemplamine", ae_g, area_m2), **changes)


def facts_of(
    planned: Planned = PLANNED, unit: Unit = UNIT, work: UnitTotal | None = None, history: History = HISTORY,
    on: date | None = DAY, sheet: Sheet | None = None,
) -> dict[str, Line[Any]]:  # fmt: skip
    """Return all facts of a plan with the sample label, nothing filled in."""
    label = sheet or sample_sheet()
    template = template_facts(planned, label, state="WV", demo=True, wear=WEAR, people=PEOPLE)
    along = {**aboard_facts(ABOARD, 2, Jugs(("2025-01",))), **law_facts(load().hazard)}
    place = place_facts({**template, **along}, unit, on=on)
    return dict(total_facts(place, work or total(), history, on=on))


def whole() -> dict[str, Line[Any]]:
    """Return facts of which every line that a rule reads says something, and no rule objects."""
    return facts_of() | FILLED


def without(facts: Mapping[str, Line[Any]], *paths: str) -> dict[str, Line[Any]]:
    """Return the facts with some of them not known."""
    return {path: line for path, line in facts.items() if path not in paths}


def said(facts: Facts) -> dict[str, Verdict]:
    """Return what every rule says, by number."""
    verdicts = (
        *weigh_template(facts, "a"),
        *weigh_place(facts, "a"),
        *weigh_totals(facts, "bench"),
        *weigh_day(facts, "day"),
    )
    by_rule = {one.rule: one for one in verdicts}
    assert len(by_rule) == len(verdicts)
    return by_rule
