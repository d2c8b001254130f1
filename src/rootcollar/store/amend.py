"""Amendments: a new wording beside the old. Two of the same wording both stand until a third names both.

Body of an "amend/1" entry, as JSON: {"instead_of": [hashes of the wordings it replaces], "body": "the new wording"}.
Its `about` is the id of the first wording. Hashes, because they cover the words: no two can name each other.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.store.entry import Draft, Entry

__all__ = ["AMEND", "Wording", "amendment", "read_wording", "standing"]

AMEND = "amend/1"


@dataclass(frozen=True, slots=True)
class Wording:
    """What an entry says: at first, or amended. body: None where it was left out of a copy."""

    entry: Entry
    body: str | None
    instead_of: frozenset[str] = frozenset()


def amendment(first: Entry, instead_of: Sequence[Entry], body: str, by: str, said_at: datetime) -> Draft:
    """Return the draft of a new wording of an entry, in place of the wordings named; name all rivals to settle them.

    Raises BadInput when a wording named is none of that entry.
    """
    for one in instead_of:
        if one.hash != first.hash and (one.kind, one.about) != (AMEND, first.id):
            raise BadInput(Fault(f"entry {one.id}", f"wordings of entry {first.id}", field="instead_of"))
    if not instead_of:
        raise BadInput(Fault("no wording named", "the wordings it replaces", field="instead_of"))
    told = {"instead_of": sorted(one.hash for one in instead_of), "body": body}
    return Draft(AMEND, said_at, by, json.dumps(told, ensure_ascii=False), first.id)


def standing(entries: Iterable[Entry]) -> Mapping[str, tuple[Wording, ...]]:
    """Return for each first entry, by id, the wordings that stand: one, or rivals, by id and hash.

    Only what is in the entries counts, not the order in which they came. An amendment whose first wording is not
    here stands by itself, under the id it is about.
    """
    wordings: dict[str, list[Wording]] = defaultdict(list)
    for entry in entries:
        one = read_wording(entry)
        wordings[entry.about if entry.kind == AMEND and entry.about else entry.id].append(one)
    return {first: _standing(wordings[first]) for first in sorted(wordings)}


def read_wording(entry: Entry) -> Wording:
    """Return what an entry says. An amendment that cannot be read, or is left out, replaces nothing and stands."""
    if entry.kind != AMEND or entry.body is None:
        return Wording(entry, entry.body)
    try:
        told = json.loads(entry.body)
        named, body = told["instead_of"], told["body"]
    except (ValueError, KeyError, TypeError, RecursionError):
        return Wording(entry, entry.body)
    if not isinstance(body, str) or not isinstance(named, list) or not all(isinstance(one, str) for one in named):
        return Wording(entry, entry.body)
    return Wording(entry, body, frozenset(named))


def _standing(wordings: Sequence[Wording]) -> tuple[Wording, ...]:
    replaced = frozenset[str]().union(*(one.instead_of for one in wordings))
    found = [one for one in wordings if one.entry.hash not in replaced]
    return tuple(sorted(found, key=lambda one: (one.entry.id, one.entry.hash)))
