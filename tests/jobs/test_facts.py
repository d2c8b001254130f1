"""Facts as a job: nothing lost between data and page, sources side by side, words instead of keys."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

from rootcollar.jobs.facts import Page, contents, look_up, value_words
from rootcollar.jobs.facts_differ import differing, kind_of
from rootcollar.jobs.facts_method import PLACES, TAKEN, UNTAKEN
from rootcollar.jobs.facts_other import source_page
from rootcollar.jobs.facts_words import amount_words, calendar, length_words, strip, without_size
from rootcollar.kernel.days import read_window
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.label import NOT_CHECKED, PATHS, RULES
from rootcollar.label.examples import EXAMPLES
from rootcollar.reference import Figure, Span, Value, best, figures, load

SOURCE = Path(__file__).resolve().parents[2] / "src" / "rootcollar"
THINGS = [
    *(("species", key) for key in load().species),
    *(("ingredients", key) for key in load().ingredients),
    *(("methods", key) for key in load().methods),
    *(("formulations", key) for key in load().formulations),
    *(("mixing", key) for key in load().mixing if key != "units"),
    *(("hazard", key) for key in load().hazard),
    *(("weather", key) for key in load().weather),
    *(("emergency", key) for key in load().emergency),
]


def page(name: str) -> Page:
    return look_up(name, load()).value[0]


def lines(one: Page) -> list[str]:
    return [f"{line.name} {line.amount} {line.words}" for section in one.sections for line in section.lines]


@pytest.mark.parametrize(
    ("value", "unit", "words"),
    [
        (True, "", "yes"),
        (False, "", "no"),
        (28573, "", "28573"),
        (3500.0, "seeds", "3,500 seeds"),
        (2100000.0, "mg/L", "2,100,000 mg/L"),
        (0.0000036, "mm Hg", "0.0000036 mm Hg"),
        (1.44e-12, "atm m3/mol", "1.44e-12 atm m3/mol"),
        (20.0, "% v/v", "20% v/v"),
        (Span(1, 2), "years", "1–2 years"),
        (Span(2, None), "years", "at least 2 years"),
        (Span(None, 15.24), "cm", "up to 15.24 cm"),
        (Span(0.031, 0.078, 0.045), "mL/cm2", "0.045 (0.031–0.078) mL/cm2"),
        (Span(None, None, 0.156), "mL/cm2", "0.156 mL/cm2"),
        (Span(30.48, 30.48), "cm", "30.48 cm"),
        ("late_deciduous", "", "late deciduous"),
        (("bird", "soil_moved"), "", "bird, soil moved"),
    ],
)
def test_a_value_is_told_as_people_write_it(value: Value, unit: str, words: str) -> None:
    assert value_words(Cited(value, unit, "SRS-131", Mark.READ)) == words


@pytest.mark.parametrize(
    ("value", "unit", "words"),
    [
        (Span(None, 15.24), "cm", "up to 6 in (15.2 cm)"),
        (Span(None, 15), "cm", "up to 6 in (15 cm)"),
        (Span(2, 4), "cm", "0.79–1.6 in (2–4 cm)"),
        (2.44, "m", "8 ft (2.44 m)"),
        (0.48, "share", "48 %"),
        (0.2, "share of the radius", "20 % of the radius"),
        (Span(0.04, 0.11), "share", "4–11 %"),
        (0.0, "min", "at once"),
        (30.0, "min", "30 min"),
        (5760.0, "min", "96 h"),
        (1 / 3, "cuts per inch of stem diameter", "1 for each 3 in"),
        (1.0, "incisions per inch of DBH", "1 an inch"),
    ],
)
def test_an_amount_on_a_page_is_told_in_the_units_of_both_worlds(value: Value, unit: str, words: str) -> None:
    assert amount_words(Cited(value, unit, "SRS-131", Mark.READ)) == words


def test_a_length_is_never_further_off_than_rounding() -> None:
    for tenths in range(10, 4000, 7):
        inches = float(re.split(r"[ –]", length_words(tenths / 10, "cm"))[0].replace(",", ""))
        assert inches * 2.54 == pytest.approx(tenths / 10, rel=0.05)


def test_what_the_amount_says_is_not_said_again() -> None:
    assert without_size("12 inches, smooth bark") == "smooth bark"
    assert without_size("under 6 inches") == ""
    assert without_size("at once; any, general") == "any, general"
    assert without_size("3 inches between centres") == "3 inches between centres"


def test_twelve_letters_tell_the_year_and_small_ones_what_is_only_remembered() -> None:
    year = calendar([read_window("12-15", "02-28")], [read_window("02-01", "03-31")])
    assert strip(year) == "J F m . . . . . . . . D"


@pytest.mark.parametrize(("shelf", "key"), THINGS)
def test_every_figure_of_a_thing_stands_on_its_page_with_source_and_mark(shelf: str, key: str) -> None:
    thing = getattr(load(), shelf)[key]
    shown = look_up(key, load()).value
    told = Counter(
        (seen.source, seen.mark)
        for one in shown
        for section in one.sections
        for line in section.lines
        for seen in line.seen
    )
    wanted = Counter((figure.source, figure.mark) for _, figure in figures(thing))
    assert set(told) >= set(wanted)
    if shelf in ("mixing", "hazard", "weather", "emergency"):
        said = " ".join(text for one in shown for text in lines(one))
        assert all(
            amount_words(figure).split(";")[0][:40] in said for _, figure in figures(thing) if shelf != "species"
        )
    assert {fact.figure.source for one in shown for fact in one.facts} >= {source for source, _ in wanted}


def test_every_row_of_a_plant_is_a_line_of_its_page() -> None:
    for key, one in load().species.items():
        told = " ".join(lines(page(key)))
        rows = (
            *(row.detail for row in one.methods),
            *(row.why for row in one.fails),
            *(row.tell for row in one.look_alikes),
        )
        assert all(words in told for words in (*rows, *(row.detail for row in one.hazards))), key
        assert all(f"{100 * row.value:.3g} %" in told for row in one.efficacy), key


def test_every_figure_name_of_a_way_has_its_place_on_the_page() -> None:
    placed = [name for names in PLACES.values() for name in names]
    assert sorted(placed) == sorted(load().vocab["figure"])
    assert len(placed) == len(set(placed))


def test_what_a_page_calls_unused_is_named_nowhere_in_the_rooms_that_reckon() -> None:
    rooms = ("choose", "dose", "mix", "label", "work", "hazard", "survey")
    code = "".join(path.read_text(encoding="utf-8") for room in rooms for path in (SOURCE / room).rglob("*.py"))
    code += "".join(path.read_text(encoding="utf-8") for path in (SOURCE / "jobs").glob("figure*.py"))
    for one in load().methods.values():
        heads = [line for section in page(one.key).sections for line in section.lines]
        for place, line in enumerate(heads):
            if line.words == UNTAKEN:
                title = next(head.name for head in reversed(heads[:place]) if head.name)
                names = [name for name, words in load().vocab["figure"].items() if words.split(" [")[0] == title]
                assert names, title
                assert not any(f'"{name}"' in code for name in names if name not in TAKEN), names


def test_codes_of_the_data_are_told_in_words() -> None:
    known = {*load().sources, *load().formulations}
    for _, key in THINGS:
        for one in look_up(key, load()).value:
            for line in (*lines(one), one.opening):
                keys = [word for word in re.findall(r"[a-z]+_[a-z0-9_]+", line) if word not in known]
                assert not keys, (key, line)
                assert "None" not in line, (key, line)


def test_a_plants_page_goes_in_the_order_of_the_job() -> None:
    titles = [section.title for section in page("rhca3").sections]
    assert titles[:4] == [
        "How to know it",
        "Where it grows and how it spreads",
        "When",
        "What works, as the sources say",
    ]
    assert (
        titles.index("What makes it worse: never") < titles.index("Sizes and limits") < titles.index("After treatment")
    )


def test_a_plant_is_introduced_in_sentences_and_what_is_remembered_says_so() -> None:
    opening = page("rhca3").opening
    assert opening.startswith("Common buckthorn (Rhamnus cathartica) is a shrub of the family Rhamnaceae")
    assert "its roots send up no suckers (from memory)" in opening
    assert all(page(key).opening.endswith(".") for key in load().species)


def cited(value: Value, source: str, mark: Mark = Mark.READ, holds_for: str = "") -> Figure:
    return Cited(value, "d", source, mark, holds_for)


def test_where_sources_differ_the_page_takes_what_the_chooser_takes_and_says_why() -> None:
    rows = load().ingredients["glyphosate"].soil_half_life_d
    kind = kind_of("soil_half_life_d", "half gone in soil")
    (said,) = differing(kind, rows, load())
    chosen = best([row for row in rows if isinstance(row.value, float)], cautious="high")
    assert f"taken here: {amount_words(chosen)} [{chosen.source}]" in said
    assert "47 d against 44 d against 96.4 d against 30 d" in said
    assert "the newest of those read in a source (2020)" in said


def test_one_source_or_one_value_or_two_things_are_no_conflict() -> None:
    kind = kind_of("koc_ml_per_g", "binding")
    assert not list(differing(kind, [cited(1.0, "ARS-PPT"), cited(2.0, "ARS-PPT")], load()))
    assert not list(differing(kind, [cited(1.0, "ARS-PPT"), cited(1.0, "TNC-GLY")], load()))
    salt_and_ester = [cited(20.0, "ARS-PPT", holds_for="amine salt"), cited(780.0, "TNC-TRI", holds_for="ester")]
    assert not list(differing(kind, salt_and_ester, load()))
    assert list(differing(kind, [cited(1.0, "ARS-PPT"), cited(2.0, "TNC-GLY")], load()))


def test_a_printed_slip_is_shown_and_never_taken() -> None:
    told = lines(page("units"))
    assert any("3,800 mL" in line and "not to be copied" in line for line in told)
    assert not any("taken here" in line for line in told)


def test_the_leaching_class_of_an_ingredient_is_that_of_its_own_figures() -> None:
    """NPIC: extremely low below 0, high above 2.8; picloram scores 5.46, glyphosate below 0."""
    assert any(line.startswith("leaching") and "extremely low" in line for line in lines(page("glyphosate")))
    assert any(line.startswith("leaching") and "high: score" in line for line in lines(page("picloram")))
    assert not any(line.startswith("leaching") for line in lines(page("clethodim")))


def test_worked_examples_put_the_published_figures_to_use() -> None:
    """Ward 2011: 25 h for a hectare at 10 %; 31 % to 0.5 % is 98 % less. Kochenderfer 2001: 0.91 a square foot."""
    assert any("25 h" in line for line in lines(page("flame")))
    assert any("98.4 %" in line for line in lines(page("flame")))
    assert any("7.94 USD" in line for line in lines(page("hack_squirt")))
    assert any("375–525" in line for line in lines(page("graze")))
    assert any("4.38" in line or "4.375" in line for line in lines(page("foliar")))


def test_rules_can_be_read_one_by_one_and_by_a_word() -> None:
    every = page("rules")
    numbers = {line.name for section in every.sections for line in section.lines}
    assert numbers == {*RULES, *(one.number for one in NOT_CHECKED)}
    assert "L37a" in " ".join(lines(page("rules water")))
    assert len(page("rules water").sections[0].lines) < len(every.sections[0].lines)
    with pytest.raises(BadInput, match="another word"):
        look_up("rules zzz", load())


@pytest.mark.parametrize("number", list(RULES))
def test_a_rules_page_tells_all_it_reads_and_how_it_was_seen(number: str) -> None:
    known, said = RULES[number], " ".join(lines(page(number.lower())))
    assert known.sentence in said
    assert known.basis.seen.value in said
    assert all(PATHS[path].words.casefold() in said.casefold() for path in known.paths)
    assert ("can stop" in said) is (known.cap.name == "STOP")
    assert EXAMPLES[number].passes.words in said and EXAMPLES[number].fails.words in said


def test_a_rule_nobody_weighs_says_so() -> None:
    for one in NOT_CHECKED:
        assert "does not check it" in page(one.number).opening


def test_every_figure_of_every_shelf_rests_on_a_source_that_shows_it() -> None:
    shelves = (
        "species", "general", "ingredients", "forms", "formulations", "methods", "coverage", "mixing", "hazard",
        "weather", "emergency", "posting", "practice", "kill", "kill_weights", "labour", "seasons", "placeholders",
        "price_usd_per_gal", "conflicts", "walking", "effort", "steps", "holds", "body",
    )  # fmt: skip
    wanted = Counter(one.source for shelf in shelves for _, one in figures(getattr(load(), shelf)))
    told = {key: source_page(key, load()) for key in wanted}
    assert {key: len(one.facts) for key, one in told.items()} == dict(wanted)
    assert all(one.sections and one.opening for one in told.values())
    assert "1.28 fl oz" in " ".join(lines(page("uiuc06")))


def test_every_disagreement_shows_its_sides_with_their_sources() -> None:
    one = page("conflicts")
    told = lines(one)
    assert all(any(row.about in line for line in told) for row in load().conflicts)
    assert all(row.sides for row in load().conflicts)
    figures_ = [line for section in one.sections[1:] for line in section.lines]
    assert sum("sources differ" in line.words for line in figures_) >= 15
    assert any("glyphosate: soil half life" in line.name for line in figures_)


def test_every_kind_of_thing_is_listed() -> None:
    kinds = [listing.kind for listing in contents(load()).value]
    assert kinds == [
        "species", "ingredient", "formulation", "method", "rule", "mixing", "hazard", "weather", "emergency",
        "practice", "source",
    ]  # fmt: skip


def test_everything_listed_can_be_looked_up() -> None:
    for listing in contents(load()).value:
        for key, _ in listing.entries[:: 10 if listing.kind == "source" else 1]:
            assert any(one.kind in (listing.kind, "units") for one in look_up(key, load()).value), key


def test_near_names_of_all_kinds_are_offered_once() -> None:
    with pytest.raises(NotFound) as missing:
        look_up("triclopir", load())
    assert "triclopyr" in missing.value.near
    assert len(missing.value.near) == len(set(missing.value.near))
    with pytest.raises(NotFound) as missing:
        look_up("conflict", load())
    assert "conflicts" in missing.value.near
    with pytest.raises(BadInput, match="rootcollar facts"):
        look_up("   ", load())
