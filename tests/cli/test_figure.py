"""The bench of quick questions: one answer, its working, its sources, and no answer where none can be given."""

import json
import re
import shlex
from typing import Any

import pytest
from click.testing import CliRunner, Result
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.cli.main import cli
from rootcollar.cli.show import working_lines
from rootcollar.kernel.formula import FORMULAS, evaluate
from rootcollar.reference import load
from tests import draws

KEYS = {
    "schema", "question", "given", "says", "value", "unit", "low", "high", "figures", "details", "assumed", "cautions",
    "note", "verdicts", "working", "sources",
}  # fmt: skip
NODE_KEYS = {"formula", "says", "inputs", "result", "unit", "source", "steps"}
SOURCE_KEYS = {"key", "cite", "url", "mark"}
MARKS = {"", "read", "practice", "reckoned", "ours", "memory"}
ASKED = [
    "mix --percent 3 --total '3 gal'",
    "mix --ratio 1:4 --total '1 L' --carrier oil",
    "mix --percent 2 --add-to '4 gal'",
    "mix --percent 2 --total '80 gal' --tank '4 gal' --strength '3 lb ae/gal'",
    "mix --strength '480 g ae/L' --want-ae '96 g ae/L' --total '2.5 gal'",
    "mix --percent 100 --total '1 qt'",
    "mix --rate '2 qt/ac' --output '25 gal/ac' --total '4 gal' --tank '4 gal'",
    "mix --rate '1.5 lb ae/ac' --strength '4 lb ae/gal' --output '200 L/ha' --total '15 L'",
    "mix --active-percent 1 --strength '4 lb ai/gal' --total '1 gal'",
    "mix --weight-percent 1 --total '1 gal'",
    "mix --rate '2 oz wt/ac' --output '25 gal/ac' --total '4 gal'",
    "dose basal-bark --diameter '2 in' --count 120",
    "dose basal-bark --diameter '3 in' --bark rough",
    "dose drill --diameter '6 in' --hole '3/8 in x 2 in' --each '1 mL' --count 12",
    "dose basal-bark --diameter '1-2 in' --count 40 --strength 20% --band '15 in'",
    "dose hack-squirt --diameter '6 in' --count 10",
    "dose hack-squirt --diameter '15 cm' --count 10 --spacing '3 in' --product imazapyr-ipa-4-sl --strength 50",
    "dose cut-stump --diameter '10-20 cm' --count 5",
    "dose cut-stump --diameter '3 in' --carrier oil",
    "dose foliar --crown '4 ft' --count 200 --strength 2",
    "dose vine --diameter '1 in' --count 30",
    "rate --have '4.5 lb ae/gal' --want '4.0 lb ae/gal' --rate '32 fl oz/ac'",
    "rate --have '3 lb ae/gal' --want '4 lb ae/gal' --rate 20%",
    "rate --have '4 lb ae/gal' --rate '1.5 lb ae/ac'",
    "rate --have '480 g ae/L' --want '360 g ae/L' --rate '4 L/ha'",
]


def figure(words: str | list[str]) -> Result:
    """Run a figure command."""
    split = shlex.split(words) if isinstance(words, str) else words
    return CliRunner(env={"COLUMNS": "100"}).invoke(cli, ["figure", *split])


def asked(words: str) -> dict[str, Any]:
    """Run a figure command and return its JSON."""
    said = figure(f"{words} --json")
    assert said.exit_code == 0, said.output
    body: dict[str, Any] = json.loads(said.stdout)
    return body


def nodes(tree: dict[str, Any]) -> list[dict[str, Any]]:
    """Return every node of a working."""
    return [tree, *(below for step in tree["steps"] for below in nodes(step))]


def redone(body: dict[str, Any]) -> int:
    """Work every formula of an answer out again from its own inputs; return how many there were."""
    steps = [node for node in nodes(body["working"]) if node["formula"] in FORMULAS]
    for node in steps:
        assert float(evaluate(node["says"], node["inputs"])) == pytest.approx(node["result"], rel=1e-9)
    return len(steps)


def held_together(words: str) -> int:
    """Ask, and see that the answer has every key, marks and sources that are known, and a working that leads to it.

    Return how many formulas were worked out again.
    """
    body = asked(words)
    assert set(body) == KEYS
    assert body["schema"] == f"rootcollar/figure-{words.split()[0]}/1"
    assert body["working"]["result"] == body["value"]
    assert {node["source"]["mark"] for node in nodes(body["working"])} <= MARKS
    assert {one["key"] for one in body["sources"]} <= set(load().sources)
    return redone(body)


