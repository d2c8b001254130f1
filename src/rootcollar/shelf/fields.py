"""Every line a label sheet can hold: the one table behind checking, template, rules and docs.

`stricter` says which change makes the label stricter: a lower or higher figure (an earlier day is lower), fewer or
more items, true or false, the first of the choices; `none`: no change of it is stricter than another.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

__all__ = ["FIELDS", "METHODS", "SITE_CLASSES", "Field", "Stricter", "ValueKind", "fields_of"]

Stricter = Literal["lower", "higher", "fewer", "more", "true", "false", "first", "none"]
ValueKind = Literal[
    "text", "texts", "states", "number", "count", "percent", "flag", "date", "choice", "choices", "distances", "tables"
]

METHODS = (
    "hack_squirt", "cut_stump", "basal_bark", "foliar", "vine_cut", "injection", "wipe", "soil", "thinline",
)  # fmt: skip
SITE_CLASSES = (
    "forest", "natural_area", "wildlife_habitat", "right_of_way", "pasture", "residential", "cropland", "wetland",
    "aquatic",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Field:
    """One line: its path in the sheet, kind of value, unit, what it is in one line, what makes it stricter.

    among: the words allowed, where they are few. methods: the kinds of method block it belongs to; empty: all.
    """

    path: str
    kind: ValueKind
    words: str
    stricter: Stricter = "none"
    unit: str = ""
    among: tuple[str, ...] = ()
    methods: tuple[str, ...] = ()

    @property
    def in_method(self) -> bool:
        """Whether the line stands in a method's block of directions."""
        return self.path.startswith("method.")

    def belongs_to(self, method: str) -> bool:
        """Whether a label can say this of the method."""
        return not self.methods or method in self.methods


_CATEGORY = ("I", "II", "III", "IV")
_AMOUNT = ("gal", "qt", "pt", "fl oz", "L", "mL", "lb", "oz wt", "kg", "g")
_RATE = (
    "lb/acre", "oz wt/acre", "gal/acre", "qt/acre", "pt/acre", "fl oz/acre", "kg/ha", "g/ha", "L/ha", "mL/ha",
)  # fmt: skip
_DROPLETS = ("ultra coarse", "extremely coarse", "very coarse", "coarse", "medium", "fine", "very fine")
_CUTS = ("hack_squirt", "cut_stump", "vine_cut", "injection")
_SPRAYED = ("foliar", "soil")

