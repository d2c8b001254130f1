"""crew.toml and answers.toml."""

import tomllib
from datetime import date

import pytest

from rootcollar.exchange.people_file import read_answers, read_crew
from rootcollar.kernel.errors import BadInput
from rootcollar.label import NOTHING_SAID
from rootcollar.work.crew import Licence


def _crew(text: str):
    return read_crew(tomllib.loads(text), "crew.toml")


def test_a_crew_is_read_in_our_units():
    crew = _crew(
        'wear = ["goggles"]\ntank = "4 gal"\ncarry = "40 lb"\n'
        '[[person]]\nname = " A. Steward "\nmay = ["lead", "saw"]\nlicence_until = 2027-03-31\n[[person]]\nname = "B"\n'
    )
    assert crew.wear == {"goggles"}
    assert crew.tank_l == pytest.approx(15.1416, rel=1e-5)
    assert crew.carry_kg == pytest.approx(18.1437, rel=1e-5)
    assert [(one.name, one.may, one.licence_until) for one in crew.people] == [
        ("A. Steward", {"lead", "saw"}, date(2027, 3, 31)), ("B", frozenset(), None),
    ]  # fmt: skip


def test_wear_nobody_listed_is_unknown_and_an_empty_list_is_none_at_hand():
    assert _crew("").wear is None
    assert _crew("wear = []").wear == frozenset()


@pytest.mark.parametrize(
    ("text", "field", "word"),
    [
        ('tank = "4"', "tank", "unit"),
        ('tank = "4 oz"', "tank", "fl oz"),
        ('tank = "0 gal"', "tank", "more than 0"),
        ("tank = 4", "tank", "in quotes"),
        ('[[person]]\nmay = ["spray"]', "may.1", "treat"),
        ('[[person]]\nmay = ["lead"]', "name", "name"),
        ('[[people]]\nname = "A"', "people", "person"),
        ('[[person]]\nname = "A"\nlicence_until = 2027-03-31T10:00:00', "licence_until", "2027-03-31"),
        ("wear = [1]", "wear, item 1", "goggles"),
        ('[[person]]\nname = "A"\nlicence = { number = "1", kind = "public" }', "licence.kind", "commercial, private"),
        ('[[person]]\nname = "A"\nrespirator_until = "2027"', "respirator_until", "2027-03-31"),
        ('[[person]]\nname = "A"\nfamily = "yes"', "family", "immediate family"),
    ],
)
def test_a_crew_typed_wrongly_is_refused_in_words(text, field, word):
    with pytest.raises(BadInput) as caught:
        _crew(text)
    assert any(one.field == field and word in one.allowed for one in caught.value.faults), caught.value


def test_an_answer_is_read():
    text = '[[answer]]\nrule = "L26"\nabout = "*"\nanswer = "no"\nby = "A"\non = 2026-10-09\nnote = " looked "\n'
    (answer,) = read_answers(tomllib.loads(text), "answers.toml")
    assert (answer.rule, answer.about, answer.yes, answer.by, answer.on, answer.note) == (
        "L26", "*", False, "A", date(2026, 10, 9), "looked",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("line", "field", "word"),
    [
        ("answer = true", "answer", '"yes" or "no"'),
        ('answer = "maybe"', "answer", '"yes" or "no"'),
        ('answer = "yes"\nwho = "A"', "who", "by"),
        ('answer = "yes"\non = "today"', "on", "a day without quotes"),
        ('answer = "yes"', "on", "2026"),
    ],
)
def test_an_answer_without_a_word_a_name_and_a_day_is_refused(line, field, word):
    text = f'[[answer]]\nrule = "L26"\nabout = "*"\nby = "A"\n{line}\n'
    with pytest.raises(BadInput) as caught:
        read_answers(tomllib.loads(text), "answers.toml")
    assert any(one.field == field and word in one.allowed for one in caught.value.faults), caught.value
    assert all(one.row == "[[answer]] 1" for one in caught.value.faults)


FULL = (
    '[[person]]\nname = "A"\nmay = ["cut", "supervise"]\nlicence = { number = "00-000", state = "WI" }\n'
    'trained_on = 2026-03-31\nminor = false\nvolunteer = true\nlanguage = "es"\n'
)


