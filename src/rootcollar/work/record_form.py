"""The record sheet: what to write down, with what is already known filled in."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from rootcollar.choose import Choice, Setting, line_departures
from rootcollar.mix import Recipe, sides
from rootcollar.site import Unit
from rootcollar.work import text
from rootcollar.work.cards import product_words

__all__ = ["record_fields"]


def record_fields(
    setting: Setting, unit: Unit, lines: Sequence[Choice], day: date | None = None
) -> tuple[tuple[str, str], ...]:
    """Return (what, value or nothing to write by hand) for the record of a day, in the order of the work."""
    recipes = list(dict.fromkeys(one.recipe for one in lines if one.recipe is not None))
    products = list(dict.fromkeys(one for recipe in recipes for one in sides(recipe)))
    sheets = [setting.sheet(one) for one in dict.fromkeys(one.product for one in products)]
    species = dict.fromkeys(setting.reference.species[one.stand.species].common_name for one in lines)
    methods = dict.fromkeys(one.way.visit.method.replace("_", " ") for one in lines)
    return (
        ("Property and unit", f"{setting.ground.name}, {unit.name}"),
        ("State, county", ", ".join(one for one in (setting.ground.state, setting.ground.county) if one)),
        ("Permission by", unit.permission.by if unit.permission else ""),
        ("Date", day.isoformat() if day else ""),
        ("Start and end", ""),
        ("Applicator, licence number", ""),
        ("Supervisor, licence number", ""),
        ("Products", "; ".join(dict.fromkeys(product_words(one, setting) for one in products))),
        ("Registration numbers", "; ".join(str(one.says("identity.epa_reg_no") or "") for one in sheets if one)),
        ("Active ingredients", "; ".join(dict.fromkeys(one.ingredient for one in products))),
        ("Strengths", "; ".join(_strength(one) for one in recipes)),
        ("Departures to record", _departures(lines, setting)),
        ("Total product used", ""),
        ("Total finished mix used", ""),
        ("Area treated, of", text.acres(unit.area_m2 if unit.worked_m2 is None else unit.worked_m2)),
        ("Targets", ", ".join(species)),
        ("Methods", ", ".join(methods)),
        ("Equipment, nozzle", ""),
        ("Wind speed and direction, start / end", ""),
        ("Air temperature, start / end", ""),
        ("Sky, soil, bark or leaves", ""),
        ("Leftover: amount, goes to", ""),
        ("Rinse water goes to", ""),
        ("Entry allowed from", ""),
        ("Anything out of the ordinary", ""),
        ("Signed, date", ""),
    )


def _strength(recipe: Recipe) -> str:
    """How strong a mix is; of two products each with its key."""
    words, other = f"{recipe.strength_pct:.3g} %", recipe.partner
    if other:
        words = f"{words} {recipe.product or recipe.formulation} + {other.strength_pct:.3g} % {other.key}"
    return f"{words} in {recipe.carrier}"


def _departures(lines: Sequence[Choice], setting: Setting) -> str:
    """The lawful departures from a label that the day makes, each once, with the law that lets it."""
    made = dict.fromkeys(f"{words} [{one.law}]" for line in lines for one, words in line_departures(line, setting))
    return "; ".join(made) or "none planned"
