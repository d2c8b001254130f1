"""Copies are whole and sound, the way back loses nothing, and what a sent copy leaves out is in none of its bytes."""

import sqlite3
from pathlib import Path

import pytest
import shapely

from rootcollar.kernel.errors import BadInput, NotFound, Refusal
from rootcollar.store import (
    PRIVATE,
    Draft,
    Row,
    amendment,
    backup,
    bundle_of,
    copies,
    doctor,
    new_file,
    open_file,
    restore,
    send,
    sound,
)
from tests.store.making import LATER, NOW, draft, made
from tests.store.test_doctor import change


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A file with ground, and three things said."""
    found = made(tmp_path)
    with open_file(found) as file:
        file.say("phone", [draft(n) for n in (1, 2, 3)])
    return found


def files(folder: Path) -> set[str]:
    """Names of all that lies in a folder."""
    return {one.name for one in folder.iterdir()}


def test_a_backup_is_the_same_and_still_a_geopackage(path: Path) -> None:
    to = path.with_name("copy.gpkg")
    with open_file(path) as file:  # open, and still copied whole
        assert backup(path, to) == to
        kept = file.snapshot()
    with open_file(to) as copy:
        assert copy.snapshot() == kept
        assert copy.read_only == ""
    head = to.read_bytes()[:72]
    assert (head[60:64], head[68:72]) == ((10300).to_bytes(4, "big"), b"GPKG")
    assert files(path.parent) == {"hobbin.gpkg", "copy.gpkg"}


def test_nothing_is_written_over_and_nothing_left_behind(path: Path) -> None:
    other = path.with_name("other.gpkg")
    other.write_text("mine")
    for act in (backup, lambda a, b: send(a, b, ["medical"])):
        with pytest.raises(BadInput, match="lies there already"):
            act(path, other)
        with pytest.raises(BadInput, match="no folder"):
            act(path, path.parent / "none" / "copy.gpkg")
        with pytest.raises(BadInput, match="no file"):
            act(path.with_name("none.gpkg"), path.with_name("copy.gpkg"))
    with pytest.raises(BadInput, match="lies there already"):
        new_file(other, "Wood", NOW)
    assert other.read_text() == "mine"
    stale = path.with_name("copy.gpkg-journal")
    stale.write_text("of another file")
    with pytest.raises(BadInput, match="copy.gpkg-journal, which lies there already"):
        backup(path, path.with_name("copy.gpkg"))
    assert files(path.parent) == {"hobbin.gpkg", "other.gpkg", "copy.gpkg-journal"}


def test_no_backup_of_a_file_that_is_not_sound(path: Path) -> None:
    change(path, "UPDATE journal SET body = 'altered' WHERE seq = 2")
    with pytest.raises(Refusal, match="not as it was written"):
        backup(path, path.with_name("copy.gpkg"))
    assert files(path.parent) == {"hobbin.gpkg"}


def test_the_way_back_keeps_the_old_file_and_counts_what_the_backup_has_not(path: Path) -> None:
    to = backup(path, path.with_name("copy.gpkg"))
    with open_file(path) as file:
        file.say("phone", [draft(4), draft(5)])
        later = file.snapshot()
    done = restore(path, to, NOW)
    assert done.not_in_backup == 2
    assert done.kept_aside == path.with_name("hobbin before 2026-07-01 090000.gpkg")
    with open_file(path) as file, open_file(done.kept_aside) as old, open_file(to) as copy:
        assert file.snapshot() == copy.snapshot()
        assert old.snapshot() == later
        assert file.append(bundle_of(old.snapshot()).entries) == later.entries[3:]


def test_a_file_open_meanwhile_writes_nothing_into_the_old_one(path: Path) -> None:
    to = backup(path, path.with_name("copy.gpkg"))
    with open_file(path) as file:
        restore(path, to, NOW)
        with pytest.raises(Refusal, match="moved, removed or replaced while it was open"):
            file.say("phone", [draft(4)])
        with pytest.raises(Refusal, match="moved, removed or replaced while it was open"):
            file.snapshot()


def test_the_way_back_works_where_the_file_is_gone_or_damaged(path: Path) -> None:
    to = backup(path, path.with_name("copy.gpkg"))
    with open_file(to) as copy:
        kept = copy.snapshot()
    path.unlink()
    path.with_name("hobbin.gpkg-journal").write_text("left of the file that is gone")
    assert restore(path, to, NOW).kept_aside is None
    assert not path.with_name("hobbin.gpkg-journal").exists()
    path.write_bytes(b"SQLite format 3\0" + bytes(5000))
    done = restore(path, to, LATER)
    assert done.kept_aside is not None
    assert done.kept_aside.stat().st_size == 5016
    with open_file(path) as file:
        assert file.snapshot() == kept


def test_nothing_changes_when_the_backup_will_not_do(path: Path) -> None:
    before = path.read_bytes()
    hurt, other = path.with_name("hurt.gpkg"), path.with_name("other.gpkg")
    backup(path, hurt)
    change(hurt, "UPDATE journal SET body = 'altered' WHERE seq = 2")
    new_file(other, "Another wood", NOW)
    part = send(path, path.with_name("part.gpkg"), ["medical"])
    for source, says in (
        (hurt, "not as it was written"),
        (other, "a backup of another property than 'Hobbin Wood'"),
        (part, "a copy without medical"),
        (path.with_name("none.gpkg"), "no file"),
    ):
        with pytest.raises((BadInput, Refusal), match=says):
            restore(path, source, NOW)
    assert path.read_bytes() == before
    assert files(path.parent) == {"hobbin.gpkg", "hurt.gpkg", "other.gpkg", "part.gpkg"}


def test_the_way_back_waits_for_nobody_half_way_through_a_change(path: Path) -> None:
    to = backup(path, path.with_name("copy.gpkg"))
    base = sqlite3.connect(path, isolation_level=None)
    base.execute("BEGIN IMMEDIATE")
    with pytest.raises(Refusal, match="another program is writing in it"):
        restore(path, to, NOW, wait_s=0.1)
    base.execute("ROLLBACK")
    base.close()
    assert restore(path, to, NOW).not_in_backup == 0


@pytest.fixture
def secrets(tmp_path: Path) -> Path:
    """A file with things in it that are not everybody's business, each with a word of its own to look for."""
    path = made(tmp_path)
    rows = [
        Row("mark", "orchids", shapely.Point(-89.8951111, 43.3041111), {"name": "ORCHIDA", "private": "rare_plants"}),
        Row("mark", "orchard", shapely.Point(-89.8952222, 43.3042222), {"name": "ORCHARDB", "own": False}),
        Row("stem", "s7", shapely.Point(-89.8953333, 43.3043333), {"tag": "TAGC", "private": "medical"}),
    ]
    with open_file(path) as file:
        file.put(rows, "Ann", NOW)
        licence, _, plant, about, *_ = file.say(
            "phone",
            [
                Draft("licence/1", NOW, "Ann", "NUMBERD"), Draft("medical/2", NOW, "Ann", "FITE"),
                Draft("rare_plant/1", NOW, "Ann", "PLANTF"), Draft("answer/1", NOW, "Ann", "BESIDEG", "mark/orchids"),
                Draft("neighbour/1", NOW, "Ann", "NAMEH"), Draft("answer/1", NOW, "Ann", "OPEN"),
            ],
        )  # fmt: skip
        (new,) = file.say("desk", [amendment(licence, [licence], "NUMBERI", "Ben", LATER)])
        (newer,) = file.say("desk", [amendment(licence, [new], "NUMBERJ", "Ben", LATER)])
        file.say(
            "desk", [Draft("note/1", LATER, "Ben", "ONK", newer.id), Draft("note/1", LATER, "Ben", "ONL", about.id)]
        )
        file.say("desk", [Draft("note/1", LATER, "Ben", "ONM", plant.id)])
    return path


