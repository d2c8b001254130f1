"""The words for ways: the verb and the rest of the instruction, when to turn to the fallback.

The texts stand with the languages of the reference, under method, verb, rest and trigger; English where none is asked.
"""

from __future__ import annotations

from rootcollar.choose.option import Way
from rootcollar.kernel.tongue import Tongue
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import load

__all__ = ["instruction", "method_in_words", "mix_words", "trigger", "way_words"]

_ENGLISH = "en"


def instruction(way: Way, tongue: Tongue | None = None) -> tuple[str, str]:
    """Return the verb of an instruction and the rest of its sentence, without the mix."""
    recipe, method = way.visit.recipe, way.visit.method
    if method == "cut_stump" and recipe is not None and recipe.carrier == "oil":
        method = "cut_stump_oil"  # oil goes through the bark too
    return _in(tongue).say(f"verb.{method}"), _in(tongue).say(f"rest.{method}")


def trigger(way: Way, tongue: Tongue | None = None) -> str:
    """Return the sign to turn to another way."""
    return _in(tongue).say(f"trigger.{way.visit.method}")


def method_in_words(way: Way, tongue: Tongue | None = None) -> str:
    """Return a way's method in a few words."""
    return _in(tongue).say(f"method.{way.visit.method}")


def mix_words(recipe: Recipe, product: str, tongue: Tongue | None = None) -> str:
    """Return what is in a mix: "triclopyr ester 4 lb ae/gal EC, 20 % in oil" or "..., undiluted", a partner by key."""
    if recipe.carrier == "none":
        return _in(tongue).say("mix.undiluted", product=product)
    carrier = _in(tongue).say(f"carrier.{recipe.carrier}")
    words = _in(tongue).say("mix.diluted", product=product, percent=f"{recipe.strength_pct:.3g}", carrier=carrier)
    other = recipe.partner
    return f"{words} + {other.strength_pct:.3g} % {other.key}" if other else words


def way_words(way: Way, tongue: Tongue | None = None) -> str:
    """Return a way in a few words: method, ingredient, strength and carrier."""
    words, recipe = method_in_words(way, tongue), way.visit.recipe
    if recipe is None:
        return words
    return _in(tongue).say("mix.way", way=words, mix=mix_words(recipe, recipe.ingredient, tongue))


def _in(tongue: Tongue | None) -> Tongue:
    return tongue or load().tongues[_ENGLISH]
