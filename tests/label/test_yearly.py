"""What counts towards a year's most: every product of one acid, in acid, on the ground that was worked.

Truth: pounds and gallons are exact (453.59237 g, 3785.411784 mL); 1 lb of a 5.56 lb ai/gal ester that holds
4.00 lb ae/gal is 4/5.56 lb of acid; the departures are those of 7 U.S.C. 136(ee), which lets a lower frequency pass and
no higher one.
"""

from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from rootcollar.choose import prescribe, unit_totals
from rootcollar.exchange import read_folder, write_demo
from rootcollar.exchange.applied_file import read_applied
from rootcollar.kernel.errors import BadInput
from rootcollar.kernel.verdict import Level
from rootcollar.label import Applied, Past, Work
from rootcollar.shelf import SILENT, Active, Line, Sheet
from tests.choose.hobbin import hobbin, only, retyped, setting_of, with_units
from tests.label.sample import ACRE_M2, DAY, applied, lines, said, total, whole

LB_G, GAL_ML = 453.59237, 3785.411784
JUNE = date(2026, 6, 1)
HEAD = "date,unit,product,ingredient,amount of product,strength,area\n"
ESTER = Active("triclopyr", "ester", 61.6, 44.3, 5.56, 4.0, "4")
ONLY_AI = Active("triclopyr", "ester", None, None, 5.56, None, "4")


def sheet(key: str, *inside: Active, number: str = "00000-00011") -> Sheet:
    """Return a label that names some active ingredients."""
    return Sheet(key, {"ingredient": Line(inside), "identity.epa_reg_no": Line(number)})


def rows(row: str, *shelf: Sheet) -> tuple[Applied, ...]:
    """Return what a row of applied.csv says."""
    return read_applied(HEAD + row + "\n", "applied.csv", {"bench": "Bench"}, {one.key: one for one in shelf})[0]


def past(*of: Applied, complete: bool | None = True) -> Any:
    """Return the fact of what was applied before."""
    return lines(history__past=Past(of, complete, DAY))


@pytest.mark.parametrize(
    ("row", "shelf", "pounds", "known"),
    [
        ("2026-06-01,bench,,triclopyr,1 gal,4 lb ae/gal,1 ac", (), 4.0, True),
        ("2026-06-01,bench,,triclopyr,1 lb ai,,1 ac", (), 1.0, False),
        ("2026-06-01,bench,e,triclopyr,1 lb ai,,1 ac", (sheet("e", ESTER),), 4.0 / 5.56, True),
        ("2026-06-01,bench,e,triclopyr,1 gal,5.56 lb ai/gal,1 ac", (sheet("e", ESTER),), 4.0, True),
        ("2026-06-01,bench,e,triclopyr,1 gal,,1 ac", (sheet("e", ESTER),), 4.0, True),
        ("2026-06-01,bench,e,triclopyr,1 gal,,1 ac", (sheet("e", ONLY_AI),), 5.56, False),
        # 256.463 / 356.624 of the butoxyethyl ester is acid, by molecular weight
        ("2026-06-01,bench,,triclopyr BEE,1 lb ai,,1 ac", (), 0.7191, True),
        ("2026-06-01,bench,,hexazinone,1 lb ai,,1 ac", (), 1.0, True),
        ("2026-06-01,bench,00000-11-00034,triclopyr,1 gal,,1 ac", (sheet("e", ESTER, number="00000-11"),), 4.0, True),
    ],
)
def test_every_row_is_counted_as_acid_where_its_acid_is_known(
    row: str, shelf: tuple[Sheet, ...], pounds: float, known: bool
) -> None:
    (one,) = rows(row, *shelf)
    assert one.ae_g == pytest.approx(pounds * LB_G, rel=1e-4)
    assert one.acid_known is known


def test_a_product_of_two_ingredients_counts_for_both() -> None:
    """A gallon of 1 lb ae of one and 2 lb ae of the other."""
    both = sheet(
        "both", Active("triclopyr", "salt", None, None, None, 1.0), Active("2,4-D", "salt", None, None, None, 2.0)
    )
    found = {one.ingredient: one.ae_g for one in rows("2026-06-01,bench,both,triclopyr,2 gal,,1 ac", both)}
    assert found == pytest.approx({"triclopyr": 2 * LB_G, "2-4-d": 4 * LB_G})
    by_weight = {one.ingredient: one.ae_g for one in rows("2026-06-01,bench,both,triclopyr,2 lb ae,,1 ac", both)}
    assert by_weight == pytest.approx(found)


