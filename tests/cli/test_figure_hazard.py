"""Words, strengths, water and rinses: asked as people write, refused in a sentence where it is nonsense."""

from __future__ import annotations

import shlex

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests import draws
from tests.cli.test_figure import answered_first, asked, figure, held_together

FIVE = "--oral III --dermal III --inhalation IV --skin IV"
ANSWERED = [
    f"signal-word {FIVE} --eye I",
    f"signal-word {FIVE} --eye I --label-word danger",
    "signal-word --oral-ld50 '>5000 mg/kg' --dermal-ld50 '2,000 mg/kg bw' --inhalation-lc50 '2.1 mg/L of air'",
    "strength --percent 41 --density '9.76 lb/gal' --says '4 lb ai/gal'",
    "strength --percent 41 --density '1.17 g/mL' --form glyphosate-ipa",
    "strength --percent '44.4% ai' --says '3 lb ae/gal' --form 'triclopyr TEA'",
    "strength --percent '31% ae' --density '9.68 lb/gal' --says '3.00 lb ae/gal'",
    "water --hardness '250 ppm'",
    "water --calcium '60 ppm' --magnesium '25 mg/L' --sodium '30 ppm' --iron '0.3 ppm' --tank '4 gal'",
    "rinse --jug '2.5 gal'",
    "rinse --jug '30 gal' --left '1 qt' --tank '100 gal'",
    "rinse --jug '10 L' --kind pressure",
    "rinse --sprayer '4 gal' --left '8 fl oz'",
]


@pytest.mark.parametrize("words", ANSWERED)
def test_an_answer_has_every_key_and_a_working_that_can_be_redone(words: str) -> None:
    assert held_together(words)


@pytest.mark.parametrize("words", ANSWERED)
def test_the_first_line_is_the_answer_and_what_to_mind_comes_last(words: str) -> None:
    said = answered_first(words)
    assert said.index("\nHow\n") < said.index("\nSources\n") < said.index("\nMind\n")


# Words.


def test_an_eye_alone_makes_danger_without_poison() -> None:
    body = asked(f"signal-word {FIVE} --eye I")
    assert body["says"].startswith("DANGER: the worst route is category I (eye), without Poison")


@pytest.mark.parametrize("typed", ["I", "i", "1", "category I", "Category 1", "tox cat I", "cat. I"])
def test_a_category_is_read_as_people_write_it(typed: str) -> None:
    assert asked(f"signal-word --dermal '{typed}'")["says"].startswith("At least DANGER with Poison and skull")


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("500 mg/kg", 2), ("500mg/kg", 2), ("501 mg/kg bw", 3), (">500 mg/kg", 3), ("> 5,000 mg/kg", 4),
        (">= 500 mg/kg", 2), ("more than 5000 mg/kg body weight", 4), ("5 g/kg", 3), ("50 mg per kg", 1),
    ],
)  # fmt: skip
def test_an_ld50_is_read_as_people_write_it(typed: str, found: int) -> None:
    assert asked(f"signal-word --oral-ld50 '{typed}'")["value"] == found


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        # 40 CFR 156.64: II is WARNING; a sheet that says CAUTION is asked about
        ("--oral III --dermal III --inhalation III --skin III --eye II --label-word CAUTION", 1, "is milder"),
        ("--oral III --dermal III --inhalation III --skin III --eye II --label-word Warning", 0, "can stand"),
        ("--oral III --dermal III --inhalation III --skin III --eye III --label-word DANGER", 1, "more severe"),
        ("--oral III --label-word DANGER", 0, "can stand"),  # four routes not told may be the reason
        ("--oral I --label-word DANGER", 1, "has no Poison beside it"),
        ("--oral I --label-word DANGER-POISON", 0, "can stand"),
        ("--oral IV --dermal IV --inhalation IV --eye IV --skin IV --label-word CAUTION", 0, "can stand"),
        ("--oral IV --dermal IV --inhalation IV --eye IV --skin IV --label-word none", 0, "can stand"),
        # III by the regulation, IV by the agency's practice: no doubt before both say so
        ("--dermal-ld50 '6000 mg/kg' --oral 4 --inhalation 4 --eye 4 --skin 4 --label-word none", 0, "can stand"),
        ("--dermal-ld50 '6000 mg/kg' --oral 4 --inhalation 4 --eye 4 --skin 4 --label-word Caution", 0, "can stand"),
        ("--inhalation-lc50 '1 mg/L' --oral III --dermal III --eye III --skin IV --label-word CAUTION", 0, "can stand"),
        ("--dermal-ld50 '>2000 mg/kg' --label-word none", 0, "can stand"),
    ],
)  # fmt: skip
def test_a_label_word_is_questioned_only_where_no_reading_explains_it(words: str, code: int, says: str) -> None:
    said = figure(f"signal-word {words}")
    assert (said.exit_code, says in " ".join(said.stdout.split())) == (code, True), said.output


