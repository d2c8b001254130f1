"""Facts: everything the sources say of one plant, ingredient, formulation, way of working, topic or source."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.kernel.sources import Cited, Mark, Source
from rootcollar.reference import (
    Figure,
    Formulation,
    Ingredient,
    MethodFacts,
    Reference,
    Span,
    Species,
    figures,
    find_formulation,
    find_ingredient,
    find_method,
    find_species,
)

__all__ = ["Fact", "Listing", "Page", "contents", "look_up", "value_words"]


_CODE = re.compile(r"(?<=[a-z])_(?=[a-z])")  # the joint in a word of the vocabulary: no_kill
_STRENGTH = re.compile(r"strength: ([^;]+); strength unit: pct_vv")
_SHELVES = ("figures", "more")  # fields that only hold other names


@dataclass(frozen=True, slots=True)
class Fact:
    """One figure: what it is of, its value as it stands and in words, what it holds for, who says so."""

    group: str
    name: str
    figure: Figure
    words: str


@dataclass(frozen=True, slots=True)
class Page:
    """All facts of one thing, and the sources they rest on, in the order they are first met."""

    kind: str
    key: str
    title: str
    about: tuple[str, ...]
    facts: tuple[Fact, ...]
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class Listing:
    """What there is to look up of one kind: (key, title) pairs."""

    kind: str
    entries: tuple[tuple[str, str], ...]


def contents(reference: Reference) -> Outcome[tuple[Listing, ...]]:
    """Return everything that can be looked up, kind by kind."""
    return Outcome(
        (
            Listing("species", tuple((key, one.common_name) for key, one in reference.species.items())),
            Listing("ingredient", tuple((key, str(one.name.value)) for key, one in reference.ingredients.items())),
            Listing("formulation", tuple((key, one.words) for key, one in reference.formulations.items())),
            Listing("method", tuple((key, one.title) for key, one in reference.methods.items())),
            Listing("mixing", tuple((topic, topic.replace("_", " ")) for topic in reference.mixing)),
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
    for find in (_species, _ingredient, _formulation, _method):
        try:
            pages.append(find(name, reference))
        except NotFound as missing:
            near += missing.near
    pages += [make(key, reference) for key, make in _exact(name, reference)]
    if not pages and near:
        raise NotFound("fact", name, near=tuple(dict.fromkeys(near)))
    if not pages:
        raise BadInput(Fault(found=repr(name), allowed="a name or key that `rootcollar facts` lists"))
    return Outcome(tuple(pages))


def value_words(figure: Figure) -> str:
    """Return the value with its unit as a person writes it: "1–2 years", "at least 5 cm", "yes"."""
    value = figure.value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(_spaced(one) for one in value)
    if isinstance(value, str):
        return _spaced(value)
    if not figure.unit and isinstance(value, float | int) and value == int(value):
        return f"{value:.0f}"  # a number that names something, or a count
    unit = figure.unit if figure.unit.startswith("%") else f" {figure.unit}"
    return f"{_span_words(value) if isinstance(value, Span) else _number(value)}{unit}".strip()


def _spaced(word: str) -> str:
    return word if " " in word else word.replace("_", " ")


def _number(value: float) -> str:
    return f"{Decimal(f'{value:.6g}'):,f}"


def _span_words(span: Span) -> str:
    ends = tuple(None if end is None else _number(end) for end in (span.low, span.high))
    match ends:
        case None, None:
            around = ""
        case None, high:
            around = f"up to {high}"
        case low, None:
            around = f"at least {low}"
        case low, high:
            around = f"{low}–{high}" if low != high else str(low)
    if span.best is None:
        return around
    return f"{_number(span.best)} ({around})" if around else _number(span.best)


def _species(name: str, reference: Reference) -> Page:
    one: Species = find_species(name, reference)
    also = ", ".join((*one.other_names, *one.synonyms))
    about = (f"{one.family}, {one.growth_form}", f"also: {also}" if also else "", one.name_note)
    told = {"": one, "kill a visit": tuple(row for row in reference.kill if row.species == one.key)}
    return _page("species", one.key, f"{one.common_name} ({one.scientific_name})", about, told, reference)


def _ingredient(name: str, reference: Reference) -> Page:
    one: Ingredient = find_ingredient(name, reference)
    return _page("ingredient", one.key, str(one.name.value), (), one, reference)


def _formulation(name: str, reference: Reference) -> Page:
    one: Formulation = find_formulation(name, reference)
    carried = ", ".join(one.carriers)
    about = (f"{one.ingredient}, {one.form}, {one.type}", f"goes in: {carried}", "No label, and permits nothing.")
    return _page("formulation", one.key, one.words, about, one, reference)


def _method(name: str, reference: Reference) -> Page:
    one: MethodFacts = find_method(name, reference)
    told = {
        "": one,
        "coverage": {row.words: row.ml_per_cm2 for row in reference.coverage.values() if one.key in row.methods},
        "kill a visit": tuple(row for row in reference.kill if row.method == one.key),
        "minutes a stem": tuple(row for row in reference.labour if row.method == one.key),
    }
    habits = (f"Practice of the trade: {row.words}" for row in reference.practice.values() if one.key in row.methods)
    return _page("method", one.key, one.title, (one.words, *habits), told, reference)


def _exact(name: str, reference: Reference) -> Iterator[tuple[str, Callable[[str, Reference], Page]]]:
    word = "_".join(name.split()).casefold()
    yield from ((word, _mixing) for _ in range(word in reference.mixing))
    yield from ((word, _practice) for _ in range(word in reference.practice))
    yield from ((key, _source) for key in reference.sources if key.casefold() == name.strip().casefold())


def _mixing(topic: str, reference: Reference) -> Page:
    return _page("mixing", topic, topic.replace("_", " "), (), reference.mixing[topic], reference)


def _practice(key: str, reference: Reference) -> Page:
    one = reference.practice[key]
    habit = Cited(one.words, "", "practice", Mark.PRACTICE)
    return _page("practice", key, key.replace("_", " "), (), {"": (habit, *one.figures)}, reference)


def _source(key: str, reference: Reference) -> Page:
    """Return a source and everything that rests on it."""
    shelves = (reference.species, reference.ingredients, reference.formulations, reference.methods, reference.mixing)
    facts = [
        Fact(thing, f"{fact.group} {fact.name}".strip(), fact.figure, fact.words)
        for shelf in shelves
        for thing, one in shelf.items()
        for fact in _facts(one)
        if fact.figure.source == key
    ]
    return Page("source", key, key, (), tuple(facts), (reference.sources[key],))


def _page(kind: str, key: str, title: str, about: Sequence[str], thing: object, reference: Reference) -> Page:
    shelves = thing if isinstance(thing, dict) else {"": thing}
    facts = tuple(fact for group, one in shelves.items() for fact in _facts(one, group))
    cited = dict.fromkeys(fact.figure.source for fact in facts)
    told = tuple(line for line in about if line)
    return Page(kind, key, title, told, facts, tuple(reference.sources[source] for source in cited))


def _facts(thing: object, group: str = "") -> Iterator[Fact]:
    """Yield every fact in a thing, grouped by the first word of its path unless a group is given."""
    if isinstance(thing, dict):
        yield from (Fact(group, name, figure, value_words(figure)) for name, figure in thing.items())
        return
    for path, figure in figures(thing):
        words = [one for one in path.replace(".", " ").split() if not one.isdigit() and one not in _SHELVES]
        first, name = (group, " ".join(words)) if group or not words else (words[0], " ".join(words[1:]))
        said = _row_words(value_words(figure), name)
        yield Fact(_spaced(_bare(first, figure.unit)), _spaced(_bare(name, figure.unit)), figure, said)


def _row_words(words: str, name: str) -> str:
    """Return the words of a row without what its name says already, strength and unit side by side."""
    for lead in (f"method: {name}; ", f"name: {name}; ", f"kind: {name}; ", "detail: "):
        words = words.removeprefix(lead)
    return _CODE.sub(" ", _STRENGTH.sub(r"strength: \1 % v/v", words)) if ": " in words else words


def _bare(name: str, unit: str) -> str:
    """Return a name without the unit that it ends in, because the unit stands behind the value."""
    written = "pct" if unit.startswith("%") else unit.casefold().replace("/", "_per_").replace(" ", "_")
    return name.removesuffix(f"_{written}") if written else name
