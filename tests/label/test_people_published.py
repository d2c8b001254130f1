"""What the law's own sections say of people, case by case; each test names its source and section.

Read: 40 CFR 170.303 (copy current through October 2024), 170.309(c), 171.1, 171.101, 171.201 (copies of the eCFR),
170.501(a) and (b), 170.601(a) (text at November 2024); FIFRA 2(e), 12(a)(2)(F) (Code of 2023). The old exception for
injection, 170.103(e) of 1992, is not in 170.303.
"""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from rootcollar.kernel.verdict import Level
from rootcollar.label import Handling, Person
from rootcollar.label.people import TRAINING_MONTHS, overdue
from rootcollar.reference import load, named, numbers
from rootcollar.site import PURPOSES
from tests.label.people_examples import BOY, RESTRICTED, card, crew
from tests.label.sample import ANN, BO, DAY, HANDLING, PLANNED, UNIT, facts_of, lines, said, whole

HIRED = Person("Hired", frozenset({"treat"}))
OWNER = Person("Owner", frozenset({"lead"}), family=True)


@pytest.mark.parametrize(
    ("purpose", "hay", "inside"),
    [
        ("produce", False, True),  # 170.303(a): in the production of agricultural plants on an establishment
        ("public_programme", False, False),  # (b)(1)
        ("grounds", False, False),  # (b)(2): ornamental plantings, parks, lawns; the edge of a park's lawn
        ("pasture", False, False),  # (b)(7): where the forage will not be harvested for hay
        ("pasture", True, True),
        ("pasture", None, None),
        ("right_of_way", False, False),  # (b)(8): vegetation in non-crop areas
        ("nature", False, False),  # (b)(8): a land trust's reserve with no crop
        (None, False, None),
    ],
)
def test_worker_protection_reaches_what_40_cfr_170_303_says(
    purpose: str | None, hay: bool | None, inside: bool | None
) -> None:
    assert Handling(purpose=purpose, hay=hay).produces is inside
    level = said(whole() | crew(purpose=purpose, hay=hay))["L26"].level
    assert level is (Level.ASK if inside is None else Level.OK)


def test_every_purpose_is_placed() -> None:
    for purpose in PURPOSES:
        assert Handling(purpose=purpose, hay=False).box in (
            "Agricultural Use Requirements", "Non-Agricultural Use Requirements",
        )  # fmt: skip


@pytest.mark.parametrize("method", ["hack_squirt", "injection", "cut_stump", "foliar"])
def test_hack_and_squirt_in_timber_is_inside_like_every_other_way(method: str) -> None:
    """40 CFR 170.303(b) lists no way of application but traps; the 1992 text left hack-and-squirt inside by name."""
    facts = facts_of(replace(PLANNED, method=method)) | crew(replace(BO, trained_on=date(2025, 1, 1)))
    assert said(facts)["L25"].level is Level.STOP


def test_a_sole_owner_alone_needs_no_training_and_a_hired_hand_beside_them_does() -> None:
    """40 CFR 170.601(a)(1)(ix) and (2): the owners' family is free of 170.501, everybody else is not."""
    assert said(whole() | crew(OWNER))["L25"].level is Level.OK
    verdict = said(whole() | crew(OWNER, HIRED))["L25"]
    assert verdict.level is Level.ASK and "Hired" in verdict.because and "Owner" not in verdict.because


def test_the_owners_family_still_wears_what_the_label_says() -> None:
    """40 CFR 170.601(a)(1) does not list 170.507(a) and (b)."""
    assert said(whole() | crew(OWNER) | lines(people__wear=frozenset({"hat"})))["L22"].level is Level.STOP


@pytest.mark.parametrize("family", [True, False])
def test_handlers_are_18_but_for_the_owners_family(family: bool) -> None:
    """40 CFR 170.309(c), and 170.601(a)(1)(i)."""
    level = said(whole() | crew(ANN, replace(BOY, family=family)))["L24"].level
    assert level is (Level.OK if family else Level.STOP)


def test_twelve_months_are_counted_by_the_calendar() -> None:
    """40 CFR 170.501(a): trained within the last 12 months before any handler activity."""
    assert numbers(named(load().hazard["people"], "training_months"))[0].value == TRAINING_MONTHS
    assert not overdue(date(2025, 7, 15), date(2026, 7, 15))
    assert overdue(date(2025, 7, 15), date(2026, 7, 16))
    assert not overdue(date(2024, 2, 29), date(2025, 2, 28)) and overdue(date(2024, 2, 29), date(2025, 3, 1))
    leap = date(2023, 3, 1)
    assert not overdue(leap, leap + timedelta(days=366))  # 1 March 2024: 366 days, and 12 months