def answered_first(words: str) -> str:
    """Ask in plain words, see that the answer is the first line, and return all that was said."""
    said, body = figure(words).stdout, asked(words)
    assert " ".join(said.partition("\n\n")[0].split()) == f"{body['says']} ({body['note']})."
    return said


@pytest.mark.parametrize("words", ASKED)
def test_json_has_every_key_and_a_whole_tree(words: str) -> None:
    body = asked(words)
    assert set(body) == KEYS
    assert body["schema"] == f"rootcollar/figure-{words.split()[0]}/1"
    assert body["note"] == "not checked against a label"
    assert body["working"]["result"] == body["value"]
    every = nodes(body["working"])
    assert len(every) > 1
    for node in every:
        assert set(node) == NODE_KEYS
        assert set(node["source"]) == SOURCE_KEYS
        assert node["source"]["mark"] in MARKS
    listed = {source["key"] for source in body["sources"]}
    assert listed == {node["source"]["key"] for node in every} - {""}
    assert listed <= set(load().sources)


@pytest.mark.parametrize("words", ASKED)
def test_every_step_of_the_working_can_be_redone_from_its_own_inputs(words: str) -> None:
    assert redone(asked(words))


@pytest.mark.parametrize("words", ASKED)
def test_the_answer_comes_first_and_says_it_met_no_label(words: str) -> None:
    said, body = figure(words).stdout, asked(words)
    first = " ".join(said.partition("\n\n")[0].split())
    assert first == f"{body['says']} (not checked against a label)."
    for heading in ("\nHow\n", "\nAssumed\n", "\nSources\n", "\nMind\n"):
        assert heading in said
    assert said.index("\nHow\n") < said.index("\nSources\n") < said.index("\nMind\n")


@pytest.mark.parametrize("words", ASKED)
def test_what_can_be_poured_names_the_strength_it_assumed_and_the_gloves(words: str) -> None:
    body = asked(words)
    assert body["assumed"][0].startswith("strength ")
    assert re.search(r"[0-9.]+ ?(%|lb)", body["assumed"][0])
    assert any("gloves" in caution for caution in body["cautions"])
    assert any("eyes" in caution for caution in body["cautions"])
    assert "riskiest moment" in figure(words).stdout


def test_the_list_of_steps_puts_what_is_worked_out_first_before_what_rests_on_it() -> None:
    steps = asked("dose basal-bark --diameter '2 in' --count 120")["working"]["steps"]
    lines = [line for _, line in working_lines(steps)]
    assert any(line.startswith("line mix ml = stems * mix ml = 120 * ") for line in lines)
    band, coverage = (next(at for at, line in enumerate(lines) if word in line) for word in ("pi * 5.08", "area cm2 *"))
    assert band < coverage
    assert len(lines) == len(set(lines))


# Published worked examples, end to end.


@pytest.mark.parametrize(
    ("words", "value", "unit", "within"),
    [
        ("mix --percent 0.5 --total '2 gal'", 1.28, "fl oz", 0.005),  # UIUC06: 256 fl oz times 0.005
        ("mix --percent 20 --total '1 L' --carrier oil", 200, "mL", 1e-6),  # NZ-WC: 200 and 800 mL
        ("mix --percent 30 --total '1 L' --carrier oil", 300, "mL", 1e-6),  # NZ-WC: 300 and 700 mL
        ("mix --percent 20 --total '2.5 gal' --carrier oil", 64, "fl oz", 1e-6),  # convention of UIUC06
        ("mix --percent 15% --total '1 gal' --carrier oil", 19, "fl oz", 0.5),  # TX-TAL: 19 fl oz a gallon
        ("mix --percent 25% --total '1 gal' --carrier oil", 32, "fl oz", 0.5),  # TX-TAL: 32 fl oz a gallon
        ("mix --percent 20 --add-to '1 gal' --carrier oil", 32, "fl oz", 0.01),  # arithmetic: D p / (1 - p)
        ("mix --percent 2 --add-to '4 gal'", 10.45, "fl oz", 0.005),  # arithmetic
        ("mix --strength '480 g ae/L' --want-ae '96 g ae/L' --total '1 L'", 200, "mL", 1e-6),  # ENLOE23: 20 %
        ("rate --have '4.5 lb ae/gal' --want '4.0 lb ae/gal' --rate '32 fl oz/ac'", 28.444, "fl oz/ac", 0.001),
        ("rate --have '4.5 lb ae/gal' --want '3 lb ae/gal' --rate '32 fl oz/ac'", 21.333, "fl oz/ac", 0.001),
        ("rate --have '4 lb ae/gal' --rate '1 lb ae/ac'", 32, "fl oz/ac", 1e-6),  # PNW: 2 pints an acre
        ("rate --have '4 lb ae/gal' --rate '1.5 lb ae/ac'", 48, "fl oz/ac", 1e-6),  # rule of PNW
    ],
)
def test_a_printed_example_comes_out_as_printed(words: str, value: float, unit: str, within: float) -> None:
    body = asked(words)
    assert body["value"] == pytest.approx(value, abs=within)
    assert body["unit"] == unit


