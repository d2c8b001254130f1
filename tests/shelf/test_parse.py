"""A sheet as typed: three states kept apart, every fault found at once."""

from datetime import date
from typing import Any

import pytest

from rootcollar.kernel.errors import BadInput
from rootcollar.shelf import SILENT, Active, Distance, SiteLine, parse_sheet, unread
from tests.shelf.sample import sample_sheet, sample_table

HEAD = {"sheet": "label-sheet/1"}


def faults(**blocks: Any) -> list[str]:
    """Return the faults of a sheet with these blocks, as printed."""
    with pytest.raises(BadInput) as found:
        parse_sheet("jug", HEAD | blocks, "jug.toml")
    return [str(one) for one in found.value.faults]


def test_the_sample_is_read_line_by_line() -> None:
    sheet = sample_sheet()
    assert sheet.product.startswith("SAMPLE WOODY-STEM LIQUID")
    assert sheet.says("limits.per_application.amount") == 3.0
    assert sheet.says("proof.read_on") == date(2025, 5, 20)
    assert sheet.says("concentration.high", "foliar") == 2.0
    assert sheet.says("concentration.high", "cut_stump") == 100.0
    assert sheet.says("water.buffers_ft") == (Distance("surface water", 25.0, ("foliar",)),)
    assert sheet.says("ingredient") == (Active("exemplamine", "amine salt", 43.2, 31.0, 4.18, 3.0, None),)
    assert sheet.says("site")[2] == SiteLine("aquatic sites", "aquatic", False)


def test_silent_and_not_read_are_different() -> None:
    sheet = sample_sheet()
    silent, absent = sheet.line("weather.air_temp_f.low"), sheet.line("stem_diameter_in.high", "foliar")
    assert silent is not None and silent.says is SILENT
    assert absent is None
    assert sheet.says("weather.air_temp_f.low") is None and sheet.says("stem_diameter_in.high", "foliar") is None
    assert unread(sheet, "foliar") == [
        "method.stem_diameter_in.low", "method.stem_diameter_in.high", "method.season_exclude",
    ]  # fmt: skip


def test_an_entry_missing_in_an_ingredient_block_counts_as_not_read() -> None:
    sheet = parse_sheet("jug", HEAD | {"ingredient": [{"common_name": "exemplamine", "ae_percent": "silent"}]})
    (active,) = sheet.says("ingredient")
    assert active.ae_percent is None and active.ai_percent is None
    assert "ai_percent" in active.unread and "ae_percent" not in active.unread
    assert "ingredient.ai_percent" in unread(sheet, "foliar") and "ingredient.ae_percent" not in unread(sheet, "foliar")


def test_a_block_said_to_be_silent_makes_all_its_lines_silent() -> None:
    sheet = parse_sheet("jug", HEAD | {"weather": "silent", "limits": {"per_year": "silent"}, "site": "silent"})
    assert all(line.says is SILENT for line in sheet.lines.values())
    assert {"weather.wind_mph.high", "limits.per_year.unit", "site"} <= set(sheet.lines)
    assert "limits.basis" not in sheet.lines


def test_the_page_of_a_block_goes_with_its_lines() -> None:
    sheet = parse_sheet(
        "jug",
        HEAD
        | {
            "limits": {"page": 7, "basis": "ae", "per_year": {"amount": 6, "page": "8, table 2"}},
            "site": [{"words": "forests", "page": 3}, {"words": "parks", "page": 4}],
            "method": [{"kind": "foliar", "page": 5, "carrier": ["water"]}],
        },
    )
    pages = {path: line.page for path, line in sheet.lines.items()}
    assert pages == {"limits.basis": "7", "limits.per_year.amount": "8, table 2", "site": "3, 4"}
    line = sheet.line("carrier", "foliar")
    assert line is not None and line.page == "5"


