"""The journal is only added to, numbered without gaps, and a change of it shows."""

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from dataclasses import fields, replace
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.errors import BadInput
from rootcollar.store import Draft, Entry, doctor, open_file
from rootcollar.store.entry import CHANCE_BYTES, entry_faults, sealed
from tests.store.making import NOW, altered, chain, draft, made


def test_what_is_said_is_numbered_and_chained(tmp_path: Path) -> None:
    with open_file(made(tmp_path)) as file:
        first = file.say("phone", [draft(1), draft(2)])
        (third,) = file.say("phone", [draft(3)])
        (other,) = file.say("desk", [draft(4)])
        assert [one.seq for one in (*first, third, other)] == [1, 2, 3, 1]
        assert [one.prev for one in (*first, third, other)] == ["", first[0].hash, first[1].hash, ""]
        kept = file.snapshot()
    assert set(kept.entries) == {*first, third, other}
    assert [one.body for one in kept.entries] == [draft(n).body for n in (1, 2, 3, 4)]  # by time, as ids sort
    assert kept.gaps == ()


def test_entries_are_there_for_the_next_who_opens(tmp_path: Path) -> None:
    path = made(tmp_path)
    with open_file(path) as file:
        said = file.say("phone", [draft(1)])
    with open_file(path) as file:
        assert file.snapshot().entries == said
        assert file.say("phone", [draft(2)])[0].prev == said[0].hash


def test_two_who_write_at_once_get_numbers_of_their_own(tmp_path: Path) -> None:
    path = made(tmp_path)

    def write(name: str) -> list[Entry]:
        with open_file(path, wait_s=60) as file:
            return [file.say("phone", [replace(draft(n), by=name)])[0] for n in range(15)]

    with ThreadPoolExecutor(3) as crew:
        said = [entry for told in crew.map(write, ("Ann", "Ben", "Cy")) for entry in told]
    assert sorted(entry.seq for entry in said) == list(range(1, 46))
    assert doctor(path) == ()


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE journal SET body = 'no'",
        "UPDATE journal SET n = n + 5",
        "DELETE FROM journal",
        "INSERT OR REPLACE INTO journal SELECT * FROM journal",
        "REPLACE INTO journal SELECT n + 5, id, kind, about, device, seq, said_at, \"by\", 'no', salt, seal, prev, hash"
        " FROM journal",
    ],
)
def test_no_program_changes_the_journal(tmp_path: Path, change: str) -> None:
    path = made(tmp_path)
    with open_file(path) as file:
        said = file.say("phone", [draft()])
    base = sqlite3.connect(path)  # with the settings any program has
    with pytest.raises(sqlite3.IntegrityError, match="the journal is only added to"):
        base.execute(change)
    base.close()
    with open_file(path) as file:
        assert file.snapshot().entries == said


def test_none_is_kept_when_one_cannot_be(tmp_path: Path) -> None:
    with open_file(made(tmp_path)) as file:
        for wrong in (
            replace(draft(2), kind="Answer"),
            replace(draft(2), by=" "),
            replace(draft(2), body="half \ud800"),
            replace(draft(2), body="zero \0"),
            replace(draft(2), said_at=NOW.replace(tzinfo=None)),
            replace(draft(2), about=""),
        ):
            with pytest.raises(BadInput):
                file.say("phone", [draft(1), wrong])
        with pytest.raises(BadInput, match="device"):
            file.say("", [draft(1)])
        assert file.snapshot().entries == ()


START = datetime(1971, 1, 1, tzinfo=timezone(timedelta(hours=-5)))
_texts = st.text(max_size=40).filter(lambda text: "\0" not in text)
_moments = st.integers(0, 7_000_000_000_000_000).map(lambda us: START + timedelta(microseconds=us))


@given(_texts, _moments, st.binary(min_size=CHANCE_BYTES, max_size=CHANCE_BYTES), st.integers(0, 2))
def test_an_altered_word_shows(body: str, said_at: datetime, chance: bytes, which: int) -> None:
    entry = sealed(Draft("answer/1", said_at, "Ann", body, "unit/bench"), "phone", 2, "ab" * 32, chance)
    assert list(entry_faults(entry)) == []
    assert entry.said_at == said_at.replace(microsecond=said_at.microsecond // 1000 * 1000)
    changes = {
        "id": "0" * 26, "kind": "answer/2", "about": None, "device": "desk", "seq": 3, "by": "Ben", "prev": "cd" * 32,
        "said_at": entry.said_at + timedelta(milliseconds=1), "body": body + " ", "salt": "0" * 32, "seal": "0" * 64,
        "hash": "0" * 64,
    }  # fmt: skip
    assert set(changes) == {one.name for one in fields(Entry)}
    for name, word in changes.items():
        if getattr(entry, name) != word:
            assert list(entry_faults(altered(entry, **{name: word}))), name


def test_ids_sort_by_time_and_carry_it() -> None:
    early, late = chain("phone", [draft(1), draft(2)])
    assert early.id < late.id
    signs = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
    number = 0
    for sign in early.id:
        number = number * 32 + signs.index(sign)
    assert number >> 80 == (NOW + timedelta(minutes=1)).timestamp() * 1000
