"""Every rule: it does not object to the sample plan, and each example below flips it."""

import math
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

import numpy as np
import pytest

from rootcollar.hazard import Package
from rootcollar.kernel.verdict import Level
from rootcollar.label import RULES, Jugs, Partnered, Past, Work
from rootcollar.shelf import FIELDS, SILENT, Active, Again, Distance, Line, SiteLine, Twice
from tests.label.people_examples import PEOPLE_EXAMPLES
from tests.label.place_examples import PLACE_EXAMPLES
from tests.label.sample import ABOARD, DAY, GAL_ML, PARTNER, WEAR, applied, lines, said, total, whole

OK, WARN, ASK, STOP = Level

Changes = Mapping[str, Line[Any]]


def work(product_ml: float = 200.0, also: tuple[Any, ...] = (), **changes: Any) -> Changes:
    """Return the fact of other work on the unit."""
    return lines(total__work=Work(total(product_ml, **changes), also))


def past(*rows: Any, complete: bool | None = True, on: date | None = DAY) -> Changes:
    """Return the fact of what was applied before."""
    return lines(history__past=Past(rows, complete, on))


def active(**changes: Any) -> Changes:
    """Return the fact of the sample's ingredient with some figures changed."""
    return lines(sheet__ingredient=(replace(Active("exemplamine", "amine salt", 43.2, 31.0, 4.18, 3.0), **changes),))


def doubtful(high: float) -> Changes:
    """Return work whose best figure is small and whose doubt reaches so much product [mL]."""
    product = np.array([200.0, *np.linspace(100, high, 100)])
    return lines(total__work=Work(replace(total(), product_ml=product, mix_ml=product * 50)))


def along(treaters: int | None = 2, **changes: Any) -> Changes:
    """Return the fact of what goes along, changed."""
    return lines(people__aboard=(replace(ABOARD, **changes), treaters))


IV = {f"sheet__hazard__category__{one}": "IV" for one in ("oral", "dermal", "inhalation", "eye", "skin")}
JUNE_1, YEAR_BEFORE = date(2026, 6, 1), date(2025, 8, 1)
HALF_ACRE = 2023.0
DENSITY, OTHER = "sheet__formulation__density_lb_per_gal", "sheet__formulation__other_ingredients_percent"

FIRST, SECOND = "Ottoline Fernwick", "Elspeth Tarn"
LINE = Again("site.forest", "whether it may be used in: forest", "places", FIELDS["site.allowed"], "yes", "yes", "4")
READ_TWICE = Twice(FIRST, SECOND, (LINE,))
READ_APART = Twice(FIRST, SECOND, (replace(LINE, second="no"),))
READ_IN_PART = Twice(FIRST, SECOND, (replace(LINE, second=""),))
READ_ALONE = Twice(FIRST, FIRST, (LINE,), same=True)

