"""What the fact files hold: nothing lost, nothing without source and mark, nothing cited in vain."""

from __future__ import annotations

import re
from collections import Counter
from datetime import date, timedelta

import pytest

from rootcollar.kernel.days import holds
from rootcollar.kernel.formula import FORMULAS
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference import Reference, Span, figures
from tools.checks import every_formula

ROOMS = (
    "species", "general", "ingredients", "forms", "formulations", "methods", "coverage", "mixing", "hazard", "practice",
    "emergency", "kill", "kill_weights", "labour", "seasons", "posting", "placeholders", "price_usd_per_gal",
    "conflicts", "weather", "walking", "effort", "steps", "holds", "body", "after",
)  # fmt: skip
PSEUDO = {"practice", "ours", "geometry", "definition", "arithmetic"}
INCH_CM = 2.54


def every_figure(facts: Reference) -> list[tuple[str, Cited[object]]]:
    return [(f"{room} {path}", one) for room in ROOMS for path, one in figures(getattr(facts, room))]


def test_57_plants_and_18_ingredients_are_told(facts: Reference) -> None:
    assert len(facts.species) == 57
    assert len(facts.ingredients) == 18
    forms = Counter(one.growth_form for one in facts.species.values())
    assert forms == {"tree": 18, "shrub": 20, "vine": 10, "herb": 6, "grass": 3}


def test_no_row_of_the_plants_was_lost(facts: Reference) -> None:
    """Row counts of the compilation the files were made from."""
    rows = {
        name: sum(len(getattr(one, name)) for one in facts.species.values())
        for name in ("methods", "fails", "efficacy", "look_alikes", "hazards", "status", "symptoms")
    }
    assert rows == {
        "methods": 366, "fails": 118, "efficacy": 37, "look_alikes": 82, "hazards": 35, "status": 10, "symptoms": 9,
    }  # fmt: skip


COUNTED = {
    "species": {Mark.READ: 747, Mark.MEMORY: 391},
    "general": {Mark.READ: 4, Mark.MEMORY: 6},
    "ingredients": {Mark.READ: 303, Mark.RECKONED: 16, Mark.MEMORY: 218},
    "forms": {Mark.RECKONED: 84, Mark.MEMORY: 42},
    "formulations": {Mark.READ: 16, Mark.RECKONED: 66, Mark.MEMORY: 86},
    "methods": {Mark.READ: 308, Mark.PRACTICE: 2, Mark.RECKONED: 15, Mark.OURS: 5, Mark.MEMORY: 28},
    "coverage": {Mark.RECKONED: 2, Mark.OURS: 3, Mark.MEMORY: 1},
    "conflicts": {Mark.READ: 50, Mark.OURS: 29, Mark.MEMORY: 10},
    "practice": {Mark.PRACTICE: 20},
    "kill": {Mark.READ: 68, Mark.OURS: 59},
    "kill_weights": {Mark.OURS: 16},
    "labour": {Mark.OURS: 41},
    "seasons": {Mark.READ: 9, Mark.PRACTICE: 1, Mark.OURS: 5},
    "weather": {Mark.READ: 31, Mark.MEMORY: 4},
    "placeholders": {Mark.OURS: 11},
    "steps": {Mark.READ: 6, Mark.MEMORY: 1},
    "holds": {Mark.READ: 2},
    "body": {Mark.OURS: 3},
    "walking": {Mark.READ: 5, Mark.OURS: 4},
    "effort": {Mark.OURS: 15},
    "price_usd_per_gal": {Mark.OURS: 13},
    "after": {Mark.READ: 4, Mark.RECKONED: 4, Mark.OURS: 10},
}
AT_LEAST = {
    "mixing": {Mark.READ: 124, Mark.RECKONED: 15, Mark.OURS: 4, Mark.MEMORY: 61},
    "hazard": {Mark.READ: 104, Mark.PRACTICE: 3, Mark.OURS: 1, Mark.MEMORY: 62},
}


def marks_of(facts: Reference, shelf: str) -> Counter[Mark]:
    return Counter(one.mark for _, one in figures(getattr(facts, shelf)))


@pytest.mark.parametrize("shelf", sorted(COUNTED))
def test_marks_are_as_many_as_counted(facts: Reference, shelf: str) -> None:
    """Counted when the files were compared with the compilation: a figure lost, added or marked anew shows here."""
    assert marks_of(facts, shelf) == COUNTED[shelf]


@pytest.mark.parametrize("shelf", sorted(AT_LEAST))
def test_no_figure_of_mixing_or_harm_was_lost(facts: Reference, shelf: str) -> None:
    assert marks_of(facts, shelf) >= Counter(AT_LEAST[shelf])


def test_every_shelf_is_counted(facts: Reference) -> None:
    assert {*COUNTED, *AT_LEAST, "emergency", "posting"} == set(ROOMS)


def test_every_conflict_has_sides_and_our_advice(facts: Reference) -> None:
    assert len(facts.conflicts) == 29
    assert all(one.sides and one.advice.mark is Mark.OURS for one in facts.conflicts)
    assert all(one.species or one.ingredients or one.methods for one in facts.conflicts)


