"""Making a folder: an empty one to fill in, or the demo property. Whole or not at all."""

from __future__ import annotations

import re
from datetime import date
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from tempfile import TemporaryDirectory

from rootcollar.exchange.folder import TEMPLATE_MARK
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.shelf import template

__all__ = ["DEMO_DAY", "new_folder", "write_demo"]

_OURS = files("rootcollar.exchange")
DEMO_DAY = date(2026, 9, 15)  # on which Hobbin Wood was made up: its days are told as they stood then
_A_DAY = re.compile(r"\b20[0-9]{2}-[0-9]{2}-[0-9]{2}\b")


def new_folder(path: Path) -> None:
    """Write commented templates of every file into a new or empty folder.

    Raises BadInput when the folder holds something, or cannot be written; then nothing is left behind.
    """
    _write(path, {**_texts(_OURS / "blank"), f"shelf/label-sheet{TEMPLATE_MARK}": template().encode()})


def write_demo(path: Path, today: date) -> None:
    """Write Hobbin Wood, an invented property with invented labels, into a new or empty folder.

    Its days are moved so that it is as fresh today as on the day it was made up. Raises BadInput as `new_folder`.
    """
    texts = _texts(_OURS / "hobbin_wood")
    _write(path, {name: _moved(text.decode(), today).encode() for name, text in texts.items()})


def _moved(text: str, today: date) -> str:
    """Return a text with every day in it moved: what was, by days; what is to come, by whole years."""

    def moved(found: re.Match[str]) -> str:
        day = date.fromisoformat(found[0])
        if day <= DEMO_DAY:
            return (day + (today - DEMO_DAY)).isoformat()
        return f"{day.year + today.year - DEMO_DAY.year}{found[0][4:]}"

    return _A_DAY.sub(moved, text)


def _texts(source: Traversable, under: str = "") -> dict[str, bytes]:
    found: dict[str, bytes] = {}
    for one in source.iterdir():
        name = f"{under}{one.name}"
        found.update(_texts(one, f"{name}/") if one.is_dir() else {name: one.read_bytes()})
    return found


def _write(path: Path, texts: dict[str, bytes]) -> None:
    path = path.absolute()
    try:
        _free(path)
        with TemporaryDirectory(prefix=".rootcollar-", dir=path.parent) as beside:
            made = Path(beside) / "made"
            for name, text in texts.items():
                (made / name).parent.mkdir(parents=True, exist_ok=True)
                (made / name).write_bytes(text)
            _move(made, path)
    except OSError as fault:
        found = f"{path}, where nothing can be written ({fault.strerror or fault})"
        raise BadInput(Fault(found, "a place you may write to, with room; nothing was written")) from None


def _free(path: Path) -> None:
    """Raise BadInput unless the path is a new name in a folder that is there, or an empty folder."""
    if path.exists() and (not path.is_dir() or any(path.iterdir())):
        what = "a folder that holds something" if path.is_dir() else "a file"
        raise BadInput(Fault(f"{path}, {what}", "a new name, or an empty folder; nothing was written"))
    if not path.parent.is_dir():
        raise BadInput(Fault(f"no folder {path.parent}", "a place in a folder that is there; nothing was written"))


def _move(made: Path, path: Path) -> None:
    """Give the finished folder its name, or move its parts into the empty one that is there; back again on a fault."""
    if not path.exists():
        made.rename(path)
        return
    moved: list[Path] = []
    try:
        for part in sorted(made.iterdir()):
            moved.append(part.rename(path / part.name))
    except OSError:
        for part in moved:
            part.rename(made / part.name)
        raise
