"""Crews that the rules on people object to, or let be: rule, what is changed, its word, words in it."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from rootcollar.kernel.verdict import Level
from rootcollar.label import Licence, Person
from rootcollar.shelf import SILENT, Line
from tests.label.sample import ANN, BO, CARD, HANDLING, lines

OK, WARN, ASK, STOP = Level

Changes = Mapping[str, Line[Any]]

RESTRICTED = lines(sheet__identity__restricted_use=True)
MASK = lines(sheet__ppe__respirator="N95 filtering facepiece")
EARLIER, YEAR_BEFORE, YEAR_AND_A_DAY = date(2026, 7, 14), date(2025, 7, 15), date(2025, 7, 14)
SAWYER = Person("Cy", frozenset({"saw"}))
BOY = Person("Ed", frozenset({"treat"}), minor=True)
VOLUNTEER = replace(BO, volunteer=True)


def crew(*people: Person, **facts: Any) -> Changes:
    """Return the fact of another crew, or of the sample's crew on other terms."""
    return lines(place__handling=replace(HANDLING, **({"people": people} if people else {}), **facts))


def card(**changes: Any) -> Changes:
    """Return the fact of the sample's crew, its certificate changed."""
    return crew(replace(ANN, licence=replace(CARD, **changes)), BO)


def nobody(**facts: Any) -> Changes:
    """Return the fact of a crew of which nothing is written."""
    return lines(place__handling=replace(HANDLING, people=(), **facts))