def test_figures_lists_every_mark_written_in_the_files(facts: Reference, texts: dict[str, str]) -> None:
    """An independent count: the marks in the texts, against the figures of the loaded values."""
    for folder in ("species", "ingredients", "methods"):
        written = sum(
            len(re.findall(r"\bmark = ", text)) for name, text in texts.items() if name.startswith(f"{folder}/")
        )
        assert len(figures(getattr(facts, folder))) == written


def test_every_source_is_listed_and_every_listed_source_is_used(facts: Reference) -> None:
    used = {one.source for _, one in every_figure(facts)}
    assert used <= set(facts.sources)
    reckoned_by = {FORMULAS[name].source for name in every_formula()}
    assert set(facts.sources) - used - reckoned_by - PSEUDO == set()
    assert all(source.cite for source in facts.sources.values())


def test_a_mark_and_its_source_agree(facts: Reference) -> None:
    for path, one in every_figure(facts):
        if one.mark is Mark.READ:
            assert one.source not in PSEUDO, path
        if one.mark is Mark.PRACTICE:
            assert one.source == "practice", path
        assert (one.mark is Mark.OURS) == (one.source == "ours"), path


def test_every_plant_has_the_facts_choosing_needs(facts: Reference) -> None:
    for key, one in facts.species.items():
        assert one.plants_symbol.value == key.upper()
        assert one.methods, key
        assert all(row.method in facts.methods for row in one.methods), key
        assert all((row.strength is None) == (row.strength_unit == "") for row in one.methods), key
        assert one.common_name and one.scientific_name and one.family


def test_common_names_are_not_shared(facts: Reference) -> None:
    names = [one.common_name for one in facts.species.values()]
    assert len(names) == len(set(names))


def test_windows_are_real_days_and_open_on_their_ends(facts: Reference) -> None:
    windows = [w for one in facts.species.values() for row in one.methods for w in row.windows]
    windows += [w for one in facts.species.values() for row in one.fails for w in row.windows]
    assert len(windows) == 194
    for window in windows:
        first, last = (date(2028, *end) for end in (window.start, window.end))
        assert holds(window, first) and holds(window, last)


def test_a_window_over_new_year_holds_january_and_not_the_days_it_leaves_out(facts: Reference) -> None:
    windows = (w for one in facts.species.values() for row in one.methods for w in row.windows)
    over = [w for w in windows if w.start > w.end]
    assert over
    for window in over:
        assert holds(window, date(2027, 1, 1)) and holds(window, date(2027, 12, 31))
        assert not holds(window, date(2027, *window.end) + timedelta(days=1))
        assert not holds(window, date(2027, *window.start) - timedelta(days=1))


def sizes_in_words_cm(words: str) -> list[float]:
    """Sizes named in words: inches (with fractions) and centimetres, all as centimetres."""
    found = []
    for number, unit in re.findall(r"([\d./]+)(?: to [\d./]+)? (inch|cm|feet)", words):
        over, _, under = number.partition("/")
        scale = {"inch": INCH_CM, "cm": 1.0, "feet": 12 * INCH_CM}[unit]
        found.append(float(over) / float(under or 1) * scale)
    for number, unit in re.findall(r"[\d./]+ to ([\d./]+) (inch|cm)", words):
        found.append(float(number) * (INCH_CM if unit == "inch" else 1.0))
    return found


def test_a_size_limit_in_numbers_is_the_one_in_words(facts: Reference) -> None:
    checked = 0
    for one in facts.species.values():
        for row in one.methods:
            for span, scale in ((row.diameter_cm, 1.0), (row.height_m, 100.0)):
                if span is None:
                    continue
                told = sizes_in_words_cm(f"{row.applies_to} {row.detail}")
                for end in (span.low, span.high):
                    if end is not None:
                        assert any(abs(end * scale - size) <= size / 100 for size in told), (one.key, row.applies_to)
                        checked += 1
    assert checked == 24


def test_every_size_named_in_words_has_its_number(facts: Reference) -> None:
    """Left in words only: the stems of about 5 cm of one trial, which are no limit."""
    missing = {
        row.applies_to
        for one in facts.species.values()
        for row in one.methods
        if sizes_in_words_cm(row.applies_to) and row.diameter_cm is None and row.height_m is None
    }
    assert missing == {"stems of about 5 cm"}


def test_conflicts_stay_side_by_side(facts: Reference) -> None:
    """Common buckthorn seed: 1 to 2 years against 5 to 6 in an older rule; both are kept."""
    spans = [row.value for row in facts.species["rhca3"].seed_bank_years if isinstance(row.value, Span)]
    assert Span(1, 2) in spans and Span(5, 6) in spans


def test_a_row_reads_as_words_with_its_source(facts: Reference) -> None:
    every = figures(facts.species["aial"])
    listed = dict(every)
    assert len(listed) == len(every), "two facts under one label"
    assert listed["root_suckers"].value is True
    words = [str(one.value) for path, one in listed.items() if path.startswith("fails")]
    assert any("multiplies_stems" in line and "psu_qs5" not in line for line in words)


def test_no_text_names_the_notes_it_came_from_or_a_day_of_reading(texts: dict[str, str]) -> None:
    for name, text in texts.items():
        assert not re.search(r"\b\w+\.(md|toml)\b", text), name
        assert name.startswith("tongues/") or not re.search(r"\btoday\b", text), name  # a day sheet is for today
