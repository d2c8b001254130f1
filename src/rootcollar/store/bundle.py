"""Bundles: the entries of a journal as one JSON text, to carry from device to device.

Entries that are already there change nothing; in whatever order bundles come, every file ends with the same entries.
Ground does not travel so: it is edited in one file.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from typing import Any

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.store.entry import Entry, entry_faults
from rootcollar.store.kept import Kept
from rootcollar.store.values import moment_text, read_moment

__all__ = ["Bundle", "bundle_of", "read_bundle", "write_bundle"]

_FORM = 1
_HEAD = "rootcollar_bundle"
_WORDS = {one.name: one.type for one in fields(Entry)}
_MAY_BE_NULL = frozenset({"about"})


@dataclass(frozen=True, slots=True)
class Bundle:
    """Entries of one property. property_id: which; name: what it is called, for people."""

    property_id: str
    name: str
    entries: tuple[Entry, ...]


def bundle_of(kept: Kept, without: Iterable[str] = ()) -> Bundle:
    """Return what a store has said, without the hashes named: those the other device is known to have.

    Raises BadInput for a copy that leaves something out: the other device would take it for all there is.
    """
    if kept.left_out:
        found = f"a copy without {', '.join(kept.left_out)}"
        raise BadInput(Fault(found, "the whole file; a bundle carries whole entries"))
    known = frozenset(without)
    return Bundle(kept.property_id, kept.name, tuple(one for one in kept.entries if one.hash not in known))


def write_bundle(bundle: Bundle) -> bytes:
    """Return a bundle as text; the same entries always give the same bytes."""
    entries = sorted(bundle.entries, key=lambda one: (one.id, one.hash))
    told = {_HEAD: _FORM, "property": bundle.property_id, "name": bundle.name, "entries": [*map(_told, entries)]}
    return (json.dumps(told, indent=1, ensure_ascii=True) + "\n").encode()


def read_bundle(content: bytes, file: str, property_id: str = "") -> Bundle:
    """Return the bundle in a file's content. property_id: the property it must belong to, when one is open.

    Raises BadInput with every entry that was altered or cannot be read.
    """
    try:
        told = json.loads(content)
    except (ValueError, RecursionError):
        raise BadInput(Fault("no JSON, or only part of it", "a bundle, whole", file)) from None
    if not isinstance(told, dict) or _HEAD not in told:
        raise BadInput(Fault("JSON of another kind", f"a bundle, which begins with {_HEAD}", file))
    if told[_HEAD] != _FORM:
        raise BadInput(Fault(f"a bundle of form {told[_HEAD]!r}", f"form {_FORM}; a newer version reads others", file))
    owner, name, listed = told.get("property"), told.get("name"), told.get("entries")
    if not isinstance(owner, str) or not isinstance(name, str) or not isinstance(listed, list):
        raise BadInput(Fault("a bundle without property, name or entries", "all three", file))
    if property_id and owner != property_id:
        raise BadInput(Fault(f"a bundle of another property, {name!r}", "one of the property that is open", file))
    entries, faults = [], []
    for row, one in enumerate(listed, start=1):
        try:
            entries.append(_entry(one))
        except BadInput as wrong:
            faults += [Fault(each.found, each.allowed, file, f"entry {row}", each.field) for each in wrong.faults]
    if faults:
        raise BadInput(*faults)
    return Bundle(owner, name, tuple(entries))


def _told(entry: Entry) -> Mapping[str, str | int | None]:
    return {name: getattr(entry, name) for name in _WORDS} | {"said_at": moment_text(entry.said_at)}


def _entry(told: Any) -> Entry:
    """Return an entry from what JSON holds of it. Raises BadInput with all that is wrong with it."""
    if not isinstance(told, dict) or set(told) != set(_WORDS):
        raise BadInput(Fault("an entry with words missing or too many", ", ".join(_WORDS)))
    faults = []
    for name in _WORDS:
        kind = int if name == "seq" else str
        value = told[name]
        if type(value) is not kind and not (value is None and name in _MAY_BE_NULL):
            faults.append(Fault(repr(value), "a whole number" if kind is int else "text", field=name))
    if faults:
        raise BadInput(*faults)
    said_at = read_moment(told["said_at"])
    if moment_text(said_at) != told["said_at"]:
        raise BadInput(Fault(told["said_at"], "a moment in UTC to the millisecond", field="said_at"))
    entry = Entry(**{**told, "said_at": said_at})
    if wrong := tuple(entry_faults(entry)):
        raise BadInput(*wrong)
    return entry
