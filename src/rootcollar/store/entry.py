"""An entry of the journal: something said or done, by whom, when, sealed so that a later change of it shows.

Each entry carries a number that its device gives without gaps, and the hash of that device's entry before it: a page
torn out, put in or written over is seen by anybody who counts. The hash covers the body by way of a seal, a hash of
body and salt; so a copy can leave a body out and still be checked, and nobody finds the body by trying (a day, a
number of few digits) because its salt is left out with it.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, fields
from datetime import datetime

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.store.values import moment_text, plain_text, read_moment

__all__ = ["CHANCE_BYTES", "Draft", "Entry", "entry_faults", "sealed"]

CHANCE_BYTES = 26  # 10 for the id, 16 for the salt

_ID_CHANCE = 10
_TIME_BITS, _CHANCE_BITS = 48, 80
_ID_LENGTH, _SIGN_BITS = 26, 5
_SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"  # the base 32 of ULIDs: no I, L, O, U to be misread

_ID = re.compile(f"[0-7][{_SIGNS}]{{25}}")
_KIND = re.compile(r"[a-z][a-z0-9_]*/[1-9][0-9]*")
_HASH = re.compile(r"[0-9a-f]{64}")
_SALT = re.compile(r"[0-9a-f]{32}")
_MOST_SHORT = 200  # ours: letters of a device's name, of a person's, of what an entry is about
_MOST_SEQ = 10**9  # ours: more than a device will ever say


@dataclass(frozen=True, slots=True)
class Draft:
    """What somebody says, before the file gives it its number.

    kind: what it is, with the version of its body's form, such as "application/1". about: the id of another entry,
    or "layer/key" of a row. body: a text, kept letter by letter.
    """

    kind: str
    said_at: datetime
    by: str
    body: str
    about: str | None = None


@dataclass(frozen=True, slots=True)
class Entry:
    """What was said, as it stays. id: a ULID. seq: counts a device's entries from 1. said_at: to the millisecond, UTC.

    body, salt: None in a copy that leaves them out. prev: the hash of the device's entry before, empty for the first.
    """

    id: str
    kind: str
    about: str | None
    device: str
    seq: int
    said_at: datetime
    by: str
    body: str | None
    salt: str | None
    seal: str
    prev: str
    hash: str


def sealed(draft: Draft, device: str, seq: int, prev: str, chance: bytes) -> Entry:
    """Return a draft as the entry it becomes. chance: CHANCE_BYTES of it. Raises BadInput with all that is wrong."""
    if len(chance) != CHANCE_BYTES:
        raise ValueError(f"want {CHANCE_BYTES} bytes, got {len(chance)}")
    said_at = read_moment(moment_text(draft.said_at))
    salt = chance[_ID_CHANCE:].hex()
    if not plain_text(draft.body):
        raise BadInput(Fault("a body with a zero byte or half a character", "plain text", field="body"))
    open_entry = Entry(
        _ulid(said_at, chance[:_ID_CHANCE]), draft.kind, draft.about, device, seq, said_at, draft.by,
        draft.body, salt, _seal(salt, draft.body), prev, hash="",
    )  # fmt: skip
    entry = _with_hash(open_entry)
    if faults := tuple(entry_faults(entry)):
        raise BadInput(*faults)
    return entry


def entry_faults(entry: Entry) -> Iterator[Fault]:
    """Yield what is wrong with an entry by itself: its form, its seal, its hash."""
    yield from _form_faults(entry)
    if entry.body is not None and not plain_text(entry.body):
        yield Fault("a body with a zero byte or half a character", "plain text", field="body")
    elif entry.body is not None and entry.salt is not None and _seal(entry.salt, entry.body) != entry.seal:
        yield Fault("a body that is not the one sealed", "the body as it was written", field="body")
    if _hash(entry) != entry.hash:
        yield Fault("words that are not the ones hashed", "the entry as it was written", field="hash")


def _form_faults(entry: Entry) -> Iterator[Fault]:
    for name, form, allowed in (
        ("id", _ID, "a ULID, 26 signs"),
        ("kind", _KIND, 'a word and its version, such as "application/1"'),
        ("seal", _HASH, "64 signs, 0 to f"),
        ("hash", _HASH, "64 signs, 0 to f"),
    ):
        if not form.fullmatch(getattr(entry, name)):
            yield Fault(repr(getattr(entry, name)), allowed, field=name)
    for name, text in (("device", entry.device), ("by", entry.by), ("about", entry.about)):
        if text is not None and not (text.strip() and len(text) <= _MOST_SHORT and plain_text(text)):
            yield Fault(repr(text), f"a text of 1 to {_MOST_SHORT} letters", field=name)
    if not 1 <= entry.seq <= _MOST_SEQ or (entry.seq == 1) != (entry.prev == ""):
        yield Fault(f"number {entry.seq}", "1 for the first, which has none before it, and so on", field="seq")
    elif entry.prev and not _HASH.fullmatch(entry.prev):
        yield Fault(repr(entry.prev), "64 signs, 0 to f", field="prev")
    if (entry.body is None) != (entry.salt is None) or (entry.salt is not None and not _SALT.fullmatch(entry.salt)):
        yield Fault(f"salt {entry.salt!r}", "32 signs, 0 to f, where there is a body; else none", field="salt")


def _with_hash(entry: Entry) -> Entry:
    words = {one.name: getattr(entry, one.name) for one in fields(entry)}
    return Entry(**{**words, "hash": _hash(entry)})


def _seal(salt: str, body: str) -> str:
    return hashlib.sha256(f"{salt}\n{body}".encode()).hexdigest()


def _hash(entry: Entry) -> str:
    """Return the hash over the entry before and every word of this one, the body by its seal."""
    words = [
        "entry/1", entry.prev, entry.id, entry.kind, entry.about, entry.device, entry.seq,
        moment_text(entry.said_at), entry.by, entry.seal,
    ]  # fmt: skip
    return hashlib.sha256(json.dumps(words, separators=(",", ":")).encode()).hexdigest()


def _ulid(said_at: datetime, chance: bytes) -> str:
    """Return a ULID: 48 bits of milliseconds since 1970, 80 of chance; they sort by time."""
    number = int(said_at.timestamp() * 1000 + 0.5) << _CHANCE_BITS | int.from_bytes(chance, "big")
    if number < 0 or number >> (_TIME_BITS + _CHANCE_BITS):
        raise BadInput(Fault(said_at.isoformat(), "a moment since 1970", field="said_at"))
    mask = (1 << _SIGN_BITS) - 1
    return "".join(_SIGNS[number >> _SIGN_BITS * place & mask] for place in reversed(range(_ID_LENGTH)))
