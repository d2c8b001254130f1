"""Searching the facts: what has a name that begins with each word that was typed, kind by kind."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from rootcollar.jobs.facts import contents, look_up
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.reference import Reference

__all__ = ["Hit", "Looked", "search"]

_BY_SENTENCE = frozenset({"rule", "source", "practice"})  # their key is their name, their title says what they are


@dataclass(frozen=True, slots=True)
class Hit:
    """A thing that fits. words: what else tells it: other names of a plant, the sentence of a rule."""

    kind: str
    key: str
    title: str
    words: str = ""


@dataclass(frozen=True, slots=True)
class Looked:
    """What was found. exact: whether the words are the name of a thing; near: names alike, where nothing fits."""

    words: str
    exact: bool = False
    hits: tuple[Hit, ...] = ()
    near: tuple[str, ...] = ()


def search(words: str, reference: Reference) -> Outcome[Looked]:
    """Return what the words name or begin; where nothing fits the names that look alike, if any do."""
    try:
        pages = look_up(words, reference).value
    except NotFound as missing:
        near = missing.near
    except BadInput:
        near = ()
    else:
        return Outcome(Looked(words, True, tuple(Hit(one.kind, one.key, one.title) for one in pages)))
    starts = [re.compile(rf"\b{re.escape(word)}", re.I) for word in words.split()]
    hits = tuple(hit for hit, names in _all(reference) if starts and all(one.search(names) for one in starts))
    return Outcome(Looked(words, False, hits, () if hits else near))


def _all(reference: Reference) -> Iterator[tuple[Hit, str]]:
    """Yield everything there is, with all its names in one text."""
    for shelf in contents(reference).value:
        for key, title in shelf.entries:
            if shelf.kind == "species":
                plant = reference.species[key]
                also = ", ".join((plant.scientific_name, *plant.other_names, *plant.synonyms))
                yield Hit(shelf.kind, key, title, also), f"{key} {title} {also} {plant.plants_symbol.value}"
            elif shelf.kind in _BY_SENTENCE:
                yield Hit(shelf.kind, key, key.replace("_", " "), title), f"{key} {title}"
            else:
                yield Hit(shelf.kind, key, title), f"{key} {title}"
