"""Working in words: each step a formula with its own numbers filled in, its result, unit and source."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

__all__ = ["in_words", "walk"]

_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")


def walk(tree: Mapping[str, Any], depth: int = 0) -> Iterator[tuple[int, Mapping[str, Any]]]:
    """Yield (depth, node) of a tree of `as_tree`, those beneath before those above, as one works it out."""
    for below in tree["steps"]:
        yield from walk(below, depth + 1)
    yield depth, tree


def in_words(node: Mapping[str, Any]) -> tuple[str, str]:
    """Return (what, how): the step's name; its formula, the same with numbers, result, unit and source key.

    A figure that was given has its mark and what it holds for instead of a formula. The source may stand in the node
    as its key, or as a table with the key in it.
    """
    source = node["source"]
    key = source if isinstance(source, str) else source["key"]
    cited = f" [{key}]" if key else ""
    unit = f"({node['unit']})" if node["unit"].startswith("as ") else node["unit"]
    result = f"{_number(node['result'])} {unit}".strip()
    if node["formula"] == "figure":
        return "given", f"{result}, {node['says']}{cited}"
    filled = _NAME.sub(lambda word: _number(node["inputs"].get(word[0], word[0])), node["says"])
    says = _plain(node["says"])
    worked = f"{says} = " if filled == node["says"] else f"{says} = {_plain(filled)} = "
    return _plain(node["formula"].rsplit(".", 1)[-1]), f"{worked}{result}{cited}"


def _plain(words: str) -> str:
    return words.replace("**", "^").replace("_", " ")


def _number(value: object) -> str:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return str(value)
    return f"{value:.6g}"
