"""A saved file of every form that any version ever wrote opens, reads the same, and can be worked in."""

import json
import sqlite3
from pathlib import Path
from shutil import copyfile

import pytest

from rootcollar.store import SCHEMA, backup, doctor, open_file, sound
from tests.store.making import draft
from tests.stores.make import STORES, made_sample, told

FORMS = range(1, SCHEMA + 1)


@pytest.mark.parametrize("form", FORMS)
def test_a_saved_file_of_every_form_reads_the_same(tmp_path: Path, form: int) -> None:
    path = tmp_path / "old.gpkg"
    copyfile(STORES / f"form-{form}.gpkg", path)
    with open_file(path) as file:
        assert file.read_only == ""
        assert told(file.snapshot()) == json.loads((STORES / f"form-{form}.json").read_text(encoding="utf-8"))
        assert file.say("phone", [draft(9)])[0].seq == 4
    assert sound(doctor(path))
    assert sound(doctor(backup(path, tmp_path / "copy.gpkg")))


def test_nothing_is_saved_of_a_form_that_is_not_written_yet() -> None:
    assert {path.name for path in STORES.glob("form-*.gpkg")} == {f"form-{form}.gpkg" for form in FORMS}


def test_the_newest_saved_file_is_what_this_version_writes(tmp_path: Path) -> None:
    with open_file(made_sample(tmp_path / "now.gpkg")) as file:
        now = told(file.snapshot())
    assert now == json.loads((STORES / f"form-{SCHEMA}.json").read_text(encoding="utf-8"))


def test_a_table_or_column_cannot_change_without_a_new_form(tmp_path: Path) -> None:
    """Whoever changes a table gives the form a new number, and saves a file of it."""
    said = []
    for path in (STORES / f"form-{SCHEMA}.gpkg", made_sample(tmp_path / "now.gpkg")):
        base = sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True)
        said.append(base.execute("SELECT type, name, sql FROM sqlite_master ORDER BY type, name").fetchall())
        base.close()
    assert said[0] == said[1]