# Strengths.


@pytest.mark.parametrize(
    ("words", "code", "head"),
    [
        ("--percent 41 --density '9.76 lb/gal' --says '4 lb ai/gal'", 0, "Fits: "),
        ("--percent 41% --density '9.76 lb per gal' --says '3 lb ae/gal' --form glyphosate-ipa", 0, "Fits: "),
        ("--percent 41 --density 'SG 1.17' --says '480 g ai/L'", 0, "Fits: "),
        ("--percent '31% ae' --density '9.68 lb/gal' --says '4.00 lb ae/gal'", 1, "Does not fit by 33%: "),
        ("--percent 41 --says '3 lb ae/gal' --form glyphosate-ipa-3-sl", 0, "Fits, as far as"),
        ("--percent 14 --says '3 lb ae/gal' --form glyphosate-ipa", 1, "Does not fit: "),
        ("--percent 28.7 --says '2 lb ae/gal' --form imazapyr-ipa", 0, "Hardly fits: "),
        ("--percent 44.4 --says '2.7 lb ae/gal' --form triclopyr-tea", 0, "Hardly fits: "),  # 1.02: light for a salt
        ("--percent 25 --says '2 lb ai/gal' --form hexazinone", 0, "Fits, as far as"),
    ],
)
def test_percent_density_and_strength_fit_or_the_label_is_read_again(words: str, code: int, head: str) -> None:
    said = figure(f"strength {words}")
    assert (said.exit_code, said.stdout.startswith(head)) == (code, True), said.output
    assert ("look at the label again" in " ".join(said.stdout.split())) == (not head.startswith("Fits"))


def test_percent_and_density_alone_make_both_strengths() -> None:
    body = asked("strength --percent 41 --density '9.76 lb/gal' --form glyphosate-ipa")
    assert "4 lb ai/gal" in body["says"] and "2.96 lb ae/gal" in body["says"]


# Water.


@pytest.mark.parametrize(
    "typed",
    ["250 ppm", "250 mg/L", "250 ppm as CaCO3", "250 mg/l CaCO3", "14.604 grains/gal", "14.604 gpg", "14.604 grains"],
)
def test_hardness_is_read_as_reports_write_it(typed: str) -> None:
    assert asked(f"water --hardness '{typed}'")["figures"]["hardness_ppm"] == pytest.approx(250, abs=0.01)


def test_the_equation_is_that_of_its_source_and_labels_stand_beside_it() -> None:
    body = asked(
        "water --calcium '100 ppm' --magnesium '100 ppm' --sodium '100 ppm' --potassium '100 ppm' --iron '100 ppm'"
    )
    assert body["value"] == pytest.approx(100 * (0.002 + 0.005 + 0.009 + 0.014 + 0.042))  # NDSU15
    assert any("8.5 to 17 lb" in line and "4 to 6 lb" in line for line in body["details"])
    assert "only where the label allows it" in body["says"]


def test_what_labels_say_for_a_tank_is_weighed_dry() -> None:
    body = asked("water --hardness '250 ppm' --tank '100 gal'")
    assert any("8.5 lb (3.9 kg) to 17 lb (7.7 kg)" in line for line in body["details"])


