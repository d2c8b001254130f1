"""Showing: wrapped, coloured only where that is wanted, and a working that reads as it is redone."""

import json
from typing import Any

import click
import pytest
from click.testing import CliRunner

from rootcollar.cli.show import emit, print_json, steps, text, working_lines


def node(formula: str, says: str, result: float, below: tuple[Any, ...] = (), **inputs: float) -> dict[str, Any]:
    """Return a step of a working."""
    source = {"key": "SRC", "cite": "", "url": "", "mark": ""}
    return {
        "formula": formula, "says": says, "inputs": inputs, "result": result, "unit": "mL", "source": source,
        "steps": list(below),
    }  # fmt: skip


def shown(*words: str, env: dict[str, str] | None = None, color: bool = False, **named: Any) -> str:
    """Return what `text` prints."""

    @click.command()
    def command() -> None:
        text(*words, **named)

    return CliRunner(env={"COLUMNS": "60", "NO_COLOR": "", **(env or {})}).invoke(command, color=color).output


def test_inner_steps_come_first_and_further_in() -> None:
    inner = node("room.inner", "b + 1", 3, b=2)
    outer = node("room.outer", "a * ml", 12, (inner,), a=4, ml=3)
    assert working_lines([outer]) == [
        (1, "inner = b + 1 = 2 + 1 = 3 mL [SRC]"),
        (0, "outer = a * ml = 4 * 3 = 12 mL [SRC]"),
    ]


def test_a_name_inside_another_name_is_not_filled_in() -> None:
    assert (
        working_lines([node("f", "ml * total_ml", 6, ml=2, total_ml=3)])[0][1]
        == "f = ml * total ml = 2 * 3 = 6 mL [SRC]"
    )


def test_equal_steps_are_shown_once() -> None:
    assert len(working_lines([node("f", "a", 1, a=1), node("f", "a", 1, a=1), node("f", "a", 2, a=2)])) == 2


def test_steps_are_numbered_through() -> None:
    @click.command()
    def command() -> None:
        steps([node("g", "a", 1, (node("f", "a", 1, a=1),), a=1)])

    lines = CliRunner().invoke(command).output.splitlines()
    assert [line.split()[0] for line in lines] == ["1.", "2."]
    assert lines[0].startswith("    1.") and lines[1].startswith("  2.")


def test_a_loud_part_is_coloured_whole_and_only_where_colour_is_wanted() -> None:
    words = "a figure that stands here and is a little long, from memory, confirm it"
    loud = "from memory, confirm"
    assert f"\x1b[33m\x1b[1m{loud}\x1b[0m" in shown(words, loud=loud, color=True)
    assert "\x1b" not in shown(words, loud=loud, color=True, env={"NO_COLOR": "1"})
    assert shown(words, loud=loud).replace("\n", " ").strip() == words


def test_text_keeps_to_the_columns_but_breaks_no_address() -> None:
    address = "https://example.org/" + "x" * 80
    lines = shown("word " * 40 + address, indent=2, hang=2).splitlines()
    assert all(len(line) <= 60 for line in lines if "://" not in line)
    assert any(address in line for line in lines)


def test_lines_that_are_laid_out_stay_as_they_are() -> None:
    @click.command()
    @click.option("--json", "as_json", is_flag=True)
    def command(as_json: bool) -> None:
        emit("x", {"a": "≤"}, ["  two", "", " " * 3 + "y" * 200], as_json)

    assert CliRunner().invoke(command).output == "  two\n\n   " + "y" * 200 + "\n"
    said = CliRunner().invoke(command, ["--json"]).output
    assert json.loads(said) == {"schema": "rootcollar/x/1", "a": "≤"}
    assert said.isascii()


def test_json_holds_no_number_that_is_none() -> None:
    with pytest.raises(ValueError, match="JSON"):
        print_json("x", {"a": float("nan")})