_ROWS: tuple[Field, ...] = (
    Field("identity.product_name", "text", "name of the product as printed"),
    Field("identity.registration", "choice", "kind of registration", among=("epa", "sln", "exempt_25b", "section18")),
    Field("identity.epa_reg_no", "text", "the number behind the words EPA Reg. No."),
    Field("identity.epa_est_no", "text", "the number behind the words EPA Est. No."),
    Field("identity.sln_no", "text", "number of a special local need label, such as OR-000000"),
    Field("identity.restricted_use", "flag", "whether RESTRICTED USE PESTICIDE stands on the label", "true"),
    Field(
        "identity.classification",
        "choice",
        "use class as printed",
        "first",
        among=("restricted", "unclassified", "general"),
    ),
    Field("identity.states_ok", "states", "states in which you have checked that it is registered", "fewer"),
    Field("identity.net_contents.amount", "number", "what the container holds, the figure"),
    Field("identity.net_contents.unit", "choice", "what the container holds, the unit", among=_AMOUNT),
    Field("identity.lot", "text", "lot or batch number"),
    Field("identity.not_for_use_after", "date", "last day of use, where one is printed", "lower"),
    Field("identity.label_version", "text", "version or date of the label"),
    Field("identity.supplemental_labels_held", "texts", "files of further labeling that you hold"),
    Field("proof.read_by", "text", "who read the label"),
    Field("proof.read_on", "date", "on what day it was read"),
    Field("proof.photos", "texts", "files of your photographs of the label"),
    Field("proof.complete_booklet_read", "flag", "whether the whole booklet was read, not only the front", "false"),
    Field("ingredient", "tables", "the active ingredients, a block each"),
    Field("ingredient.common_name", "text", "common name of the active ingredient"),
    Field("ingredient.form", "text", "its form: acid, amine salt, potassium salt, ester or as printed"),
    Field("ingredient.ai_percent", "percent", "active ingredient by weight, as printed", unit="%"),
    Field("ingredient.ae_percent", "percent", "acid equivalent by weight", unit="%"),
    Field("ingredient.ai_lb_per_gal", "number", "active ingredient in a gallon", unit="lb/gal"),
    Field("ingredient.ae_lb_per_gal", "number", "acid equivalent in a gallon", unit="lb/gal"),
    Field("ingredient.mode_group", "text", "mode-of-action group printed on the label"),
    Field("formulation.code", "text", "kind of product: SL, EC, RTU, WG or as printed"),
    Field("formulation.other_ingredients_percent", "percent", "other ingredients by weight", unit="%"),
    Field("formulation.density_lb_per_gal", "number", "weight of a gallon of the product", unit="lb/gal"),
    Field("formulation.flash_point_f", "number", "flash point", unit="F"),
    Field("formulation.oil_carrier_needed", "flag", "whether it must be mixed with oil"),
    Field("formulation.has_own_surfactant", "flag", "whether a surfactant is already in it"),
    Field("formulation.ready_to_use", "flag", "whether it is sold ready to use, not to be diluted"),
    Field("hazard.signal_word", "choice", "signal word", among=("DANGER", "WARNING", "CAUTION", "none")),
    Field("hazard.poison_symbol", "flag", "whether skull and crossbones are printed"),
    Field("hazard.category.oral", "choice", "toxicity category if swallowed", among=_CATEGORY),
    Field("hazard.category.dermal", "choice", "toxicity category through the skin", among=_CATEGORY),
    Field("hazard.category.inhalation", "choice", "toxicity category if breathed in", among=_CATEGORY),
    Field("hazard.category.eye", "choice", "category of eye irritation", among=_CATEGORY),
    Field("hazard.category.skin", "choice", "category of skin irritation", among=_CATEGORY),
    Field("hazard.category.sensitizer", "flag", "whether it can cause skin allergy"),
    Field("hazard.sds_signal_word", "text", "signal word of the safety data sheet, which is another scheme"),
    Field("hazard.child_warning", "flag", "whether KEEP OUT OF REACH OF CHILDREN is printed"),
    Field("hazard.domestic_animal_note", "text", "what it says of domestic animals"),
    Field("hazard.first_aid.swallowed", "text", "first aid if swallowed"),
    Field("hazard.first_aid.skin", "text", "first aid if on skin or clothing"),
    Field("hazard.first_aid.eyes", "text", "first aid if in eyes"),
    Field("hazard.first_aid.inhaled", "text", "first aid if breathed in"),
    Field("hazard.first_aid.emergency_phone", "text", "emergency telephone number printed on the label"),
    Field("entry.wps_box", "flag", "whether there is an Agricultural Use Requirements box", "true"),
    Field("entry.rei_hours", "number", "hours nobody may enter after treatment", "higher", unit="h"),
    Field("entry.non_wps_entry", "text", "entry words of the Non-Agricultural Use Requirements box"),
    Field("entry.tell_and_post", "flag", "whether people must be told and signs posted", "true"),
    Field("ppe.mixing", "texts", "wear to mix and load, item by item", "more"),
    Field("ppe.applying", "texts", "wear to apply, item by item", "more"),
    Field("ppe.cleaning", "texts", "wear to clean equipment, item by item", "more"),
    Field("ppe.early_entry", "texts", "wear to enter early, item by item", "more"),
    Field("ppe.glove_types", "texts", "glove materials named, any one of which will do", "fewer"),
    Field("ppe.respirator", "text", "respirator to wear, or none"),
    Field("site", "tables", "the places it may be used, a block each", "fewer"),
    Field("site.words", "text", "the place as printed"),
    Field("site.class", "choice", "which class of place that is", among=SITE_CLASSES),
    Field("site.allowed", "flag", "whether the label allows use there", "false"),
    Field("pests.only_listed", "flag", "whether use on plants not listed is forbidden", "true"),
    Field("pests.listed", "texts", "plants it names as controlled", "fewer"),
    Field("methods.only_listed", "flag", "whether only the methods on the label may be used", "true"),
    Field("methods.prohibited", "texts", "methods it forbids", "more"),
    Field("method.carrier", "choices", "what it may be mixed with", "fewer", among=("none", "water", "oil")),
    Field("method.concentration.low", "percent", "weakest strength given", "higher", unit="% v/v"),
    Field("method.concentration.high", "percent", "strongest strength given", "lower", unit="% v/v"),
    Field("method.concentration.unit", "choice", "unit of both strengths", among=("percent v/v",)),
    Field("method.less_than_low_forbidden", "flag", "whether a weaker mix than that is forbidden", "true"),
    Field("method.dose.amount", "number", "most mix in one place, the figure", "lower", methods=_CUTS),
    Field("method.dose.unit", "choice", "most mix in one place, the unit", among=("mL", "fl oz"), methods=_CUTS),
    Field("method.dose.per", "choice", "what that place is", among=("cut", "stump", "stem", "in dbh"), methods=_CUTS),
    Field("method.dose.cuts_per_in_dbh", "number", "cuts for each inch of stem diameter", methods=("hack_squirt",)),
    Field(
        "method.max_minutes_after_cut",
        "number",
        "longest time between cut and treatment",
        "lower",
        unit="min",
        methods=("cut_stump", "vine_cut"),
    ),
    Field("method.stem_diameter_in.low", "number", "thinnest stem this method is for", "higher", unit="in"),
    Field("method.stem_diameter_in.high", "number", "thickest stem this method is for", "lower", unit="in"),
    Field("method.season_exclude", "texts", "times of the year it leaves out", "more"),
    Field(
        "method.spray_volume_gal_per_acre.low",
        "number",
        "least spray on an acre",
        "higher",
        unit="gal/acre",
        methods=_SPRAYED,
    ),
    Field(
        "method.spray_volume_gal_per_acre.high",
        "number",
        "most spray on an acre",
        "lower",
        unit="gal/acre",
        methods=_SPRAYED,
    ),
    Field("method.coverage", "text", "how wet, in its words", methods=("foliar", "basal_bark", "thinline")),
    Field("method.max_target_height_ft", "number", "tallest plant to spray", "lower", unit="ft", methods=("foliar",)),
    Field("limits.basis", "choice", "what its rates count", among=("product", "ai", "ae")),
    Field("limits.per_application.amount", "number", "most on an acre in one treatment, the figure", "lower"),
    Field("limits.per_application.unit", "choice", "most on an acre in one treatment, the unit", among=_RATE),
    Field("limits.per_year.amount", "number", "most on an acre in a year, the figure", "lower"),
    Field("limits.per_year.unit", "choice", "most on an acre in a year, the unit", among=_RATE),
    Field("limits.per_year.window", "choice", "what it calls a year", among=("calendar year", "12 months", "season")),
    Field("limits.max_applications_per_year", "count", "most treatments in a year", "lower"),
    Field("limits.min_days_between", "count", "fewest days between treatments", "higher", unit="day"),
    Field("limits.area_basis", "choice", "which acre its rates count", among=("treated_acre", "site_acre")),
    Field("limits.dilution_set_by_label", "flag", "whether it demands one definite dilution", "true"),
    Field(
        "limits.deviation_forbidden",
        "choices",
        "lower figures it forbids",
        "more",
        among=("lower_dose", "lower_concentration", "lower_frequency"),
    ),
    Field("weather.wind_mph.low", "number", "least wind to spray in", "higher", unit="mph"),
    Field("weather.wind_mph.high", "number", "most wind to spray in", "lower", unit="mph"),
    Field("weather.air_temp_f.low", "number", "coldest air to treat in", "higher", unit="F"),
    Field("weather.air_temp_f.high", "number", "hottest air to treat in", "lower", unit="F"),
    Field("weather.rain_free_hours", "number", "hours without rain it needs afterwards", "higher", unit="h"),
    Field("weather.no_rain_forecast_hours", "number", "hours for which no rain may be forecast", "higher", unit="h"),
    Field("weather.inversion_forbidden", "flag", "whether use in a temperature inversion is forbidden", "true"),
    Field("weather.droplet_min", "choice", "finest droplets allowed", "first", among=_DROPLETS),
    Field("weather.release_height_max_in", "number", "greatest height to release spray at", "lower", unit="in"),
    Field("weather.soil_states_forbidden", "texts", "states of the ground in which it forbids use", "more"),
    Field("weather.foliage_state", "text", "the state leaves must be in"),
    Field(
        "water.direct_to_water",
        "choice",
        "whether it may reach water",
        "first",
        among=("prohibited", "edge_only", "allowed"),
    ),
    Field("water.buffers_ft", "distances", "distances to keep when treating", "more", unit="ft"),
    Field("water.mixing_setback_ft", "distances", "distances to keep when mixing", "more", unit="ft"),
    Field("water.groundwater_advisory", "flag", "whether it warns of ground water", "true"),
    Field("water.surface_runoff_advisory", "flag", "whether it warns of run-off", "true"),
    Field("water.irrigation_intake_setback_ft", "number", "distance from irrigation intakes", "higher", unit="ft"),
    Field("water.potable_intake_setback_ft", "number", "distance from drinking-water intakes", "higher", unit="ft"),
    Field("water.water_body_fraction_max", "percent", "most of a water body at one time", "lower", unit="%"),
    Field("soil.root_uptake", "flag", "whether roots can take it up from soil", "true"),
    Field("soil.keep_from_desirable_roots_ft", "number", "distance from roots of wanted plants", "higher", unit="ft"),
    Field("soil.sandy_or_shallow_groundwater_caution", "flag", "whether it warns of sand or shallow water", "true"),
    Field("soil.replant_days", "count", "days before planting", "higher", unit="day"),
    Field("soil.residual_months", "number", "months it stays active in soil"),
    Field("food_and_stock.grazing_days.lactating", "count", "days before milk stock may graze", "higher", unit="day"),
    Field("food_and_stock.grazing_days.other", "count", "days before other stock may graze", "higher", unit="day"),
    Field("food_and_stock.hay_cut_days", "count", "days before hay is cut", "higher", unit="day"),
    Field("food_and_stock.slaughter_days", "count", "days off treated ground before slaughter", "higher", unit="day"),
    Field("food_and_stock.pre_harvest_days", "count", "days before nuts, fruit, sap are taken", "higher", unit="day"),
    Field("food_and_stock.firewood_note", "text", "what it says of firewood"),
    Field("food_and_stock.manure_or_compost_note", "text", "what it says of manure and compost"),
    Field("nontarget.species_bulletin_required", "flag", "whether an endangered-species bulletin is needed", "true"),
    Field("nontarget.bulletin_words_page", "count", "page with the bulletin's words"),
    Field("nontarget.pollinator_advisory", "flag", "whether it speaks of pollinators", "true"),
    Field("nontarget.runoff_mitigation_points", "count", "run-off mitigation points demanded", "higher"),
    Field("mixing.order", "texts", "order of mixing"),
    Field("mixing.surfactant.needed", "flag", "whether a surfactant must be added"),
    Field("mixing.surfactant.percent", "percent", "surfactant in the finished mix", unit="%"),
    Field("mixing.surfactant.kinds", "texts", "kinds of surfactant named"),
    Field("mixing.dye_allowed", "flag", "whether a marking dye may be added", "false"),
    Field("mixing.tank_mix_forbidden", "texts", "partners it forbids in the mix", "more"),
    Field("mixing.tank_mix_allowed_named", "texts", "partners it names as allowed", "fewer"),
    Field("mixing.water_quality_note", "text", "what it says of the water"),
    Field("mixing.mixture_storage_hours", "number", "hours a mix may be kept", "lower", unit="h"),
    Field("mixing.metal_forbidden", "texts", "metals that must not touch it", "more"),
    Field("mixing.metered_gloves_note", "text", "what it says of gloves that meter the mix"),
    Field("storage.temp_f.low", "number", "coldest place to store it in", "higher", unit="F"),
    Field("storage.temp_f.high", "number", "hottest place to store it in", "lower", unit="F"),
    Field("storage.away_from", "texts", "what to store it away from", "more"),
    Field("storage.container_kind", "text", "kind of container"),
    Field("storage.rinse", "text", "how to rinse the empty container"),
    Field("storage.disposal_text_page", "count", "page with the words on disposal"),
    Field("transport.dot_class", "text", "transport class, from the safety data sheet"),
    Field("transport.packing_group", "text", "packing group"),
    Field("transport.reportable_quantity_lb", "number", "spill that must be reported", "lower", unit="lb"),
)

FIELDS: Mapping[str, Field] = MappingProxyType({row.path: row for row in _ROWS})


def fields_of(method: str) -> tuple[str, ...]:
    """Return the paths a method's block can hold, without the leading `method.`."""
    return tuple(
        path.removeprefix("method.") for path, row in FIELDS.items() if row.in_method and row.belongs_to(method)
    )
