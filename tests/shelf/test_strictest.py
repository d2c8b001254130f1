"""The strictest of several labels: never laxer than any of them, in any order, and honest about what is unread."""

from dataclasses import replace
from typing import Any

import pytest

from rootcollar.shelf import FIELDS, SILENT, Distance, Line, Sheet, SiteLine, strictest
from rootcollar.shelf.strictest import OWN
from tests.shelf.sample import sample_sheet


def label(key: str = "one", **says: Any) -> Sheet:
    """Return the sample under a key with other lines; None: not read."""
    changed = {path.replace("__", "."): value for path, value in says.items()}
    sheet = sample_sheet()
    lines = {path: line for path, line in sheet.lines.items() if path not in changed}
    lines |= {path: Line(value) for path, value in changed.items() if value is not None}
    return Sheet(key, lines, sheet.methods)


EXAMPLES: list[tuple[str, Any, Any, Any]] = [
    ("entry.rei_hours", 12.0, 48.0, 48.0),
    ("weather.wind_mph.high", 10.0, 7.0, 7.0),
    ("weather.wind_mph.low", 3.0, 5.0, 5.0),
    ("weather.inversion_forbidden", False, True, True),
    ("mixing.dye_allowed", True, False, False),
    ("water.direct_to_water", "edge_only", "prohibited", "prohibited"),
    ("mixing.mixture_storage_hours", 24.0, SILENT, 24.0),
    ("mixing.metal_forbidden", ("brass",), ("galvanized", "brass"), ("brass", "galvanized")),
    ("ppe.glove_types", ("Nitrile", "butyl"), ("nitrile",), ("Nitrile",)),
    (
        "water.buffers_ft",
        (Distance("well", 50.0),),
        (Distance("well", 25.0),),
        (Distance("well", 50.0), Distance("well", 25.0)),
    ),
]


@pytest.mark.parametrize(("path", "one", "other", "found"), EXAMPLES)
def test_of_each_line_the_stricter_stands(path: str, one: Any, other: Any, found: Any) -> None:
    merged = strictest(
        [label("one", **{path.replace(".", "__"): one}), label("two", **{path.replace(".", "__"): other})]
    )
    assert merged.says(path) == found


@pytest.mark.parametrize(("path", "one", "other", "found"), EXAMPLES)
def test_the_order_of_the_labels_does_not_matter(path: str, one: Any, other: Any, found: Any) -> None:
    there = strictest(
        [label("one", **{path.replace(".", "__"): one}), label("two", **{path.replace(".", "__"): other})]
    )
    back = strictest([label("two", **{path.replace(".", "__"): other}), label("one", **{path.replace(".", "__"): one})])
    says, again = there.says(path), back.says(path)
    assert says == again or {str(one).casefold() for one in says} == {str(one).casefold() for one in again}


def test_a_label_with_itself_is_itself_on_every_line_they_share() -> None:
    sheet = sample_sheet()
    merged = strictest([sheet, replace(sheet, key="again")])
    shared = {path for path in sheet.lines if not path.startswith(OWN)}
    assert set(merged.lines) >= shared and shared
    assert all(merged.lines[path].says == sheet.lines[path].says for path in shared)
    assert set(merged.methods) == set(sheet.methods)


def test_what_one_label_has_not_read_is_not_read() -> None:
    merged = strictest([label("one", entry__rei_hours=4.0), label("two", entry__rei_hours=None)])
    assert merged.line("entry.rei_hours") is None


def test_only_places_that_every_label_names_are_left_and_every_forbidden_one_stays() -> None:
    woods, lawns = SiteLine("woods", "forest", True), SiteLine("lawns", "residential", True)
    water = SiteLine("water", "aquatic", False)
    merged = strictest([label("one", site=(woods, lawns)), label("two", site=(woods, water))])
    assert set(merged.says("site")) == {woods, water}
    assert strictest([label("one", site=(woods,)), label("two", site=SILENT)]).line("site") == Line(SILENT)


def test_only_methods_of_every_label_are_left() -> None:
    sheet = sample_sheet()
    fewer = replace(sheet, key="two", methods={"foliar": sheet.methods["foliar"]})
    assert set(strictest([sheet, fewer]).methods) == {"foliar"}


def test_strength_dose_and_rates_are_read_on_each_label_alone() -> None:
    merged = strictest([label("one"), label("two")])
    assert not [path for path in merged.lines if path.startswith(("limits.", "ingredient", "identity.", "hazard."))]
    assert not [path for path in merged.methods["foliar"] if path.startswith(("concentration", "dose"))]


def test_every_direction_of_a_field_can_be_merged() -> None:
    """No field that a mix shares has a direction that merging does not know."""
    known = {"lower", "higher", "true", "false", "first", "more", "fewer", "none"}
    assert {row.stricter for row in FIELDS.values()} <= known


def test_of_no_label_there_is_no_strictest() -> None:
    with pytest.raises(ValueError, match="no sheet"):
        strictest([])
