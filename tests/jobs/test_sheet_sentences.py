"""What may be wrong with a sheet or its jug: each has a sentence of its own and a way out."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from rootcollar.choose import prescribe
from rootcollar.exchange import read_folder, write_demo
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.jobs.plan import setting_of
from rootcollar.kernel.doubt import Doubt
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.shelf import Lot, Stock
from rootcollar.work import Project
from tests.choose.hobbin import DAY, FEW, only, retyped
from tests.choose.hobbin import hobbin as demo

ESTER = "triclopyr-ester-4-ec"
_KEPT = ("glyphosate-3-sl",)


def said(project: Project, rule: str) -> list[Verdict]:
    """Return what a rule says of the plan of a project, at most once in the same words; set-aside stops too."""
    setting = replace(setting_of(project, DAY), doubt=Doubt(project.ground.seed, FEW))
    plan = prescribe([replace(one, stems=one.stems[: FEW + 1]) for one in project.stands[:4]], setting)
    spoken = [one for line in plan.choices for one in line.verdicts]
    spoken += [aside.stop for line in plan.choices for aside in line.set_aside if aside.stop]
    return list({one.because: one for one in spoken if one.rule == rule and one.level > Level.WARN}.values())


def one_sheet(**says: Any) -> Project:
    """Return the ridge with one sheet on its shelf, some lines of it changed."""
    project = only(demo(), "ridge")
    return replace(project, shelf={key: retyped(project.shelf[key], **says) for key in _KEPT}, stock=None)


def test_a_sheet_typed_half_asks_line_by_line_where_to_type_it() -> None:
    half = one_sheet(hazard__signal_word=None, mixing__metal_forbidden=None)
    for rule, name in (("L20", "hazard.signal_word"), ("L49", "mixing.metal_forbidden")):
        (one,) = said(half, rule)
        assert one.level is Level.ASK and one.because.startswith("not known yet: ")
        assert one.clear == f"read it on the label and type {name.split('.', 1)[0]}.{name.split('.', 1)[1]} in " \
            "shelf/glyphosate-3-sl.toml"  # fmt: skip
    (front,) = said(one_sheet(proof__complete_booklet_read=False), "L01")
    assert "only part of the label has been read" in front.because and "booklet_read = true" in front.clear


def test_two_sheets_with_one_number_ask_which_jug_and_a_local_need_number_makes_another_label() -> None:
    project = one_sheet()
    (key,) = _KEPT
    twin = replace(project.shelf[key], key="again")
    found = said(replace(project, shelf={**project.shelf, "again": twin}), "L60")
    assert {one.level for one in found} == {Level.ASK}
    assert all("same registration number (" in one.because for one in found)
    assert all("leave one sheet of the number" in one.clear for one in found)
    local = replace(retyped(twin, identity__sln_no="WI-000000"), key="again")
    assert not said(replace(project, shelf={**project.shelf, "again": local}), "L60")


def test_a_booklet_of_another_version_asks_which_jug() -> None:
    (key,) = _KEPT
    project = replace(one_sheet(), stock=Stock((Lot(key, 500.0, label_version="2019-03"),)))
    (one,) = said(project, "L60")
    assert one.level is Level.ASK and one.answerable
    assert "typed from the label demo-1; the shed has a jug with the label 2019-03" in one.because
    assert "stock.csv" in one.clear
    assert not said(replace(project, stock=Stock((Lot(key, 0.0, label_version="2019-03"),))), "L60")


def test_a_placeholder_number_on_real_ground_stops() -> None:
    project = one_sheet()
    (one,) = said(replace(project, ground=replace(project.ground, demo=False)), "L03")
    assert one.level is Level.STOP and "00000-00014 is a placeholder" in one.because
    assert one.clear == "type a sheet from the label of your own jug"


def test_a_state_the_product_is_not_registered_in_stops_with_whom_to_ask() -> None:
    project = one_sheet()
    (one,) = said(replace(project, ground=replace(project.ground, state="NY")), "L04")
    assert one.level is Level.STOP and "the ground lies in NY" in one.because
    assert one.clear.startswith("ask the pesticide agency of NY")


def test_a_product_past_the_day_on_its_label_stops() -> None:
    (one,) = said(one_sheet(identity__not_for_use_after=DAY.replace(year=DAY.year - 1)), "L50")
    assert one.level is Level.STOP and "the work is planned for 2026-09-15" in one.because
    assert "later" in one.clear


def test_each_of_these_has_a_sentence_of_its_own() -> None:
    project = one_sheet()
    sentences = [
        *(one.because for one in said(one_sheet(hazard__signal_word=None), "L20")),
        *(one.because for one in said(replace(project, ground=replace(project.ground, demo=False)), "L03")),
        *(one.because for one in said(replace(project, ground=replace(project.ground, state="NY")), "L04")),
        *(one.because for one in said(replace(project, crew=replace(project.crew, aboard=replace(
            project.crew.aboard, labels=None))), "L53")),
    ]  # fmt: skip
    assert len(sentences) == len(set(sentences)) == 4


@pytest.mark.parametrize(("there", "word"), [(True, None), (False, Level.ASK)])
def test_a_photograph_of_the_label_goes_along_only_if_it_is_in_the_folder(
    tmp_path: Path, there: bool, word: Level | None
) -> None:
    folder = tmp_path / "wood"
    write_demo(folder, DEMO_DAY)
    crew = folder / "crew.toml"
    crew.write_text(crew.read_text(encoding="utf-8").replace("labels = true\n", ""), encoding="utf-8")
    for sheet in (folder / "shelf").glob("*.toml"):
        sheet.write_text(sheet.read_text(encoding="utf-8").replace("photos = []", 'photos = ["front.jpg"]'), "utf-8")
    if there:
        (folder / "shelf" / "front.jpg").write_bytes(b"a picture")
    found = said(only(read_folder(folder), "ridge"), "L53")
    assert {one.level for one in found} == ({word} if word else set())
    assert all("front.jpg are not in the folder" in one.because for one in found)
