"""A packet, printed and then read by other programs: what it says, on which page, and what kind of file it is."""

import datetime
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from rootcollar.kernel.errors import Refusal
from rootcollar.paper import render_packet
from rootcollar.work.packet import Struck
from tests.paper import hobbin
from tests.paper.hobbin import MADE_ON, PACKETS

Printed = Callable[[str], Path]
Poppler = Callable[..., str]
QUICK = ("hobbin", "papers")  # the others are large
EACH = [pytest.param(name, marks=() if name in QUICK else pytest.mark.slow) for name in PACKETS]


def plain(text: str) -> str:
    """Return a text on one line, without the invisible places to break long words."""
    return re.sub(r"\s+", " ", text.replace("\u200b", "")).strip()


def pages(poppler: Poppler, file: Path) -> list[str]:
    """Return the text of every page, in the order it was set."""
    return [plain(page) for page in poppler("pdftotext", "-raw", "-enc", "UTF-8", file, "-").split("\f")[:-1]]


def info(poppler: Poppler, file: Path) -> dict[str, str]:
    """Return what pdfinfo says of a file, by its labels."""
    rows = (row.partition(":") for row in poppler("pdfinfo", file).splitlines())
    return {label.strip(): said.strip() for label, _, said in rows}


@pytest.mark.parametrize("name", EACH)
def test_every_packet_is_tagged_and_says_it_is_accessible(name: str, printed: Printed, poppler: Poppler) -> None:
    said = info(poppler, printed(name))
    assert said["Tagged"] == "yes"
    assert said["Title"]
    meta = poppler("pdfinfo", "-meta", printed(name))
    assert re.search(r"<pdfuaid:part>\s*1\s*</pdfuaid:part>", meta)
    assert b"/Lang" in printed(name).read_bytes()


@pytest.mark.parametrize("name", PACKETS)
def test_only_our_face_is_used_and_it_travels_with_the_file(name: str, printed: Printed, poppler: Poppler) -> None:
    rows = poppler("pdffonts", printed(name)).splitlines()[2:]
    assert rows
    for row in rows:
        assert re.match(r"[A-Z]{6}\+SourceSans3-\w+ .* yes yes yes +\d+ +0$", row), row


@pytest.mark.parametrize("name", PACKETS)
def test_the_day_sheet_is_one_page_whatever_is_on_it(name: str, printed: Printed, poppler: Poppler) -> None:
    packet = PACKETS[name]()
    first, second, *_ = pages(poppler, printed(name))
    assert "Worked to (mark the sketch)" in first  # its last line
    moved = "More on the next page" in first
    heads = "Day sheet, continued" if moved else packet.units[0].name if packet.units else "Record"
    assert second.removeprefix(plain(packet.banner)).strip().startswith(heads)


@pytest.mark.parametrize("name", PACKETS)
def test_page_one_holds_loads_and_emergency(name: str, printed: Printed, poppler: Poppler) -> None:
    first = pages(poppler, printed(name))[0]
    for words in (
        "Load Mix Filled Empty Wind mph Air °F Stems By",
        "If something goes wrong",
        "Hospital",
        "Poison line",
    ):
        assert words in first


@pytest.mark.parametrize("name", ["hobbin", "overfull", "absurd", "typed", "papers"])
def test_the_banner_stands_on_every_page(name: str, printed: Printed, poppler: Poppler) -> None:
    banner = plain(PACKETS[name]().banner)
    for number, page in enumerate(pages(poppler, printed(name)), start=1):
        assert banner in page, number


def test_a_packet_without_banner_prints_none(printed: Printed, poppler: Poppler) -> None:
    assert not any("NOT CHECKED" in page for page in pages(poppler, printed("bare")))


@pytest.mark.parametrize("name", PACKETS)
def test_every_page_knows_its_number_and_its_property(name: str, printed: Printed, poppler: Poppler) -> None:
    all_pages = pages(poppler, printed(name))
    for number, page in enumerate(all_pages, start=1):
        assert f"packet page {number} of {len(all_pages)}" in page
        assert PACKETS[name]().property_name in page


def texts(value: object) -> list[str]:
    """Return every text in a packet, however deep, but for the words only a picture or a mark shows."""
    if isinstance(value, str):
        return [value]
    if isinstance(value, tuple):
        return [text for one in value for text in texts(one)]
    if hasattr(value, "__dataclass_fields__"):
        hidden = {"sketch", "level", "struck", "kind"} if type(value).__name__ != "DaySheet" else {"sketch", "words"}
        return [
            text for name in value.__dataclass_fields__ if name not in hidden for text in texts(getattr(value, name))
        ]
    return []


def words_of(text: str) -> list[str]:
    """Return the words of a text, without lines to write on and signs that stand on their own."""
    return [word.strip("()") for word in re.sub(r"_{3,}", " ", text).split() if word.strip("()")]


@pytest.mark.parametrize("name", ["hobbin", "overfull", "absurd", "papers"])
def test_no_word_of_a_packet_is_lost(name: str, printed: Printed, poppler: Poppler) -> None:
    """Struck lines give no figures, so their amounts are left out of what must be found."""
    packet = PACKETS[name]()
    figures_of_struck = {"amount": "", "time": "", "cost": "", "mix": "", "set_aside": ()}
    units = tuple(
        replace(unit, lines=tuple(replace(one, **figures_of_struck) if one.struck else one for one in unit.lines))
        for unit in packet.units
    )
    whole = "".join(pages(poppler, printed(name))).replace(" ", "")
    for text in texts(replace(packet, units=units)):
        for word in words_of(text):
            assert word in whole, text


