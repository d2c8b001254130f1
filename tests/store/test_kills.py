"""Nothing that was told as kept is lost when the program is killed, at whatever moment."""

from pathlib import Path
from shutil import copyfile

import pytest

from rootcollar.store import doctor, open_file, sound
from tests.store.making import draft, made
from tools.kills import kill_often, lost


def test_a_few_kills_lose_nothing(tmp_path: Path) -> None:
    seen = kill_often(tmp_path, kills=5, seed=7)
    assert seen.faults == ()
    assert seen.promised >= 5


@pytest.mark.slow
def test_forty_kills_lose_nothing_and_some_come_half_way_through_a_change(tmp_path: Path) -> None:
    seen = kill_often(tmp_path, kills=40, seed=1)
    assert seen.faults == ()
    assert seen.promised >= 40
    assert seen.cut_off >= 5


def test_a_loss_would_be_seen(tmp_path: Path) -> None:
    path = made(tmp_path)
    assert lost(path, {"s1"}) == []
    assert lost(path, {"s1", "never"}) == ["never was promised and is gone"]
    with open_file(path) as file:
        said = file.say("phone", [draft(1, body='{"batch": "1", "of": 2}')])
    assert lost(path, {said[0].hash}) == ["half of change 1"]


def test_a_change_cut_off_is_taken_back_whole(tmp_path: Path) -> None:
    """The pages of a change, and the journal of how they were, as they lie on the disk in the middle of it."""
    path = made(tmp_path)
    with open_file(path) as file:
        kept = file.say("phone", [draft(1)])
        file._base.execute("PRAGMA cache_size = 2")  # so that pages are written before the change is whole
        file._base.execute("BEGIN IMMEDIATE")
        file._base.execute(
            "INSERT INTO stem (key, note) WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 500)"
            " SELECT 'k' || i, hex(zeroblob(1000)) FROM n"
        )
        middle = tmp_path / "middle.gpkg"
        copyfile(path, middle)
        copyfile(f"{path}-journal", f"{middle}-journal")
        file._base.execute("ROLLBACK")
    assert middle.stat().st_size > 500_000
    assert sound(doctor(middle))
    with open_file(middle) as file:
        assert file.snapshot().entries == kept
        assert [row.key for row in file.snapshot().ground["stem"]] == ["s1"]
    assert not Path(f"{middle}-journal").exists()