def test_who_is_certified_that_day_needs_no_handler_training() -> None:
    """40 CFR 170.501(b)(1): currently certified under part 171; a certificate that ran out does not count."""
    untrained = replace(ANN, trained_on=None)
    assert said(whole() | crew(untrained))["L25"].level is Level.OK
    assert said(whole() | crew(replace(untrained, licence_until=DAY - timedelta(days=1))))["L25"].level is Level.ASK


@pytest.mark.parametrize(
    ("site_class", "category", "level"),
    [
        ("forest", "Forest pest control", Level.OK),  # 171.101(b)
        ("right_of_way", "Right-of-way pest control", Level.OK),  # (f)
        ("residential", "Ornamental and turf pest control", Level.OK),  # (c)
        ("pasture", "Crop pest control", Level.OK),  # (a)(1), grasslands among them
        ("aquatic", "Aquatic pest control", Level.OK),  # (e)
        ("forest", "Livestock pest control", Level.STOP),  # (a)(2)
        ("forest", "Seed treatment", Level.STOP),  # (d)
        ("forest", "Industrial, institutional, and structural pest control", Level.STOP),  # (g)
        ("forest", "Soil fumigation", Level.STOP),  # (m)
        ("forest", "Aerial pest control", Level.STOP),  # (o)
        ("natural_area", "Forest pest control", Level.ASK),  # no category of its own: the state's word
    ],
)
def test_a_certificate_fits_as_40_cfr_171_101_names_its_categories(
    site_class: str, category: str, level: Level
) -> None:
    person = replace(ANN, licence=replace(ANN.licence, category=category))  # type: ignore[type-var]
    assert said(whole() | RESTRICTED | crew(person, site_class=site_class))["L18"].level is level


def test_a_certificate_holds_in_the_state_that_gave_it() -> None:
    """40 CFR 171.1(b): currently valid in the pertinent jurisdiction; unlawful otherwise, FIFRA 12(a)(2)(F)."""
    assert said(whole() | RESTRICTED | card(state="OH"))["L18"].level is Level.STOP
    assert said(whole() | RESTRICTED)["L18"].level is Level.OK


@pytest.mark.parametrize(
    ("purpose", "for_whom", "level"),
    [("produce", "own", Level.OK), ("produce", "employer", Level.OK), ("produce", "hire", Level.STOP),
     ("nature", "own", Level.STOP)],
)  # fmt: skip
def test_a_private_certificate_is_for_producing_on_ones_own_or_an_employers_ground(
    purpose: str, for_whom: str, level: Level
) -> None:
    """FIFRA 2(e)(2), 7 U.S.C. 136(e)(2)."""
    person = replace(ANN, licence=replace(ANN.licence, kind="private"))  # type: ignore[type-var]
    facts = whole() | RESTRICTED | crew(person, purpose=purpose, for_whom=for_whom)
    assert said(facts)["L18"].level is level


def test_under_anothers_certificate_one_is_trained_within_12_months_or_certified_elsewhere() -> None:
    """40 CFR 171.201(c)(2) handler training within the last 12 months; (c)(4) certified in another jurisdiction."""
    late = replace(BO, trained_on=date(2025, 7, 14))
    assert said(whole() | RESTRICTED | crew(ANN, late))["L18b"].level is Level.STOP
    elsewhere = replace(late, licence=replace(ANN.licence, state="OH"), licence_until=DAY)  # type: ignore[type-var]
    assert said(whole() | RESTRICTED | crew(ANN, elsewhere))["L18b"].level is Level.OK


def test_nobody_under_18_uses_a_restricted_product_under_anothers_certificate() -> None:
    """40 CFR 171.201(b)(2)(iii); the exception for a private applicator's family of 16 is not taken up: ours."""
    for family in (True, False):
        facts = whole() | RESTRICTED | crew(ANN, replace(BOY, family=family))
        assert said(facts)["L18b"].level is Level.STOP


def test_what_is_said_of_the_unit_reaches_the_rules() -> None:
    assert Handling.at(UNIT, HANDLING.people, DAY, "WV") == HANDLING
    unit = replace(UNIT, purpose=None)
    assert said(facts_of(unit=unit))["L26"].level is Level.ASK
