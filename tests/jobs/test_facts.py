"""Facts as a job: values in words a person writes."""

import pytest

from rootcollar.jobs.facts import contents, look_up, value_words
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference import Span, Value, load


@pytest.mark.parametrize(
    ("value", "unit", "words"),
    [
        (True, "", "yes"),
        (False, "", "no"),
        (28573, "", "28573"),
        (3500.0, "seeds", "3,500 seeds"),
        (2100000.0, "mg/L", "2,100,000 mg/L"),
        (0.0000036, "mm Hg", "0.0000036 mm Hg"),
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


def test_a_method_shows_its_coverages_kill_and_minutes() -> None:
    page = look_up("basal bark", load()).value[0]
    assert {"band height", "strength", "coverage", "kill a visit", "minutes a stem"} <= {
        fact.group for fact in page.facts
    }


def test_the_unit_stands_behind_the_value_and_not_in_the_name() -> None:
    groups = {fact.group for fact in look_up("basal_bark", load()).value[0].facts}
    assert not {group for group in groups if group.endswith((" cm", " pct"))}


def test_codes_of_the_data_are_told_in_words() -> None:
    words = [fact.words for fact in look_up("rhca3", load()).value[0].facts]
    assert any("effect: no kill" in one for one in words)
    assert any("strength: 50 to 100 % v/v" in one for one in words)
    assert not any("pct_vv" in one for one in words)


def test_every_kind_of_thing_is_listed() -> None:
    kinds = [listing.kind for listing in contents(load()).value]
    assert kinds == ["species", "ingredient", "formulation", "method", "mixing", "practice", "source"]


def test_near_names_of_all_kinds_are_offered_once() -> None:
    with pytest.raises(NotFound) as missing:
        look_up("triclopir", load())
    assert "triclopyr" in missing.value.near
    assert len(missing.value.near) == len(set(missing.value.near))
    with pytest.raises(BadInput, match="rootcollar facts"):
        look_up("   ", load())