# Rinses.


def test_a_jug_of_2_5_gallons_takes_1_875_off_the_tank() -> None:
    body = asked("rinse --jug '2.5 gal' --tank '20 gal'")
    assert (body["value"], body["unit"]) == (pytest.approx(1.875), "gal")
    assert body["figures"]["residue_ml"] == pytest.approx(0.01277, rel=0.01)  # 4.3e-4 fl oz
    assert any("18.12 gal" in line for line in body["details"])
    assert any("156.146(b)(1)" in line for line in body["details"])


def test_a_jug_too_large_to_shake_is_rolled() -> None:
    assert any("roll it" in line for line in asked("rinse --jug '30 gal'")["details"])
    assert any("roll it" in line for line in asked("rinse --jug '2.5 gal' --kind large")["details"])
    assert any("shake 10 s" in line for line in asked("rinse --jug '30 gal' --kind shake")["details"])


def test_fewer_rinses_than_the_rule_has_are_called_too_few() -> None:
    assert asked("rinse --jug '2.5 gal' --times 2")["says"].endswith("too few, the rule has 3")
    assert "too few" not in asked("rinse --jug '2.5 gal' --times '4 times'")["says"]


def test_more_rinsate_than_the_tank_takes_is_kept() -> None:
    body = asked("rinse --jug '2.5 gal' --tank '1 gal'")
    assert any("keep 0.875 gal" in line for line in body["details"])


# Nonsense, each with the sentence that says what would be sensible.

REFUSED = [
    ("signal-word", "at least one route"),
    ("signal-word --oral V", "I, II, III or IV"),
    ("signal-word --oral 0", "I, II, III or IV"),
    ("signal-word --eye '500 mg/kg'", "I, II, III or IV"),
    ("signal-word --oral '500 mg/kg'", "goes behind --oral-ld50"),
    ("signal-word --oral-ld50 500", "a figure with its unit, such as 500 mg/kg"),
    ("signal-word --oral-ld50 '-5 mg/kg'", "0 or more"),
    ("signal-word --oral-ld50 '0 mg/kg'", "more than 0"),
    ("signal-word --oral-ld50 '500 mg/L'", "such as 500 mg/kg"),
    ("signal-word --oral-ld50 '<500 mg/kg'", "leaves the worst open"),
    ("signal-word --oral-ld50 '2 oz'", "such as 500 mg/kg"),
    ("signal-word --inhalation-lc50 2", "such as 2 mg/L of air"),
    ("signal-word --inhalation-lc50 '20 ppm'", "another measure"),
    ("signal-word --oral III --oral-ld50 '600 mg/kg'", "one of them"),
    ("signal-word --oral III --label-word 'Beware'", "DANGER-POISON, WARNING, CAUTION"),
    ("strength --percent 41", "--density of the product, --says"),
    ("strength --percent 150 --density '9.76 lb/gal'", "at most 100"),
    ("strength --percent -3 --density '9.76 lb/gal'", "a percent, such as 20%"),
    ("strength --percent 0 --density '9.76 lb/gal'", "more than 0"),
    ("strength --percent 41 --density 1.17", "1.17 g/mL or SG 1.17"),
    ("strength --percent 41 --density '0 lb/gal'", "more than 0"),
    ("strength --percent 41 --density '4 lb ae/gal'", "the whole product"),
    ("strength --percent 41 --density '2 oz'", "9.76 lb/gal"),
    ("strength --percent 41 --says '4 lb/gal'", "the label says which"),
    ("strength --percent 41 --says '4 oz/gal'", "fl oz, a volume, or oz wt, a weight?"),
    ("strength --percent 41 --says '3 lb ae/gal'", "--form glyphosate-ipa"),
    ("strength --percent '31% ae' --says '3 lb ai/gal'", "both in ae or both in ai"),
    ("strength --percent 41 --says '3 lb ae/gal' --form glyphosate", "glyphosate-acid, glyphosate-ipa"),
    ("water", "no figure of the water"),
    ("water --tank '4 gal'", "no figure of the water"),
    ("water --hardness '-250 ppm'", "0 or more"),
    ("water --hardness 250", "250 ppm, 250 mg/L or 15 grains/gal"),
    ("water --hardness hard", "250 ppm, 250 mg/L or 15 grains/gal"),
    ("water --hardness '250 gr/gal'", "15 grains/gal"),
    ("water --hardness '2 oz'", "250 ppm"),
    ("water --hardness '250000 ppm'", "more than sea water has"),
    ("water --hardness '250 ppm' --calcium '60 ppm'", "one of them"),
    ("water --calcium '60'", "60 ppm or 60 mg/L"),
    ("water --hardness '250 ppm' --tank '0 gal'", "more than 0"),
    ("water --hardness '250 ppm' --tank '4 lb'", "a volume"),
    ("rinse", "one of them"),
    ("rinse --jug '2.5 gal' --sprayer '4 gal'", "one of them"),
    ("rinse --jug 0", "a volume"),
    ("rinse --jug '0 gal'", "more than 0"),
    ("rinse --jug '-1 gal'", "0 or more"),
    ("rinse --jug 2.5", "has no unit"),
    ("rinse --jug '2.5 gal' --left '2 oz'", "fl oz, a volume, or oz wt, a weight?"),
    ("rinse --jug '2.5 gal' --left '2 oz wt'", "a volume"),
    ("rinse --jug '2.5 gal' --left '2 gal'", "that is no empty container"),
    ("rinse --jug '2.5 gal' --times 0", "more than 0"),
    ("rinse --jug '2.5 gal' --times 2.5", "a whole number of rinses"),
    ("rinse --jug '2.5 gal' --times 1000", "a few times"),
    ("rinse --sprayer '4 gal' --kind pressure", "leave --kind out"),
    ("rinse --sprayer '4 gal' --tank '4 gal'", "leave it out"),
]


