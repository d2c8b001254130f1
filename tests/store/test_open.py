"""A file that cannot be opened, or not written, says why and what next; nothing that was kept is lost."""

import os
import signal
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from shutil import rmtree
from tempfile import mkdtemp

import pytest

from rootcollar.kernel.errors import BadInput, Refusal, RootcollarError
from rootcollar.store import Row, backup, doctor, new_file, open_file
from rootcollar.store.base import connect
from tests.store.making import LATER, NOW, draft, made
from tests.store.test_doctor import change

NOBODY = 65534  # the user without rights, on every Unix


@contextmanager
def as_nobody(folder: Path) -> Iterator[None]:
    """Act as a user who may only read, also where the tests run as the one who may do everything."""
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    if root:
        os.seteuid(NOBODY)
    try:
        yield
    finally:
        if root:
            os.seteuid(0)
        folder.chmod(0o755)


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that every user can reach, which those of pytest are not."""
    folder = Path(mkdtemp(prefix="rootcollar-"))
    folder.chmod(0o755)
    yield folder
    rmtree(folder)


def test_what_is_no_project_file_is_named(tmp_path: Path) -> None:
    other, empty, text, tiny = (tmp_path / f"{name}.gpkg" for name in ("other", "empty", "text", "tiny"))
    base = sqlite3.connect(other)
    base.execute("CREATE TABLE t (x)")
    base.execute("PRAGMA application_id = 1196444487")
    base.close()
    base = sqlite3.connect(tmp_path / "db.gpkg")
    base.execute("CREATE TABLE t (x)")
    base.close()
    empty.touch()
    text.write_text("area = 3 ac\n" * 100)
    tiny.write_bytes(b"SQLite format 3\0")
    for path, says in (
        (tmp_path / "none.gpkg", "no file"),
        (tmp_path, "no file"),
        (other, "a GeoPackage of another program"),
        (tmp_path / "db.gpkg", "a database of another kind"),
        (empty, "a database of another kind"),
        (text, "no readable project file"),
        (tiny, "no readable project file"),
    ):
        before = path.read_bytes() if path.is_file() else b""
        with pytest.raises(BadInput, match=says):
            open_file(path)
        assert (path.read_bytes() if path.is_file() else b"") == before


def test_a_file_that_does_not_say_its_form_is_none(tmp_path: Path) -> None:
    for line in ("DELETE FROM rootcollar_file WHERE word = 'name'", "UPDATE rootcollar_file SET value = 'x'"):
        path = made(tmp_path, f"{len(line)}.gpkg")
        change(path, line)
        with pytest.raises(BadInput, match="does not say its form, property and name"):
            open_file(path)


def test_a_file_of_a_newer_form_is_read_and_not_written(tmp_path: Path) -> None:
    path = made(tmp_path)
    with open_file(path) as file:
        kept = (*file.say("phone", [draft(1)]),)
    change(
        path, "UPDATE rootcollar_file SET value = '7' WHERE word = 'schema'", "ALTER TABLE unit ADD COLUMN later TEXT"
    )
    before = path.read_bytes()
    with open_file(path) as file:
        assert file.read_only == "the file was made by a newer version of this program (form 7; this one writes 1)"
        assert file.snapshot().entries == kept
        for act in (
            lambda: file.say("phone", [draft(2)]),
            lambda: file.append(kept),
            lambda: file.put([Row("unit", "u")], "Ann", LATER),
            lambda: file.remove(file.snapshot().ground["unit"][0], LATER),
        ):
            with pytest.raises(Refusal, match="made by a newer version"):
                act()
    assert path.read_bytes() == before


def test_a_file_another_program_writes_in_is_waited_for_and_then_told(tmp_path: Path) -> None:
    path = made(tmp_path)
    other = sqlite3.connect(path, isolation_level=None)
    with open_file(path, wait_s=0.1) as file:
        first = file.say("phone", [draft(1)])
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(Refusal, match="another program is writing in it. Nothing of this change was written"):
            file.say("phone", [draft(2)])
        assert file.snapshot().entries == first  # reading goes on
        other.execute("ROLLBACK")
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(Refusal, match="another program is writing in it"):
            file.snapshot()
        with pytest.raises(Refusal, match="another program is writing in it"):
            open_file(path, wait_s=0.1)
        other.execute("ROLLBACK")
        second = file.say("phone", [draft(2)])
        assert file.snapshot().entries == (*first, *second)
    other.close()
    assert doctor(path) == ()


def test_a_file_left_with_a_write_ahead_log_is_made_one_file_again(tmp_path: Path) -> None:
    path = made(tmp_path)
    other = sqlite3.connect(path)
    other.execute("PRAGMA journal_mode = WAL")
    other.execute("UPDATE unit SET name = 'theirs' WHERE key = 'bench'")
    other.commit()
    with pytest.raises(Refusal, match=r"another program (holds it open|is writing in it)"):
        open_file(path, wait_s=0.1)
    other.close()
    with open_file(path) as file:
        assert file.snapshot().ground["unit"][0].values["name"] == "theirs"
        file.say("phone", [draft(1)])
        assert {one.name for one in tmp_path.iterdir()} == {"hobbin.gpkg"}


@pytest.mark.parametrize("what", ["file", "folder"])
def test_a_file_or_folder_that_may_only_be_read(open_folder: Path, what: str) -> None:
    path = made(open_folder)
    path.chmod(0o444 if what == "file" else 0o666)
    open_folder.chmod(0o777 if what == "file" else 0o555)
    before = path.read_bytes()
    with as_nobody(open_folder):
        with open_file(path) as file:
            assert file.read_only == "file or folder may only be read"
            assert len(file.snapshot().ground["unit"]) == 2
            with pytest.raises(Refusal, match="file or folder may only be read"):
                file.say("phone", [draft(1)])
        assert doctor(path) == ()
        if what == "folder":
            with pytest.raises(BadInput, match="nothing can be written"):
                new_file(open_folder / "new.gpkg", "Wood", NOW)
    assert path.read_bytes() == before


def test_a_file_that_can_be_read_by_nobody(open_folder: Path) -> None:
    path = made(open_folder)
    path.chmod(0)
    with as_nobody(open_folder), pytest.raises(Refusal, match="cannot be opened"):
        open_file(path)


def test_a_right_taken_away_while_it_is_open(open_folder: Path) -> None:
    open_folder.chmod(0o777)
    path = made(open_folder)
    path.chmod(0o666)
    with as_nobody(open_folder):
        with open_file(path) as file:
            kept = file.say("phone", [draft(1)])
            file._base.execute("PRAGMA query_only = ON")  # what the system answers then
            with pytest.raises(Refusal, match="may only be read"):
                file.say("phone", [draft(2)])
            file._base.execute("PRAGMA query_only = OFF")
        with open_file(path) as file:
            assert file.snapshot().entries == kept


@pytest.mark.parametrize("how", ["removed", "moved", "replaced"])
def test_a_file_that_goes_away_while_it_is_open(tmp_path: Path, how: str) -> None:
    path = made(tmp_path)
    file = open_file(path)
    kept = file.say("phone", [draft(1)])
    aside = tmp_path / "aside.gpkg"
    path.replace(aside)
    if how == "replaced":
        made(tmp_path)
    for act in (lambda: file.say("phone", [draft(2)]), file.snapshot):
        with pytest.raises(Refusal, match="moved, removed or replaced while it was open"):
            act()
    file.close()
    with open_file(aside) as old:
        assert old.snapshot().entries == kept
    if how == "replaced":
        assert doctor(path) == ()


def test_sqlite_sees_by_itself_that_a_file_was_moved(tmp_path: Path) -> None:
    path = made(tmp_path)
    file = open_file(path)
    path.rename(tmp_path / "aside.gpkg")
    file._look = lambda: None  # type: ignore[method-assign]  # moved just after our own look
    with pytest.raises(Refusal, match="moved or removed while it was open"):
        file.say("phone", [draft(2)])
    file._base.close()


def test_a_full_disk_loses_nothing(tmp_path: Path) -> None:
    path = made(tmp_path)
    with open_file(path) as file:
        kept = file.say("phone", [draft(1)])
        pages = file._base.execute("PRAGMA page_count").fetchone()[0]
        file._base.execute(f"PRAGMA max_page_count = {pages + 2}")
        full = 0
        for number in range(2, 200):
            try:
                kept += file.say("phone", [draft(number)])
            except Refusal as told:
                full += 1
                assert "no room is left. Nothing of this change was written" in str(told)
        assert full > 10
        assert file.snapshot().entries == kept
        with pytest.raises(Refusal, match="no room is left"):
            file.put([Row("stem", f"n{n}", None, {"note": "x" * 1000}) for n in range(99)], "Ann", LATER)
        assert [row.key for row in file.snapshot().ground["stem"]] == ["s1"]
        file._base.execute("PRAGMA max_page_count = 100000")
        kept += file.say("phone", [draft(300)])
        assert file.snapshot().gaps == ()
    with open_file(path) as file:
        assert file.snapshot().entries == kept
    assert doctor(path) == ()


def test_a_disk_too_full_for_a_new_file_or_a_copy_leaves_nothing_behind(tmp_path: Path) -> None:
    """A limit on the size of files stands for the full disk; SQLite and the system answer the same way."""
    resource = pytest.importorskip("resource")
    path = made(tmp_path)
    before = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, hard))
    try:
        with pytest.raises(RootcollarError, match=r"no room is left|does not do what it is asked"):
            backup(path, tmp_path / "copy.gpkg")
        with pytest.raises(RootcollarError, match=r"no room is left|does not do what it is asked"):
            new_file(tmp_path / "new.gpkg", "Wood", NOW)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, before)
    assert {one.name for one in tmp_path.iterdir()} == {"hobbin.gpkg"}
    assert doctor(path) == ()


def test_every_change_is_on_the_disk_before_it_is_told(tmp_path: Path) -> None:
    base = connect(made(tmp_path), write=True)
    settings = {name: base.execute(f"PRAGMA {name}").fetchone()[0] for name in ("journal_mode", "synchronous")}
    base.close()
    assert settings == {"journal_mode": "delete", "synchronous": 2}


def test_a_path_with_signs_that_mean_something_elsewhere(tmp_path: Path) -> None:
    folder = tmp_path / "a?mode=ro#b%20c ü'"
    folder.mkdir()
    path = made(folder)
    with open_file(path) as file:
        file.say("phone", [draft(1)])
    assert doctor(path) == ()
    assert [one.name for one in tmp_path.iterdir()] == [folder.name]
