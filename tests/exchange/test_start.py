"""A folder is made whole, or not at all; what is there is never touched."""

import re
from datetime import timedelta
from functools import partial
from pathlib import Path

import pytest

from rootcollar.exchange import new_folder, read_folder, write_demo
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.kernel.errors import BadInput
from rootcollar.shelf import template

MAKERS = pytest.mark.parametrize("make", [new_folder, partial(write_demo, today=DEMO_DAY)])


def _files(path: Path) -> set[str]:
    return {one.relative_to(path).as_posix() for one in path.rglob("*") if one.is_file()}


def test_a_new_folder_holds_every_file(tmp_path):
    new_folder(tmp_path / "mine")
    assert _files(tmp_path / "mine") == {
        "ground.toml", "tally.csv", "crew.toml", "answers.toml", "choices.toml", "applied.csv", "stock.csv", "own.toml",
        "README.txt",
        "shelf/label-sheet-template.toml",
    }  # fmt: skip
    assert (tmp_path / "mine/shelf/label-sheet-template.toml").read_text(encoding="utf-8") == template()
    assert [one.name for one in tmp_path.iterdir()] == ["mine"]


def test_a_new_folder_with_one_row_counted_is_a_project(tmp_path):
    new_folder(tmp_path / "mine")
    with (tmp_path / "mine/tally.csv").open("a", encoding="utf-8") as tally:
        tally.write("unit-1,common buckthorn,1-2 in,40\n")
    project = read_folder(tmp_path / "mine")
    assert (len(project.stands), project.shelf, project.ground.demo, project.ground.notes) == (1, {}, False, ())


def test_the_examples_in_a_new_folder_can_be_used_as_they_stand(tmp_path):
    """Every commented line is one a person may uncomment."""
    new_folder(tmp_path / "mine")
    (tmp_path / "mine/tally.csv").write_text("unit,species,diameter class,count\nunit-1,rhca3,1-2 in,40\n")
    for name in ("ground.toml", "crew.toml", "answers.toml", "own.toml"):
        file = tmp_path / "mine" / name
        lines = file.read_text(encoding="utf-8").splitlines()
        file.write_text("\n".join(_uncommented(line) for line in lines), encoding="utf-8")
    project = read_folder(tmp_path / "mine")
    (unit,) = project.ground.units.values()
    assert (project.ground.state, unit.site_class, unit.wanted_beneath) == ("WI", "natural_area", True)
    assert len(project.ground.features) == 2
    assert (len(project.crew.people), len(project.answers), project.history.complete) == (1, 1, True)
    assert (len(project.own.proving), len(project.own.prices), project.own.wage_per_h) == (2, 1, 28)


def _uncommented(line: str) -> str:
    bare = line.removeprefix("# ")
    is_heading = bare.startswith("[") and bare.endswith("]")
    is_example = line.startswith("# ") and (is_heading or re.match(r"\w+ = ", bare))
    return bare if is_example else line


def test_the_demo_is_as_fresh_on_any_day_as_on_the_day_it_was_made_up(tmp_path):
    made_up, later = tmp_path / "one", tmp_path / "two"
    write_demo(made_up, DEMO_DAY)
    write_demo(later, DEMO_DAY + timedelta(days=1000))
    before, after = read_folder(made_up), read_folder(later)
    assert {one.on for one in before.answers} == {DEMO_DAY}
    assert [one.on - DEMO_DAY for one in after.answers] == [timedelta(days=1000)] * len(after.answers)
    ages = [(DEMO_DAY - one.on).days for one in before.history.rows]
    assert [(DEMO_DAY - one.on).days + 1000 for one in after.history.rows] == ages
    trained = [one.trained_on for one in after.crew.people if one.trained_on]
    assert all(DEMO_DAY + timedelta(days=1000 - 365) < one for one in trained)


@MAKERS
def test_a_folder_that_holds_something_is_never_touched(make, tmp_path):
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine/tally.csv").write_text("mine")
    with pytest.raises(BadInput, match="nothing was written"):
        make(tmp_path / "mine")
    assert _files(tmp_path) == {"mine/tally.csv"}
    assert (tmp_path / "mine/tally.csv").read_text() == "mine"


@MAKERS
def test_an_empty_folder_is_filled_even_where_one_stands_in_it(make, tmp_path, monkeypatch):
    (tmp_path / "mine").mkdir()
    monkeypatch.chdir(tmp_path / "mine")
    make(Path())
    assert "ground.toml" in {one.name for one in Path().iterdir()}
    assert [one.name for one in tmp_path.iterdir()] == ["mine"]


@MAKERS
def test_a_file_or_a_place_that_is_not_there_is_refused(make, tmp_path):
    (tmp_path / "file").write_text("x")
    for path in (tmp_path / "file", tmp_path / "file" / "below", tmp_path / "no" / "where", tmp_path / ("long" * 100)):
        with pytest.raises(BadInput, match="nothing was written"):
            make(path)
    assert _files(tmp_path) == {"file"}


@MAKERS
@pytest.mark.parametrize("there", [True, False])
def test_a_full_disk_leaves_nothing_behind(make, there, tmp_path, monkeypatch):
    path = tmp_path / "mine"
    if there:
        path.mkdir()
    write, count = Path.write_bytes, [0]

    def fills_up(self: Path, data: bytes) -> int:
        count[0] += 1
        if count[0] == 4:
            raise OSError(28, "No space left on device")
        return write(self, data)

    monkeypatch.setattr(Path, "write_bytes", fills_up)
    with pytest.raises(BadInput, match="No space left"):
        make(path)
    assert _files(tmp_path) == set()
    assert path.exists() is there


@MAKERS
def test_a_fault_while_filling_an_empty_folder_takes_all_of_it_back(make, tmp_path, monkeypatch):
    path = tmp_path / "mine"
    path.mkdir()
    rename, count = Path.rename, [0]

    def breaks(self: Path, target: Path) -> Path:
        count[0] += 1
        if count[0] == 3:
            raise OSError(5, "Input/output error")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", breaks)
    with pytest.raises(BadInput, match="Input/output error"):
        make(path)
    assert _files(tmp_path) == set()
    assert path.is_dir()
