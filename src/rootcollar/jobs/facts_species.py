"""The page of a plant, in the order of the job: know it, find it, time it, treat it, look again."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from rootcollar.jobs.facts_differ import kind_of, side_by_side
from rootcollar.jobs.facts_page import DISAGREE, Line, Page, Section, cited, page, sections
from rootcollar.jobs.facts_treat import SEEDLINGS, fail_lines, kill_lines, limit_lines, season_lines, way_lines
from rootcollar.jobs.facts_words import (
    flat,
    ingredient_words,
    joined,
    method_words,
    sentence,
    spaced,
    span_words,
    value_words,
)
from rootcollar.kernel.days import months, name_months
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference import Figure, LookAlike, Reference, Species, SymptomRow, find_species

__all__ = ["species_page"]

_WOODY = frozenset({"tree", "shrub", "vine"})
_SHARP = frozenset({"thorns", "spiny_leaves", "brittle_wood", "hanging_load"})
_WORSE = frozenset({"multiplies_stems", "spreads", "unsafe"})
_CALENDAR = (
    "A letter is a month named for the way, small where only memory names it. Read it by leaf-out, bloom and leaf-fall."
)
_YEARS = {
    "seed_bank_years": "seed in the ground",
    "first_fruit_years": "first fruit",
    "seeds_per_year": "seed a year",
    "dispersal_distance_m": "seed travels",
    "followup_years": "come back for",
}


def species_page(name: str, reference: Reference) -> Page:
    """Return the page of a plant found by any of its names. Raises NotFound with the near ones."""
    one = find_species(name, reference)
    also = ", ".join((*one.other_names, *one.synonyms))
    about = (f"{one.family}, {one.growth_form}", f"also: {also}" if also else "", one.name_note)
    kill = tuple(row for row in reference.kill if row.species == one.key)
    facts = (*flat(one), *flat(kill, "kill a visit"))
    head = Page(
        "species",
        one.key,
        f"{one.common_name} ({one.scientific_name})",
        tuple(line for line in about if line),
        facts,
        (),
        _opening(one, reference),
    )
    return page(head, _told(one, reference), reference)


def _told(one: Species, reference: Reference) -> tuple[Section, ...]:
    worse = [row for row in one.fails if row.effect in _WORSE]
    weak = [row for row in one.fails if row.effect not in _WORSE]
    calendar = tuple(season_lines(one, reference))
    return sections(
        ("How to know it", _know(one)),
        ("Where it grows and how it spreads", _where(one, reference)),
        ("When", calendar, _CALENDAR),
        ("What works, as the sources say", way_lines(one, reference)),
        ("Measured kill: trial, not crew", kill_lines(one, reference)),
        ("What makes it worse: never", fail_lines(worse, reference)),
        ("What fails or is weak", fail_lines(weak, reference)),
        ("Sizes and limits", limit_lines(one, reference)),
        ("Wood, roots and thorns", _wood(one, reference)),
        ("After treatment", _after(one, reference)),
        ("Hazards and law", _hazards(one, reference)),
        (DISAGREE, _conflicts(one, reference)),
    )


def _opening(one: Species, reference: Reference) -> str:
    vocab = reference.vocab
    also = f", also called {joined(one.other_names, 'or')}" if one.other_names else ""
    told = [
        f"{one.common_name} ({one.scientific_name}) is {_a(one.growth_form)} of the family {one.family}{also}",
        one.name_note,
        f"{vocab['leaf_habit'][one.leaf.value]}{_maybe(one.leaf)}; "
        f"{vocab['stem_form'][one.stem.value]}{_maybe(one.stem)}",
        _sprouts(one),
        _spread(one, reference),
        _seed(one),
    ]
    return " ".join(sentence(line) for line in told if line)


def _a(word: str) -> str:
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"


def _maybe(*figures: Cited[Any]) -> str:
    return " (from memory)" if any(one.mark is Mark.MEMORY for one in figures) else ""


def _sprouts(one: Species) -> str:
    stump = (
        "cut, it sprouts again from what is left" if one.resprouts_from_stump.value else "a cut stump does not sprout"
    )
    told = f"{stump}{_maybe(one.resprouts_from_stump)}"
    if one.root_suckers is None:
        return told
    but = "and" if one.root_suckers.value is one.resprouts_from_stump.value else "but"
    roots = "its roots send up suckers" if one.root_suckers.value else "its roots send up no suckers"
    return f"{told}, {but} {roots}{_maybe(one.root_suckers)}"


def _spread(one: Species, reference: Reference) -> str:
    agents = joined([reference.vocab["agent"][key] for key in one.dispersal.value])
    wet = "; it also stands near water" + _maybe(one.near_water) if one.near_water and one.near_water.value else ""
    return f"it spreads by {agents}{_maybe(one.dispersal)}{wet}"


def _seed(one: Species) -> str:
    spans = [row for row in one.seed_bank_years if not isinstance(row.value, str)]
    if not spans:
        return ""
    more = "; sources differ, see below" if len(one.seed_bank_years) > 1 else ""
    return f"seed keeps in the ground {value_words(spans[0])}{_maybe(spans[0])}{more}"


def _know(one: Species) -> Iterator[Line]:
    yield Line("leaf", "", _with(one.leaf), cited(one.leaf))
    yield Line("stem", "", _with(one.stem), cited(one.stem))
    yield Line("PLANTS symbol", "", one.plants_symbol.value, cited(one.plants_symbol))
    if one.itis_tsn:
        yield Line("ITIS number", "", f"{one.itis_tsn.value}", cited(one.itis_tsn))
    for row in one.look_alikes:
        seen = cited(row)
        if row.tell_mark is not row.mark:
            seen = (*seen, *cited(Cited("", "", row.source, row.tell_mark, locator="(telling sign)")))
        yield Line("not to be taken for", "", f"{row.name} ({row.scientific_name}): {row.tell}; {_shown(row)}", seen)


def _shown(row: LookAlike) -> str:
    """Return when the telling sign can be seen, or that nobody has said."""
    seen = frozenset[int]().union(*(months(window) for window in row.shows))
    return f"to be seen {name_months(seen)} ({row.shows_mark})" if seen else "when that can be seen is not known"


def _with(figure: Cited[Any]) -> str:
    words = value_words(figure)
    return f"{words}: {figure.holds_for}" if figure.holds_for else words


def _where(one: Species, reference: Reference) -> Iterator[Line]:
    agents = joined([reference.vocab["agent"][key] for key in one.dispersal.value])
    more = f"; {one.dispersal.holds_for}" if one.dispersal.holds_for else ""
    yield Line("spreads by", "", f"{agents}{more}", cited(one.dispersal))
    if one.near_water:
        yield Line("near water", "", _with(one.near_water), cited(one.near_water))
    if one.native_range:
        yield Line("native in", "", _with(one.native_range), cited(one.native_range))
    yield from _years(("dispersal_distance_m", "seeds_per_year"), one, reference)


def _years(names: Iterable[str], one: Species, reference: Reference) -> Iterator[Line]:
    for name in names:
        yield from side_by_side(kind_of(name, _YEARS[name]), getattr(one, name), reference)


def _wood(one: Species, reference: Reference) -> Iterator[Line]:
    yield Line(
        "stump",
        "",
        _told_of("sprouts again", "does not sprout", one.resprouts_from_stump),
        cited(one.resprouts_from_stump),
    )
    if one.root_suckers:
        yield Line(
            "roots", "", _told_of("send up suckers", "send up no suckers", one.root_suckers), cited(one.root_suckers)
        )
    if one.sucker_distance_m:
        row = one.sucker_distance_m
        yield Line(
            "suckers come up", "", f"{value_words(row)} from the parent; {row.holds_for}".rstrip("; "), cited(row)
        )
    for hazard in one.hazards:
        if hazard.kind in _SHARP:
            yield Line(reference.vocab["hazard"][hazard.kind], "", hazard.detail, cited(hazard))


def _told_of(yes: str, no: str, figure: Cited[bool]) -> str:
    return f"{yes if figure.value else no}{'; ' + figure.holds_for if figure.holds_for else ''}"


def _after(one: Species, reference: Reference) -> Iterator[Line]:
    methods = {row.method for row in one.methods}
    used = {key for row in one.methods for key in row.ingredients}
    general = [
        row for row in reference.general.symptoms if row.method in methods and (used & set(row.ingredients) or not used)
    ]
    if one.growth_form not in _WOODY:
        general = [row for row in general if not row.note.startswith("woody")]
    yield from (_symptom(row, reference) for row in (*one.symptoms, *general))
    for row in reference.general.judge_kill:
        if _judged(row.applies_to, one):
            yield Line(
                "judge the kill", f"{row.min_months:g} months", f"at least; {row.note} ({row.applies_to})", cited(row)
            )
    for seedlings in one.efficacy:
        if seedlings.outcome == SEEDLINGS:
            months = f" after {span_words(seedlings.months)} months" if seedlings.months else ""
            yield Line("seedlings up", f"{100 * seedlings.value:.3g} %", f"{seedlings.note}{months}", cited(seedlings))
    yield from _years(("seed_bank_years", "first_fruit_years", "followup_years"), one, reference)


def _judged(applies_to: str, one: Species) -> bool:
    suckers = bool(one.root_suckers and one.root_suckers.value)
    if "sucker" in applies_to:
        return one.growth_form == "tree" and suckers
    return one.growth_form in _WOODY


def _symptom(row: SymptomRow, reference: Reference) -> Line:
    who = ingredient_words(row.ingredients, reference)
    whose = f"{method_words(row.method, reference)}, {who}" if who else method_words(row.method, reference)
    return Line("signs", f"{span_words(row.days)} days" if row.days else "", f"{row.note} ({whose})", cited(row))


def _hazards(one: Species, reference: Reference) -> Iterator[Line]:
    for row in one.hazards:
        if row.kind not in _SHARP:
            yield Line(reference.vocab["hazard"][row.kind], "", row.detail, cited(row))
    for listed in one.status:
        yield Line("listed", "", f"{listed.where}: {spaced(listed.listing)}", cited(listed))


def _conflicts(one: Species, reference: Reference) -> Iterator[Line]:
    for row in reference.conflicts:
        if one.key in row.species:
            yield from conflict_lines(row.about.removeprefix(f"{one.common_name}: "), row.sides, row.advice)


def conflict_lines(about: str, sides: Sequence[Figure], advice: Cited[str]) -> Iterator[Line]:
    """Yield a conflict: what it is about, each side, and what we advise."""
    yield Line(about)
    yield from (Line("", "", value_words(side), cited(side)) for side in sides)
    yield Line("", "", f"our advice: {advice.value}", cited(advice))