def test_page_one_alone_says_what_the_day_is(printed: Printed, poppler: Poppler) -> None:
    """Nothing of the demo's day sheet has to move to another page."""
    pages_of = pages(poppler, printed("hobbin"))
    whole = pages_of[0].replace(" ", "")
    for text in texts(hobbin.DAY):
        for word in words_of(text):
            assert word in whole, text
    assert "More on the next page" not in pages_of[0]


def test_what_does_not_fit_page_one_stands_in_full_on_the_next(printed: Printed, poppler: Poppler) -> None:
    first, second, *_ = pages(poppler, printed("overfull"))
    moved = first[first.index("More on the next page") :]
    assert "look-alikes" in moved
    assert "Not look-alike number 3" not in first
    assert "Not look-alike number 3" in second
    for row in hobbin.overfull().day.sizes:
        assert row.size in first
    for letter in "ABCD":
        assert f"{letter} triclopyr ester" in first


def test_a_struck_line_shows_its_reason_and_no_figures(printed: Printed, poppler: Poppler) -> None:
    everything = " ".join(pages(poppler, printed("hobbin")))
    struck = next(line for line in hobbin.LINES if line.struck == "stop")
    assert f"Struck out: not to be done here. {struck.instruction}" in everything
    assert struck.said[0].because in everything
    assert struck.amount not in everything
    assert struck.cost not in everything
    assert "Held: not to be done until the question is answered." in everything
    assert f"Do not {hobbin.DAY.struck[0].what}" in everything
    assert f"Wait {hobbin.DAY.struck[1].what}" in everything


def test_a_struck_line_is_drawn_through() -> None:
    """On a unit's page both its name and its instruction; on the day sheet what is not to be done."""
    line = replace(next(line for line in hobbin.LINES if line.struck), instruction="X", plant="X", size="")
    unit = replace(hobbin.UNITS[0], lines=(line, replace(line, struck="", said=())))
    packet = replace(hobbin.bare(), units=(unit,))
    assert drawn_through(render_packet(packet, made_on=MADE_ON)) == 2
    day = replace(packet.day, struck=(Struck("stop", "X", "", ""), Struck("ask", "X", "", "")))
    assert drawn_through(render_packet(replace(packet, day=day), made_on=MADE_ON)) == 4


def drawn_through(pdf: bytes) -> int:
    """Return how many pieces of text are tagged as drawn through."""
    return len(re.findall(rb"/TextDecorationType\s*/LineThrough", pdf))


def test_the_worst_verdict_stands_first(printed: Printed, poppler: Poppler) -> None:
    unit = next(
        page
        for page in pages(poppler, printed("hobbin"))
        if page.startswith(plain(hobbin.BANNER) + " North bench First")
    )
    said = hobbin.LINES[0].said  # given as ok, warn, ask
    places = [unit.index(one.because) for one in said]
    assert places == sorted(places, reverse=True)
    rules = next(page for page in pages(poppler, printed("hobbin")) if "What it asks" in page)
    assert re.search(r"L17.*stop.*L23.*ask.*L11.*warn.*L08.*ok", rules)


def test_what_was_typed_is_printed_as_typed(printed: Printed, poppler: Poppler) -> None:
    day, unit, *_ = pages(poppler, printed("typed"))
    assert day.count(hobbin.EVIL) >= 4  # banner, title, left over, foot
    assert unit.count(hobbin.EVIL) >= 5  # banner, name, plant, instruction, foot


def test_a_letter_our_face_lacks_is_spelled_out(printed: Printed, poppler: Poppler) -> None:
    assert "maple [deciduous tree] and Łukasz’s café" in pages(poppler, printed("typed"))[0]


@pytest.mark.parametrize("name", EACH)
def test_the_same_packet_is_the_same_file(name: str, printed: Printed) -> None:
    assert render_packet(PACKETS[name](), made_on=MADE_ON) == printed(name).read_bytes()


def test_another_day_is_another_file(printed: Printed) -> None:
    assert render_packet(hobbin.PACKET, made_on=datetime.date(2026, 10, 8)) != printed("hobbin").read_bytes()


@pytest.mark.parametrize(
    ("paper", "size"), [("us-letter", "612 x 792 pts (letter)"), ("a4", "595.276 x 841.89 pts (A4)")]
)
def test_the_paper_is_the_one_asked_for(paper: str, size: str, tmp_path: Path, poppler: Poppler) -> None:
    file = tmp_path / "packet.pdf"
    file.write_bytes(render_packet(hobbin.PACKET, made_on=MADE_ON, paper=paper))
    assert info(poppler, file)["Page size"] == size
    assert "Worked to (mark the sketch)" in pages(poppler, file)[0]
    assert "Day sheet, continued" not in pages(poppler, file)[1]


def test_a_paper_without_layout_is_refused() -> None:
    with pytest.raises(Refusal, match="us-letter and a4"):
        render_packet(hobbin.PACKET, made_on=MADE_ON, paper="a5")


def test_a_day_sheet_that_no_page_can_hold_is_refused() -> None:
    endless = Struck("stop", "x", "y", "z")
    day = replace(hobbin.DAY, struck=(endless,), load_heads=("a word " * 400,) * 6)
    with pytest.raises(Refusal, match="one page"):
        render_packet(replace(hobbin.PACKET, day=day), made_on=MADE_ON)
