"""The page of an ingredient: what it kills and spares, where it goes, how much a year, in what it is sold."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from rootcollar.hazard import gus_score, leaching_word
from rootcollar.jobs.facts_differ import kind_of, side_by_side
from rootcollar.jobs.facts_page import DISAGREE, Line, Page, Section, cited, page, sections
from rootcollar.jobs.facts_species import conflict_lines
from rootcollar.jobs.facts_words import flat, joined, method_words, number, sentence, spaced, value_words
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference import Figure, Ingredient, Reference, Span, find_ingredient, named, numbers

__all__ = ["ingredient_page"]

_WORKS_ON = {
    "broad": "nearly everything green",
    "broadleaf_woody": "broad-leaved and woody plants",
    "grass_only": "grasses only",
}
_IN_SOIL = {
    "none": "does not work through the soil",
    "low": "works little through the soil",
    "medium": "works through the soil for a while",
    "high": "works through the soil, and long",
}
_RISK = {"none": "no risk", "low": "a low risk", "medium": "some risk", "high": "a high risk"}
_WORDS = {
    "soil_half_life_d": "half gone in soil",
    "koc_ml_per_g": "binding to soil (Koc)",
    "solubility_mg_per_l": "dissolves in water",
    "vapour_pressure_mpa": "vapour pressure",
    "fish_lc50_mg_per_l": "kills half the fish",
    "rain_free_h": "dry hours after it",
    "max_per_acre_year": "most in a year",
    "rate_per_acre": "one treatment",
    "reference_dose_mg_per_kg_d": "reference dose",
    "water_half_life_d": "half gone in water",
    "foliar_half_life_d": "half gone on leaves",
    "washoff_fraction": "washed off by rain",
    "pka": "acid strength (pKa)",
    "gus": "leaching score (GUS)",
    "kf": "sorption (Kf)",
    "henry": "air over water (Henry)",
    "granule_release": "released by granules",
    "movement": "found to move",
    "table_row": "row in its table",
    "temperature_note": "temperature",
    "sorption_note": "what changes binding",
    "residue_note": "hay, manure, compost",
    "aquatic_note": "caution",
    "ester_volatility": "esters",
    "heat_note": "heat",
    "eye": "eyes",
    "oil_mixable": "mixes with oil",
    "restricted_use": "licence",
    "forest_buffer": "one forest keeps off",
    "rights_of_way_note": "rights-of-way",
    "vapour_pressure_outlier": "not to be used",
}
_ROOMS = {
    "soil": ("residue_note", "sorption_note", "movement", "granule_release"),
    "water": ("fish_lc50_mg_per_l", "aquatic_note", "forest_buffer", "water_half_life_d"),
    "weather": ("rain_free_h", "heat_note", "ester_volatility"),
    "amounts": ("max_per_acre_year", "rate_per_acre", "rights_of_way_note", "restricted_use"),
    "people": ("eye", "reference_dose_mg_per_kg_d"),
    "fate": (
        "soil_half_life_d", "koc_ml_per_g", "gus", "solubility_mg_per_l", "vapour_pressure_mpa",
        "vapour_pressure_outlier", "pka", "kf", "henry", "foliar_half_life_d", "washoff_fraction", "temperature_note",
        "oil_mixable", "table_row",
    ),
}  # fmt: skip


def ingredient_page(name: str, reference: Reference) -> Page:
    """Return the page of an ingredient found by name. Raises NotFound with the near ones."""
    one = find_ingredient(name, reference)
    head = Page("ingredient", one.key, str(one.name.value), (), tuple(flat(one)), (), _opening(one, reference))
    return page(head, _told(one, reference), reference)


def _told(one: Ingredient, reference: Reference) -> tuple[Section, ...]:
    def rows(room: str) -> Iterator[Line]:
        return _fields(_ROOMS[room], one, reference)

    return sections(
        ("What it kills and spares", _reach(one)),
        ("In soil and through roots", (*_soil(one, reference), *rows("soil"))),
        ("Near water", (_said("over water", one.over_water), *rows("water"))),
        ("Weather and vapour", (_said("vapour", one.volatility), *rows("weather"))),
        ("How much an acre", rows("amounts")),
        ("People", rows("people")),
        ("How it is sold", _sold(one, reference)),
        ("Strength by way of working", _strengths(one, reference)),
        ("Fate numbers", rows("fate")),
        ("Plants it is named for", _plants(one, reference)),
        (DISAGREE, _conflicts(one, reference)),
    )  # fmt: skip


def _opening(one: Ingredient, reference: Reference) -> str:
    group = str(one.group.value)
    number_ = f"resistance group {group}" if group.isdigit() else f"resistance group: {group}"
    told = [
        f"{one.name.value} {one.action.value}{_maybe(one.action)} ({number_}{_maybe(one.group)})"
        if str(one.action.value).startswith(("blocks", "stops", "holds"))
        else f"{one.name.value} is an {one.action.value}{_maybe(one.action)} ({number_}{_maybe(one.group)})",
        f"it works on {_works_on(one)}{_maybe(one.selectivity)}, and spares {one.spares.value}{_maybe(one.spares)}",
        f"it {_IN_SOIL[one.soil_activity.value]}{_maybe(one.soil_activity)}; neighbours run "
        f"{_RISK[one.root_risk.value]} through their roots{_maybe(one.root_risk)}",
    ]
    plants = sum(any(one.key in row.ingredients for row in plant.methods) for plant in reference.species.values())
    if plants:
        told.append(f"sources name it for {plants} of the {len(reference.species)} plants kept here")
    return " ".join(sentence(line) for line in told)


def _works_on(one: Ingredient) -> str:
    value = str(one.selectivity.value)
    return _WORKS_ON.get(value, spaced(value))


def _maybe(*figures: Cited[Any]) -> str:
    return " (from memory)" if any(one.mark is Mark.MEMORY for one in figures) else ""


def _said(name: str, figure: Cited[str]) -> Line:
    more = f"; {figure.holds_for}" if figure.holds_for else ""
    return Line(name, "", f"{spaced(figure.value)}{more}", cited(figure))


def _soil(one: Ingredient, reference: Reference) -> Iterator[Line]:
    yield _said("in soil", one.soil_activity)
    yield _said("risk through roots", one.root_risk)
    yield from _kin(one, reference)
    yield from _leaching(one, reference)


def _reach(one: Ingredient) -> Iterator[Line]:
    held = f"; {one.selectivity.holds_for}" if one.selectivity.holds_for else ""
    yield Line("works on", "", f"{_works_on(one)}{held}", cited(one.selectivity))
    yield _said("harms", one.harms)
    yield _said("spares", one.spares)
    yield _said("how", one.action)
    yield _said("group", one.group)
    yield Line("name", "", str(one.name.value), cited(one.name))


def _fields(names: Iterable[str], one: Ingredient, reference: Reference) -> Iterator[Line]:
    for name in names:
        rows = one.more.get(name, ()) if name in reference.vocab["more"] else getattr(one, name)
        yield from side_by_side(kind_of(name, _WORDS[name]), rows, reference)


def _kin(one: Ingredient, reference: Reference) -> Iterator[Line]:
    for method in reference.methods.values():
        for row in method.figures:
            if row.name in ("root_reach_m", "kin_caution") and one.key in row.ingredients:
                held = f"; {row.figure.holds_for}" if row.figure.holds_for else ""
                words = f"{value_words(row.figure)}{held} ({method.title})"
                yield Line("seen on neighbours", "", words, cited(row.figure))


def _leaching(one: Ingredient, reference: Reference) -> Iterator[Line]:
    """The class of every pair of half-life and binding that sources give, as a span: one number would be too sure."""
    topic = reference.hazard["leaching"]
    edges = [float(use(row)) for name in ("gus_low", "gus_moderate", "gus_high") for row in numbers(named(topic, name))]
    halves, binding = _ends(one.soil_half_life_d), _ends(one.koc_ml_per_g)
    scores = sorted(gus_score(half, koc) for half in halves for koc in binding)
    if scores:
        low, high = leaching_word(scores[0], edges), leaching_word(scores[-1], edges)
        said = low if low == high else f"{low} to {high}"
        ends = f"{scores[0]:.2f}" if len(scores) == 1 else f"{scores[0]:.2f} to {scores[-1]:.2f}"
        seen = cited(*(row for rows in (one.soil_half_life_d, one.koc_ml_per_g) for row in rows if _ends([row])))
        words = f"{said}: score {ends} over all half-lives and bindings below; it ranks, and knows no drift or roots"
        marked = tuple(dict.fromkeys(one_seen.source for one_seen in seen))
        yield Line("leaching", "", f"{words} (reckoned from {joined(marked)})", cited(*named(topic, "gus_low")))


def _ends(rows: Iterable[Figure]) -> list[float]:
    found: list[float] = []
    for row in rows:
        if "mineralisation" in row.holds_for:
            continue
        if isinstance(row.value, Span):
            found += [end for end in (row.value.low, row.value.high) if end]
        elif isinstance(row.value, float) and row.value > 0:
            found.append(row.value)
    return found


def _sold(one: Ingredient, reference: Reference) -> Iterator[Line]:
    yield Line("mixes with", "", value_words(one.carriers), cited(one.carriers))
    types = [reference.vocab["formulation_type"].get(key, "") for key in one.form_types.value]
    told = [f"{key} ({words})" if words else key for key, words in zip(one.form_types.value, types, strict=True)]
    yield Line("types", "", ", ".join(told), cited(one.form_types))
    for row in reference.formulations.values():
        if row.ingredient == one.key:
            figures = [
                figure for figure in (row.ae_lb_per_gal, row.ai_lb_per_gal, row.percent_ai, row.some_aquatic) if figure
            ]
            wet = "; some labels allow it at water" if row.some_aquatic.value else ""
            weighs = f"; weighs {number(row.density_g_per_ml.value)} g/mL" if row.density_g_per_ml else ""
            share = f"; {100 * row.ae_factor.value:.3g} % of the form is acid" if row.ae_factor.value < 1 else ""
            yield Line("sold as", "", f"{row.words}{share}{weighs}{wet}", cited(*figures))


def _strengths(one: Ingredient, reference: Reference) -> Iterator[Line]:
    for method in reference.methods.values():
        for row in method.figures:
            if (
                row.name in ("strength_pct", "streamline_strength_pct", "basal_strength_pct")
                and one.key in row.ingredients
            ):
                carrier = f"in {row.carrier}; " if row.carrier in ("water", "oil") else ""
                words = f"{carrier}{row.figure.holds_for}"
                yield Line(method_words(method.key, reference), value_words(row.figure), words, cited(row.figure))


def _plants(one: Ingredient, reference: Reference) -> Iterator[Line]:
    by_method: dict[str, list[str]] = {}
    for plant in reference.species.values():
        for method in dict.fromkeys(row.method for row in plant.methods if one.key in row.ingredients):
            by_method.setdefault(method, []).append(plant.common_name)
    for method in reference.vocab["method"]:
        if method in by_method:
            yield Line(method_words(method, reference), "", ", ".join(sorted(by_method[method], key=str.casefold)))


def _conflicts(one: Ingredient, reference: Reference) -> Iterator[Line]:
    for row in reference.conflicts:
        if one.key in row.ingredients:
            yield from conflict_lines(row.about, row.sides, row.advice)