def test_six_inches_at_one_cut_an_inch_take_six_cuts_of_a_millilitre() -> None:
    body = asked("dose hack-squirt --diameter '6 in' --strength 50% --product glyphosate-ipa-4-sl")  # rule of PNW-STEM
    assert body["figures"]["per_stem_ml"] == pytest.approx(6)
    assert body["figures"]["product_ml"] == pytest.approx(3)


def test_loads_come_out_as_reckoned() -> None:
    body = asked("mix --percent 2 --total '80 gal' --tank '4 gal'")
    assert len(body["figures"]["loads_ml"]) == 20
    assert body["value"] == pytest.approx(204.8)
    rest = asked("mix --percent 3 --total '37.5 gal' --tank '4 gal'")["figures"]["loads_ml"]
    assert [round(load / 3785.411784, 6) for load in rest] == [4.0] * 9 + [1.5]


# Laws.


@given(pct=st.floats(0.25, 99), gallons=st.floats(0.5, 50))
@settings(max_examples=draws.of(60))
def test_no_jug_step_makes_a_mix_stronger_than_asked(pct: float, gallons: float) -> None:
    said = figure(["mix", "--percent", f"{pct:.3f}", "--total", f"{gallons:.3f} gal"])
    assert said.exit_code == 0
    trues = re.findall(r"By these marks: ([0-9.]+)%", " ".join(said.stdout.split()))  # lines are wrapped
    assert trues
    assert all(float(true) <= float(f"{pct:.3g}") for true in trues)


@given(pct=st.floats(0.25, 80), gallons=st.floats(0.5, 50))
@settings(max_examples=draws.of(40))
def test_on_top_of_a_diluent_makes_the_same_mix_as_of_the_whole(pct: float, gallons: float) -> None:
    on_top = asked(f"mix --percent {pct:.3f} --add-to '{gallons:.3f} gal'")["figures"]
    whole = asked(f"mix --percent {pct:.3f} --total '{on_top['total_ml']:.6f} mL'")["figures"]
    assert whole["product_ml"] == pytest.approx(on_top["product_ml"], rel=1e-6)
    assert on_top["true_pct"] <= on_top["strength_pct"] * (1 + 1e-9)


def test_twice_the_stems_take_twice_the_mix_and_the_band_holds_the_best() -> None:
    once, twice = (asked(f"dose basal-bark --diameter '2 in' --count {many}") for many in (60, 120))
    assert twice["value"] == pytest.approx(2 * once["value"])
    assert twice["low"] < twice["value"] < twice["high"]
    assert asked("dose hack-squirt --diameter '6 in'")["low"] == asked("dose hack-squirt --diameter '6 in'")["high"]


def test_metric_questions_get_metric_answers() -> None:
    assert asked("dose cut-stump --diameter '10 cm'")["unit"] == "L"
    assert asked("dose cut-stump --diameter '4 in'")["unit"] == "gal"
    assert "200 mL (6.76 fl oz) of product" in figure("mix --percent 20 --total '1 L'").stdout


def test_a_dose_names_its_coverage_and_how_to_replace_it() -> None:
    said = " ".join(figure("dose basal-bark --diameter '2 in' --strength 20").stdout.split())
    assert "Rests on: small-orifice cone nozzle" in said
    assert "for mixes of 10 to 30 % only" in said
    assert "Proving batch: mix a quart" in said
    assert "20% of triclopyr ester (BEE) 4 lb ae/gal EC" in said


def test_a_band_a_spacing_and_a_dose_of_ones_own_count() -> None:
    assert asked("dose basal-bark --diameter '2 in' --band '24 in'")["value"] == pytest.approx(
        2 * asked("dose basal-bark --diameter '2 in'")["value"]
    )
    wide = asked("dose hack-squirt --diameter '9 in' --spacing '3 in' --each '0.5 mL'")["figures"]
    assert wide["per_stem_ml"] == pytest.approx(3 * 0.5)


