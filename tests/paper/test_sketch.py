"""The names on the sketch of the ground: none over another, none out of the frame, none lost."""

import itertools
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from html import unescape
from pathlib import Path

import pytest

from rootcollar.exchange import read_folder, write_demo
from rootcollar.jobs.plan import prepare
from rootcollar.paper import render_packet
from rootcollar.work.packet import Packet, Sketch
from tests.paper import hobbin

Poppler = Callable[..., str]
Word = tuple[str, float, float, float, float]  # text, left, top, right, bottom [pt]

UNITS = ("ridge", "trail-loop", "bench", "hollow", "orchard-side", "brook-edge")
TODAY = date(2026, 3, 2)
WORD = re.compile(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</word>')
LINE = 0.3  # of a line's height, above and below, in which no letter of the small type stands


def words_of(packet: Packet, folder: Path, poppler: Poppler, paper: str) -> list[Word]:
    """Return the words of page one with where they stand, as another program reads the file."""
    file = folder / "page.pdf"
    alone = replace(packet, units=(), cards=(), pages=(), tags=(), signs=(), days=())
    file.write_bytes(render_packet(alone, made_on=TODAY, paper=paper))
    said = poppler("pdftotext", "-bbox", "-l", "1", file, "-")
    return [(text, *map(float, box)) for *box, text in WORD.findall(said)]


def overlaps(words: list[Word]) -> list[tuple[str, str]]:
    """Return the pairs of words whose letters stand on each other."""

    def on(one: Word, other: Word) -> bool:
        (_, left, top, right, bottom), (_, left2, top2, right2, bottom2) = one, other
        thin, thin2 = (bottom - top) * LINE, (bottom2 - top2) * LINE
        across = min(right, right2) - max(left, left2) > 0.2
        return across and min(bottom - thin, bottom2 - thin2) > max(top + thin, top2 + thin2)

    return [(one[0], other[0]) for one, other in itertools.combinations(words, 2) if on(one, other)]


def in_frame(words: list[Word]) -> list[Word]:
    """Return the words in the drawing: under the title, left of north, above the scale."""
    north = next(one for one in words if one[0] == "N")
    scale = next(one for one in words if one[0] == "ft" and one[2] > north[2] and abs(one[1] - north[1]) < 60)
    return [one for one in words if north[2] - 12 < one[2] < scale[4] + 14 and one[1] < north[1] - 12]


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Packet]:
    """Return a function that gives the packet of one of the demo's units."""
    folder = tmp_path_factory.mktemp("woods") / "hobbin-wood"
    write_demo(folder, TODAY)
    project = read_folder(folder)
    return lambda unit: prepare(project, TODAY, [unit]).value.packet


@pytest.mark.parametrize("paper", ["us-letter", "a4"])
@pytest.mark.parametrize("unit", UNITS)
def test_no_word_of_a_day_sheet_stands_on_another(
    unit: str, paper: str, demo: Callable[[str], Packet], tmp_path: Path, poppler: Poppler
) -> None:
    words = words_of(demo(unit), tmp_path, poppler, paper)
    assert len(words) > 100
    assert overlaps(words) == []


@pytest.mark.parametrize("unit", UNITS)
def test_every_name_of_the_ground_stands_once_in_the_frame(
    unit: str, demo: Callable[[str], Packet], tmp_path: Path, poppler: Poppler
) -> None:
    packet = demo(unit)
    words = words_of(packet, tmp_path, poppler, "us-letter")
    left = min(one[1] for one in words)
    drawn = in_frame(words)
    said = unescape(" ".join(one[0] for one in drawn))
    names = {name for _, name, _ in packet.day.sketch.lines if name}
    assert names
    for name in names:
        assert said.count(name) == sum(name in other for other in names), name
    assert all(one[1] > left for one in drawn)


def crowded() -> Packet:
    """A sketch with more and longer names than it has room for."""
    lines = tuple(
        ("well", f"the very long name of the well number {i + 1}", ((40.0 + i % 3, 40.0 + i // 3),)) for i in range(9)
    )
    sketch = Sketch(100, 100, ((10, 10), (90, 10), (90, 90), (10, 90)), lines)
    return replace(hobbin.bare(), day=replace(hobbin.bare().day, sketch=sketch))


def test_names_without_room_go_to_a_key_and_none_is_lost(tmp_path: Path, poppler: Poppler) -> None:
    words = words_of(crowded(), tmp_path, poppler, "us-letter")
    assert overlaps(words) == []
    said = " ".join(one[0] for one in words)
    for i in range(9):
        assert re.search(rf"\bnumber {i + 1}\b", said), i + 1


def test_words_on_each_other_would_be_noticed() -> None:
    one, beside = ("loop", 10.0, 10.0, 40.0, 20.0), ("brook", 41.0, 10.0, 60.0, 20.0)
    assert overlaps([one, beside, ("orchard", 35.0, 12.0, 70.0, 22.0)]) == [("loop", "orchard"), ("brook", "orchard")]
    assert overlaps([one, beside]) == []
