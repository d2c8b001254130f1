"""Copies of the project file: a backup, the way back from one, and a copy to send that leaves things out.

A plain copy of a file that is open may be half a change; these are always whole ones. Nothing is ever written over.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from rootcollar.kernel.errors import BadInput, Fault, NotFound, Refusal
from rootcollar.store.base import WAIT_S, holding, may_write, reading, writing
from rootcollar.store.container import fit_boxes
from rootcollar.store.doctor import doctor, sound
from rootcollar.store.journal import read_journal
from rootcollar.store.place import beside, companions, new_place, place
from rootcollar.store.private import PRIVATE, leave_out
from rootcollar.store.project_file import checked_words
from rootcollar.store.schema import SCHEMA

__all__ = ["Restored", "backup", "restore", "send"]


@dataclass(frozen=True, slots=True)
class Restored:
    """What a way back did. kept_aside: where the file that lay there is now; None where none lay there.

    not_in_backup: how many entries of that file the backup has not; a bundle brings them in. After a way back a device
    must say nothing under its old name: the numbers it would give may have been given already.
    """

    kept_aside: Path | None
    not_in_backup: int


def backup(path: Path, to: Path) -> Path:
    """Copy a project file whole to a new place and look whether the copy is sound; return its path.

    Raises BadInput where something lies already or nothing can be written, Refusal for a file that is not sound: its
    backup would not be either.
    """
    new_place(to)
    with beside(to) as folder:
        made = _whole_copy(path, folder / "copy.gpkg")
        _only_sound(made, f"a backup of {path}", "See what the doctor says of the file; keep your last sound backup.")
        place(made, to)
    return to


def send(path: Path, to: Path, without: Collection[str]) -> Path:
    """Copy a project file to a new place without what is named, words of PRIVATE; return its path.

    The copy says what it leaves out, and can only be read. What is left out is in no byte of it. Entries stay in the
    chain, without their words. Raises NotFound for a word that is none of PRIVATE, and as `backup`.
    """
    for word in without:
        if word not in PRIVATE:
            raise NotFound("thing to leave out", word, tuple(PRIVATE))
    new_place(to)
    with beside(to) as folder:
        made = _whole_copy(path, folder / "copy.gpkg")
        with holding(made, write=True) as base:
            words = checked_words(made, base)
            _only_our_form(words, path)
            gone = sorted({*without, *words.get("left_out", "").split()})
            if gone:
                with writing(base):
                    leave_out(base, gone)
                    fit_boxes(base)
        final = _whole_copy(made, folder / "sent.gpkg")  # what was taken out is gone from the free pages too
        _only_sound(final, f"a copy of {path}", "See what the doctor says of the file.")
        place(final, to)
    return to


def restore(path: Path, source: Path, now: datetime, wait_s: float = WAIT_S) -> Restored:
    """Put a backup in the place of a project file, after looking whether it is sound; the old file is kept aside.

    wait_s: how long another program's change in the old file is waited for. Raises BadInput or Refusal when the backup
    is no whole, sound file of the same property; then nothing has changed.
    """
    with beside(path) as folder:
        made = _whole_copy(source, folder / "copy.gpkg")
        _only_sound(made, f"going back to {source}", "Nothing has changed. Take another backup.")
        with holding(made, write=False) as base:
            words = checked_words(made, base)
            entries = {one.hash for one in read_journal(base)}
        if words.get("left_out"):
            found = f"{source}, a copy without {words['left_out']}"
            raise BadInput(Fault(found, "a whole backup; what a copy leaves out would be lost"))
        lost = _lost(path, words["property"], entries, wait_s) if path.exists() else 0
        aside = path.with_name(f"{path.stem} before {now.astimezone(UTC):%Y-%m-%d %H%M%S}{path.suffix}")
        new_place(aside)
        there = path.exists()
        try:
            _move(path, aside)
            place(made, path)
        except OSError:
            _move(aside, path)
            raise
    return Restored(aside if there else None, lost)


def _whole_copy(path: Path, to: Path) -> Path:
    """Copy a file as of one moment, without its free pages, while others may be reading or writing it."""
    with holding(path, write=path.is_file() and may_write(path)) as base:
        checked_words(path, base)
        base.execute("VACUUM INTO ?", (str(to),))
    return to


def _only_sound(made: Path, what: str, do: str) -> None:
    findings = doctor(made)
    if not sound(findings):
        raise Refusal(what, limit=findings[0].says, do=do)


def _only_our_form(words: dict[str, str], path: Path) -> None:
    if int(words["schema"]) > SCHEMA:
        raise Refusal(
            f"sending {path}", limit="a newer version made it, so what is private in it is not known", do="Use that."
        )


def _lost(path: Path, owner: str, entries: set[str], wait_s: float) -> int:
    """Return how many entries of the file that lies there the backup has not; 0 where it cannot be read at all."""
    try:
        free = may_write(path)
        # The lock of a change, where one can be had: nobody may be half way through one.
        with holding(path, write=free, wait_s=wait_s) as base, writing(base) if free else reading(base):
            words = checked_words(path, base)
            there = read_journal(base)
    except BadInput:  # damaged: that is why somebody goes back
        return 0
    if words["property"] != owner:
        raise BadInput(Fault(f"a backup of another property than {words['name']!r}", "one of the same property"))
    return sum(1 for one in there if one.hash not in entries)


def _move(path: Path, to: Path) -> None:
    """Move a file, what SQLite left beside it first: it would spoil another file in that place."""
    for old, new in zip((*companions(path), path), (*companions(to), to), strict=True):
        if old.exists():
            old.replace(new)
