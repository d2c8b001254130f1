"""From ingredient, form and formulation tables to their dataclasses."""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.reference.products import Form, Formulation, Ingredient
from rootcollar.reference.table import Table

__all__ = ["read_form", "read_formulation", "read_ingredient"]


def read_ingredient(key: str, table: Table) -> Ingredient:
    """Return the ingredient told by the table. Raises ValueError on any key, word or source that is not known."""
    ingredient = Ingredient(
        key=key,
        name=table.cited("name", str),
        group=table.cited("group", str),
        action=table.cited("action", str),
        selectivity=table.cited("selectivity", str),
        spares=table.cited("spares", str),
        harms=table.cited("harms", str),
        soil_activity=table.cited("soil_activity", str),
        root_risk=table.cited("root_risk", str),
        volatility=table.cited("volatility", str),
        over_water=table.cited("over_water", str),
        carriers=table.cited("carriers", tuple),
        form_types=table.cited("form_types", tuple),
        rain_free_h=table.figures("rain_free_h"),
        max_per_acre_year=table.figures("max_per_acre_year"),
        soil_half_life_d=table.figures("soil_half_life_d"),
        koc_ml_per_g=table.figures("koc_ml_per_g"),
        solubility_mg_per_l=table.figures("solubility_mg_per_l"),
        vapour_pressure_mpa=table.figures("vapour_pressure_mpa"),
        fish_lc50_mg_per_l=table.figures("fish_lc50_mg_per_l"),
        reference_dose_mg_per_kg_d=table.figures("reference_dose_mg_per_kg_d"),
        more={name: table.figures(name) for name in table.book.vocab["more"] if table.has(name)},
    )
    table.close()
    for name in ("soil_activity", "root_risk"):
        level = getattr(ingredient, name).value
        if level not in table.book.vocab["level"]:
            raise table.fault(name, f"{level!r} is not a known level")
    return ingredient


def read_form(row: Table) -> Form:
    """Return the form told by the row."""
    return Form(
        ingredient=row.word("ingredient", "ingredient"),
        form=row.text("form"),
        formula=row.cited("formula", str),
        molecular_weight=row.cited("molecular_weight", float),
        ae_factor=row.cited("ae_factor", float),
    )


def read_formulation(row: Table, forms: Mapping[tuple[str, str], Form]) -> Formulation:
    """Return the formulation told by the row, with the acid share of its form."""
    key, ingredient, form = row.text("key"), row.word("ingredient", "ingredient"), row.text("form")
    if (ingredient, form) not in forms:
        raise row.fault("form", f"{form!r} of {ingredient} is not in forms.toml")
    return Formulation(
        key=key,
        words=row.text("words"),
        ingredient=ingredient,
        form=form,
        type=row.word("type", "formulation_type"),
        carriers=row.words("carriers", "carrier"),
        ready_to_use=row.take("ready_to_use", bool),
        some_aquatic=row.cited("some_aquatic", bool),
        percent_ai=row.maybe_cited("percent_ai", float),
        ae_lb_per_gal=row.maybe_cited("ae_lb_per_gal", float),
        ai_lb_per_gal=row.maybe_cited("ai_lb_per_gal", float),
        ae_factor=forms[ingredient, form].ae_factor,
        density_g_per_ml=row.maybe_cited("density_g_per_ml", float),
    )
