"""The words for ways: the verb and the rest of the instruction, when to turn to the fallback.

The texts stand with the languages of the reference, under method, verb, rest and trigger; English where none is asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from rootcollar.choose.option import Way
from rootcollar.choose.steps import StepDays
from rootcollar.kernel.tongue import Tongue
from rootcollar.kernel.units import convert, show
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import StepRow, load

__all__ = [
    "date_words", "instruction", "method_alone", "method_in_words", "mix_words", "span_words", "trigger", "wait_words",
    "way_words",
]  # fmt: skip

_ENGLISH = "en"


def instruction(way: Way, tongue: Tongue | None = None) -> tuple[str, str]:
    """Return the verb of an instruction and the rest of its sentence, without the mix."""
    if way.step is not None and len(way.treatment) > 1:
        return _of_steps(way, way.step, tongue)
    recipe, method = way.visit.recipe, way.visit.method
    if method == "cut_stump" and recipe is not None and recipe.carrier == "oil":
        method = "cut_stump_oil"  # oil goes through the bark too
    return _in(tongue).say(f"verb.{method}"), _in(tongue).say(f"rest.{method}")


def _of_steps(way: Way, row: StepRow, tongue: Tongue | None) -> tuple[str, str]:
    """Return the instruction of both visits: what is done, how, how long to wait and how high it then stands."""
    words = _in(tongue)
    verb = words.say("step.verb", first=words.say(f"verb.{row.first}"), second=method_alone(way, tongue))
    how = words.say(f"step.{row.where or 'low'}")
    return verb, words.say("step.rest", first=how, wait=wait_words(row, tongue), second=words.say(f"rest.{row.second}"))


def wait_words(row: StepRow, tongue: Tongue | None = None) -> str:
    """Return the condition of the second step: the least days, and how high the regrowth stands."""
    low, high = row.regrowth_m.value.low, row.regrowth_m.value.high
    ends = [show(convert(one, "m", "in"), "in", 2) for one in (low, high) if one is not None]
    height = _in(tongue).say(
        "step.height", height="–".join([*(one.removesuffix(" in") for one in ends[:-1]), ends[-1]])
    )
    days, most = row.least_days, row.most_days
    if not days:
        return height
    key = "step.wait" if most is None else "step.wait_most"
    return _in(tongue).say(key, days=days, most=most or "", height=height)


def date_words(found: StepDays, tongue: Tongue | None = None) -> str:
    """Return the days of both steps: the first from and to, the second from and to after it, and in the next year."""
    first = span_words((found.first,), tongue)
    on, second = found.first[0].isoformat(), span_words(found.second, tongue)
    return _in(tongue).say("step.days", first=first, on=on, second=second)


def span_words(spans: Sequence[tuple[date, date]], tongue: Tongue | None = None) -> str:
    """Return spans of days: "2027-07-31 to 2027-09-30, or ..."; nothing for none."""
    words = _in(tongue)
    each = [words.say("step.span", start=start.isoformat(), end=end.isoformat()) for start, end in spans]
    return words.say("step.or").join(each)


def trigger(way: Way, tongue: Tongue | None = None) -> str:
    """Return the sign to turn to another way."""
    return _in(tongue).say(f"trigger.{way.visit.method}")


def method_in_words(way: Way, tongue: Tongue | None = None) -> str:
    """Return a way's method in a few words; of two steps both."""
    second = method_alone(way, tongue)
    if way.step is None or len(way.treatment) == 1:
        return second
    return _in(tongue).say("step.method", first=_in(tongue).say(f"step.{way.step.first}"), second=second)


def method_alone(way: Way, tongue: Tongue | None = None) -> str:
    """Return the method of a way's last visit in a few words."""
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
