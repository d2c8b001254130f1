"""The papers of a day, printed and read by another program: pages, tags, signs, a day sheet in another tongue."""

import re
import zlib
from collections.abc import Callable
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest

from rootcollar.paper import PAPERS, day_words, render_packet
from rootcollar.reference import load
from tests.paper.hobbin import BANNER, DAY, MADE_ON, PACKET, SIGN, TAG, papers
from tests.paper.test_packet import pages, plain
from tests.work.packets import hobbin_packet

Printed = Callable[[str], Path]
Poppler = Callable[..., str]


def heads(poppler: Poppler, file: Path) -> list[str]:
    """Return what stands first on every page, behind the banner."""
    return [page.removeprefix(plain(BANNER)).strip() for page in pages(poppler, file)]


def test_papers_stand_between_mix_cards_and_record(printed: Printed, poppler: Poppler) -> None:
    order = [
        next(number for number, page in enumerate(heads(poppler, printed("papers"))) if page.startswith(title))
        for title in ("A Triclopyr", "Spill and first aid", "Tags", SIGN.title, "Record", "Rules")
    ]
    assert order == sorted(order)


def test_an_empty_part_is_not_printed(printed: Printed, poppler: Poppler) -> None:
    spill = next(page for page in heads(poppler, printed("papers")) if page.startswith("Spill"))
    assert "Empty" not in spill
    assert "1. People first. 2. Stop it, then ring it." in spill


def test_every_tag_carries_the_banner_because_it_is_cut_out(printed: Printed, poppler: Poppler) -> None:
    """Nine tags on two pages, each page with its own banner on top."""
    found = [page for page in pages(poppler, printed("papers")) if "Keep it closed." in page]
    assert [page.count("Keep it closed.") for page in found] == [6, 3]
    assert [page.count(plain(BANNER)) for page in found] == [7, 4]


def test_a_tag_says_its_tape_in_words(printed: Printed, poppler: Poppler) -> None:
    found = " ".join(page for page in pages(poppler, printed("papers")) if "Keep it closed." in page)
    assert found.count(TAG.tape) == 9
    assert found.count("EPA Reg. No.") == 9


def test_each_sign_has_a_page_in_both_languages(printed: Printed, poppler: Poppler) -> None:
    found = [page for page in heads(poppler, printed("papers")) if page.startswith(SIGN.title)]
    assert len(found) == 2
    for page in found:
        assert SIGN.keep_out in page
        assert SIGN.keep_out_in[0][1] in page


def test_a_sign_is_read_from_ten_feet(printed: Printed, poppler: Poppler) -> None:
    """Letters of 3/8 inch, the largest that a state was found to ask for the words of a sign (NY ECL 33-1003)."""
    words = poppler("pdftotext", "-bbox", printed("papers"), "-")
    tall = [
        float(low) - float(high)
        for high, low in re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">Keep<', words)
    ]
    capital = 0.66  # of the type size, in this face
    line = 1.257  # box of a line in this face, of the type size
    assert max(tall) / line * capital >= 3 / 8 * 72


@pytest.mark.slow
@pytest.mark.parametrize("paper", PAPERS)
def test_papers_print_on_every_paper_and_twice_the_same(paper: str) -> None:
    first = render_packet(papers(), made_on=MADE_ON, paper=paper)
    assert first == render_packet(papers(), made_on=MADE_ON, paper=paper)
    assert first.startswith(b"%PDF")


def test_a_day_sheet_in_another_tongue_follows_the_first(tmp_path: Path, poppler: Poppler) -> None:
    """Not one of the layout's own words is left in the first language; the translation says what it is."""
    tongues = load().tongues
    spanish = tongues["es"].group("sheet")
    other = replace(DAY, title="Banco norte", words=spanish, note="Traducción nuestra.")
    file = tmp_path / "es.pdf"
    file.write_bytes(render_packet(replace(PACKET, days=(("es", other),)), made_on=MADE_ON))
    first, second, *_ = heads(poppler, file)
    assert first.startswith(DAY.title) and "Traducción" not in first
    assert second.startswith("Banco norte") and "Traducción nuestra." in second
    told = dict(spanish)
    for name, words in tongues["en"].group("sheet"):
        if len(words.split()) > 1 and "___" not in words and words in first and words not in DAY.leftovers:
            assert words not in second, name
            assert told[name] in second, name
    assert b"/Lang(es)" in file.read_bytes()


@pytest.mark.parametrize("paper", ["us-letter", pytest.param("a4", marks=pytest.mark.slow)])
@pytest.mark.parametrize(
    "unit", ["brook-edge", pytest.param("ridge", marks=pytest.mark.slow), pytest.param("bench", marks=pytest.mark.slow)]
)
def test_the_demos_day_sheet_fits_one_page_in_every_language_and_keeps_who_does_what(
    unit: str, paper: str, tmp_path: Path, poppler: Poppler
) -> None:
    packet = replace(hobbin_packet(unit), units=(), cards=(), pages=(), tags=(), signs=())
    file = tmp_path / "days.pdf"
    file.write_bytes(render_packet(packet, made_on=MADE_ON, paper=paper))
    told = pages(poppler, file)
    for day in (packet.day, *(day for _, day in packet.days)):
        words = dict(day.words)
        (first,) = [page for page in told if day.title in page and words["worked_to"] in page]
        for name in ("who", "wrong", "load"):
            assert words[name] in first
        assert all(kept in first for kept, _ in (day.sketch.keep_out if day.sketch else ()))
        assert day.note in first


@pytest.mark.slow
def test_a_labels_own_words_are_read_aloud_in_the_labels_language() -> None:
    other = replace(DAY, words=load().tongues["es"].group("sheet"), first_aid=())
    spoken = []
    for entry in ("Si no: «keep out».", "Si no: keep out."):
        pdf = render_packet(replace(PACKET, days=(("es", replace(other, entry=entry)),)), made_on=MADE_ON)
        drawn = [one for one in re.findall(rb"stream\r?\n(.*?)endstream", pdf, re.DOTALL) if one.startswith(b"\x78")]
        spoken.append(sum(zlib.decompress(one).count(b"/Lang(en)") for one in drawn))
    assert spoken[0] > spoken[1]


def test_each_language_has_the_words_that_the_layout_prints_and_no_more() -> None:
    for tongue in load().tongues.values():
        assert {name for name, _ in tongue.group("sheet")} == set(day_words())


def test_the_layout_prints_no_word_of_its_own() -> None:
    """What is left in quotes or brackets is a name, a key or a sign, never a text to read: at most one word."""
    for name in ("day.typ", "sketch.typ"):
        laid = (Path(str(files("rootcollar.paper"))) / "sheets" / name).read_text(encoding="utf-8")
        code = re.sub(r"(?m)//.*|assert\(.*\)|^#import .*$|dash: .*$", "", laid)
        for text in re.findall(r'"([^"]*)"', code) + re.findall(r"\[([^\]#]*)\]", code):
            assert len(re.findall(r"[\w-]*[A-Za-z]{2,}", text)) <= 1, text
