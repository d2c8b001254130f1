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

_Told = str | date | dict[str, str]


def keep_answer(folder: Path, answer: Answer) -> None:
    """Add an answer to answers.toml. Raises BadInput for text that is none, or where nothing can be written."""
    yes = "yes" if answer.yes else "no"
    told: dict[str, _Told] = {
        "rule": answer.rule,
        "about": answer.about,
        "answer": yes,
        "by": answer.by,
        "on": answer.on,
    }
    more: dict[str, _Told] = {"note": answer.note}
    more |= {"page": answer.page} if answer.page else {}
    more |= {"sheets": dict(answer.sheets)} if answer.sheets else {}
    _add(folder / "answers.toml", "answer", {**told, **more})


def keep_choice(folder: Path, line: str, pick: Pick) -> None:
    """Add a choice to choices.toml. Raises BadInput as `keep_answer`."""
    told: dict[str, _Told] = {"line": line, "way": pick.way, "reason": pick.reason, "by": pick.by, "on": pick.on}
    _add(folder / "choices.toml", "choice", told)


def _add(path: Path, block: str, told: Mapping[str, _Told]) -> None:
    before = opened(path, path.name) if path.exists() else ""
    gap = "\n" if before and not before.endswith("\n\n") else ""
    line_end = "" if not before or before.endswith("\n") else "\n"
    lines = [f"[[{block}]]", *(f"{key} = {_toml(key, value)}" for key, value in told.items())]
    write_whole(path, f"{before}{line_end}{gap}{chr(10).join(lines)}\n".encode())


def _toml(key: str, value: _Told) -> str:
    """Return a value as TOML writes it: a day bare, a text as a basic string, which JSON writes the same way."""
    if isinstance(value, dict):
        return f"{{ {', '.join(f'{json.dumps(name)} = {json.dumps(one)}' for name, one in value.items())} }}"
    if isinstance(value, date):
        return value.isoformat()
    text = " ".join(value.split())
    if any(not sign.isprintable() for sign in text):
        raise BadInput(Fault(repr(value), "plain text on one line", field=key))
    return json.dumps(text, ensure_ascii=False)
