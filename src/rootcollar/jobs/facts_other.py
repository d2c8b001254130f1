"""Pages of the smaller shelves: formulations, topics of mixing and harm, habits, sources, units, all disagreements."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass
from decimal import Decimal
from functools import cache

from rootcollar.jobs.facts_differ import differing, kind_of, side_by_side
from rootcollar.jobs.facts_page import DISAGREE, Fact, Line, Page, cited, page, sections
from rootcollar.jobs.facts_species import conflict_lines
from rootcollar.jobs.facts_words import flat, sentence, spaced, value_words
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.kernel.units import convert
from rootcollar.kernel.units_table import UNITS, Kind
from rootcollar.reference import Figure, Formulation, NamedFigure, Reference, find_formulation

__all__ = [
    "conflicts_page", "emergency_page", "formulation_page", "hazards_page", "mixing_page", "posting_page",
    "practice_page", "source_page", "sources_page", "topic_page", "units_page", "weather_page",
]  # fmt: skip

_BASES: dict[Kind, tuple[str, str]] = {
    Kind.LENGTH: ("length", "cm"),
    Kind.AREA: ("area", "m2"),
    Kind.VOLUME: ("volume", "mL"),
    Kind.MASS: ("weight", "g"),
    Kind.SPEED: ("speed", "m/s"),
    Kind.VOLUME_RATE: ("volume on ground", "L/ha"),
    Kind.FLOW: ("flow", "L/min"),
    Kind.STRENGTH: ("weight in volume", "g/L"),
}
_RATES = {Kind.VOLUME_RATE: ("fl oz/ac", "qt/ac"), Kind.STRENGTH: ("lb/gal",), Kind.FLOW: ()}
_ALSO_RATES = (("lb/ac", "kg/ha"), ("oz wt/ac", "g/ha"))


def formulation_page(name: str, reference: Reference) -> Page:
    """Return the page of a generic formulation. Raises NotFound with the near ones."""
    one: Formulation = find_formulation(name, reference)
    about = (
        f"{one.ingredient}, {one.form}, {one.type}",
        f"goes in: {', '.join(one.carriers)}",
        "No label, and permits nothing.",
    )
    kind = reference.vocab["formulation_type"][one.type]
    goes = " or ".join({"water": "in water", "oil": "in oil", "none": "as sold"}[key] for key in one.carriers)
    opening = f"{sentence(one.words)} A {kind}; used {goes}. It is no label and permits nothing."
    head = Page("formulation", one.key, one.words, about, tuple(flat(one)), (), opening)
    names = {
        "percent_ai": "active ingredient",
        "ae_lb_per_gal": "acid in a gallon",
        "ai_lb_per_gal": "active in a gallon",
        "ae_factor": "acid share of the form",
        "density_g_per_ml": "density that implies",
        "some_aquatic": "some labels allow water",
    }
    lines = [
        Line(words, value_words(figure), figure.holds_for, cited(figure))
        for name, words in names.items()
        if (figure := getattr(one, name)) is not None
    ]
    return page(head, sections(("Strength", lines)), reference)


def topic_page(kind: str, topic: str, rows: Sequence[NamedFigure], reference: Reference) -> Page:
    """Return the page of one topic of mixing, harm, weather or emergency."""
    head = Page(kind, topic, f"{kind.capitalize()}: {spaced(topic)}", (), tuple(flat(tuple(rows))), ())
    return page(head, sections(("Figures", _topic(rows, reference))), reference)


def mixing_page(reference: Reference) -> Page:
    """Return all topics of mixing on one page."""
    opening = "All that is kept about mixing, topic by topic, in no order of weight. The label in hand decides."
    return _shelf("mixing", "mixing", "Mixing", opening, reference)


def emergency_page(reference: Reference) -> Page:
    """Return all topics of what to do when something goes wrong on one page."""
    opening = "Whom to call and what to say when something goes wrong. The label's own number and words come first."
    return _shelf("emergency", "emergency", "Emergency", opening, reference)


def posting_page(reference: Reference) -> Page:
    """Return what some places ask of signs and notice, place by place."""
    lines = [
        Line(row.place, "", f"{row.who}: {row.sign}; {row.when} (looked at {row.seen_on})", cited(row))
        for row in reference.posting
    ]
    opening = "Examples of what some places ask of signs and notice. Rules change, and most states are not here: ask."
    head = Page("posting", "posting", "Signs and notice", (), tuple(flat(reference.posting)), (), opening)
    return page(head, sections(("By place", lines)), reference)


def hazards_page(reference: Reference) -> Page:
    """Return all topics of harm on one page."""
    opening = (
        "What is kept about harm: how poison is classed, where an ingredient goes, what reaches the one who pours."
    )
    return _shelf("hazard", "hazards", "Hazards", opening, reference)


def weather_page(reference: Reference) -> Page:
    """Return all topics of weather and season on one page."""
    opening = "What sources say of wind, air, rain and leaves. Most comes from field crops; the label goes before it."
    return _shelf("weather", "weather", "Weather", opening, reference)


def _shelf(kind: str, key: str, title: str, opening: str, reference: Reference) -> Page:
    topics = {
        "mixing": reference.mixing, "hazard": reference.hazard, "weather": reference.weather,
        "emergency": reference.emergency,
    }[kind]  # fmt: skip
    facts = tuple(fact for topic, rows in topics.items() for fact in flat(tuple(rows), spaced(topic)))
    told = [(spaced(topic).capitalize(), tuple(_topic(rows, reference))) for topic, rows in topics.items()]
    return page(Page(kind, key, title, (), facts, (), opening), sections(*told), reference)


def _topic(rows: Sequence[NamedFigure], reference: Reference) -> Iterator[Line]:
    """Yield the figures of a topic, those of one name together."""
    for name in dict.fromkeys(row.name for row in rows):
        same = [row.figure for row in rows if row.name == name]
        yield from side_by_side(kind_of(name, _bare(name, same[0])), same, reference)


def _bare(name: str, figure: Figure) -> str:
    written = (
        figure.unit.casefold().replace("/", "_per_").replace(" ", "_").replace("%", "pct").removesuffix("_v_per_v")
    )
    return spaced(name.removesuffix(f"_{written}") if written else name)


def practice_page(key: str, reference: Reference) -> Page:
    """Return the page of a habit of the trade."""
    one = reference.practice[key]
    habit: Cited[object] = Cited(one.words, "", "practice", Mark.PRACTICE)
    facts = tuple(flat((habit, *one.figures)))
    lines = [Line("", value_words(row), row.holds_for, cited(row)) for row in one.figures]
    ways = [reference.methods[method].title for method in one.methods]
    told = sections(
        ("The habit", [Line("", "", one.words, cited(one))]),
        ("Its figures", lines),
        ("Where it is used", [Line("", "", ", ".join(ways))]),
    )
    return page(Page("practice", key, f"Habit of the trade: {spaced(key)}", (), facts, ()), told, reference)


def sources_page(reference: Reference) -> Page:
    """Return every source with what it is."""
    lines = [Line(key, "", one.cite) for key, one in reference.sources.items()]
    opening = f"{len(lines)} sources. Looked up by its key, one shows its address and all that rests on it."
    return Page("sources", "sources", "Sources", (), (), (), opening, sections(("By key", lines)))


def source_page(key: str, reference: Reference) -> Page:
    """Return a source and everything that rests on it, thing by thing."""
    one = reference.sources[key]
    found = _resting(reference).get(key, [])
    facts = tuple(Fact(thing, f"{fact.group} {fact.name}".strip(), fact.figure, fact.words) for thing, fact in found)
    by_thing: dict[str, list[Line]] = {}
    for thing, fact in found:
        name = fact.name or fact.group
        held = f"; {fact.figure.holds_for}" if fact.figure.holds_for else ""
        line = Line(name, "", f"{fact.words}{held}", cited(fact.figure))
        by_thing.setdefault(thing, []).append(line)
    rests = f"{len(facts)} facts rest on it" if len(facts) != 1 else "one fact rests on it"
    opening = " ".join((sentence(one.cite), one.url, sentence(rests) if facts else "No fact here rests on it alone."))
    told = sections(*((thing, lines) for thing, lines in by_thing.items()))
    return Page("source", key, key, (), facts, (one,), opening, told)


@cache
def _resting(reference: Reference) -> dict[str, list[tuple[str, Fact]]]:
    """Return all facts of all shelves by their source, each with the thing it is of."""
    found: dict[str, list[tuple[str, Fact]]] = {}
    for thing, value in _things(reference):
        for fact in flat(value):
            found.setdefault(fact.figure.source, []).append((thing, fact))
    return found


def _things(reference: Reference) -> Iterator[tuple[str, object]]:
    """Yield everything a source can stand behind, with the words it is known by."""
    yield from ((one.common_name, one) for one in reference.species.values())
    yield "all plants", reference.general
    yield from ((str(one.name.value), one) for one in reference.ingredients.values())
    yield from ((one.words, one) for one in reference.formulations.values())
    yield "salts, esters and acids", tuple(reference.forms.values())
    yield from ((one.title, one) for one in reference.methods.values())
    yield from ((f"coverage, {spaced(key)}", one) for key, one in reference.coverage.items())
    yield from ((f"mixing, {spaced(topic)}", rows) for topic, rows in reference.mixing.items())
    yield from ((f"hazard, {spaced(topic)}", rows) for topic, rows in reference.hazard.items())
    yield from ((f"weather, {spaced(topic)}", rows) for topic, rows in reference.weather.items())
    yield from ((f"emergency, {spaced(topic)}", rows) for topic, rows in reference.emergency.items())
    yield "signs and notice", reference.posting
    yield "habits of the trade", tuple(reference.practice.values())
    yield "kill of one visit", reference.kill
    yield "how much a kill counts elsewhere", dict(reference.kill_weights)
    yield "minutes a stem", reference.labour
    yield "walk, slope, thorns, slash and fruit", (dict(reference.walking), dict(reference.effort))
    yield "seasons", reference.seasons
    yield "steps", reference.steps
    yield "holds", reference.holds
    yield "thicknesses by the body", reference.body
    yield "prices and pay to start from", (dict(reference.placeholders), dict(reference.price_usd_per_gal))
    yield "disagreements", reference.conflicts


def conflicts_page(reference: Reference) -> Page:
    """Return every place where sources disagree: practices, then figures, each side with its source."""
    practices = [line for row in reference.conflicts for line in conflict_lines(row.about, row.sides, row.advice)]
    told: list[tuple[str, list[Line]]] = [("Practices", practices)]
    plants = [line for plant in reference.species.values() for line in _of_plant(plant.common_name, plant, reference)]
    told.append(("Figures of plants", plants))
    kinds = [
        line
        for one in reference.ingredients.values()
        for line in _of(str(one.name.value), {**_fields(one), **dict(one.more)}, reference)
    ]
    told.append(("Figures of ingredients", kinds))
    ways = [line for one in reference.methods.values() for line in _of(one.title, _by_name(one.figures), reference)]
    told.append(("Figures of ways of working", ways))
    topics = [
        line for topic, rows in reference.mixing.items() for line in _of(spaced(topic), _by_name(rows), reference)
    ]
    told.append(("Figures of mixing", topics))
    count = sum(not line.words for _, lines in told for line in lines)
    opening = (
        f"{count} places where sources do not say the same. All of it is kept; what is taken goes by mark (read, then "
        "practice, reckoned, ours, memory), then by year, then by care. The label in hand goes before all of it."
    )
    made = sections(*told)
    return page(Page("conflicts", "conflicts", DISAGREE, (), (), (), opening), made, reference)


def _of_plant(title: str, plant: object, reference: Reference) -> Iterator[Line]:
    yield from _of(title, _fields(plant), reference)


def _fields(thing: object) -> dict[str, Sequence[Figure]]:
    """The fields of a thing that hold several figures."""
    assert is_dataclass(thing)
    told = ((each.name, getattr(thing, each.name)) for each in fields(thing))
    return {name: rows for name, rows in told if isinstance(rows, tuple) and rows and isinstance(rows[0], Cited)}


def _by_name(rows: Sequence[NamedFigure]) -> dict[str, Sequence[Figure]]:
    """Figures of one name and one binding: those bound to different things do not disagree."""
    found: dict[str, list[Figure]] = {}
    for row in rows:
        bound = ", ".join((*row.ingredients, *row.species, *([row.carrier] if row.carrier else [])))
        found.setdefault(f"{row.name} ({bound})" if bound else row.name, []).append(row.figure)
    return dict(found)


def _of(title: str, groups: dict[str, Sequence[Figure]], reference: Reference) -> Iterator[Line]:
    for name, rows in groups.items():
        plain = name.split(" (", maxsplit=1)
        known = kind_of(plain[0], name)
        if any(differing(known, rows, reference)):
            bound = f" ({plain[1]}" if len(plain) > 1 else ""
            yield Line(f"{title}: {_bare(plain[0], rows[0])}{bound}")
            for line in side_by_side(known, rows, reference):
                yield Line("", line.amount, line.words, line.seen)


def units_page(reference: Reference) -> Page:
    """Return the exact factors this program turns units with, and what sources print."""
    exact: Cited[object] = Cited("", "", "definition", Mark.MEMORY)
    lines: list[Line] = []
    for kind, (title, base) in _BASES.items():
        units = [*(unit.symbol for unit in UNITS if unit.kind is kind), *_RATES.get(kind, ())]
        lines += [Line(title), *(_factor(one, base) for one in units if one != base)]
    lines += [Line("weight on ground"), *(_factor(one, base) for one, base in _ALSO_RATES)]
    lines += [Line("who says so"), Line("", "", "exact by definition", cited(exact))]
    printed = _topic(reference.mixing["units"], reference)
    opening = (
        "Units are turned with exact factors: an inch is 2.54 cm, a pound 453.59237 g, a US gallon 231 cubic "
        "inches, an acre 43,560 square feet. Ounces of what? is asked; so is a ton."
    )
    head = Page("units", "units", "Units", (), tuple(flat(tuple(reference.mixing["units"]))), (), opening)
    return page(head, sections(("Exact factors", lines), ("As sources print them", printed)), reference)


def _factor(unit: str, base: str) -> Line:
    value = Decimal(f"{convert(1, unit, base):.12g}")
    return Line(f"1 {unit}", f"{value:,f} {base}".replace("m2", "m\u00b2"))
