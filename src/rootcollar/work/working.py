"""Working in words: each step a formula with its own numbers filled in, its result, unit and source."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from rootcollar.kernel.formula import Step, as_tree

__all__ = ["steps_in_words", "walk"]


def steps_in_words(steps: Sequence[Step]) -> tuple[tuple[str, str], ...]:
    """Return (what, formula with numbers = result unit [source]) for every step, innermost first, once each."""
    lines = [(_name(node), _sentence(node)) for step in steps for node in walk(as_tree(step))]
    return tuple(dict.fromkeys(lines))


def walk(tree: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Yield a tree's nodes, those beneath before those above, as a person would work them out."""
    below: Iterable[dict[str, Any]] = tree["steps"]
    for node in below:
        yield from walk(node)
    yield tree


def _name(node: dict[str, Any]) -> str:
    name = str(node["formula"]).rsplit(".", 1)[-1]
    return "given" if name == "figure" else _plain(name)


def _sentence(node: dict[str, Any]) -> str:
    result = f"{_number(node['result'])} {node['unit']}".strip()
    if node["formula"] == "figure":
        return f"{result} ({node['says']}) [{node['source']}]"
    filled = str(node["says"])
    for name in sorted(node["inputs"], key=len, reverse=True):
        value = node["inputs"][name]
        if isinstance(value, (int, float)):
            filled = re.sub(rf"\b{re.escape(name)}\b", _number(value), filled)
    return f"{_plain(str(node['says']))} = {filled} = {result} [{node['source']}]"


def _plain(name: str) -> str:
    return name.replace("**", "^").replace("_", " ")


def _number(value: object) -> str:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return str(value)
    return f"{value:.5g}"