@pytest.mark.parametrize(("words", "sensible"), REFUSED, ids=[words for words, _ in REFUSED])
def test_nonsense_is_refused_in_a_sentence(words: str, sensible: str) -> None:
    said = figure(words)
    assert said.exit_code == 2, said.output
    assert sensible in " ".join(said.stderr.split()), said.stderr
    assert len(said.stderr.strip().splitlines()) <= 3


OPTIONS = {
    "signal-word": ["--oral", "--eye", "--oral-ld50", "--inhalation-lc50", "--label-word"],
    "strength": ["--percent", "--density", "--says", "--form"],
    "water": ["--hardness", "--calcium", "--iron", "--tank"],
    "rinse": ["--jug", "--sprayer", "--kind", "--times", "--left", "--tank"],
}
UNITS = [
    "",
    "%",
    "gal",
    "fl oz",
    "oz",
    "mL",
    "ppm",
    "mg/L",
    "mg/kg",
    "grains",
    "lb/gal",
    "lb ai/gal",
    "lb ae/gal",
    "g/mL",
    "ae",
    "x",
]
SAID = st.one_of(
    st.text(max_size=12),
    st.builds(lambda sign, number, unit: f"{sign}{number} {unit}".strip(), st.sampled_from(["", ">", "-"]),
              st.one_of(st.integers(0, 10**6), st.floats(0, 1000)), st.sampled_from(UNITS)),
    st.sampled_from(["I", "IV", "DANGER", "glyphosate-ipa", "shake", "SG 1.1"]),
)  # fmt: skip


@pytest.mark.slow
@given(data=st.data())
@settings(max_examples=draws.of(400))
def test_no_words_bring_out_a_trace(data: st.DataObject) -> None:
    which = data.draw(st.sampled_from(list(OPTIONS)))
    typed = data.draw(st.dictionaries(st.sampled_from(OPTIONS[which]), SAID, min_size=1, max_size=4))
    words = [which, *(f"{option}={said}" for option, said in typed.items())]
    said = figure(words)
    assert said.exit_code in (0, 1, 2), shlex.join(words)
    assert said.exception is None or isinstance(said.exception, SystemExit), shlex.join(words)