# rule, what is changed of the sample plan, what the rule then says, words that must stand in it
EXAMPLES: list[tuple[str, Changes, Level, str]] = [
    ("L01", lines(sheet__proof__complete_booklet_read=False), ASK, "only part of the label"),
    ("L01", lines(sheet__proof__complete_booklet_read=SILENT), ASK, "only part of the label"),
    ("L02", lines(sheet__identity__epa_reg_no="00000-ZZ-0"), STOP, "establishment number"),
    ("L02", lines(sheet__identity__epa_reg_no=SILENT), STOP, "there is no number"),
    ("L02", lines(sheet__identity__registration="sln", sheet__identity__sln_no="12345"), STOP, "special local need"),
    ("L02", lines(sheet__identity__registration="exempt_25b", sheet__identity__epa_reg_no=SILENT), OK, ""),
    ("L03", lines(plan__demo=False), STOP, "00000-00000 is a placeholder"),
    ("L03", lines(plan__demo=False, sheet__identity__epa_reg_no="12345-67"), OK, ""),
    ("L04", lines(plan__state="NY"), STOP, "WV, OH, PA; the ground lies in NY"),
    ("L04", lines(sheet__identity__states_ok=()), STOP, "no state"),
    ("L04", lines(sheet__identity__sln_no="OR-000000"), STOP, "label of OR"),
    ("L04", lines(sheet__identity__sln_no=SILENT), OK, ""),
    ("L05", lines(place__site_class="residential"), STOP, "does not name residential; it names: forest, natural area"),
    ("L05", lines(place__site_class="aquatic"), STOP, '"aquatic sites"'),
    ("L05", lines(sheet__site=(SiteLine("forests", "forest"),)), ASK, "nobody has typed whether"),
    ("L05", lines(sheet__site=(SiteLine("forests, all", None, True),)), ASK, "Only its words are near"),
    ("L05", lines(sheet__site=(SiteLine("woods", None, True, frozenset({"class"})),)), ASK, "was not typed"),
    ("L05", lines(sheet__site=SILENT), STOP, "says nothing of"),
    ("L06", lines(plan__species=("other shrub",)), WARN, "FIFRA 2(ee)(2)"),
    ("L06", lines(plan__species=("other shrub",), sheet__pests__only_listed=True), STOP, "only the plants it lists"),
    ("L06", lines(plan__species=("Tree-Examples",), sheet__pests__only_listed=True), OK, ""),
    ("L06", lines(sheet__pests__listed=("shrub",), plan__species=("dwarf shrub",)), OK, ""),
    (
        "L06",
        lines(sheet__pests__listed=("shrub",), plan__species=("dwarf shrub",), sheet__pests__only_listed=True),
        ASK,
        "does that cover dwarf shrub?",
    ),
    ("L07", lines(sheet__methods__prohibited=("aerial", "Foliar spray")), STOP, "forbids foliar"),
    ("L07", lines(sheet__methods__prohibited=("broadcast foliar",)), ASK, "is this work something else?"),
    ("L07", lines(plan__method="wipe"), ASK, "no directions for wipe"),
    ("L07", lines(plan__method="wipe", sheet__methods__only_listed=True), STOP, "only its own methods"),
    ("L07", lines(sheet__methods__prohibited=SILENT), OK, ""),
    ("L08", lines(plan__strength_pct=2.5), STOP, "2.5% is above the label's strongest, 2% v/v"),
    ("L08", lines(plan__strength_pct=2.0 + 1e-12), OK, ""),
    ("L08", lines(sheet__method__concentration__high=SILENT), ASK, "says nothing of: strongest strength"),
    ("L09", lines(plan__strength_pct=0.8), WARN, "FIFRA 2(ee)(1)"),
    ("L09", lines(plan__strength_pct=0.8, sheet__method__less_than_low_forbidden=True), STOP, "forbids a weaker"),
    ("L09", lines(plan__strength_pct=0.8, sheet__limits__deviation_forbidden=("lower_concentration",)), STOP, ""),
    ("L09", lines(plan__strength_pct=0.8, sheet__limits__deviation_forbidden=("lower_frequency",)), WARN, ""),
    ("L09", lines(plan__strength_pct=0.8, sheet__limits__dilution_set_by_label=True), STOP, ""),
    ("L09", lines(plan__strength_pct=0.8, sheet__method__concentration__low=SILENT), OK, "sets no limit"),
    ("L10", lines(plan__carrier="oil"), STOP, "gives mixing with water, not mixing with oil"),
    ("L10", lines(plan__carrier="none"), STOP, "not undiluted use"),
    ("L10", lines(sheet__method__carrier=SILENT), ASK, ""),
    ("L11", lines(plan__dose=(1.5, "cut")), STOP, "1.5 mL per cut is above the label's 1 mL per cut"),
    ("L11", lines(plan__dose=(0.5, "stem")), ASK, "counts 0.5 mL per stem"),
    ("L11", lines(plan__dose=(1.5, "stem"), sheet__method__dose__per="stump"), STOP, ""),
    ("L11", lines(plan__dose=(1.0, "stem"), sheet__method__dose__per="in dbh"), OK, ""),
    ("L11", lines(plan__dose=(1.1, "stem"), sheet__method__dose__per="in dbh"), STOP, "so 1 mL on a stem of 1 in"),
    ("L11", lines(plan__dose=(30.0, "cut"), sheet__method__dose__unit="fl oz"), STOP, "1 fl oz per cut"),
    ("L11", lines(plan__dose=(29.5, "cut"), sheet__method__dose__unit="fl oz"), OK, ""),
    ("L11", lines(sheet__method__dose__amount=SILENT), OK, "sets no limit"),
    ("L12", work(3_800.0), STOP, "the plan comes to 3.01 lb ae/ac; the label's most in one treatment is 3 lb ae/ac"),
    ("L12", work(3_700.0), OK, ""),
    ("L12", work(1_900.0, also=(total(1_900.0, lines=("b",)),)), STOP, "1.51 lb ae/ac of it from other work"),
    ("L12", work(1_000.0, treated_m2=HALF_ACRE / 2), STOP, "the plan comes to 3.17 lb ae/ac"),
    ("L12", doubtful(9_000.0), WARN, "its doubt reaches 6.43 lb ae/ac"),
    ("L12", lines(sheet__limits__per_application__amount=SILENT), ASK, ""),
    ("L12", active(ae_lb_per_gal=None), ASK, "the sheet has no ae in a gallon"),
    ("L12", lines(sheet__limits__basis="product"), ASK, "counts product"),
    (
        "L12",
        lines(
            sheet__limits__basis="product",
            sheet__limits__per_application__unit="fl oz/acre",
            sheet__limits__per_application__amount=6.0,
        ),
        STOP,
        "6.76 fl oz product/ac; the label's most in one treatment is 6 fl oz product/ac",
    ),
    ("L12", lines(sheet__limits__basis="ai") | work(2_800.0), STOP, "3.09 lb ai/ac"),
    ("L13", past(applied(JUNE_1, 2_600.0)), OK, ""),
    ("L13", past(applied(JUNE_1, 2_700.0)), STOP, "6.11 lb ae/ac, 5.95 lb ae/ac of it from other work"),
    ("L13", past(applied(JUNE_1, 1_350.0, HALF_ACRE)), STOP, "5.95 lb ae/ac of it"),
    ("L13", past(applied(JUNE_1, 1_350.0, HALF_ACRE)) | lines(sheet__limits__area_basis="site_acre"), OK, ""),
    ("L13", past(applied(YEAR_BEFORE, 2_700.0)), OK, ""),
    (
        "L13",
        past(applied(YEAR_BEFORE, 2_700.0)) | lines(sheet__limits__per_year__window="12 months"),
        STOP,
        "in 12 months",
    ),
    ("L13", past(applied(YEAR_BEFORE, 2_700.0)) | lines(sheet__limits__per_year__window="season"), STOP, "in a season"),
    ("L13", past(applied(YEAR_BEFORE, 2_700.0)) | lines(sheet__limits__per_year__window=SILENT), STOP, "in 12 months"),
    ("L13", past(applied(JUNE_1, 2_700.0, product="another of the same")), STOP, ""),
    ("L13", past(complete=None), ASK, "nobody has said"),
    ("L13", past(complete=False), ASK, "incomplete"),
    ("L13", past(applied(JUNE_1, 2_700.0), complete=None), STOP, ""),
    ("L13", past(applied(JUNE_1), on=None), ASK, "day of the planned work is not known"),
    ("L13", past(applied(JUNE_1, area_m2=0.0)), ASK, "has no area"),
    ("L13", doubtful(9_000.0), WARN, "its doubt reaches"),
    ("L14", past(applied(JUNE_1)), OK, ""),
    ("L14", past(applied(JUNE_1), applied(date(2026, 6, 2))), STOP, "3 treatments of the unit in a year"),
    ("L14", past(applied(JUNE_1), applied(JUNE_1)), OK, ""),
    ("L14", past(complete=None), ASK, "nobody has said"),
    (
        "L14",
        past(applied(JUNE_1, 9.0, 900.0), applied(date(2026, 6, 2), 9.0, 900.0)) | work(treated_m2=900.0),
        ASK,
        "yes if this plan treats other ground",
    ),
    ("L14", work(passes=3), STOP, "3 treatments"),
    ("L14", lines(sheet__limits__max_applications_per_year=SILENT), OK, "sets no limit"),
    ("L15", past(applied(date(2026, 5, 17))), STOP, "59 days from this work; the label wants 60 days"),
    ("L15", past(applied(date(2026, 5, 16))), OK, ""),
    ("L15", past(applied(date(2026, 7, 14), 9.0, 900.0)) | work(treated_m2=900.0), ASK, "1 day from this work"),
    ("L15", past(complete=False), ASK, ""),
    ("L15", lines(sheet__limits__min_days_between=SILENT), OK, "sets no limit"),
    ("L16", lines(sheet__limits__area_basis=SILENT), ASK, "does not say which acre"),
    ("L16", work(treated_m2=None), ASK, "stems stand on 0.053 ac (2,302 sq ft) or more of the unit's 1 ac"),
    ("L16", work(treated_m2=None) | lines(sheet__limits__area_basis="site_acre"), OK, ""),
    ("L16", lines(sheet__limits__area_basis=SILENT, sheet__limits__per_application__amount=SILENT), ASK, "no rate"),
    ("L17", active(ae_lb_per_gal=4.0), ASK, "31 % acid of 9.68 lb/gal is 3 lb/gal, but 4 lb/gal was typed"),
    ("L17", lines(**{OTHER: 65.8}), ASK, "come to 109 %, not 100 %"),
    ("L17", lines(**{OTHER: 56.7}), OK, ""),
    ("L17", lines(**{DENSITY: SILENT, OTHER: SILENT}), OK, ""),
    ("L17", active(unread=frozenset({"ae_percent"})), ASK, "not read yet of an active ingredient: ae_percent"),
    ("L17", active(ae_percent=50.0), ASK, "is more than its salt or ester"),
    ("L17", active(ai_lb_per_gal=3.4) | lines(**{DENSITY: SILENT}), ASK, "acid is 0.718 of the active by percent"),
    ("L22", lines(people__wear=WEAR - {"protective eyewear"}), STOP, "protective eyewear (for mixing)"),
    ("L22", lines(people__wear=WEAR - {"chemical-resistant apron"}), STOP, "apron (for cleaning)"),
    ("L22", lines(people__wear=WEAR - {"nitrile >= 14 mil gloves"}), ASK, "what the crew's gloves are made of"),
    ("L22", lines(people__wear=WEAR - {"nitrile >= 14 mil gloves"} | {"latex gloves"}), STOP, "latex gloves"),
    ("L22", lines(people__wear=WEAR - {"nitrile >= 14 mil gloves"}, sheet__ppe__glove_types=SILENT), OK, ""),
    ("L22", lines(sheet__ppe__respirator="half-face respirator"), STOP, "half-face respirator"),
    ("L22", lines(sheet__ppe__mixing=SILENT), ASK, "says nothing of"),
    ("L22", lines(sheet__ppe__cleaning=SILENT), OK, ""),
    ("L20", lines(sheet__hazard__category__eye="II"), ASK, "the sheet has CAUTION"),
    ("L20", lines(sheet__hazard__category__eye="II", sheet__hazard__signal_word="WARNING"), OK, ""),
    ("L20", lines(sheet__hazard__category__eye="I", sheet__hazard__signal_word="DANGER"), OK, ""),
    ("L20", lines(sheet__hazard__category__oral="I", sheet__hazard__signal_word="DANGER"), ASK, "Poison and skull"),
    (
        "L20",
        lines(
            sheet__hazard__category__oral="I", sheet__hazard__signal_word="DANGER", sheet__hazard__poison_symbol=True
        ),
        OK,
        "",
    ),
    ("L20", lines(sheet__hazard__signal_word="none"), ASK, "no word"),
    ("L20", lines(sheet__hazard__signal_word="none", **IV), OK, ""),
    ("L20", lines(sheet__hazard__signal_word="CAUTION", **IV), OK, ""),
    ("L21", lines(sheet__hazard__category__dermal="II"), WARN, "coveralls"),
    ("L21", lines(sheet__hazard__category__eye="II"), WARN, "protective eyewear (for applying)"),
    ("L21", lines(sheet__hazard__category__inhalation="II"), WARN, "respirator (for mixing)"),
    ("L21", lines(sheet__hazard__category__inhalation="II", sheet__ppe__respirator="half-face respirator"), OK, ""),
    ("L21", lines(sheet__ppe__applying=("long-sleeved shirt and long pants", "shoes plus socks", "gloves")), OK, ""),
    ("L21", lines(sheet__ppe__applying=("long sleeves", "long trousers", "shoes and socks")), OK, ""),
    (
        "L21",
        lines(
            sheet__ppe__applying=("long sleeves", "long trousers", "shoes and socks"),
            sheet__hazard__category__dermal="III",
        ),
        WARN,
        "chemical-resistant gloves (for applying)",
    ),
    ("L46", lines(sheet__mixing__tank_mix_forbidden=("Otheramine",)), STOP, "forbids mixing it with Otheramine"),
    ("L46", lines(sheet__mixing__tank_mix_forbidden=("any other product",)), STOP, "Other Product is planned"),
    ("L46", lines(sheet__mixing__tank_mix_allowed_named=SILENT), ASK, "at your own risk"),
    (
        "L46",
        lines(sheet__mixing__tank_mix_allowed_named=SILENT, sheet__mixing__tank_mix_forbidden=SILENT),
        ASK,
        "does not speak of Other Product",
    ),
    ("L46", lines(sheet__mixing__tank_mix_allowed_named=("someamine",)), ASK, "names someamine, not Other Product"),
    ("L46", lines(plan__partner=replace(PARTNER, label_known=False)), ASK, "is not on the shelf"),
    ("L46", lines(plan__partner=Partnered(("ammonium sulfate",), label_known=False, fertiliser=True)), OK, ""),
    (
        "L46",
        lines(
            plan__partner=Partnered(("ammonium sulfate",), label_known=False, fertiliser=True),
            sheet__mixing__tank_mix_forbidden=("fertilizer",),
        ),
        STOP,
        "forbids mixing it with fertilizer",
    ),
    ("L46", lines(plan__partner=None), OK, "nothing to weigh"),
    ("L48", lines(sheet__mixing__mixture_storage_hours=7.0), WARN, "a load of 4 gal is about 8 h of work"),
    ("L48", lines(day__load=("4 gal", 24.0)), OK, ""),
    ("L48", lines(day__load=("4 gal", 25.0)), WARN, "lets a mix stand 24 h"),
    ("L48", lines(sheet__mixing__mixture_storage_hours=SILENT), OK, "sets no limit"),
    ("L49", along(metals=("galvanized steel",)), WARN, "the crew has galvanized steel"),
    ("L49", along(metals=()), OK, ""),
    ("L49", along(metals=None), ASK, "nobody has said what sprayers"),
    ("L49", along(metals=None) | lines(sheet__mixing__metal_forbidden=SILENT), OK, ""),
    ("L50", lines(plan__on=date(2030, 1, 2)), STOP, "not to use it after 2030-01-01"),
    ("L50", lines(plan__on=date(2030, 1, 1)), OK, ""),
    ("L50", lines(sheet__identity__not_for_use_after=SILENT), OK, "sets no limit"),
    ("L51", lines(day__jugs=((Package("two and a half gallons", 2.5 * GAL_ML, 11.0),) * 2, 22.0)), OK, ""),
    ("L51", lines(day__jugs=((Package("the drum", 8.1 * GAL_ML),), 0.0)), WARN, "the drum holds more"),
    ("L51", lines(day__jugs=((Package("the heavy", 7.9 * GAL_ML, 30.0),), 30.0)), WARN, "the heavy holds more"),
    (
        "L51",
        lines(day__jugs=((Package("the jug", 2 * GAL_ML),), 0.0), sheet__transport__packing_group=SILENT),
        WARN,
        "the jug holds more",
    ),
    ("L51", lines(day__jugs=((), 199.0)), OK, ""),
    ("L51", lines(day__jugs=((), 200.0)), WARN, "a vehicle may carry 440 lb"),
    ("L51", lines(day__jugs=((), 300.0), sheet__transport__dot_class="not regulated"), OK, ""),
    ("L52", along(wash_ml=5.9 * GAL_ML), WARN, "6 gal are needed"),
    ("L52", along(wash_ml=None), ASK, "what is carried to wash with: wash_water"),
    ("L52", along(soap=False), WARN, "no soap and towels"),
    ("L52", along(flush_ml=5 * GAL_ML), WARN, "for eyes at the mixing site, 6 gal"),
    ("L52", along(flush_ml=None) | lines(sheet__ppe__mixing=("long sleeves",)), OK, ""),
    ("L52", along(flasks=1) | lines(sheet__ppe__applying=("goggles",)), WARN, "1 flasks of a pint"),
    ("L52", along(flasks=None) | lines(sheet__ppe__applying=("goggles",)), ASK, "flasks"),
    ("L52", along(treaters=3), WARN, "for 3 who handle it, 9 gal are needed"),
    ("L52", along(treaters=None, wash_ml=3 * GAL_ML), OK, ""),
    ("L53", along(labels=None), ASK, "nobody has said that the booklet"),
    ("L53", along(labels=False), STOP, "no booklet rides along"),
    ("L53", along(labels=False, files=frozenset({"jug-front.jpg"})), OK, ""),
    ("L53", along(labels=None) | lines(sheet__proof__photos=SILENT), ASK, "no file of the label is named"),
    ("L60", lines(shed__jugs=Jugs(("2019-03",))), ASK, "which jug will be used"),
    ("L60", lines(shed__jugs=Jugs(("2025-01",))), OK, ""),
    ("L60", lines(shed__jugs=Jugs((), ("other-sheet",))), ASK, "same registration number (other-sheet)"),
    ("L60", lines(sheet__identity__label_version=SILENT), ASK, "without a version"),
    ("L11", lines(plan__dose=(0.5, "cut")), OK, ""),
    (
        "L11",
        lines(plan__dose=(0.5, "cut"), sheet__limits__deviation_forbidden=("lower_dose",)),
        STOP,
        "forbids a lower",
    ),
    ("L11", lines(sheet__limits__deviation_forbidden=("lower_dose",)), OK, ""),
    ("L09a", work(100.0), OK, ""),
    (
        "L09a",
        work(100.0) | lines(sheet__limits__deviation_forbidden=("lower_dose",)),
        STOP,
        "the plan comes to 1.32 gal",
    ),
    ("L09a", work(400.0) | lines(sheet__limits__deviation_forbidden=("lower_dose",)), OK, ""),
    (
        "L09a",
        work(100.0, treated_m2=None) | lines(sheet__limits__deviation_forbidden=("lower_dose",)),
        ASK,
        "how much ground is sprayed is not known",
    ),
    ("L14", lines(sheet__limits__deviation_forbidden=("lower_frequency",)), ASK, "fewer treatments than its 2"),
    ("L14", work(passes=2) | lines(sheet__limits__deviation_forbidden=("lower_frequency",)), OK, ""),
    ("L37a", lines(place__distances={"surface water": 7.0, "well": None}), STOP, "the unit comes to 23 ft"),
    ("L37a", lines(place__distances={"surface water": 7.62, "well": None}), OK, ""),
    ("L37a", lines(place__distances={"surface water": math.inf, "well": None}), OK, ""),
    ("L37a", lines(place__distances={"surface water": None, "well": None}), ASK, "nobody has looked"),
    ("L37a", lines(plan__method="cut_stump", place__distances={"surface water": 1.0, "well": None}), OK, ""),
    (
        "L37a",
        lines(sheet__water__buffers_ft=(Distance("well", 50.0),), place__distances={"surface water": 1.0, "well": 9.0}),
        STOP,
        "50 ft from well",
    ),
    ("L37a", lines(sheet__water__buffers_ft=(Distance("sinkhole", 50.0),)), ASK, "does not measure that"),
    ("L37a", lines(sheet__water__buffers_ft=SILENT), OK, "sets no limit"),
    ("L37b", lines(place__water_m=0.0), STOP, "forbids use in water"),
    ("L37b", lines(place__water_m=0.0, sheet__water__direct_to_water="edge_only"), ASK, "water's edge only"),
    ("L37b", lines(place__water_m=0.0, sheet__water__direct_to_water="allowed"), OK, ""),
    ("L37b", lines(place__water_m=math.inf), OK, ""),
    ("L37b", lines(sheet__water__direct_to_water=SILENT), ASK, ""),
    ("L47a", lines(plan__band_cm=(2.54, 20.0)), ASK, "the label gives this method for stems to 6 in"),
    ("L47a", lines(plan__band_cm=(0.5, 5.0)), ASK, "stems from 1/2 in"),
    ("L47a", lines(sheet__method__stem_diameter_in__high=2.0), OK, ""),
    ("L47a", lines(plan__band_cm=(2.54, 90.0), sheet__method__stem_diameter_in__high=SILENT), OK, ""),
    ("L47b", lines(plan__height_m=5.0), ASK, "plants of 16.4 ft"),
    ("L47b", lines(sheet__method__max_target_height_ft=SILENT), OK, "sets no limit"),
    ("P06", lines(people__beside=(True, 0)), STOP, "nobody of the crew may treat"),
    ("P06", lines(people__beside=(True, None)), ASK, "nobody has said who treats"),
    ("P06", lines(people__beside=(True, 1)), OK, ""),
    ("P06", lines(people__beside=(False, 0)), OK, ""),
    ("P09", lines(plan__demo=False), ASK, "only one person has read"),
    ("P09", lines(plan__demo=False, sheet__second=READ_TWICE), OK, ""),
    ("P09", lines(plan__demo=False, sheet__second=READ_APART), ASK, "the sheet has yes, Elspeth Tarn read no"),
    ("P09", lines(plan__demo=False, sheet__second=READ_IN_PART), ASK, "lacks 1 of 1 lines"),
    ("P09", lines(plan__demo=False, sheet__second=READ_ALONE), ASK, "both readings are Ottoline Fernwick's"),
    ("P01", lines(place__permission=None), STOP, "nobody has allowed"),
    ("P02", lines(plan__on=date(2027, 1, 1)), STOP, "ran until 2026-12-31"),
    ("P02", lines(plan__on=date(2026, 12, 31)), OK, ""),
    (
        "P03",
        lines(sheet__mixing__surfactant__needed=True, sheet__mixing__surfactant__percent=SILENT),
        ASK,
        "demands a surfactant and gives no percent",
    ),
    ("P03", lines(sheet__mixing__surfactant__needed=False, sheet__mixing__surfactant__percent=SILENT), OK, ""),
    ("P03", lines(sheet__mixing__surfactant__needed=SILENT), OK, "sets no limit"),
    *PEOPLE_EXAMPLES,
    *PLACE_EXAMPLES,
]


