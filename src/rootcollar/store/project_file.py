"""The project file: one GeoPackage a property, made new, opened, read and added to."""

from __future__ import annotations

import secrets
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path
from types import MappingProxyType, TracebackType
from typing import Self

from rootcollar.kernel.errors import BadInput, Fault, Refusal
from rootcollar.store.base import WAIT_S, Connection, connect, may_write, reading, told, writing
from rootcollar.store.chain import gaps
from rootcollar.store.container import APPLICATION_ID, fit_boxes
from rootcollar.store.entry import CHANCE_BYTES, Draft, Entry
from rootcollar.store.ground import Row, put_rows, read_layer, remove_row
from rootcollar.store.journal import add_drafts, add_entries, read_journal
from rootcollar.store.kept import Kept
from rootcollar.store.layers import LAYERS
from rootcollar.store.schema import SCHEMA

__all__ = ["ProjectFile", "checked_words", "open_file", "read_words"]

_NO_PROJECT = "a project file made by this program"


class ProjectFile:
    """A `Store` on one file. For one thread; opening another is quick."""

    def __init__(self, path: Path, base: Connection, read_only: str) -> None:
        self._path, self._base, self._read_only = path, base, read_only
        self._place = _place(path)
        self._dirty = False

    @property
    def path(self) -> Path:
        """Where the file lies."""
        return self._path

    @property
    def read_only(self) -> str:
        """Why nothing can be written, as a sentence; empty where it can."""
        return self._read_only

    def snapshot(self) -> Kept:
        """Return all that is kept, as of one moment. Raises BadInput with what another program left unreadable."""
        self._look()
        with told(self._path), reading(self._base):
            words = read_words(self._base)
            entries = read_journal(self._base)
            ground = {name: read_layer(self._base, layer) for name, layer in LAYERS.items()}
        left_out = tuple(words.get("left_out", "").split())
        return Kept(words["property"], words["name"], MappingProxyType(ground), entries, gaps(entries), left_out)

    def say(self, device: str, drafts: Sequence[Draft]) -> tuple[Entry, ...]:
        """Keep what was said on a device, numbered and sealed. Raises BadInput, or Refusal; then nothing is kept."""
        chance = [secrets.token_bytes(CHANCE_BYTES) for _ in drafts]
        with self._change():
            return add_drafts(self._base, device, drafts, chance)

    def append(self, entries: Sequence[Entry]) -> tuple[Entry, ...]:
        """Take in entries made elsewhere; return the new ones. Raises BadInput for an altered one, and keeps none."""
        with self._change():
            return add_entries(self._base, entries)

    def put(self, rows: Sequence[Row], by: str, at: datetime) -> tuple[Row, ...]:
        """Write rows of the ground; return them as they stand now. Raises BadInput, or Refusal; then none is kept."""
        with self._change():
            return put_rows(self._base, rows, by, at)

    def remove(self, row: Row, at: datetime) -> None:
        """Take a row of the ground away. Raises Refusal when it is no longer as it was read."""
        with self._change():
            remove_row(self._base, row, at)

    def close(self) -> None:
        """Fit the boxes around the layers, if anything was written, and let go of the file.

        Boxes that cannot be written now, on a full disk for instance, lose nothing: the next close fits them.
        """
        try:
            if self._dirty and _place(self._path) == self._place:
                with suppress(Refusal), told(self._path), writing(self._base):
                    fit_boxes(self._base)
        finally:
            self._base.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, fault: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    @contextmanager
    def _change(self) -> Iterator[None]:
        if self._read_only:
            raise Refusal(f"writing in {self._path}", limit=self._read_only, do="Nothing was written.")
        self._look()
        with told(self._path), writing(self._base):
            yield
        self._dirty = True

    def _look(self) -> None:
        """Raise Refusal when the file lies no longer where it was opened: what is written would be seen by nobody."""
        if _place(self._path) != self._place:
            raise Refusal(
                f"{self._path}",
                limit="the file was moved, removed or replaced while it was open",
                do="Nothing of this change was written. Open it again where it lies now.",
            )


def open_file(path: Path, wait_s: float = WAIT_S) -> ProjectFile:
    """Open a project file; one that may only be read, or of a newer version, or a copy with parts left out, to read.

    wait_s: how long another program's change is waited for. Raises BadInput for what is no project file, Refusal when
    another program holds it.
    """
    write = path.is_file() and may_write(path)
    why = "" if write else "file or folder may only be read"
    base = connect(path, write=write, wait_s=wait_s)
    try:
        with told(path):
            words = checked_words(path, base)
        version = int(words["schema"])
        if version > SCHEMA:
            why = f"the file was made by a newer version of this program (form {version}; this one writes {SCHEMA})"
        elif words.get("left_out"):
            why = f"this copy was made to be read; left out: {words['left_out']}"
        return ProjectFile(path, base, why)
    except BaseException:
        base.close()
        raise


def read_words(base: Connection) -> dict[str, str]:
    """Return what a file says of itself: property, name, schema, made_at; left_out in a copy that is not whole."""
    return dict(base.execute("SELECT word, value FROM rootcollar_file"))


def checked_words(path: Path, base: Connection) -> dict[str, str]:
    """Return the words of a file that is a project file. Raises BadInput for any other."""
    mark = base.execute("PRAGMA application_id").fetchone()[0]
    tables = {name for (name,) in base.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
    if mark != APPLICATION_ID or "rootcollar_file" not in tables:
        found = "a GeoPackage of another program" if mark == APPLICATION_ID else "a database of another kind"
        raise BadInput(Fault(f"{path}, {found}", _NO_PROJECT))
    words = read_words(base)
    if not {"schema", "property", "name"} <= set(words) or not words["schema"].isdigit() or int(words["schema"]) < 1:
        raise BadInput(Fault(f"{path}, which does not say its form, property and name", _NO_PROJECT))
    return words


def _place(path: Path) -> tuple[int, int] | None:
    """Return which file lies at a path, by disk and number; None where there is none."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino
