"""own.toml: what a stem took the crew on its own ground."""

from __future__ import annotations

import tomllib
from datetime import date
from pathlib import Path

import pytest

from rootcollar.choose import Own
from rootcollar.exchange.own_file import read_own
from rootcollar.kernel.errors import BadInput

TIME = """
[[time]]
method = "cut stump"
minutes = 85
stems = 40
species = "common buckthorn"
size = "1-2 in"
unit = "Brook edge"
on = 2026-10-02
by = "A. Steward"
"""
UNITS = {"brook-edge": "Brook edge"}


def read(text: str, units: dict[str, str] | None = UNITS) -> Own:
    return read_own(tomllib.loads(text), "own.toml", (), units)


def test_a_time_is_kept_for_one_stem_and_its_ground() -> None:
    (one,) = read(TIME).times
    assert (one.method, one.minutes, one.what) == ("cut_stump", 2.125, "stem")
    assert (one.species, one.unit, one.on) == ("rhca3", "brook-edge", date(2026, 10, 2))
    assert one.size_cm == (pytest.approx(2.54), pytest.approx(5.08))
    assert one.words == "own time of 2026-10-02, measured on brook-edge"


def test_what_it_does_not_say_it_holds_for_all_of() -> None:
    kept = "\n".join(line for line in TIME.splitlines() if line.split(" ")[0] not in {"species", "size", "unit"})
    (one,) = read(kept).times
    assert (one.species, one.unit, one.size_cm) == ("", "", None)


@pytest.mark.parametrize(
    ("old", "new", "field", "word"),
    [
        ("cut stump", "chop", "method", "cut_stump"),
        ("Brook edge", "moon", "unit", "brook-edge"),
        ("common buckthorn", "no such plant", "species", "plant"),
        ("1-2 in", "1 in +", "size", "both ends"),
        ("minutes = 85", "minutes = 0", "minutes", "above 0"),
        ("minutes = 85", "minutes = 50000", "minutes", "600"),
        ("stems = 40", "stems = 1.5", "stems", "whole number"),
        ('by = "A. Steward"', 'by = ""', "by", "who measured"),
        ("cut stump", 'foliar"\nwhat = "slash', "what", "cuts or pulls"),
        ("cut stump", 'cut"\nwhat = "walk', "what", "slash"),
    ],
)
def test_a_slip_is_told_by_block_and_key(old: str, new: str, field: str, word: str) -> None:
    with pytest.raises(BadInput) as caught:
        read(TIME.replace(old, new))
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == ("own.toml", field)
    assert "1" in fault.row and "[[time]]" in fault.row
    assert word in fault.allowed or field == "species"


def test_the_blank_file_shows_a_block_that_can_be_read() -> None:
    import rootcollar.exchange as room

    text = (Path(room.__file__).parent / "blank" / "own.toml").read_text(encoding="utf-8").splitlines()
    start = text.index("# [[time]]")
    block = "\n".join(line.removeprefix("# ") for line in text[start : start + 10])
    (one,) = read(block, {"unit-1": "Unit 1"}).times
    assert (one.minutes, one.unit, one.what) == (2.125, "unit-1", "stem")
