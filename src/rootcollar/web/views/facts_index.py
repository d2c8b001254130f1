"""What there is to look up, kind by kind, and what was found."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from rootcollar.jobs.facts import Listing, contents
from rootcollar.jobs.facts_search import Hit, Looked
from rootcollar.reference import load
from rootcollar.web.views.facts import Part, where

__all__ = ["Found", "Shelf", "found", "shelves"]

_SHELVES = {
    "species": ("plants", "Each by its common name; any other name, scientific or PLANTS symbol finds it too."),
    "ingredient": ("ingredients", "What it kills and spares, where it goes, how much a year."),
    "method": ("ways of working", "How it is done, what it killed, what it costs."),
    "formulation": ("formulations", "Generic products, by ingredient and strength. None of them is a label."),
    "rule": ("rules", "What is weighed before anything is called work, and what is not checked."),
    "mixing": ("mixing", "Water, order, rinse, calibration."),
    "hazard": ("hazards", "How poison is classed, where an ingredient goes, what reaches the one who pours."),
    "weather": ("weather", "Wind, air, rain, leaves: what sources say, before any forecast."),
    "emergency": ("when something goes wrong", "Whom to call and what to say."),
    "practice": ("habits of the trade", "What needs no source."),
    "source": ("sources", "Each with its address and all that rests on it."),
}
_WHOLE = {
    "rule": "rules", "mixing": "mixing", "hazard": "hazards", "weather": "weather", "emergency": "emergency",
    "source": "sources",
}  # fmt: skip
_UNLISTED = frozenset({"rule", "source"})  # too many: they have a page of their own
_BY_KEY = frozenset({"practice"})  # a sentence for a title: the key is the shorter name


@dataclass(frozen=True, slots=True)
class Shelf:
    """One kind. whole: the page that has all of it, where there is one; entries: (initial where it changes, name)."""

    anchor: str
    title: str
    words: str
    count: int
    whole: str
    entries: tuple[tuple[str, Part], ...]


@dataclass(frozen=True, slots=True)
class Found:
    """What was found of what was typed: by kind (title, hits with their words), or names that look alike."""

    words: str
    kinds: tuple[tuple[str, tuple[tuple[Part, str], ...]], ...] = ()
    near: tuple[Part, ...] = ()


@lru_cache(maxsize=1)
def shelves() -> tuple[Shelf, ...]:
    """Return every kind of thing there is."""
    return tuple(_shelf(one) for one in contents(load()).value)


def found(looked: Looked) -> Found:
    """Return what was found as it is shown."""
    kinds = dict.fromkeys(one.kind for one in looked.hits)
    return Found(
        looked.words,
        tuple((_SHELVES[kind][0], tuple(_hit(one) for one in looked.hits if one.kind == kind)) for kind in kinds),
        tuple(Part(one, where(one)) for one in looked.near),
    )


def _hit(hit: Hit) -> tuple[Part, str]:
    return Part(hit.title, where(hit.key)), hit.words


def _shelf(one: Listing) -> Shelf:
    title, words = _SHELVES[one.kind]
    listed = () if one.kind in _UNLISTED else one.entries
    named = [(key.replace("_", " ") if one.kind in _BY_KEY else name, key) for key, name in listed]
    entries: list[tuple[str, Part]] = []
    last = ""
    for name, key in sorted(named, key=lambda pair: pair[0].casefold()):
        first = name[:1].upper()
        entries.append((first if first != last else "", Part(name, where(key))))
        last = first
    whole = where(_WHOLE[one.kind]) if one.kind in _WHOLE else ""
    return Shelf(one.kind, title, words, len(one.entries), whole, tuple(entries))
