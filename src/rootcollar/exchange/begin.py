"""A new property from four answers: the commented templates, with what was said already typed in."""

from __future__ import annotations

import json
import re
import tomllib
from dataclasses import dataclass
from datetime import date
from importlib.resources import files
from pathlib import Path

from rootcollar.exchange.ground_file import read_ground
from rootcollar.exchange.start import new_folder
from rootcollar.exchange.whole import write_whole
from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["Begun", "begin"]

_BLANK = files("rootcollar.exchange") / "blank" / "ground.toml"


@dataclass(frozen=True, slots=True)
class Begun:
    """What is said of a property at first. area, by, until: "" or None where nobody has said it yet."""

    name: str
    state: str
    unit: str
    area: str = ""
    by: str = ""
    until: date | None = None


def begin(folder: Path, said: Begun) -> None:
    """Write a new folder of templates with the first answers in ground.toml, whole or not at all.

    Raises BadInput, each fault naming the answer it is about, and for a folder that holds something.
    """
    text = _filled(said)
    try:
        read_ground(tomllib.loads(text), "ground.toml")
    except BadInput as wrong:
        raise BadInput(*(Fault(one.found, one.allowed, field=_asked(one.field)) for one in wrong.faults)) from None
    new_folder(folder)
    write_whole(folder / "ground.toml", text.encode())


def _filled(said: Begun) -> str:
    key = re.sub(r"[^a-z0-9]+", "-", said.unit.casefold()).strip("-") or "unit-1"
    lines = {'name = "My woodland"': f"name = {_text(said.name)}", 'key = "unit-1"': f"key = {_text(key)}",
             'name = "Unit 1"': f"name = {_text(said.unit)}"}  # fmt: skip
    if said.state:
        lines['# state = "WI"'] = f"state = {_text(said.state.strip().upper())}"
    if said.area:
        lines['# area = "3.2 ac"'] = f"area = {_text(said.area)}"
    if said.by and said.until:
        wanted = '# permission = { by = "the owner", until = 2027-03-31 }'
        lines[wanted] = f"permission = {{ by = {_text(said.by)}, until = {said.until.isoformat()} }}"
    text = _BLANK.read_text(encoding="utf-8")
    for blank, typed in lines.items():
        text = text.replace(blank, typed, 1)
    return text


def _text(said: str) -> str:
    """Return a text as TOML writes it, which is as JSON does."""
    return json.dumps(" ".join(said.split()), ensure_ascii=False)


def _asked(field: str) -> str:
    """Return which answer a fault of ground.toml is about."""
    return {"name": "unit", "permission.by": "by", "permission.until": "until"}.get(field, field)
