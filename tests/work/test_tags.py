"""Tags: what stands on a bottle, and tape that tells one mix from another in the dark."""

from dataclasses import replace

import pytest

from rootcollar.shelf import SILENT
from rootcollar.work.tags import NOT_MIXED, bars, tape_words
from tests.choose.hobbin import hobbin, only, retyped
from tests.work.packets import earnest, hobbin_packet, made

PLACES = range(60)  # more mixes than any plan has


def test_no_two_mixes_share_a_tape_from_whichever_end_it_is_felt() -> None:
    felt = [end for place in PLACES for end in {bars(place), bars(place)[::-1]}]
    assert len(felt) == len(set(felt))
    assert NOT_MIXED not in felt


def test_the_tape_of_the_first_twelve_mixes_is_four_bars_at_most() -> None:
    assert all(len(bars(place)) <= 4 for place in range(12))
    assert all(set(bars(place)) <= {1, 2} for place in PLACES)


def test_the_words_of_a_tape_tell_it_apart_too() -> None:
    words = [tape_words(bars(place)) for place in PLACES]
    assert len(set(words)) == len(words)
    assert tape_words((1, 2, 2)) == "one narrow, two wide"


def test_every_mix_with_a_card_has_a_tag_for_sprayer_and_jug() -> None:
    packet = hobbin_packet()
    letters = [one.letter for one in packet.tags if one.letter]
    assert letters == [card.letter for card in packet.cards for _ in "ab"]
    for one in packet.tags:
        assert one.tape.startswith(tape_words(one.bars))


def test_a_letter_keeps_its_tape_whatever_unit_is_printed() -> None:
    whole = {one.letter: one.bars for one in hobbin_packet().tags if one.letter}
    part = {one.letter: one.bars for one in hobbin_packet("ridge").tags if one.letter}
    assert part and part.items() <= whole.items()


def test_a_tag_says_what_many_states_want_on_a_bottle() -> None:
    tag = dict(next(one for one in hobbin_packet("ridge").tags if one.letter == "C").lines)
    assert tag["Product"].startswith("TRICLOPYR ESTER 4 EC")
    assert tag["EPA Reg. No."] == "00000-00011 (placeholder, demo only)"
    assert tag["Signal word"] == "CAUTION"
    assert tag["Strength"] == "20 % product in oil"
    assert "61.6%" in tag["Active"] and "4 lb ae/gal" in tag["Active"].replace("\N{NO-BREAK SPACE}", " ")
    assert tag["Keeps for"] == "24 h (label page 12)"
    assert tag["Mixed on, at"] == tag["Mixed by"] == tag["So until"] == tag["Answers for it"] == ""


def test_a_real_number_is_not_called_a_placeholder() -> None:
    numbers = {dict(one.lines)["EPA Reg. No."] for one in made(earnest()).tags}
    assert numbers and all(one.startswith("99999-") and "placeholder" not in one for one in numbers)


@pytest.mark.parametrize("line, words", [("silent", "the label is silent"), (None, "not read on the label yet")])
def test_a_label_without_hours_to_keep_means_the_same_day(line: str | None, words: str) -> None:
    project = only(hobbin(), "ridge")
    said = SILENT if line else None
    shelf = {key: retyped(sheet, mixing__mixture_storage_hours=said) for key, sheet in project.shelf.items()}
    keeps = {dict(one.lines)["Keeps for"] for one in made(replace(project, shelf=shelf)).tags if one.letter}
    assert keeps == {f"the same day ({words}; EXT-GEN, memory)"}


def test_product_that_is_not_mixed_has_a_tape_of_its_own() -> None:
    plain = [one for one in hobbin_packet().tags if not one.letter]
    assert plain and all(one.bars == NOT_MIXED for one in plain)
    assert {dict(one.lines)["For mix"] for one in plain} == {"B, D, E, G", "C"}


def test_no_work_no_tags_no_signs_no_papers() -> None:
    packet = hobbin_packet("brook-edge")
    assert not packet.cards
    assert packet.tags == () and packet.signs == () and packet.pages == ()
