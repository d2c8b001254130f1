"""Opening a text file, or a TOML file, with faults a person can act on."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["HINT", "opened", "toml"]

HINT = "`rootcollar new FOLDER` makes a folder with every file in it to fill in"

_AT = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)")


def opened(path: Path, file: str) -> str:
    """Return the text of a file, its byte-order mark dropped. Raises BadInput when it is not there or not UTF-8."""
    try:
        raw = path.read_bytes()
    except FileNotFoundError:
        raise BadInput(Fault("no such file", f"this file; {HINT}", file=file)) from None
    except OSError as fault:
        found = f"a file that cannot be opened ({fault.strerror or fault})"
        raise BadInput(Fault(found, "a file you may read", file=file)) from None
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        line = raw.count(b"\n", 0, fault.start) + 1
        found = f"byte 0x{raw[fault.start]:02x}, which is not UTF-8 text"
        allowed = "text saved as UTF-8 (in a spreadsheet: CSV UTF-8)"
        raise BadInput(Fault(found, allowed, file, f"line {line}")) from None
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        raise BadInput(Fault("a zero byte", "plain text saved as UTF-8", file=file, row=f"line {line}"))
    return text


def toml(path: Path, file: str) -> dict[str, Any]:
    """Return what a TOML file says. Raises BadInput with the line where it stops being TOML."""
    text = opened(path, file)
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise BadInput(Fault("brackets within brackets without end", "a few levels at most", file=file)) from None
    except ValueError as fault:
        said = str(fault)
        at = _AT.search(said)
        line = at[1] if at and at[1] else str(len(text.splitlines()))
        found = f"{_AT.sub('', said)} {_shown(text, int(line))}".strip()
        raise BadInput(Fault(found, _ALLOWED, file, f"line {line}")) from None


_ALLOWED = 'a line such as  name = "text in quotes",  area = "3.2 ac",  wanted_beneath = true'


def _shown(text: str, line: int) -> str:
    lines = text.splitlines()
    said = lines[line - 1].strip() if 0 < line <= len(lines) else ""
    return f"in: {said[:60]}" if said else ""
