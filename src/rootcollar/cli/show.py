"""What commands share to show an answer: wrapped text, a working that can be redone by hand, one JSON object."""

from __future__ import annotations

import json
import os
import shutil
import textwrap
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

import click

from rootcollar.kernel.working import in_words, walk

__all__ = ["columns", "emit", "heading", "json_option", "listed", "print_json", "steps", "text", "working_lines"]

json_option = click.option("--json", "as_json", is_flag=True, help="Print one JSON object instead of text.")

_NARROWEST, _WIDEST = 60, 110  # columns: below, words break; above, the eye loses the line


def print_json(command: str, body: Mapping[str, Any]) -> None:
    """Print one JSON object, ASCII only, whose schema names the command: `rootcollar/figure-mix/1`."""
    click.echo(json.dumps({"schema": f"rootcollar/{command}/1", **body}, indent=2, allow_nan=False))


def emit(command: str, body: Mapping[str, Any], lines: Iterable[str], as_json: bool) -> None:
    """Print either the body as JSON or the lines, which are laid out already, as they are."""
    if as_json:
        print_json(command, body)
        return
    for line in lines:
        _say(line)


def heading(words: str) -> None:
    """Print a heading after an empty line."""
    click.echo()
    _say(click.style(words, bold=True))


def text(words: str, *, indent: int = 0, hang: int = 0, loud: str = "", bold: bool = False, lead: str = "") -> None:
    """Print words wrapped to the terminal. hang: extra indent of all but the first line. loud: a part set in colour.

    lead: put before the first word as it is, gaps and all.
    """
    kept = loud.replace(" ", "\u00a0")  # because a part that is broken over two lines could not be coloured whole
    lines = textwrap.fill(
        words.replace(loud, kept) if loud else words, columns(), initial_indent=" " * indent + lead,
        subsequent_indent=" " * (indent + hang), break_long_words=False, break_on_hyphens=False,
    )  # fmt: skip
    said = lines.replace(kept, click.style(loud, fg="yellow", bold=True)) if loud else lines
    _say(click.style(said, bold=True) if bold else said)


def listed(lines: Sequence[str], *, indent: int = 2) -> None:
    """Print lines one below the other, each with its own hanging indent."""
    for line in lines:
        text(line, indent=indent, hang=2)


def steps(trees: Sequence[Mapping[str, Any]]) -> None:
    """Print workings as a numbered list, what is worked out first standing first and further in."""
    for number, (depth, line) in enumerate(working_lines(trees), start=1):
        lead = f"{number}."
        text(f"{lead} {line}", indent=2 + 2 * depth, hang=len(lead) + 1)


def working_lines(trees: Sequence[Mapping[str, Any]]) -> list[tuple[int, str]]:
    """Return (depth, sentence) of every step, those beneath before those above, equal ones once.

    depth counts how far a step stands beneath the answer, shallowest 0.
    """
    found: dict[str, int] = {}
    for tree in trees:
        for depth, node in walk(tree):
            what, how = in_words(node)
            found.setdefault(how if what == "given" else f"{what} = {how}", depth)
    return [(depth, line) for line, depth in found.items()]


def columns() -> int:
    """Return how wide text is printed: as wide as the terminal, within what can be read [columns]."""
    return max(_NARROWEST, min(_WIDEST, shutil.get_terminal_size().columns))


def _say(words: str) -> None:
    click.echo(words, color=False if os.environ.get("NO_COLOR") else None)