WORDS = {
    "rare_plants": ["ORCHIDA", "PLANTF", "BESIDEG", "ONL", "ONM"],
    "licences": ["NUMBERD", "NUMBERI", "NUMBERJ", "ONK"],
    "medical": ["TAGC", "FITE"],
    "neighbours": ["ORCHARDB", "NAMEH"],
}


@pytest.mark.parametrize("without", [["rare_plants"], ["licences"], ["medical"], ["neighbours"], list(PRIVATE), []])
def test_what_is_left_out_is_in_no_byte_of_the_copy(secrets: Path, without: list[str]) -> None:
    to = send(secrets, secrets.with_name("sent.gpkg"), without)
    content = to.read_bytes()
    for word, texts in WORDS.items():
        for text in texts:
            assert (text.encode() in content) == (word not in without), text
    assert b"OPEN" in content
    position = shapely.to_wkb(shapely.Point(-89.8951111, 43.3041111))[5:]
    assert (position in content) == ("rare_plants" not in without)
    assert position in secrets.read_bytes()
    assert sound(doctor(to))
    with open_file(to) as copy, open_file(secrets) as whole:
        kept, every = copy.snapshot(), whole.snapshot()
    assert kept.left_out == tuple(sorted(without))
    assert [one.hash for one in kept.entries] == [one.hash for one in every.entries]
    if without:
        assert f"this copy leaves out: {' '.join(sorted(without))}" in [one.says for one in doctor(to)]


