"""The page of a way of working: how it is done, how much, when, what it did, what it costs, worked examples."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.jobs.facts_examples import example_lines
from rootcollar.jobs.facts_page import DISAGREE, Line, Page, Section, cited, page, sections
from rootcollar.jobs.facts_species import conflict_lines
from rootcollar.jobs.facts_treat import kill_line
from rootcollar.jobs.facts_words import (
    amount_words,
    flat,
    ingredient_words,
    length_words,
    sentence,
    span_words,
    value_words,
    without_size,
)
from rootcollar.kernel.sources import Mark
from rootcollar.reference import Figure, MethodFacts, NamedFigure, Reference, find_method

__all__ = ["PLACES", "TAKEN", "UNTAKEN", "method_page"]

PLACES = {
    "How it is done": (
        "suits", "tool", "cut_form", "cut_depth", "cut_height", "cut_heights", "cut_length_cm", "cut_gap_cm",
        "cut_spacing_cm", "cuts_per_inch", "min_cuts", "cuts_on_small_stems", "cuts_per_stem", "frill",
        "hole_spacing_cm", "hole_width_mm", "hole_depth_mm", "hole_volume_ml", "ring_words", "ring_width_cm",
        "ring_share", "wetted", "side_height_cm", "band_height_cm", "stem_ring", "depth_cm", "walk", "above_wanted_cm",
        "torch_btu_per_h", "flow_gal_per_min", "pressure_psi", "animals_per_ha", "animals_per_acre", "stay_d",
        "goat_days_per_ha",
    ),
    "Strength": (
        "strength_pct", "streamline_strength_pct", "basal_strength_pct", "strength_g_ae_per_l", "strength_g_per_l",
        "strength_lb_per_100_gal", "strength_oz_per_100_gal", "either_ingredient", "carrier_note", "streamline_limit",
    ),
    "How much": (
        "ml_per_cut", "ml_per_inch_dbh", "ml_per_stem", "ml_per_hole_printed", "stems_per_gal", "ml_per_m_crown",
        "dose_g_ai_per_m_crown", "overdose_factor", "load_factor", "nozzle_saving_share", "mix_l_per_ha",
        "spray_volume_gal_per_acre", "spray_per_day_gal", "rate_per_acre", "rate_kg_ae_per_ha",
    ),
    "Sizes and limits": (
        "stem_limit_cm", "best_stem_cm", "height_limit_m", "height_words", "stems_per_acre_limit", "shrubs",
        "regrowth_before_spray",
    ),
    "When, and in what weather": (
        "best_season", "avoid_season", "season_note", "weather_stop", "max_delay_min", "max_delay_words", "rain_free_h",
        "drying_h",
    ),
    "What it does to its neighbours": (
        "root_reach_m", "kin_caution", "lost_share", "side_reach_m", "side_area_m2", "sucker_reach_m",
    ),
    "What makes it fail": ("never_alone", "one_cut", "repeat", "rerooting"),
    "Afterwards": (
        "cover_before_pct", "cover_after_pct", "shows_after", "judge_after", "stand_before_felling_d", "stump_sprouts",
        "background_loss_share",
    ),
    "Work and money": (
        "production_acre_per_h", "production_note", "labour_h_per_acre_per_pct_cover", "labour_h_per_ha_per_pct",
        "hours_note", "product_oz_per_acre_per_pct_cover", "cost_per_stem", "cost_per_acre", "cost_per_basal_area",
        "cost_factor", "cost_inputs", "cheapest_when",
    ),
}  # fmt: skip
TAKEN = {
    "band_height_cm": "this program wets the band of the trade, because the published coverage was measured on it",
    "strength_pct": "this program takes the plant's own source first, then these by mark, at the weaker end, and never "
    "outside the label's range",
    "stem_limit_cm": "this program takes the plant's own source first, then these by mark, newest first",
    "height_limit_m": "this program takes these by mark, newest first, the lower of equals",
    "cuts_per_inch": "this program takes the best mark, then the ingredient's own, then the most; the label goes first",
    "ml_per_cut": "this program takes the best mark, then the ingredient's own, then the larger, up to the label's",
    "ring_width_cm": "this program takes the best mark, then the wider",
    "root_reach_m": "this program takes the longer",
    "hole_spacing_cm": "this program takes the one that holds for any plant",
    "max_delay_min": "none of these is taken: treat at once, and the label's own minutes decide",
    "rain_free_h": "none of these is taken: the label's own hours decide",
}
UNTAKEN = "sources differ; this program reckons with none of them"
_BEST_FIRST = tuple(Mark)


def method_page(name: str, reference: Reference) -> Page:
    """Return the page of a way of working found by name. Raises NotFound with the near ones."""
    one = find_method(name, reference)
    told = {
        "": one,
        "coverage": {row.words: row.ml_per_cm2 for row in reference.coverage.values() if one.key in row.methods},
        "kill a visit": tuple(row for row in reference.kill if row.method == one.key),
        "minutes a stem": tuple(row for row in reference.labour if row.method == one.key),
        "seasons": tuple(row for row in reference.seasons if one.key in row.methods),
    }
    facts = tuple(fact for group, thing in told.items() for fact in flat(thing, group))
    habits = (f"Practice of the trade: {row.words}" for row in reference.practice.values() if one.key in row.methods)
    head = Page("method", one.key, one.title, (one.words, *habits), facts, (), _opening(one, reference))
    return page(head, _told(one, reference), reference)


def _opening(one: MethodFacts, reference: Reference) -> str:
    named = sum(any(row.method == one.key for row in plant.methods) for plant in reference.species.values())
    plants = f"Sources name it for {named} of the {len(reference.species)} plants kept here." if named else ""
    beyond = f"Where it does not fit: {one.beyond_size.replace(': ', ', use ')}." if one.beyond_size else ""
    poured = "" if one.uses_herbicide else "No herbicide."
    return " ".join(part for part in (sentence(one.words), poured, plants, beyond) if part)


def _told(one: MethodFacts, reference: Reference) -> tuple[Section, ...]:
    def place(title: str) -> tuple[str, tuple[Line, ...]]:
        return title, tuple(_figures(PLACES[title], one, reference))

    coverage = tuple(_coverage(one, reference))
    return sections(
        ("Habits of the trade", _habits(one, reference)),
        place("How it is done"),
        place("Strength"),
        ("How much", (*coverage, *_figures(PLACES["How much"], one, reference))),
        place("Sizes and limits"),
        place("When, and in what weather"),
        ("Measured: trials", _trials(one)),
        ("Kill of one visit, as this program starts", _kill(one, reference), "A trial is not a crew: expect less."),
        place("What it does to its neighbours"),
        place("What makes it fail"),
        place("Afterwards"),
        place("Work and money"),
        ("Minutes a stem: guesses until own times", _minutes(one, reference)),
        ("Worked examples", example_lines(one)),
        (DISAGREE, _conflicts(one, reference)),
    )


def _habits(one: MethodFacts, reference: Reference) -> Iterator[Line]:
    for row in reference.practice.values():
        if one.key in row.methods:
            yield Line("", "", row.words, cited(row))


def _figures(names: Sequence[str], one: MethodFacts, reference: Reference) -> Iterator[Line]:
    for name in names:
        rows = [row for row in one.figures if row.name == name]
        if rows:
            yield from _named(name, rows, reference)


def _named(name: str, rows: Sequence[NamedFigure], reference: Reference) -> Iterator[Line]:
    """Yield the rows of one name under it: those that hold for all first, then by ingredient, best marked first."""
    yield Line(reference.vocab["figure"][name].removesuffix(" [cm]").removesuffix(", in words"))
    ordered = sorted(rows, key=lambda row: (row.ingredients, bool(row.species), _BEST_FIRST.index(row.figure.mark)))
    alike: dict[tuple[str, str], list[Figure]] = {}
    for row in ordered:
        alike.setdefault(_told_of(row, reference), []).append(row.figure)
    for (amount, words), figures in alike.items():
        yield Line("", amount, words, cited(*figures))
    amounts = {amount for amount, _ in alike if amount}
    if len(amounts) > 1 and len({row.figure.source for row in rows}) > 1:
        yield Line("", "", TAKEN.get(name, UNTAKEN), ())


def _told_of(row: NamedFigure, reference: Reference) -> tuple[str, str]:
    amount, words = amount_words(row.figure), _bound(row, reference)
    if isinstance(row.figure.value, str | bool | tuple):
        return "", f"{amount} ({words})" if words else amount
    return amount, words


def _bound(row: NamedFigure, reference: Reference) -> str:
    """What a figure holds for, with ingredient, carrier and plant where the words do not name them."""
    who, held = ingredient_words(row.ingredients, reference), row.figure.holds_for
    said = str(row.figure.value) if isinstance(row.figure.value, str) else held
    wet = row.carrier in ("water", "oil") and not isinstance(row.figure.value, str)
    carrier = f"in {row.carrier}" if wet and row.carrier not in held else ""
    missing = who if who and not any(part in said or part in held for part in who.split(" or ")) else ""
    plants = [reference.species[key].common_name for key in row.species if key in reference.species]
    plant = plants[0] if len(plants) == 1 and not _met(plants[0], held) else ""
    return "; ".join(part for part in (f"{missing} {carrier}".strip(), without_size(held), plant) if part)


def _met(plant: str, held: str) -> bool:
    return any(word in held for word in plant.split())


def _coverage(one: MethodFacts, reference: Reference) -> Iterator[Line]:
    if any(one.key in row.methods for row in reference.coverage.values()):
        yield Line("mix on the surface")
    for row in reference.coverage.values():
        if one.key in row.methods:
            span = row.strength_pct
            words = f"{row.words} For {span_words(span)} % in {row.carrier}, {row.nozzle}."
            yield Line("", value_words(row.ml_per_cm2).replace("cm2", "cm²"), words, cited(row.ml_per_cm2))


def _trials(one: MethodFacts) -> Iterator[Line]:
    for row in one.trials:
        when = f", {row.when}" if row.when else ""
        counted = f" ({row.counted})" if row.counted else ""
        yield Line(row.species, "", f"{row.treatment}{when}: {row.result}{counted}", cited(row))


def _kill(one: MethodFacts, reference: Reference) -> Iterator[Line]:
    rows = [row for row in reference.kill if row.method == one.key]
    for row in sorted(rows, key=lambda row: (not row.species, row.species, -(row.share.best or 0))):
        whose = reference.species[row.species].common_name if row.species else f"any {row.growth_form}"
        yield kill_line(row, reference, whose=whose)


def _minutes(one: MethodFacts, reference: Reference) -> Iterator[Line]:
    for row in reference.labour:
        if row.method == one.key:
            yield Line(length_words(row.diameter_cm, "cm"), f"{span_words(row.minutes)} min", "", cited(row))


def _conflicts(one: MethodFacts, reference: Reference) -> Iterator[Line]:
    for row in reference.conflicts:
        if one.key in row.methods:
            yield from conflict_lines(row.about, row.sides, row.advice)