def test_the_second_ingredient_of_a_product_is_never_taken_for_none() -> None:
    half = sheet("half", Active("triclopyr", "salt", None, None, None, 1.0), Active("2,4-D", "salt"))
    other = next(one for one in rows("2026-06-01,bench,half,triclopyr,2 gal,,1 ac", half) if one.ingredient == "2-4-d")
    assert other.ae_g is None
    verdict = said(whole() | past(applied(JUNE, ae_g=None)))["L13"]
    assert verdict.level is Level.ASK and "2026-06-01" in verdict.because and not verdict.answerable


def test_an_ingredient_that_is_not_in_the_product_is_a_fault() -> None:
    with pytest.raises(BadInput) as caught:
        rows("2026-06-01,bench,e,glyphosate,1 gal,,1 ac", sheet("e", ESTER))
    assert caught.value.faults[0].field == "ingredient" and "triclopyr" in caught.value.faults[0].allowed


def test_salts_and_esters_of_one_acid_add_up_against_one_maximum() -> None:
    """The sample: 6 lb ae an acre a year. 3 lb of acid in June and 3.2 lb now are too much, by whatever product."""
    now = lines(total__work=Work(total(3.1 * LB_G / 359.479 * 1000)))
    others = past(applied(JUNE, 3 * LB_G, product="another salt"))
    assert said(whole() | now)["L13"].level is Level.OK
    assert said(whole() | others)["L13"].level is Level.OK
    assert said(whole() | now | others)["L13"].level is Level.STOP


@pytest.mark.parametrize(
    ("known", "pounds", "level"),
    [
        (True, 5.9, Level.STOP),  # acid: 5.9 and 0.16 lb pass 6
        (False, 5.9, Level.ASK),  # active: it may be less acid than that
        (False, 5.8, Level.OK),  # even all of it as acid keeps to 6
        (False, 50.0, Level.ASK),
    ],
)
def test_active_whose_acid_is_not_known_asks_only_where_it_matters(known: bool, pounds: float, level: Level) -> None:
    verdict = said(whole() | past(applied(JUNE, pounds * LB_G, acid_known=known)))["L13"]
    assert verdict.level is level


def test_a_label_that_counts_active_takes_the_others_acid_through_its_own_salt() -> None:
    """The sample's salt: 4.18 lb ai hold 3.00 lb ae. 4.2 lb ae of another are 5.852 lb of it; the limit is 6."""
    by_ai = lines(sheet__limits__basis="ai")
    little = lines(total__work=Work(total(10.0)))
    assert said(whole() | by_ai | little | past(applied(JUNE, 4.2 * LB_G)))["L13"].level is Level.OK
    assert said(whole() | by_ai | little | past(applied(JUNE, 4.32 * LB_G)))["L13"].level is Level.STOP


def test_a_plan_whose_acid_is_not_known_counts_its_own_product_and_asks_of_others() -> None:
    unknown = replace(total(), acid_known=False, product="own")
    work = lines(total__work=Work(unknown))
    same = past(applied(JUNE, 1 * LB_G, acid_known=False, product="own"))
    other = past(applied(JUNE, 1 * LB_G, product="another"))
    assert said(whole() | work | same)["L13"].level is Level.OK
    assert said(whole() | work | other)["L13"].level is Level.ASK
    beside = lines(total__work=Work(unknown, (total(),)))
    for number in ("L12", "L13"):
        assert said(whole() | beside)[number].level is Level.ASK


def test_what_may_be_missing_names_who_may_have_put_it_on() -> None:
    for number in ("L13", "L14", "L15"):
        verdict = said(whole() | past(complete=None))[number]
        assert verdict.level is Level.ASK
        for who in ("contractors", "tenants", "utilities"):
            assert who in verdict.because and who in verdict.clear


