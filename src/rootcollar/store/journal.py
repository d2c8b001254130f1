"""The journal's table: entries in, entries out. What it may never do, change one, its triggers refuse."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.store.base import Connection
from rootcollar.store.entry import Draft, Entry, entry_faults, sealed
from rootcollar.store.schema import JOURNAL_COLUMNS
from rootcollar.store.values import moment_text, read_moment

__all__ = ["add_drafts", "add_entries", "known_hashes", "read_journal"]

_NAMES = ", ".join(f'"{name}"' for name in JOURNAL_COLUMNS)
_MARKS = ", ".join("?" for _ in JOURNAL_COLUMNS)
_LEFT_OUT = Fault("an entry whose words were left out", "whole entries", field="body")
_READ = f"SELECT {_NAMES} FROM journal ORDER BY id, hash"
_ADD = f"INSERT INTO journal ({_NAMES}) VALUES ({_MARKS})"
_LAST = "SELECT seq, hash FROM journal WHERE device = ? ORDER BY seq DESC, hash LIMIT 1"


def read_journal(base: Connection) -> tuple[Entry, ...]:
    """Return every entry, by time and hash: the same order in every file that holds the same entries.

    Whether they are as they were written is not looked at here but by the doctor. Raises BadInput for a moment that
    is none.
    """
    return tuple(_entry(line) for line in base.execute(_READ))


def known_hashes(base: Connection) -> frozenset[str]:
    """Return the hash of every entry that is there."""
    return frozenset(text for (text,) in base.execute("SELECT hash FROM journal"))


def add_drafts(base: Connection, device: str, drafts: Sequence[Draft], chance: Iterable[bytes]) -> tuple[Entry, ...]:
    """Number, seal and add drafts of a device within the change that is under way; return the entries they became.

    Raises BadInput with the first draft's faults; then none of them is kept.
    """
    last = base.execute(_LAST, (device,)).fetchone()
    seq, prev = last or (0, "")
    made = []
    for draft, luck in zip(drafts, chance, strict=True):
        entry = sealed(draft, device, seq + 1, prev, luck)
        made.append(entry)
        seq, prev = entry.seq, entry.hash
    _add(base, made)
    return tuple(made)


def add_entries(base: Connection, entries: Sequence[Entry]) -> tuple[Entry, ...]:
    """Add entries that another file made; return those that were not there. Raises BadInput for any that was altered.

    In whatever order they come, and however often, the journal holds the same in the end.
    """
    faults = [
        Fault(fault.found, fault.allowed, row=f"entry {entry.id} of {entry.device}", field=fault.field)
        for entry in entries
        for fault in (*entry_faults(entry), *([] if entry.body is not None else [_LEFT_OUT]))
    ]
    if faults:
        raise BadInput(*faults)
    known = known_hashes(base)
    new = {entry.hash: entry for entry in entries if entry.hash not in known}
    _add(base, new.values())
    return tuple(new.values())


def _add(base: Connection, entries: Iterable[Entry]) -> None:
    base.executemany(
        _ADD,
        (
            (
                one.id, one.kind, one.about, one.device, one.seq, moment_text(one.said_at), one.by, one.body, one.salt,
                one.seal, one.prev, one.hash,
            )
            for one in entries
        ),
    )  # fmt: skip


def _entry(line: tuple[Any, ...]) -> Entry:
    words = dict(zip(JOURNAL_COLUMNS, line, strict=True))
    try:
        return Entry(**{**words, "said_at": read_moment(words["said_at"])})
    except BadInput as wrong:
        raise BadInput(Fault(wrong.faults[0].found, wrong.faults[0].allowed, "journal", line[0], "said_at")) from None
