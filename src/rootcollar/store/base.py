"""The one door to SQLite: how the file is opened, how a change is whole or nothing, how its faults are told.

Plain sqlite3 and no mapper between: the file has nine tables that we write ourselves, their column types are the
standard's and not a mapper's, and every byte that is hashed must come back as it went in (docs/decisions, 0003).
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from rootcollar.kernel.errors import BadInput, Fault, Refusal, RootcollarError

__all__ = ["WAIT_S", "Connection", "connect", "holding", "may_write", "reading", "told", "writing"]

Connection = sqlite3.Connection

WAIT_S = 5.0  # ours: how long another program's change is waited for

_NOTHING = "Nothing of this change was written; what was kept before is whole."

# By the start of SQLite's name of a fault: why, and the next step.
_REFUSED = {
    "SQLITE_BUSY": ("another program is writing in it", f"{_NOTHING} Close the other program, then do it again."),
    "SQLITE_LOCKED": ("another program is writing in it", f"{_NOTHING} Close the other program, then do it again."),
    "SQLITE_FULL": ("no room is left", f"{_NOTHING} Make room on the disk, then do it again."),
    "SQLITE_READONLY_DBMOVED": (
        "the file was moved or removed while it was open",
        f"{_NOTHING} Open it again where it lies now.",
    ),
    "SQLITE_READONLY": (
        "file or folder may only be read",
        f"{_NOTHING} Copy it to a folder of your own and open it there.",
    ),
    "SQLITE_PERM": (
        "file or folder may only be read",
        f"{_NOTHING} Copy it to a folder of your own and open it there.",
    ),
    "SQLITE_IOERR": (
        "the disk does not do what it is asked",
        "What was told to be kept is kept. Put the disk back or copy the file to another, then open it again.",
    ),
    "SQLITE_CANTOPEN": ("it cannot be opened", "See whether the disk is there and you may read the folder."),
    "SQLITE_CONSTRAINT_TRIGGER": ("what is in the journal stays as it is", "Write an amendment beside it."),
}
_DAMAGED = ("SQLITE_CORRUPT", "SQLITE_NOTADB", "SQLITE_FORMAT")


def connect(path: Path, *, write: bool, wait_s: float = WAIT_S) -> Connection:
    """Open a file that is there. Raises BadInput when there is none, and as `told`.

    One file is one file: a rollback journal that is gone after each change, never a second file that stays. Each
    change is on the disk before it is told as kept.
    """
    if not path.is_file():
        raise BadInput(Fault(f"no file {path}", "the path of a project file, .gpkg"))
    with told(path):
        base = sqlite3.connect(
            f"{path.absolute().as_uri()}?mode={'rw' if write else 'ro'}",
            uri=True, timeout=wait_s, isolation_level=None,
        )  # fmt: skip
    try:
        with told(path):
            for line in ("trusted_schema = OFF", "foreign_keys = ON", "recursive_triggers = ON"):
                base.execute(f"PRAGMA {line}")
            if write:
                _one_file(base, path)
                base.execute("PRAGMA synchronous = FULL")
                base.execute("PRAGMA fullfsync = ON")  # only macOS has two kinds of "on the disk"
    except BaseException:
        base.close()
        raise
    return base


def _one_file(base: Connection, path: Path) -> None:
    """Bring the file back to a rollback journal, should another program have left it with a write-ahead log."""
    if base.execute("PRAGMA journal_mode = DELETE").fetchone()[0] != "delete":
        raise Refusal(f"{path}", limit="another program holds it open", do="Close that program, then open it again.")


def may_write(path: Path) -> bool:
    """Return whether this user may change the file, and lay the rollback journal beside it."""
    effective = os.access in os.supports_effective_ids
    return all(os.access(place, os.W_OK, effective_ids=effective) for place in (path, path.absolute().parent))


@contextmanager
def holding(path: Path, *, write: bool, wait_s: float = WAIT_S) -> Iterator[Connection]:
    """Open as `connect`, tell faults as `told`, and close at the end."""
    base = connect(path, write=write, wait_s=wait_s)
    try:
        with told(path):
            yield base
    finally:
        base.close()


@contextmanager
def writing(base: Connection) -> Iterator[None]:
    """One change: all that is done within is kept, on the disk, or nothing of it. The lock is taken at once."""
    base.execute("BEGIN IMMEDIATE")
    try:
        yield
        base.execute("COMMIT")
    except BaseException:
        if base.in_transaction:
            base.execute("ROLLBACK")
        raise


@contextmanager
def reading(base: Connection) -> Iterator[None]:
    """Several looks at one and the same state, whatever another program writes meanwhile."""
    base.execute("BEGIN")
    try:
        yield
    finally:
        if base.in_transaction:
            base.execute("ROLLBACK")


@contextmanager
def told(path: Path) -> Iterator[None]:
    """Turn SQLite's faults into sentences: Refusal with the next step, BadInput for a file that is damaged."""
    try:
        yield
    except sqlite3.Error as fault:
        raise _said(path, fault) from fault


def _said(path: Path, fault: sqlite3.Error) -> Exception:
    name: str = getattr(fault, "sqlite_errorname", "") or ""
    if name.startswith(_DAMAGED):
        return BadInput(Fault(f"{path}, no readable project file ({fault})", "a whole one: restore your last backup"))
    for start, (limit, do) in _REFUSED.items():
        if name.startswith(start):
            return Refusal(f"{path}", limit=limit, do=do)
    return RootcollarError(f"{path}: {fault} ({name or 'no name'})")