def test_a_person_is_read_with_licence_training_and_language():
    (one,) = _crew(FULL).people
    assert (one.may, one.licence, one.trained_on) == (
        {"cut", "supervise"},
        Licence("00-000", "", "WI"),
        date(2026, 3, 31),
    )
    assert (one.minor, one.volunteer, one.language) == (False, True, "es")


@pytest.mark.parametrize(
    ("line", "field", "word"),
    [
        ('licence = "00-000"', "licence", "number ="),
        ('licence = { state = "WI" }', "licence.number", "number"),
        ("trained_on = 2026", "trained_on", "a day"),
        ('minor = "yes"', "minor", "true"),
        ('volunteer = "no"', "volunteer", "true or false"),
        ('language = "fr"', "language", '"es"'),
        ("born = 2012-01-01", "born", "minor"),
        ('asthma = "yes"', "asthma", "name"),
        ('may = ["saws"]', "may.1", "saw: with a chainsaw"),
    ],
)
def test_a_person_typed_wrongly_is_refused_in_words(line, field, word):
    with pytest.raises(BadInput) as caught:
        _crew(f'[[person]]\nname = "A"\n{line}\n')
    assert any(one.field == field and word in one.allowed for one in caught.value.faults), caught.value
    assert all(one.row == "[[person]] 1 (A)" for one in caught.value.faults)


def test_two_people_of_one_name_are_told_to_be_told_apart():
    with pytest.raises(BadInput, match="each name once"):
        _crew('[[person]]\nname = "A"\n[[person]]\nname = "a "\n')


@pytest.mark.parametrize(
    ("text", "treaters"),
    [
        ("", None),
        ('[[person]]\nname = "A"\n', None),
        ('[[person]]\nname = "A"\nmay = ["saw"]\n', 0),
        ('[[person]]\nname = "A"\nmay = ["lead"]\n[[person]]\nname = "B"\nmay = ["treat", "saw"]\n', 2),
        ('[[person]]\nname = "A"\nmay = ["treat"]\nminor = true\n', 0),
    ],
)
def test_nobody_written_down_is_not_nobody_and_a_minor_treats_nothing(text, treaters):
    assert _crew(text).treaters == treaters


def test_family_the_kind_of_a_licence_and_a_day_for_the_respirator_are_read_and_unsaid_by_default():
    (ann, bo) = _crew(
        '[[person]]\nname = "Ann"\nfamily = true\nrespirator_until = 2027-03-31\n'
        'licence = { number = "1", category = "forest", state = "WI", kind = "private" }\n[[person]]\nname = "Bo"\n'
    ).people
    assert (ann.family, ann.respirator_until, ann.licence.kind) == (True, date(2027, 3, 31), "private")
    assert (bo.family, bo.respirator_until, bo.licence) == (False, None, None)


def test_what_goes_along_is_read_and_what_nobody_said_is_unknown():
    crew = _crew(
        '[aboard]\nmetals = ["brass"]\nwash_water = "9 gal"\neye_flush = "6 gal"\n'
        "flasks = 3\nsoap = true\nlabels = false\n"
    )
    along = crew.aboard
    assert (along.metals, along.flasks, along.soap, along.labels) == (("brass",), 3, True, False)
    assert along.wash_ml == pytest.approx(9 * 3785.411784) and along.flush_ml == pytest.approx(6 * 3785.411784)
    assert _crew("").aboard == _crew("[aboard]\n").aboard == NOTHING_SAID
    assert _crew("[aboard]\nmetals = []\n").aboard.metals == ()


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("wash_water = 9", 'aboard.wash_water: found 9; allowed: a number and its unit in quotes, such as "4 gal"'),
        ("flasks = -1", "aboard.flasks: found -1; allowed: flasks of a pint for eyes"),
        ('soap = "yes"', "aboard.soap: found 'yes'; allowed: whether soap and towels go along: true or false"),
        ("water = 1", "aboard.water: found the key water; allowed: wash_water"),
    ],
)
def test_a_slip_in_what_goes_along_is_told_with_what_is_allowed(line, says):
    with pytest.raises(BadInput) as caught:
        _crew(f"[aboard]\n{line}\n")
    (fault,) = caught.value.faults
    assert str(fault).startswith(f"crew.toml, {says}")
