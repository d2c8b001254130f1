"""shelf/<key>.second.toml: what a second person typed from the same label, kept apart from the sheet itself.

A file of its own, in another shape than a sheet: copying one over the other makes neither.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace
from hashlib import sha256
from pathlib import Path
from typing import Any

from pydantic import Field

from rootcollar.exchange.entry import Day, Entry, Text, check
from rootcollar.exchange.text import opened, toml
from rootcollar.exchange.whole import write_whole
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.shelf import Second, Sheet, another, asked_again, first_reader

__all__ = ["SECOND_MARK", "keep_second", "read_second", "second_stamp", "with_second"]

SECOND_MARK = ".second.toml"
_SCHEMA = "second-reading/1"
_HEAD = """\
# A second reading of the label, typed by another person from the label in hand, without looking at the sheet.
# It is compared with the sheet line by line; what two people read differently is looked up on the label once more.
"""


class _File(Entry):
    second: Text = Field(description=f'second = "{_SCHEMA}" as the first line')
    read_by: Text = Field(description="who read the label a second time, in quotes")
    read_on: Day = Field(description="the day without quotes, such as read_on = 2026-03-02")
    lines: dict[str, Text] = Field({}, description="what was read, each in quotes, by the line of the sheet")


def read_second(table: Mapping[str, Any], file: str) -> Second:
    """Return a second reading. Raises BadInput with all faults of the file."""
    found = check(_File, table, file)
    if found.second != _SCHEMA:
        raise BadInput(Fault(json.dumps(found.second), f'second = "{_SCHEMA}"', file=file, field="second"))
    return Second(found.read_by, found.read_on, found.lines)


def with_second(sheet: Sheet, shelf: Path) -> Sheet:
    """Return a sheet with its second reading, where the folder of sheets has one. Raises BadInput for its faults."""
    path = _path(shelf, sheet.key)
    if not path.exists():
        return sheet
    name = f"shelf/{path.name}"
    return replace(sheet, second=read_second(toml(path, name), name))


def second_stamp(folder: Path, key: str) -> str:
    """Return a stamp of sheet and second reading as their files are, to see whether one was changed meanwhile."""
    files = (_path(folder / "shelf", key), folder / "shelf" / f"{key}.toml")
    return sha256("\0".join(opened(one, one.name) if one.exists() else "" for one in files).encode()).hexdigest()


def keep_second(folder: Path, sheet: Sheet, second: Second) -> None:
    """Write a second reading whole, only what is asked of the sheet as it is now.

    Raises BadInput at read_by where the first reader is not known, or is the same person.
    """
    if not another(sheet, second.read_by):
        first = first_reader(sheet)
        allowed = f"another person than {first}" if first else "the first reader's name on the sheet, before a second"
        raise BadInput(Fault(repr(second.read_by), allowed, field="read_by"))
    asked = [one.ask for one in asked_again(sheet)]
    lines = [f"{json.dumps(one)} = {_text(second.lines[one])}" for one in asked if second.lines.get(one)]
    head = f'{_HEAD}\nsecond = "{_SCHEMA}"\nread_by = {_text(second.read_by)}\nread_on = {second.read_on.isoformat()}\n'
    text = "\n".join([head, "[lines]", *lines, ""])
    write_whole(_path(folder / "shelf", sheet.key), text.encode())


def _path(shelf: Path, key: str) -> Path:
    return shelf / f"{key}{SECOND_MARK}"


def _text(said: str) -> str:
    """Return a text as TOML writes it, which is as JSON does."""
    return json.dumps(" ".join(said.split()), ensure_ascii=False)
