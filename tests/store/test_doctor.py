"""The doctor finds what is damaged, lost or altered, and names it."""

import sqlite3
from pathlib import Path

import pytest
import shapely

from rootcollar.kernel.errors import BadInput, Refusal
from rootcollar.store import doctor, open_file, sound
from rootcollar.store.blob import pack
from rootcollar.store.schema import TRIGGERS
from tests.store.making import chain, draft, made

SHAPE = "UPDATE stem SET geom = x'"
SAID = chain("phone", [draft(n) for n in range(1, 5)])


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A file with ground and four entries."""
    found = made(tmp_path)
    with open_file(found) as file:
        file.append(SAID)
    return found


def change(path: Path, *lines: str, guarded: bool = False) -> None:
    """Change a file as somebody would who knows SQL, the journal's guards taken off and put back."""
    base = sqlite3.connect(path)
    guards = [] if guarded else [name for name in TRIGGERS if name.startswith("journal")]
    for name in guards:
        base.execute(f"DROP TRIGGER {name}")
    for line in lines:
        base.execute(line)
    for name in guards:
        base.execute(TRIGGERS[name])
    base.commit()
    base.close()


def told(path: Path) -> list[tuple[str, str]]:
    """What the doctor says."""
    return [(one.level, one.says) for one in doctor(path)]


def test_a_whole_file_has_nothing(path: Path) -> None:
    assert doctor(path) == ()


@pytest.mark.parametrize(
    ("line", "level", "says"),
    [
        ("UPDATE journal SET body = 'altered' WHERE seq = 2", "fault", "entry 2 of phone"),
        ("UPDATE journal SET \"by\" = 'Ben' WHERE seq = 2", "fault", "is not as it was written"),
        ("UPDATE journal SET body = NULL, salt = NULL WHERE seq = 2", "fault", "entry 2 of phone has no words left"),
        ("DELETE FROM journal WHERE seq = 2", "note", "number 2 of phone not here"),
        ("UPDATE journal SET said_at = 'noon' WHERE seq = 2", "fault", "'noon'"),
        ("ALTER TABLE stem ADD COLUMN girth REAL", "note", "column girth is not ours"),
        ("ALTER TABLE stem RENAME COLUMN dbh_cm TO girth", "fault", "column dbh_cm is gone, not DOUBLE"),
        ("UPDATE stem SET dbh_cm = 'thick'", "fault", "stem, s1, dbh_cm: found 'thick'"),
        ("UPDATE stem SET private = 'secret'", "note", "private says 'secret', which is left out of every copy"),
        ("UPDATE stem SET geom = x'4750'", "fault", "stem, s1: found something else where a shape should stand"),
        (SHAPE + pack(shapely.Point(1, 2), 3857).hex() + "'", "fault", "reference system 3857"),
        (SHAPE + pack(shapely.box(0, 0, 1, 1)).hex() + "'", "fault", "a POLYGON, not a POINT"),
        ("UPDATE gpkg_contents SET min_x = 0 WHERE table_name = 'stem'", "note", "stem: the box around it is out of"),
        ("DELETE FROM gpkg_geometry_columns WHERE table_name = 'stem'", "fault", "stem: not listed for map programs"),
        ("PRAGMA user_version = 10200", "note", "the file's user_version is 10200"),
        ("DROP TRIGGER stem_version", "fault", "the guard stem_version is gone"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_named(path: Path, line: str, level: str, says: str) -> None:
    change(path, line)
    found = told(path)
    assert any(one == level and says in text for one, text in found), found
    assert sound(doctor(path)) == (level == "note")


def test_an_entry_put_in_with_a_hash_of_its_own_does_not_follow(path: Path) -> None:
    other = chain("phone", [draft(1), draft(8), draft(9)])[2]
    for name in ("id", "body", "salt", "seal", "prev", "hash"):
        change(path, f"UPDATE journal SET {name} = '{getattr(other, name)}' WHERE seq = 3")  # noqa: S608 (ours)
    change(path, "UPDATE journal SET said_at = '2026-07-01T09:09:00.000Z' WHERE seq = 3")
    found = [text for level, text in told(path) if level == "fault"]
    assert len(found) == 2
    assert all("does not follow the entry numbered before it" in text for text in found)


def test_guards_taken_off_are_named(path: Path) -> None:
    change(path, "DROP TRIGGER journal_no_change", guarded=True)
    assert told(path) == [("fault", "the guard journal_no_change is gone or altered")]


def test_many_faults_of_a_kind_are_told_by_number(tmp_path: Path) -> None:
    path = made(tmp_path)
    with open_file(path) as file:
        file.append(chain("phone", [draft(n) for n in range(1, 60)]))
    change(path, "UPDATE journal SET body = 'altered'")
    found = told(path)
    assert len(found) == 21
    assert found[-1] == ("fault", "and 39 more of this kind")


def test_a_damaged_file_is_a_fault_not_a_crash(path: Path) -> None:
    size = path.stat().st_size
    for begin in range(4096, size, 4096):
        content = bytearray(path.read_bytes())
        content[begin : begin + 64] = b"\xa5" * 64
        hurt = path.with_name(f"hurt{begin}.gpkg")
        hurt.write_bytes(content)
        try:
            assert not sound(doctor(hurt)), begin
        except BadInput as wrong:
            assert "restore your last backup" in str(wrong)


def test_another_kind_of_file_is_none(tmp_path: Path) -> None:
    text = tmp_path / "a.gpkg"
    text.write_text(
        "no database, but long enough to be looked at as one, which takes a hundred signs or some more of it"
    )
    with pytest.raises(BadInput, match="no readable project file"):
        doctor(text)
    with pytest.raises(BadInput, match="no file"):
        doctor(tmp_path / "b.gpkg")


def test_a_newer_form_is_left_to_the_newer_version(path: Path) -> None:
    change(path, "UPDATE rootcollar_file SET value = '2' WHERE word = 'schema'")
    with pytest.raises(Refusal, match="a newer version made it"):
        doctor(path)