def test_salts_of_what_is_left_out_go_too(secrets: Path) -> None:
    to = send(secrets, secrets.with_name("sent.gpkg"), ["licences"])
    with open_file(secrets) as whole, open_file(to) as copy:
        salts = {one.hash: one.salt for one in whole.snapshot().entries}
        gone = [one for one in copy.snapshot().entries if one.body is None]
    assert len(gone) == 4
    for one in gone:
        assert one.salt is None
        assert (salts[one.hash] or "").encode() not in to.read_bytes()


def test_a_copy_with_parts_left_out_is_read_and_not_worked_in(secrets: Path) -> None:
    to = send(secrets, secrets.with_name("sent.gpkg"), ["medical", "licences"])
    with open_file(to) as copy:
        assert copy.read_only == "this copy was made to be read; left out: licences medical"
        with pytest.raises(Refusal, match="made to be read"):
            copy.say("phone", [draft(9)])
        with pytest.raises(BadInput, match="a copy without licences, medical"):
            bundle_of(copy.snapshot())
    further = send(to, to.with_name("further.gpkg"), ["neighbours"])
    with open_file(further) as copy:
        assert copy.snapshot().left_out == ("licences", "medical", "neighbours")


def test_a_row_marked_with_a_word_nobody_knows_goes_whatever_is_named(secrets: Path) -> None:
    change(secrets, "UPDATE mark SET private = 'rare plants' WHERE key = 'orchids'")
    to = send(secrets, secrets.with_name("sent.gpkg"), ["licences"])
    assert b"ORCHIDA" not in to.read_bytes()
    with open_file(secrets) as file, pytest.raises(BadInput, match="rare_plants, licences, medical, neighbours"):
        file.put([Row("mark", "m", None, {"private": "orchids"})], "Ann", LATER)


def test_only_known_things_can_be_left_out(secrets: Path) -> None:
    with pytest.raises(NotFound, match="rare_plants, licences, medical, neighbours"):
        send(secrets, secrets.with_name("sent.gpkg"), ["orchids"])
    assert files(secrets.parent) == {"hobbin.gpkg"}


def test_a_way_back_that_fails_half_way_leaves_the_old_file_in_its_place(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    to, before = backup(path, path.with_name("copy.gpkg")), path.read_bytes()

    def fail(made: Path, there: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(copies, "place", fail)
    with pytest.raises(BadInput, match="nothing can be written .No space left on device"):
        restore(path, to, NOW)
    assert path.read_bytes() == before
    assert files(path.parent) == {"hobbin.gpkg", "copy.gpkg"}