# Refusals: one helpful sentence each.


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("mix --percent 120 --total '3 gal'", "at most 100"),
        ("mix --percent 3 --total '32 oz'", "fl oz, a volume, or oz wt, a weight?"),
        ("mix --percent -3 --total '3 gal'", "--percent"),
        ("mix --percent 0 --total '3 gal'", "more than 0"),
        ("mix --percent 3 --total '0 gal'", "more than 0"),
        ("mix --percent 3 --total '-3 gal'", "0 or more"),
        ("mix --percent 3 --total 3", "has no unit"),
        ("mix --percent 3 --total '3 lb'", "a volume"),
        ("mix --percent 3 --ratio 1:4 --total '3 gal'", "--percent and --ratio"),
        ("mix --total '3 gal'", "--percent 20, --ratio 1:4"),
        ("mix --percent 3", "--total for the finished mix"),
        ("mix --percent 3 --total '3 gal' --add-to '3 gal'", "--total and --add-to"),
        ("mix --percent 3 --add-to '3 gal' --tank '4 gal'", "--add-to with --tank"),
        ("mix --percent 100 --add-to '3 gal'", "no longer 100 %"),
        ("mix --ratio 20% --total '3 gal'", "such as 1:4"),
        ("mix --ratio 4:1 --total '3 gal'", "--ratio"),
        ("mix --ratio 0:1 --total '3 gal'", "--ratio"),
        ("mix --want-ae '96 g ae/L' --total '3 gal'", "acid in the product as sold"),
        ("mix --want-ae '96 g ae/L' --strength '480 g/L' --total '3 gal'", "ae/gal for acid equivalent"),
        ("mix --want-ae '96 g ai/L' --strength '480 g ae/L' --total '3 gal'", "weigh differently"),
        ("mix --want-ae '500 g ae/L' --strength '480 g ae/L' --total '3 gal'", "the product itself holds"),
        ("mix --percent 0.01 --total '1 fl oz'", "to measure"),
        ("mix --percent 3 --total '3000 gal' --tank '1 fl oz'", "more than 1000"),
        ("mix --percent 3 --total '3 mL' --tank '0.1 mL'", "holds less than can be measured"),
        ("rate --have '4.5 lb/gal' --want '4 lb ae/gal' --rate '32 fl oz/ac'", "the label says which"),
        ("rate --have '4.5 lb ae/gal' --want '4 lb ai/gal' --rate '32 fl oz/ac'", "weigh differently"),
        ("rate --have '4.5 lb ae/gal' --rate '32 fl oz/ac'", "the rate is printed for"),
        ("rate --have '4.5 lb ae/gal' --want '4 lb ae/gal' --rate '1 lb ae/ac'", "leave --want out"),
        ("rate --have '4.5 lb ae/gal' --rate '1 lb ai/ac'", "weigh differently"),
        ("rate --have '4.5 lb ae/gal' --rate '1 lb/ac'", "weigh differently"),
        ("rate --have '4.5 lb ae/gal' --want '4 lb ae/gal' --rate '32 oz/ac'", "a weight?"),
        ("rate --have '4.5 lb ae/gal' --want '4 lb ae/gal' --rate 32", "a rate, such as"),
        ("rate --have '2 lb ae/gal' --want '4 lb ae/gal' --rate 80%", "even undiluted"),
        ("dose basal-bark", "the stem's diameter"),
        ("dose basal-bark --diameter 2", "has no unit"),
        ("dose basal-bark --diameter '9 in'", "hack-and-squirt or cut stump"),
        ("dose basal-bark --diameter '2 in' --strength 7", "proving batch"),
        ("dose basal-bark --diameter '2 in' --count 1.5", "a whole number of stems"),
        ("dose basal-bark --diameter '2 in' --crown '4 ft'", "Leave --crown out"),
        ("dose hack-squirt --diameter '6 in' --band '12 in'", "Leave --band out"),
        ("dose foliar", "the width of the leaves"),
        ("dose foliar --crown '4 ft' --diameter '2 in'", "Leave --diameter out"),
        ("dose cut-stump --diameter '3 in' --product nonsense", "nonsense"),
        ("dose cut-stump --diameter '3 in' --product metsulfuron-methyl-60-wg --strength 3", "no liquid"),
        ("dose basal-bark --diameter '2 in' --product triclopyr-bee-0.75-rtu --strength 20", "never thinned"),
    ],
)
def test_a_question_that_cannot_be_answered_gets_one_helpful_sentence(words: str, told: str) -> None:
    said = figure(words)
    assert said.exit_code == 2, said.output
    assert told in said.stderr
    assert said.stdout == ""
    assert len(said.stderr.strip().splitlines()) == 1
    body = json.loads(figure(f"{words} --json").stdout)
    assert body["message"] == said.stderr.strip()
    assert body["schema"] == "rootcollar/error/1"


