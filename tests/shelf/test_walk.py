"""The walk over a label asks for every line of a sheet once, in the order in which a label prints it."""

from collections import Counter

import pytest

from rootcollar.shelf import FIELDS, PAGED, REPEATED, SECTIONS, Shape, block_of, field_at, fields_of, in_order

WHOLE = Shape(2, 3, ("foliar", "cut_stump"))


def test_every_line_of_a_sheet_stands_in_one_section() -> None:
    there = Counter(path for section in SECTIONS for path in section.lines)
    assert set(there.values()) == {1}
    assert set(there) == {path for path in FIELDS if path.split(".")[0] not in REPEATED} | set(REPEATED)


def test_every_address_is_asked_once_and_leads_to_its_line() -> None:
    asked = list(in_order(WHOLE))
    assert len(set(asked)) == len(asked)
    assert {field_at(one) for one in asked} - {None} == {
        row
        for path, row in FIELDS.items()
        if path not in REPEATED and (not row.in_method or path.removeprefix("method.") in BOTH)
    }


BOTH = {*fields_of("foliar"), *fields_of("cut_stump")}


def test_a_page_is_asked_once_a_block_before_the_block_s_first_line() -> None:
    asked = list(in_order(WHOLE))
    pages = [one for one in asked if one.endswith(".page")]
    blocks = {one.removesuffix(".page") for one in pages}
    assert blocks == {block for block in PAGED if block not in REPEATED} | {
        "ingredient.1", "ingredient.2", "site.1", "site.2", "site.3", "method.foliar", "method.cut_stump",
    }  # fmt: skip
    for page in pages:
        block = page.removesuffix(".page")
        first = next(at for at, one in enumerate(asked) if one != page and block_of(one) == block)
        assert asked.index(page) < first


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("identity.product_name", "hazard.signal_word"),
        ("hazard.signal_word", "hazard.category.eye"),
        ("hazard.category.eye", "hazard.first_aid.eyes"),
        ("hazard.first_aid.eyes", "ppe.mixing"),
        ("ppe.mixing", "water.direct_to_water"),
        ("water.direct_to_water", "entry.rei_hours"),
        ("entry.rei_hours", "site.1.words"),
        ("site.1.words", "method.foliar.carrier"),
        ("method.foliar.carrier", "limits.basis"),
        ("limits.basis", "weather.wind_mph.low"),
        ("weather.wind_mph.low", "storage.rinse"),
    ],
)
def test_the_order_is_that_of_a_printed_label(one: str, other: str) -> None:
    asked = list(in_order(WHOLE))
    assert asked.index(one) < asked.index(other)