@pytest.mark.parametrize(
    ("blocks", "says"),
    [
        ({"limits": {"per_yeer": {"amount": 6}}}, "limits.per_yeer: found the key per_yeer; allowed: limits.per_year"),
        ({"identiti": {}}, "identiti: found the key identiti; allowed: identity"),
        ({"entry": {"rei_hours": "12"}}, 'entry.rei_hours: found "12"; allowed: a plain number in h'),
        ({"entry": {"rei_hours": -1}}, "entry.rei_hours: found -1; allowed: a number of 0 or more"),
        ({"entry": {"rei_hours": float("nan")}}, "entry.rei_hours: found NaN; allowed: a plain number"),
        ({"entry": {"wps_box": "yes"}}, 'entry.wps_box: found "yes"; allowed: true, false'),
        ({"entry": {"rei_hours": True}}, "entry.rei_hours: found true; allowed: a plain number"),
        ({"limits": {"min_days_between": 1.5}}, "limits.min_days_between: found 1.5; allowed: a whole number"),
        ({"proof": {"read_on": "2025-02-30"}}, 'proof.read_on: found "2025-02-30"; allowed: a day of the calendar'),
        ({"hazard": {"category": {"eye": "V"}}}, 'hazard.category.eye: found "V"; allowed: I, II, III, IV'),
        ({"mixing": {"surfactant": {"percent": 101}}}, "mixing.surfactant.percent: found 101; allowed: a percent"),
        ({"limits": {"per_year": {"unit": "oz/acre"}}}, 'limits.per_year.unit: found "oz/acre"; allowed: lb/acre'),
        ({"ppe": {"mixing": "gloves"}}, 'ppe.mixing: found "gloves"; allowed: a list of texts'),
        ({"identity": {"states_ok": ["Ohio"]}}, 'identity.states_ok: found ["Ohio"]; allowed: states by their two'),
        ({"weather": {"wind_mph": {"low": 11, "high": 10}}}, "weather.wind_mph.low: found 11; allowed: at most"),
        ({"weather": {"wind_mph": 10}}, "weather.wind_mph: found 10; allowed: a block of low, high"),
        ({"method": [{"kind": "folair"}]}, 'method 1 kind: found "folair"; allowed: hack_squirt, cut_stump'),
        ({"method": [{}]}, "method 1 kind: found nothing; allowed: hack_squirt"),
        ({"method": [{"kind": "wipe"}, {"kind": "wipe"}]}, 'method 2 kind: found "wipe"; allowed: one block for each'),
        ({"method": {"kind": "wipe"}}, "allowed: blocks headed [[method]]"),
        ({"method": [{"kind": "foliar", "dose": {"amount": 1}}]}, "method foliar dose: found the key dose"),
        ({"method": [{"kind": "wipe", "concentration": {"low": 3, "high": 2}}]}, "low: found 3; allowed: at most"),
        ({"method": [{"kind": "wipe", "carrier": ["milk"]}]}, "allowed: a list of none, water, oil"),
        ({"site": []}, "allowed: blocks headed [[site]]"),
        ({"site": [{"class": "woods"}]}, 'site 1 class: found "woods"; allowed: forest, natural_area'),
        ({"ingredient": [{"ai_percent": 120}]}, "ingredient 1 ai_percent: found 120; allowed: a percent from 0 to 100"),
        ({"water": {"buffers_ft": [{"from": "well"}]}}, "water.buffers_ft: found"),
        ({"water": {"buffers_ft": [{"from": "well", "ft": 5, "methods": ["spray"]}]}}, "allowed: methods among"),
        ({"limits": {"page": 1.5, "basis": "ae"}}, "limits page: found 1.5; allowed: a page number"),
    ],
)  # fmt: skip
def test_a_mistake_is_named_with_what_is_allowed(blocks: dict[str, Any], says: str) -> None:
    (fault,) = faults(**blocks)
    assert fault.startswith("jug.toml, ") and says in fault


def test_all_mistakes_are_named_at_once() -> None:
    found = faults(entry={"rei_hours": "x", "wps_box": 1}, weather={"wind": 3}, method=[{"kind": "?"}])
    assert len(found) == 4


@pytest.mark.parametrize("said", ["label-sheet/2", None])
def test_a_sheet_of_another_version_is_refused(said: str | None) -> None:
    with pytest.raises(BadInput, match='sheet = "label-sheet/1" as the first line'):
        parse_sheet("jug", {"sheet": said} if said else {}, "jug.toml")


def test_every_line_of_the_sample_refuses_a_value_of_no_kind() -> None:
    table = sample_table()
    count = 0
    for block in ("identity", "entry", "limits", "weather", "water", "soil", "mixing"):
        for name in table[block]:
            with pytest.raises(BadInput):
                parse_sheet("jug", HEAD | {block: {name: object()}})
            count += 1
    assert count > 50