# No text at all brings out a trace or our own fault.

WORDS = st.sampled_from([
    "0", "1", "3", "1/2", "1-1/2", ".5", "-2", "1e9", "99999999999", "1:4", "20", "100", "%", "gal", "fl oz", "oz", "L",
    "mL", "in", "ft", "cm", "lb ae/gal", "g ai/L", "lb/gal", "fl oz/ac", "L/ha", "qt/100 gal", "%", "to", "-", "/", ":",
    "½", "″", "ae", "per", "ac", "stems", "nan", "inf", ",", "−3",
])  # fmt: skip
QUANTITIES = st.one_of(
    st.lists(WORDS, max_size=4).map(" ".join), st.lists(WORDS, max_size=4).map("".join), st.text(max_size=20)
)
METHODS = ["basal-bark", "hack-squirt", "cut-stump", "foliar", "vine"]
NUMBERS = st.one_of(
    st.sampled_from(["1", "2", "3/4", "1 1/2", "0.001", "100", "8,000", "1e5", "0"]),
    st.floats(0, 1e6).map(lambda number: f"{number:.4f}"),
)
UNITS = {
    "%": "percent ratio strength rate", "": "percent count strength", "gal": "total add-to tank each",
    "mL": "total add-to tank each", "fl oz": "total tank each", "in": "diameter band spacing crown",
    "cm": "diameter band spacing", "ft": "crown band", "lb ae/gal": "want-ae strength have want",
    "g ae/L": "want-ae strength have want", "lb ai/gal": "have want", "fl oz/ac": "rate", "L/ha": "rate",
    "lb ae/ac": "rate",
}  # fmt: skip
OPTIONS = {
    "mix": ["--percent", "--ratio", "--want-ae", "--strength", "--total", "--add-to", "--tank"],
    "dose": ["--diameter", "--count", "--strength", "--product", "--crown", "--band", "--spacing", "--each"],
    "rate": ["--have", "--want", "--rate"],
}
GOOD = {
    "mix": {"--percent": "3", "--total": "3 gal"},
    "dose": {"--diameter": "2 in", "--count": "12"},
    "rate": {"--have": "4.5 lb ae/gal", "--want": "4 lb ae/gal", "--rate": "32 fl oz/ac"},
}


def fitting(option: str) -> st.SearchStrategy[str]:
    """Return amounts in units that belong behind the option."""
    units = [unit for unit, options in UNITS.items() if option.strip("-") in options.split()] or [""]
    return st.builds(lambda number, unit: f"{number} {unit}".strip(), NUMBERS, st.sampled_from(units))


SHAPES = [
    "mix --percent --total",
    "mix --percent --total --tank",
    "mix --percent --add-to",
    "mix --percent --strength --total",
    "mix --want-ae --strength --total",
    "dose basal-bark --diameter --count",
    "dose basal-bark --diameter --band --strength",
    "dose hack-squirt --diameter --spacing --each",
    "dose cut-stump --diameter --count",
    "dose foliar --crown --count",
    "dose vine --diameter --count",
    "rate --have --want --rate",
    "rate --have --rate",
]


@pytest.mark.parametrize("shape", SHAPES)
def test_whole_questions_with_any_amounts_are_answered_or_refused(shape: str) -> None:
    codes: list[int] = []

    @given(data=st.data())
    @settings(max_examples=draws.of(60, least=40))
    def asks(data: st.DataObject) -> None:
        words = [f"{one}={data.draw(fitting(one))}" if one[0] == "-" else one for one in shape.split()]
        said = figure(words)
        codes.append(said.exit_code)
        assert said.exit_code in (0, 2), said.stderr
        assert figure([*words, "--json"]).exit_code == said.exit_code

    asks()
    assert {0, 2} <= set(codes)


@given(data=st.data())
@settings(max_examples=draws.of(400))
def test_no_words_bring_out_a_trace(data: st.DataObject) -> None:
    which = data.draw(st.sampled_from(list(OPTIONS)))
    changed = data.draw(st.dictionaries(st.sampled_from(OPTIONS[which]), QUANTITIES, min_size=1, max_size=3))
    start = GOOD[which] if data.draw(st.booleans()) else {}
    way = [data.draw(st.sampled_from(METHODS))] if which == "dose" else []
    words = [which, *way, *(f"{option}={said}" for option, said in {**start, **changed}.items())]
    said, as_json = figure(words), figure([*words, "--json"])
    assert said.exit_code in (0, 2), said.stderr
    assert as_json.exit_code == said.exit_code
    assert "Traceback" not in said.output
    json.loads(as_json.stdout, parse_constant=pytest.fail)
