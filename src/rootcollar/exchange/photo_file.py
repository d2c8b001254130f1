"""Photographs of labels, kept in shelf/photos under names of our own making."""

from __future__ import annotations

import re
from pathlib import Path

from rootcollar.exchange.whole import write_whole
from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["keep_photo", "photo_file"]

_PHOTOS = "photos"
_KINDS = {b"\xff\xd8\xff": "jpg", b"\x89PNG\r\n\x1a\n": "png"}
_NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*\.(?:jpg|png)")
_MOST = 200  # photographs of one label (ours)


def keep_photo(folder: Path, key: str, content: bytes) -> str:
    """Keep a photograph of a label and return its name, as a sheet holds it. What it is called on the phone is dropped.

    Raises BadInput for what is neither JPEG nor PNG by its first bytes, and where there are too many.
    """
    kind = next((end for start, end in _KINDS.items() if content.startswith(start)), None)
    if kind is None:
        raise BadInput(Fault("a file that is no photograph", "a JPEG or PNG picture", field="photo"))
    stem = re.sub(r"[^a-z0-9]+", "-", key.casefold()).strip("-")
    for number in range(1, _MOST + 1):
        name = f"{stem}-{number}.{kind}"
        if not any(_place(folder, f"{stem}-{number}.{one}").exists() for one in _KINDS.values()):
            write_whole(_place(folder, name), content)
            return f"{_PHOTOS}/{name}"
    raise BadInput(Fault(f"{_MOST} photographs already", "fewer of one label", field="photo"))


def photo_file(folder: Path, name: str) -> Path | None:
    """Return where a photograph is kept; None for a name that is none of ours, or is not there."""
    path = _place(folder, name)
    return path if _NAME.fullmatch(name) and path.is_file() else None


def _place(folder: Path, name: str) -> Path:
    return folder / "shelf" / _PHOTOS / name
