"""A line is typed plainly, without quotes and brackets, and what was typed stands for what the file holds."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.shelf import FIELDS, METHODS, SILENT, Distance, Field, NotAllowed, as_typed, cells_of, raw_of
from rootcollar.shelf.fields import ValueKind
from rootcollar.shelf.values import read_value
from tests.shelf.sample import sample_sheet

WORD = st.from_regex(r"[a-z][a-z -]{0,8}[a-z]", fullmatch=True).filter(lambda one: one not in ("silent", "none"))
NUMBER = st.one_of(st.integers(0, 9_999), st.integers(0, 99_999).map(lambda one: one / 100))
DISTANCE = st.fixed_dictionaries(
    {"from": WORD.filter(lambda one: "from" not in one), "ft": NUMBER},
    optional={"methods": st.lists(st.sampled_from(METHODS), min_size=1, unique=True)},
)
RAW: dict[ValueKind, Any] = {
    "text": lambda row: WORD,
    "texts": lambda row: st.lists(WORD, max_size=3),
    "states": lambda row: st.lists(st.sampled_from(["WV", "OH"]), max_size=2),
    "number": lambda row: NUMBER,
    "count": lambda row: st.integers(0, 400),
    "percent": lambda row: st.floats(0, 100).map(lambda one: round(one, 2)),
    "flag": lambda row: st.booleans(),
    "date": lambda row: st.dates(),
    "choice": lambda row: st.sampled_from(row.among),
    "choices": lambda row: st.lists(st.sampled_from(row.among), min_size=1, max_size=3),
    "distances": lambda row: st.lists(DISTANCE, max_size=3),
}
LINES = [row for row in FIELDS.values() if row.kind != "tables"]


@given(st.data())
def test_what_a_line_says_is_typed_and_read_back_as_the_same(data: st.DataObject) -> None:
    row: Field = data.draw(st.sampled_from(LINES))
    says = read_value(row, data.draw(RAW[row.kind](row)))
    assert read_value(row, raw_of(row, as_typed(says))) == says


@pytest.mark.parametrize("row", LINES, ids=lambda row: row.path)
def test_every_line_can_be_silent(row: Field) -> None:
    assert raw_of(row, " Silent ") == as_typed(SILENT) == "silent"


@pytest.mark.parametrize(
    ("path", "typed", "raw"),
    [
        ("ingredient.ai_percent", "41.0 %", 41.0),
        ("entry.rei_hours", "12 h", 12),
        ("limits.max_applications_per_year", "2", 2),
        ("identity.restricted_use", "No", False),
        ("identity.states_ok", "wi, oh", ["WI", "OH"]),
        ("identity.states_ok", "none", []),
        ("hazard.signal_word", "caution", "CAUTION"),
        ("limits.area_basis", "treated acre", "treated_acre"),
        ("method.carrier", "none; water", ["none", "water"]),
        ("method.carrier", "none", ["none"]),
        ("methods.prohibited", "none", []),
        ("ppe.mixing", "long sleeves;  shoes, socks", ["long sleeves", "shoes, socks"]),
        ("proof.read_on", "2026-02-14", date(2026, 2, 14)),
        ("water.buffers_ft", "25 ft from surface water (foliar, cut stump); 50 from well",
         [{"from": "surface water", "ft": 25, "methods": ["foliar", "cut_stump"]}, {"from": "well", "ft": 50}]),
    ],
)  # fmt: skip
def test_what_people_type_is_understood(path: str, typed: str, raw: object) -> None:
    assert raw_of(FIELDS[path], typed) == raw


@pytest.mark.parametrize(
    ("path", "typed", "words"),
    [
        ("ingredient.ai_percent", "101", "a percent, 0 to 100"),
        ("entry.rei_hours", "12 days", "a number in h"),
        ("entry.rei_hours", "twelve", "a number in h"),
        ("limits.max_applications_per_year", "2.5", "a whole number"),
        ("identity.restricted_use", "maybe", "yes or no"),
        ("identity.states_ok", "Wisconsin", "two letters"),
        ("hazard.signal_word", "CARE", "DANGER, WARNING, CAUTION, none"),
        ("proof.read_on", "2026-02-30", "2026-05-20"),
        ("water.buffers_ft", "surface water", "25 ft from surface water"),
        ("water.buffers_ft", "25 ft from brooks (painting)", "25 ft from surface water"),
        ("method.carrier", "milk", "none, water, oil"),
    ],
)
def test_what_a_line_cannot_hold_is_refused_with_how_it_is_typed(path: str, typed: str, words: str) -> None:
    with pytest.raises(NotAllowed, match=words):
        raw_of(FIELDS[path], typed)


def test_a_sheet_is_told_line_by_line() -> None:
    cells = cells_of(sample_sheet())
    assert cells["ingredient.1.ae_lb_per_gal"] == "3"
    assert cells["water.buffers_ft"].startswith("25 ft from surface water")
    assert isinstance(sample_sheet().says("water.buffers_ft")[0], Distance)
    assert "silent" in cells.values() and "" not in cells.values()
