"""Putting a finished file in its place: whole or not at all, and on the disk before it is told."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["beside", "companions", "new_place", "place"]


def new_place(path: Path) -> None:
    """Raise BadInput unless a new file can be named so: nothing lies there, its folder does."""
    for one in (path, *companions(path)):
        if one.exists() or one.is_symlink():
            raise BadInput(Fault(f"{one}, which lies there already", "a new name; nothing is written over"))
    if not path.parent.is_dir():
        raise BadInput(Fault(f"no folder {path.parent}", "a folder that is there"))


def companions(path: Path) -> tuple[Path, ...]:
    """Return the files that SQLite may have left beside a file; without them it is not whole, nor beside another."""
    return tuple(path.with_name(f"{path.name}{end}") for end in ("-journal", "-wal", "-shm"))


@contextmanager
def beside(path: Path) -> Iterator[Path]:
    """Give a folder beside a place to make its file in, for a while. Raises BadInput where none can be made."""
    try:
        with TemporaryDirectory(prefix=".rootcollar-", dir=path.absolute().parent, ignore_cleanup_errors=True) as made:
            yield Path(made)
    except OSError as fault:
        found = f"{path}, where nothing can be written ({fault.strerror or fault})"
        raise BadInput(Fault(found, "a folder you may write to, with room; nothing was written")) from None


def place(made: Path, path: Path) -> None:
    """Move a finished file to its place in one step. Both are on the disk when this returns."""
    _to_disk(made)
    made.replace(path)
    if os.name == "posix":  # Windows opens no folders
        _to_disk(path.absolute().parent)


def _to_disk(path: Path) -> None:
    number = os.open(path, os.O_RDONLY if path.is_dir() else os.O_RDWR)
    try:
        os.fsync(number)
    finally:
        os.close(number)
