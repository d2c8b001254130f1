"""Two people read the lines on which most hangs; what they read differently stands until both read it alike."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.shelf import (
    SILENT,
    SILENT_WORD,
    Line,
    NotAllowed,
    Second,
    Sheet,
    another,
    asked_again,
    cells_of,
    twice,
    value_again,
)
from tests.shelf.sample import sample_sheet

OTHER = "Elspeth Tarn"
DAY = date(2026, 3, 2)


def alike(sheet: Sheet, by: str = OTHER, **typed: str) -> Sheet:
    """Return a sheet with a second reading like the first, but for some lines."""
    lines = {one.ask: one.first for one in asked_again(sheet)} | typed
    return replace(sheet, second=Second(by, DAY, lines))


def changed(sheet: Sheet, path: str, says: object) -> Sheet:
    return replace(sheet, lines={**sheet.lines, path: Line(says)})


def test_strength_limits_places_wear_and_every_silence_are_asked_again() -> None:
    sheet = sample_sheet()
    asked = {one.ask for one in asked_again(sheet)}
    cells = cells_of(sheet)
    silent = {one for one, said in cells.items() if said == SILENT_WORD and not one.startswith(("proof.", "site."))}
    assert silent and silent <= asked
    assert {"ingredient.1.ae_lb_per_gal", "method.foliar.concentration.high", "site.forest", "site.aquatic"} <= asked
    assert {f"{one}" for one in cells if one.startswith(("ppe.", "limits."))} <= asked


def test_being_asked_does_not_tell_that_the_first_reader_found_the_label_silent() -> None:
    others = [one for one in asked_again(sample_sheet()) if not one.ask.startswith(ALWAYS)]
    assert any(one.first == SILENT_WORD for one in others)
    assert any(one.first != SILENT_WORD for one in others)


ALWAYS = ("ppe.", "limits.", "ingredient.", "method.", "site.")


def test_two_readings_alike_agree() -> None:
    found = twice(alike(sample_sheet()))
    assert found.agrees and found.differ == found.left == ()
    assert found.second == OTHER


def test_one_reading_alone_does_not_agree() -> None:
    found = twice(sample_sheet())
    assert not found.agrees and found.left == found.lines and found.second == ""


@pytest.mark.parametrize("ask", ["ingredient.1.ae_lb_per_gal", "limits.per_year.amount", "site.forest"])
def test_a_line_read_differently_stands_until_it_is_read_alike(ask: str) -> None:
    said = "no" if ask == "site.forest" else "1.5"
    found = twice(alike(sample_sheet(), **{ask: said}))
    assert [(one.ask, one.second) for one in found.differ] == [(ask, said)]
    assert not found.agrees


def test_a_line_read_differently_stands_with_its_page() -> None:
    paged = Line(6.0, "8, left")
    sheet = replace(sample_sheet(), lines={**sample_sheet().lines, "limits.per_year.amount": paged})
    assert [one.page for one in twice(alike(sheet, **{"limits.per_year.amount": "5"})).differ] == ["8, left"]


def test_case_order_and_signs_between_words_are_no_difference() -> None:
    sheet = changed(sample_sheet(), "ppe.mixing", ("Long sleeves", "shoes and socks", "chemical-resistant gloves"))
    again = "shoes and socks; Chemical resistant gloves; long sleeves"
    assert twice(alike(sheet, **{"ppe.mixing": again})).agrees
    assert not twice(alike(sheet, **{"ppe.mixing": "shoes and socks; long sleeves"})).agrees


def test_a_sheet_changed_after_the_second_reading_is_stale_in_the_changed_lines_alone() -> None:
    sheet = alike(sample_sheet())
    assert [one.ask for one in twice(changed(sheet, "limits.per_year.amount", 99.0)).differ] == [
        "limits.per_year.amount"
    ]
    newly_silent = twice(changed(sheet, "storage.rinse", SILENT))
    assert "storage.rinse" in [one.ask for one in newly_silent.left] and newly_silent.differ == ()


@pytest.mark.parametrize(("by", "other"), [(OTHER, True), ("", False)])
def test_the_second_reader_is_another_person(by: str, other: bool) -> None:
    assert another(sample_sheet(), by) is other


def test_case_and_spaces_make_no_other_person() -> None:
    sheet = changed(sample_sheet(), "proof.read_by", "Ottoline Fernwick")
    assert not another(sheet, "  ottoline   FERNWICK ")
    found = twice(alike(sheet, by="ottoline fernwick"))
    assert found.same and not found.agrees


def test_where_nobody_has_said_who_read_first_there_is_no_second() -> None:
    sheet = sample_sheet()
    nameless = replace(sheet, lines={path: line for path, line in sheet.lines.items() if path != "proof.read_by"})
    assert not another(nameless, OTHER)
    assert not twice(alike(nameless)).agrees


def test_what_the_line_cannot_hold_counts_as_not_read() -> None:
    found = twice(alike(sample_sheet(), **{"limits.per_year.amount": "lots"}))
    assert [one.ask for one in found.left] == ["limits.per_year.amount"]
    with pytest.raises(NotAllowed):
        value_again(found.left[0], "lots")
