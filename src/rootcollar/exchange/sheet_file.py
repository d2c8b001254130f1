"""One label sheet on its own, as a quick question asks for it."""

from __future__ import annotations

from pathlib import Path

from rootcollar.exchange.second_file import with_second
from rootcollar.exchange.text import toml
from rootcollar.shelf import Sheet, parse_sheet

__all__ = ["read_sheet"]

_GROUND = "ground.toml"


def read_sheet(path: Path) -> tuple[Sheet, bool]:
    """Return the label sheet in a file, and whether it lies on the shelf of the invented demo property.

    Raises BadInput with every fault of the file.
    """
    ground = path.absolute().parent.parent / _GROUND
    demo = ground.exists() and toml(ground, _GROUND).get("demo") is True
    sheet = parse_sheet(path.stem, toml(path, str(path)), str(path))
    return with_second(sheet, path.parent), demo