@pytest.mark.parametrize(("number", "changes", "level", "words"), EXAMPLES)
def test_each_example_gets_its_word(number: str, changes: Changes, level: Level, words: str) -> None:
    verdict = said(whole() | changes)[number]
    assert verdict.level is level, verdict
    assert words in verdict.because or words in verdict.clear
    assert level is OK or (verdict.because and verdict.clear)


@pytest.mark.parametrize("number", RULES)
def test_no_rule_objects_to_the_sample_plan_and_every_rule_can_be_flipped_by_a_fact_it_reads(number: str) -> None:
    assert said(whole())[number].level is OK
    flips = [changes for rule, changes, level, _ in EXAMPLES if rule == number and level > OK]
    assert any(set(changes) <= set(RULES[number].paths) for changes in flips)


NEVER_STOP = ("L20", "L21", "L48", "L49", "L51", "L52", "L60")


def test_every_rule_that_strikes_a_line_has_an_example_that_does() -> None:
    struck = {number for number, _, level, _ in EXAMPLES if level is STOP}
    assert set(RULES) - struck == {
        "L01", "L16", "L17", "L19", "L19b", "L26", "L45", "L47a", "L47b", "P03", "P09", "P10", *NEVER_STOP,
    }  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "most"),
    [
        # 3 lb ae/ac on one acre = 1360.78 g, of 359.479 g/L = 3.7854 L product, in a 2 % mix 189.27 L = 50 gal
        (work(3_800.0), "pour no more than 50 gal"),
        # what 1.9 L of the other work leaves of the limit: 1.8854 L product = 24.905 gal of mix
        (work(3_800.0, also=(total(1_900.0, lines=("b",)),)), "pour no more than 24 gal 3 qt 16 fl oz"),
        (work(100.0, also=(total(3_800.0, lines=("b",)),)), "put nothing more of this ingredient on this unit"),
    ],
)
def test_a_stop_on_a_rate_says_how_much_mix_keeps_to_it_rounded_down(changes: Changes, most: str) -> None:
    verdict = said(whole() | changes)["L12"]
    assert verdict.level is STOP and verdict.clear.startswith(most)


def test_the_page_of_the_label_stands_in_the_verdict() -> None:
    verdict = said(whole() | {"sheet.method.concentration.high": Line(1.5, "6")})["L08"]
    assert verdict.page == "6" and verdict.about == "a"
