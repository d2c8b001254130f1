"""Adding what a person has said to a file, behind what stands there already: nothing typed before is touched."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import date
from pathlib import Path

from rootcollar.choose import Pick
from rootcollar.exchange.text import opened
from rootcollar.exchange.whole import write_whole
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.label import Answer

__all__ = ["keep_answer", "keep_choice"]


def keep_answer(folder: Path, answer: Answer) -> None:
    """Add an answer to answers.toml. Raises BadInput for text that is none, or where nothing can be written."""
    yes = "yes" if answer.yes else "no"
    told: dict[str, str | date] = {
        "rule": answer.rule,
        "about": answer.about,
        "answer": yes,
        "by": answer.by,
        "on": answer.on,
    }
    _add(folder / "answers.toml", "answer", {**told, "note": answer.note})


def keep_choice(folder: Path, line: str, pick: Pick) -> None:
    """Add a choice to choices.toml. Raises BadInput as `keep_answer`."""
    told: dict[str, str | date] = {"line": line, "way": pick.way, "reason": pick.reason, "by": pick.by, "on": pick.on}
    _add(folder / "choices.toml", "choice", told)


def _add(path: Path, block: str, told: Mapping[str, str | date]) -> None:
    before = opened(path, path.name) if path.exists() else ""
    gap = "\n" if before and not before.endswith("\n\n") else ""
    line_end = "" if not before or before.endswith("\n") else "\n"
    lines = [f"[[{block}]]", *(f"{key} = {_toml(key, value)}" for key, value in told.items())]
    write_whole(path, f"{before}{line_end}{gap}{chr(10).join(lines)}\n".encode())


def _toml(key: str, value: str | date) -> str:
    """Return a value as TOML writes it: a day bare, a text as a basic string, which JSON writes the same way."""
    if isinstance(value, date):
        return value.isoformat()
    text = " ".join(value.split())
    if any(not sign.isprintable() for sign in text):
        raise BadInput(Fault(repr(value), "plain text on one line", field=key))
    return json.dumps(text, ensure_ascii=False)
