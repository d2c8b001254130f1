"""A pourable answer is weighed against a label sheet: a stop gives no amount, a question is counted."""

import json
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from rootcollar.cli.main import cli
from rootcollar.exchange import write_demo
from rootcollar.exchange.start import DEMO_DAY


@pytest.fixture(scope="module")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's shelf of invented labels: basal bark 10 to 30 % in oil, leaves 1 to 2 % in water."""
    folder = tmp_path_factory.mktemp("woods") / "hobbin"
    write_demo(folder, DEMO_DAY)
    return folder / "shelf"


def figure(words: str, shelf: Path) -> Result:
    """Run a figure command; ESTER stands for the sheet of the invented ester."""
    words = words.replace("ESTER", shlex.quote(str(shelf / "triclopyr-ester-4-ec.toml")))
    return CliRunner(env={"COLUMNS": "110"}).invoke(cli, ["figure", *shlex.split(words)])


OIL = "mix --total '2.5 gal' --carrier oil --sheet ESTER --method basal-bark"


def test_a_mix_within_the_label_says_by_how_many_rules_it_was_weighed(shelf: Path) -> None:
    said = figure(f"{OIL} --percent 20", shelf)
    words = " ".join(said.stdout.split())
    assert said.exit_code == 0
    assert "weighed against the sheet of TRICLOPYR ESTER 4 EC (INVENTED LABEL, DEMO ONLY) by" in words
    assert "none of them objects" in words
    assert "Not weighed at the bench, because plant, place, people and sums count: L04" in words


@pytest.mark.parametrize(
    ("words", "rule", "why"),
    [
        (f"{OIL} --percent 30.0004", "L08", "30.0004% is above the label's strongest, 30% v/v"),
        (f"{OIL} --ratio 1:1", "L08", "50% is above the label's strongest, 30% v/v"),
        ("mix --percent 20 --total '1 gal' --sheet ESTER --method basal-bark", "L10", "not mixing with water"),
    ],
)
def test_what_the_label_forbids_gives_no_amount(words: str, rule: str, why: str, shelf: Path) -> None:
    said = figure(words, shelf)
    assert said.exit_code == 1
    assert said.stdout == ""
    assert why in said.stderr
    assert f"[{rule}, label page 6]" in said.stderr
    assert "fl oz" not in said.stderr


def test_a_percent_that_only_rounding_would_let_pass_is_stopped_and_told_apart(shelf: Path) -> None:
    assert figure(f"{OIL} --percent 30", shelf).exit_code == 0
    assert "30.0000001% is above the label's strongest, 30%" in figure(f"{OIL} --percent 30.0000001", shelf).stderr


def test_a_label_with_several_ways_asks_which(shelf: Path) -> None:
    said = figure("mix --percent 2 --total '4 gal' --sheet ESTER", shelf)
    assert said.exit_code == 2
    assert "basal-bark, cut-stump, foliar" in said.stderr


def test_a_line_nobody_has_read_stands_as_a_question_beside_the_answer(shelf: Path, tmp_path: Path) -> None:
    sheet = (shelf / "triclopyr-ester-4-ec.toml").read_text(encoding="utf-8")
    unread = tmp_path / "shelf" / "half-read.toml"
    unread.parent.mkdir()
    (tmp_path / "ground.toml").write_text("demo = true\n", encoding="utf-8")
    unread.write_text(sheet.replace("complete_booklet_read = true", "complete_booklet_read = false"), encoding="utf-8")
    said = figure(f"{OIL.replace('ESTER', shlex.quote(str(unread)))} --percent 20 --json", shelf)
    assert said.exit_code == 1
    body = json.loads(said.stdout)
    assert "1 question stands" in body["note"]
    assert [one["rule"] for one in body["verdicts"] if one["level"] == "ask"] == ["L01"]
    assert body["figures"]["product_ml"] > 0


def test_an_invented_sheet_outside_the_demo_is_a_stop(shelf: Path, tmp_path: Path) -> None:
    copied = tmp_path / "taken-along.toml"
    copied.write_bytes((shelf / "triclopyr-ester-4-ec.toml").read_bytes())
    said = figure(f"{OIL.replace('ESTER', shlex.quote(str(copied)))} --percent 20", shelf)
    assert said.exit_code == 1
    assert "placeholder" in said.stderr


def test_a_dose_takes_product_and_strength_from_the_sheet(shelf: Path) -> None:
    body = json.loads(figure("dose basal-bark --diameter '2 in' --count 120 --sheet ESTER --json", shelf).stdout)
    assert "the label allows 10 to 30 %" in body["assumed"][0]
    assert "triclopyr" in body["assumed"][0]


def test_a_weaker_mix_than_the_label_forbids_is_not_made_by_rounding_down(shelf: Path, tmp_path: Path) -> None:
    sheet = (shelf / "triclopyr-ester-4-ec.toml").read_text(encoding="utf-8")
    strict = tmp_path / "shelf" / "strict.toml"
    strict.parent.mkdir()
    (tmp_path / "ground.toml").write_text("demo = true\n", encoding="utf-8")
    strict.write_text(sheet.replace("less_than_low_forbidden = false", "less_than_low_forbidden = true"), "utf-8")
    words = OIL.replace("ESTER", shlex.quote(str(strict))).replace("2.5 gal", "3 qt")
    body = json.loads(figure(f"{words} --percent 10 --json", shelf).stdout)
    steps = " ".join(body["details"])
    true = float(steps.partition("By these marks: ")[2].partition("%")[0])
    assert 10 <= true <= 30


@pytest.mark.parametrize(
    ("words", "sensible"),
    [
        ("mix --percent 2 --total '1 gal' --method foliar", "both: the method says which"),
        ("rate --have '4 lb ae/gal' --want '3 lb ae/gal' --rate 2%", ""),
        ("mix --percent 2 --total '1 gal' --sheet no-such.toml --method foliar", "no such file"),
    ],
)
def test_options_that_do_not_fit_together_are_said(words: str, sensible: str, shelf: Path) -> None:
    said = figure(words, shelf)
    assert said.exit_code == (2 if sensible else 0)
    assert sensible in said.stderr