PEOPLE_EXAMPLES: list[tuple[str, Changes, Level, str]] = [
    ("L18", RESTRICTED, OK, ""),
    ("L18", lines(sheet__identity__classification="restricted") | crew(BO), STOP, "nobody who treats, leads or superv"),
    ("L18", RESTRICTED | crew(BO), STOP, "has a certificate"),
    ("L18", crew(BO), OK, ""),
    ("L18", RESTRICTED | crew(BO, replace(ANN, may=frozenset({"supervise"}))), OK, ""),
    ("L18", RESTRICTED | crew(BO, replace(ANN, may=frozenset({"saw"}))), STOP, "has a certificate"),
    ("L18", RESTRICTED | crew(replace(ANN, minor=True)), STOP, "has a certificate"),
    ("L18", RESTRICTED | nobody(), ASK, "nobody has said who works"),
    ("L18", RESTRICTED | crew(on=None), ASK, "no day of work"),
    ("L18", RESTRICTED | crew(state=None), ASK, "in which state"),
    ("L18", RESTRICTED | crew(replace(ANN, licence_until=EARLIER)), STOP, "runs out on 2026-07-14, before the work on"),
    ("L18", RESTRICTED | crew(replace(ANN, licence_until=EARLIER)), STOP, "work before that day, or have it renewed"),
    ("L18", RESTRICTED | crew(replace(ANN, licence_until=date(2026, 7, 15))), OK, ""),
    ("L18", RESTRICTED | crew(replace(ANN, licence_until=None)), ASK, "the state or the last day"),
    ("L18", RESTRICTED | card(state=""), ASK, "the state or the last day"),
    ("L18", RESTRICTED | card(state="OH"), STOP, "is of OH; the ground lies in WV"),
    ("L18", RESTRICTED | card(category=""), ASK, "names no category"),
    ("L18", RESTRICTED | card(category="12B"), ASK, "does that cover stem-by-stem work in forest?"),
    ("L18", RESTRICTED | card(category="Public health"), STOP, "is for Public health"),
    ("L18", RESTRICTED | card(category="Right-of-way") | {}, ASK, "does that cover"),
    ("L18", RESTRICTED | crew(site_class="right_of_way"), ASK, "is for Forest pest control"),
    ("L18", RESTRICTED | card(kind="private"), OK, ""),
    ("L18", RESTRICTED | crew(replace(ANN, licence=replace(CARD, kind="private")), purpose="nature"), STOP, "private"),
    ("L18", RESTRICTED | crew(replace(ANN, licence=replace(CARD, kind="private")), for_whom="hire"), STOP, "private"),
    ("L18", RESTRICTED | crew(replace(ANN, licence=replace(CARD, kind="private")), purpose=None), ASK, "private"),
    ("L18b", RESTRICTED, OK, ""),
    ("L18b", RESTRICTED | nobody(), ASK, "nobody has said who works"),
    ("L18b", RESTRICTED | crew(ANN, replace(BO, trained_on=YEAR_AND_A_DAY)), STOP, "more than 12 months before"),
    ("L18b", RESTRICTED | crew(ANN, replace(BO, trained_on=YEAR_BEFORE)), OK, ""),
    ("L18b", RESTRICTED | crew(ANN, replace(BO, trained_on=None)), ASK, "of Bo"),
    ("L18b", RESTRICTED | crew(ANN, BOY), STOP, "Ed: under 18"),
    ("L18b", crew(ANN, BOY), OK, ""),
    ("L18b", RESTRICTED | crew(replace(ANN, licence=replace(CARD, state="OH"), trained_on=None)), OK, ""),
    ("L18b", lines(sheet__identity__classification="restricted") | crew(ANN, BOY), STOP, ""),
    ("L19", crew(for_whom=None), ASK, "for whom the crew works"),
    ("L19", crew(BO, for_whom="hire"), ASK, "works for hire on land that is not its own"),
    ("L19", crew(BO, for_whom="own"), OK, ""),
    ("L19", crew(for_whom="hire"), OK, ""),
    ("L19", crew(replace(ANN, licence_until=EARLIER), for_whom="hire"), ASK, "no commercial licence"),
    ("L19", crew(replace(ANN, licence=Licence("1", "Forest", "WV", "private")), for_whom="agency"), ASK, "an agency"),
    ("L19", crew(replace(ANN, licence=Licence("1", "Forest", "WV")), for_whom="employer"), ASK, 'kind = "commercial"'),
    ("L19", crew(BO, for_whom="volunteers"), ASK, "as volunteers"),
    ("L19", crew(VOLUNTEER, for_whom="volunteers"), OK, ""),
    ("L19b", crew(ANN, VOLUNTEER), ASK, "volunteers treat (Bo)"),
    ("L19b", crew(ANN, replace(SAWYER, volunteer=True)), OK, ""),
    ("L19b", crew(replace(ANN, volunteer=True)), OK, ""),
    ("L23", MASK, ASK, "until when Ann, Bo are cleared"),
    ("L23", lines(sheet__ppe__respirator=SILENT), OK, ""),
    ("L23", MASK | nobody(), ASK, "nobody has said who treats"),
    ("L23", MASK | crew(SAWYER), STOP, "nobody who treats is cleared"),
    ("L23", MASK | crew(replace(BO, respirator_until=EARLIER)), STOP, "nobody who treats is cleared"),
    ("L23", MASK | crew(replace(BO, respirator_until=date(2026, 7, 15))), OK, ""),
    ("L23", MASK | crew(ANN, replace(BO, respirator_until=date(2026, 7, 15))), WARN, "only Bo may, not Ann"),
    ("L23", MASK | crew(ANN, replace(BO, respirator_until=EARLIER)), ASK, "until when Ann are cleared"),
    ("L24", crew(ANN, BOY), STOP, "Ed: under 18"),
    ("L24", crew(ANN, replace(BOY, family=True)), OK, ""),
    ("L24", crew(ANN, replace(BOY, may=frozenset({"cut"}))), OK, ""),
    ("L24", crew(ANN, BOY, purpose="nature"), OK, ""),
    ("L24", crew(ANN, BOY) | lines(sheet__entry__wps_box=False), OK, ""),
    ("L24", crew(ANN, BOY) | lines(sheet__entry__wps_box=SILENT), OK, ""),
    ("L25", crew(ANN, replace(BO, trained_on=YEAR_AND_A_DAY)), STOP, "Bo (2025-07-14)"),
    ("L25", crew(ANN, replace(BO, trained_on=YEAR_BEFORE)), OK, ""),
    ("L25", crew(ANN, replace(BO, trained_on=YEAR_AND_A_DAY, family=True)), OK, ""),
    ("L25", crew(replace(ANN, trained_on=None)), OK, ""),
    ("L25", crew(replace(ANN, trained_on=YEAR_AND_A_DAY, licence_until=EARLIER)), STOP, "Ann"),
    ("L25", crew(replace(BO, trained_on=None)), ASK, "of Bo"),
    ("L25", crew(replace(BO, trained_on=None), purpose="nature"), OK, ""),
    ("L25", nobody(), ASK, "nobody has said who treats"),
    ("L26", crew(purpose=None), ASK, "Agricultural Use Requirements box"),
    ("L26", crew(purpose=None) | lines(sheet__entry__wps_box=False), OK, ""),
    ("L26", crew(purpose="nature"), OK, ""),
    ("L26", crew(purpose="pasture", hay=None), ASK, "cut for hay"),
    ("L26", crew(purpose="pasture", hay=False), OK, ""),
]  # fmt: skip
