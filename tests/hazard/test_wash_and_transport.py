"""Water by head count, and what a vehicle may carry."""

from __future__ import annotations

import pytest

from rootcollar.hazard import most_in_package_ml, most_in_vehicle_kg, packing_group, wash_needed
from rootcollar.kernel.units import convert
from rootcollar.reference import load

WASH, TRANSPORT = load().hazard["wash"], load().hazard["transport"]


# N.J.A.C. 7:30-12.21, which follows 40 CFR 170.509.
def test_three_handlers_with_a_label_that_asks_for_eyewear_bring_nine_gallons_six_and_three_pints() -> None:
    need = wash_needed(3, 3, 0, WASH, mixing_eyes=True, applying_eyes=True)
    assert convert(need.handlers_ml, "mL", "gal") == pytest.approx(9)
    assert convert(need.flush_ml, "mL", "gal") == pytest.approx(6)
    assert convert(need.carried_ml, "mL", "pt") == pytest.approx(3)
    assert "soap" in need.with_it and any("towels" in one for one in need.with_it)


def test_eye_flush_goes_with_the_task_that_asks_for_eyewear() -> None:
    mixing = wash_needed(2, 2, 1, WASH, mixing_eyes=True, applying_eyes=False)
    assert mixing.flush_ml > 0 and mixing.carried_ml == 0
    assert convert(mixing.workers_ml, "mL", "gal") == pytest.approx(1)


# 49 CFR 173.6(a)(1) and (d).
@pytest.mark.parametrize(("group", "gallons"), [("I", 0.125), ("II", 8), ("III", 8), ("", 0.125)])
def test_a_package_holds_what_its_packing_group_allows_and_an_unknown_one_counts_as_the_worst(
    group: str, gallons: float
) -> None:
    assert convert(most_in_package_ml(group, TRANSPORT), "mL", "gal") == pytest.approx(gallons)


def test_two_jugs_of_two_and_a_half_gallons_of_group_three_are_each_within_the_limit() -> None:
    assert convert(2.5, "gal", "mL") <= most_in_package_ml("III", TRANSPORT)
    assert convert(most_in_vehicle_kg(TRANSPORT), "kg", "lb") == pytest.approx(440)


@pytest.mark.parametrize(
    ("said", "group"),
    [
        ("III", "III"), ("PG III", "III"), ("pg ii", "II"), ("packing group I", "I"), ("3", "III"),
        ("not regulated", ""), ("IV", ""), ("", ""),
    ],
)  # fmt: skip
def test_a_packing_group_is_read_as_sheets_print_it(said: str, group: str) -> None:
    assert packing_group(said) == group
