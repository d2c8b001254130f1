"""Beforehand: the stems and the mix on an acre at which a treatment reaches its label's rates."""

from dataclasses import replace

import pytest

from rootcollar.choose import Choice, Setting, reaches, total_verdicts
from rootcollar.kernel.doubt import sure
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Level
from rootcollar.work import Project
from rootcollar.work.reach_words import reach_words
from tests.choose.hobbin import at, hobbin, plan, setting_of, with_units

ACRE_M2 = 4046.8564224
LINE = (
    "ridge/loma6/2.5-5.1cm"  # base coats of a fifth of a 4 lb ae/gal ester; the label gives 6 lb ae an acre, 8 a year
)


def setting(project: Project | None = None) -> Setting:
    """Return what choosing knows of the demo, or of another property."""
    return setting_of(project or hobbin())


def sure_line(stems: float) -> Choice:
    """Return the line with so many stems and no doubt about its dose."""
    line = at(LINE)
    assert line.option is not None
    each = replace(line.per_stem, mix_ml=line.per_stem.mix_ml[:1])
    return replace(
        line, stand=replace(line.stand, stems=sure(stems)), option=replace(line.option, figures=lambda: each)
    )


def test_the_stems_on_an_acre_are_the_labels_acid_over_the_acid_on_a_stem() -> None:
    """By hand: 6 lb / (4 lb/gal x 0.2) = 7.5 gal of mix on an acre; 8 lb make 10 gal; over the mix on a stem."""
    once, year = reaches([sure_line(10)], setting())[LINE]
    gallons = convert(float(at(LINE).per_stem.mix_ml[0]), "mL", "gal")
    assert once.most.on_acre_ml == pytest.approx(convert(7.5, "gal", "mL"), rel=1e-6)
    assert once.stems_per_acre == pytest.approx(7.5 / gallons, rel=1e-6)
    assert year.stems_per_acre == pytest.approx(10 / gallons, rel=1e-6)
    assert once.worked and once.most.ground_m2 == hobbin().ground.units["ridge"].worked_m2


@pytest.mark.parametrize(("share", "level"), [(0.999, Level.OK), (1.001, Level.STOP)])
def test_at_that_density_the_rule_is_just_about_to_object(share: float, level: Level) -> None:
    once, _ = reaches([sure_line(10)], setting())[LINE]
    worked = hobbin().ground.units["ridge"].worked_m2
    assert once.stems_per_acre is not None and worked is not None
    line = sure_line(once.stems_per_acre * share * worked / ACRE_M2)
    (word,) = [one for one in total_verdicts([line], setting())[LINE] if one.rule == "L12"]
    assert word.level is level


def test_the_sentence_rounds_down_and_says_which_ground_counts() -> None:
    words = reach_words(reaches([sure_line(10)], setting())[LINE])
    assert "1,720 such stems an acre in one treatment, 2,300 in a year; " in words
    assert words.endswith("pour no more than 7.5 gal of this mix on any acre worked")
    nobody = with_units(hobbin(), "ridge", worked_m2=None)
    assert words.replace("worked", "of the unit") == reach_words(reaches([sure_line(10)], setting(nobody))[LINE])


def test_what_cannot_be_reckoned_gives_no_amount_and_says_why() -> None:
    nobody = with_units(hobbin(), "ridge", area_m2=None, worked_m2=None)
    words = reach_words(reaches([sure_line(10)], setting(nobody))[LINE])
    assert "pour" not in words and "size of the unit" in words


def test_lines_without_mix_have_no_such_sentence() -> None:
    found = reaches(plan().choices, setting())
    without = [one.stand.key for one in plan().choices if one.recipe is None]
    assert without and not set(without) & set(found)
