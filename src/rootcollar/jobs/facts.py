"""Facts: everything the sources say of one plant, ingredient, way of working, rule, topic or source."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import get_close_matches

from rootcollar.jobs.facts_ingredient import ingredient_page
from rootcollar.jobs.facts_method import method_page
from rootcollar.jobs.facts_other import (
    conflicts_page,
    emergency_page,
    formulation_page,
    hazards_page,
    mixing_page,
    posting_page,
    practice_page,
    source_page,
    sources_page,
    topic_page,
    units_page,
    weather_page,
)
from rootcollar.jobs.facts_page import Fact, Line, Listing, Page, Section, Seen
from rootcollar.jobs.facts_rules import rule_page, rules_page
from rootcollar.jobs.facts_species import species_page
from rootcollar.jobs.facts_words import spaced, value_words
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.label import NOT_CHECKED, RULES
from rootcollar.reference import Reference

__all__ = ["Fact", "Line", "Listing", "Page", "Section", "Seen", "contents", "look_up", "value_words"]

_WHOLE = {
    "mixing": mixing_page,
    "hazards": hazards_page,
    "hazard": hazards_page,
    "weather": weather_page,
    "emergency": emergency_page,
    "posting": posting_page,
    "sources": sources_page,
    "conflicts": conflicts_page,
    "units": units_page,
}
_TOPICS = ("mixing", "hazard", "weather", "emergency")
_RULES = "rules"
_NEAR = 0.72  # ours: as for the names of plants


def contents(reference: Reference) -> Outcome[tuple[Listing, ...]]:
    """Return everything that can be looked up, kind by kind."""
    rules = (
        *((one.number, one.sentence) for one in RULES.values()),
        *((one.number, one.sentence) for one in NOT_CHECKED),
    )
    return Outcome(
        (
            Listing("species", tuple((key, one.common_name) for key, one in reference.species.items())),
            Listing("ingredient", tuple((key, str(one.name.value)) for key, one in reference.ingredients.items())),
            Listing("formulation", tuple((key, one.words) for key, one in reference.formulations.items())),
            Listing("method", tuple((key, one.title) for key, one in reference.methods.items())),
            Listing("rule", rules),
            *(Listing(kind, tuple((one, spaced(one)) for one in getattr(reference, kind))) for kind in _TOPICS),
            Listing("practice", tuple((key, one.words) for key, one in reference.practice.items())),
            Listing("source", tuple((key, one.cite) for key, one in reference.sources.items())),
        )
    )


def look_up(name: str, reference: Reference) -> Outcome[tuple[Page, ...]]:
    """Return a page for everything of that name.

    Raises NotFound with the near names of every kind, BadInput where none is near.
    """
    pages: list[Page] = []
    near: list[str] = []
    for find in (species_page, ingredient_page, formulation_page, method_page):
        try:
            pages.append(find(name, reference))
        except NotFound as missing:
            near += missing.near
    pages += _others(" ".join(name.split()), reference)
    if pages:
        return Outcome(tuple(pages))
    near += get_close_matches("_".join(name.casefold().split()), _keys(reference), n=3, cutoff=_NEAR)
    if near:
        raise NotFound("fact", name, near=tuple(dict.fromkeys(near)))
    raise BadInput(Fault(found=repr(name), allowed="a name or key that `rootcollar facts` lists"))


def _others(name: str, reference: Reference) -> Iterator[Page]:
    """Yield the pages of exact keys: a whole shelf, a rule or the rules of a word, a topic, a habit, a source."""
    lead, _, rest = name.casefold().partition(" ")
    if lead == _RULES:
        found = rules_page(rest)
        if found is None:
            raise BadInput(
                Fault(found=f"no rule that speaks of {rest!r}", allowed="another word, or `rootcollar facts rules`")
            )
        yield found
    number = rest if lead == "rule" else lead if not rest else ""
    one = rule_page(number) if number else None
    if one:
        yield one
    key = name.casefold().replace(" ", "_")
    if key in _WHOLE:
        yield _WHOLE[key](reference)
        return
    for kind in _TOPICS:
        topics = getattr(reference, kind)
        if key in topics:
            yield topic_page(kind, key, topics[key], reference)
    if key in reference.practice:
        yield practice_page(key, reference)
    yield from (source_page(one, reference) for one in reference.sources if one.casefold() == name.casefold())


def _keys(reference: Reference) -> list[str]:
    topics = (getattr(reference, kind) for kind in _TOPICS)
    shelves = (*topics, reference.practice, reference.sources, _WHOLE, RULES)
    return [_RULES, *(key for shelf in shelves for key in shelf)]
