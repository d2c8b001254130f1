"""The words for ways: the verb and the rest of the instruction, when to turn to the fallback."""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.choose.option import Way
from rootcollar.mix.recipe import Recipe

__all__ = ["METHOD_WORDS", "TRIGGERS", "instruction", "mix_words", "way_words"]

METHOD_WORDS: Mapping[str, str] = {
    "hack_squirt": "spaced cuts filled",
    "cut_stump": "cut and treat the stump",
    "basal_bark": "coat the base",
    "foliar": "wet the leaves",
    "vine_cut": "cut the vine and treat the cut",
    "pull": "pull",
    "girdle": "girdle",
    "mow": "mow",
    "cut": "cut only",
}

_INSTRUCTIONS: Mapping[str, tuple[str, str]] = {
    "hack_squirt": ("Fill spaced cuts", "a cut's width apart, into the sapwood, filled at once"),
    "cut_stump": ("Cut low and treat the stump", "at once, the fresh outer ring"),
    "basal_bark": ("Coat the base", "lowest 12 in, all sides, to the root collar"),
    "foliar": ("Wet the leaves", "to wet, not dripping, below head height"),
    "vine_cut": ("Cut the vine and treat the rooted cut", "at once; leave the top to die where it hangs"),
    "pull": ("Pull", "root and all, in damp soil; shake off the soil, hang the roots up"),
    "girdle": ("Girdle", "a full ring of inner bark off"),
    "mow": ("Mow", "again as often as the sources say"),
    "cut": ("Cut", "low"),
}

TRIGGERS: Mapping[str, str] = {
    "basal_bark": "bark wet, icy or flooded",
    "hack_squirt": "hollow, too thin, or sap runs out",
    "cut_stump": "no treater at once, or no room to fell",
    "foliar": "wind, wet or colouring leaves, too tall",
    "vine_cut": "too many vines to find every rooted cut",
    "pull": "roots break, or the soil is hard or frozen",
    "girdle": "it sprouts below the ring",
    "mow": "stems too thick to mow",
    "cut": "it sprouts",
}


def instruction(way: Way) -> tuple[str, str]:
    """Return the verb of an instruction and the rest of its sentence, without the mix."""
    verb, rest = _INSTRUCTIONS[way.visit.method]
    recipe = way.visit.recipe
    if way.visit.method == "cut_stump" and recipe is not None and recipe.carrier == "oil":
        rest = "the cut face, the bark below it and the root collar"
    return verb, rest


def mix_words(recipe: Recipe, product: str) -> str:
    """Return what is in a mix: "triclopyr ester 4 lb ae/gal EC, 20 % in oil" or "..., undiluted"."""
    if recipe.carrier == "none":
        return f"{product}, undiluted"
    return f"{product}, {recipe.strength_pct:.3g} % in {recipe.carrier}"


def way_words(way: Way) -> str:
    """Return a way in a few words: method, ingredient, strength and carrier."""
    words = METHOD_WORDS.get(way.visit.method, way.visit.method.replace("_", " "))
    recipe = way.visit.recipe
    return words if recipe is None else f"{words}, {mix_words(recipe, recipe.ingredient)}"