def test_no_earlier_work_is_thinned_over_more_ground_than_the_unit_has() -> None:
    """5.9 lb on a unit of an acre, said to lie on 10 acres."""
    wide = past(applied(JUNE, 5.9 * LB_G, 10 * ACRE_M2))
    assert said(whole() | wide)["L13"].level is Level.STOP


@pytest.mark.parametrize(("before", "level"), [(1, Level.OK), (2, Level.STOP)])
def test_one_more_application_than_allowed_is_a_stop_and_no_departure(before: int, level: Level) -> None:
    """The sample gives two in a year; this plan is one more."""
    done = [applied(date(2026, 1 + one, 2), 1.0) for one in range(before)]
    assert said(whole() | past(*done))["L14"].level is level


def test_the_worked_ground_is_the_ground_that_counts() -> None:
    """By hand: the same mix on a quarter of the ground comes to four times as much an acre."""
    words = []
    for treated in (ACRE_M2, ACRE_M2 / 4):
        work = lines(total__work=Work(total(4_000.0, treated_m2=treated)))
        words.append(said(whole() | work)["L12"])
    assert "3.17 lb ae/ac" in words[0].because and "all 1 ac of the unit" in words[0].because
    assert "12.7 lb ae/ac" in words[1].because and "the 0.25 ac worked" in words[1].because
    site = lines(sheet__limits__area_basis="site_acre", total__work=Work(total(3_700.0, treated_m2=ACRE_M2 / 4)))
    assert said(whole() | site)["L12"].level is Level.OK


def test_a_label_that_does_not_say_which_acre_asks_with_both() -> None:
    work = lines(total__work=Work(total(400.0, treated_m2=ACRE_M2 / 4)), sheet__limits__area_basis=SILENT)
    verdict = said(whole() | work)["L16"]
    assert verdict.level is Level.ASK
    assert "1.27 lb ae/ac on the 0.25 ac worked" in verdict.because
    assert "0.317 lb ae/ac on the unit's 1 ac" in verdict.because


def test_worked_ground_reaches_the_sums_of_a_plan() -> None:
    project = with_units(only(hobbin(), "ridge"), "ridge", worked_m2=2 * ACRE_M2)
    setting = setting_of(project)
    for one in unit_totals(prescribe(project.stands, setting).choices, setting):
        assert one.treated_m2 == 2 * ACRE_M2 and one.product in {"", *project.shelf}


def test_a_sheet_that_counts_active_is_planned_in_acid_by_its_percents() -> None:
    """61.6 % ester of which 44.3 points are acid: 5.56 lb ai/gal hold 5.56 * 44.3 / 61.6 = 3.9985 lb ae/gal."""
    project = only(hobbin(), "ridge")
    ester = project.shelf["triclopyr-ester-4-ec"]
    shelf = {**project.shelf, ester.key: retyped(ester, ingredient=(replace(ESTER, ae_lb_per_gal=None),))}
    setting = setting_of(replace(project, shelf=shelf))
    (one,) = [
        one for one in unit_totals(prescribe(project.stands, setting).choices, setting) if one.product == ester.key
    ]
    assert one.acid_known and one.ae_g_per_l == pytest.approx(3.9985 * LB_G / GAL_ML * 1000, rel=1e-4)


@pytest.mark.parametrize(("worked", "fault"), [("21 ac", False), ("21.5 ac", True), ("0 ac", True), ("1.5 ac", False)])
def test_worked_ground_larger_than_the_unit_is_a_fault(tmp_path: Path, worked: str, fault: bool) -> None:
    """The bench has 20.2 acres; a twentieth more is how far tape and drawing differ, and counts as all of it."""
    folder = tmp_path / "woods"
    write_demo(folder, DAY)
    ground = folder / "ground.toml"
    ground.write_text(ground.read_text(encoding="utf-8").replace('worked = "9 ac"', f'worked = "{worked}"'), "utf-8")
    if fault:
        with pytest.raises(BadInput) as caught:
            read_folder(folder)
        (one,) = caught.value.faults
        assert "bench" in one.row and one.field == "worked"
        return
    bench = read_folder(folder).ground.units["bench"]
    assert bench.worked_m2 is not None and bench.area_m2 is not None and bench.worked_m2 <= bench.area_m2
