"""Texts are made printable without losing any of them."""

from hypothesis import given
from hypothesis import strategies as st

from rootcollar.paper.letters import printable


def test_what_our_face_has_stays_as_it_is() -> None:
    text = '#evil[*x*] $a$ "quotes" <b> ½ °F × – ’ ñ Ł'
    assert printable(text) == text


def test_a_number_stays_with_its_percent_sign() -> None:
    assert printable("20 % in oil") == "20\u00a0% in oil"


def test_a_sign_without_shape_is_told_by_its_name() -> None:
    assert printable("\N{CJK UNIFIED IDEOGRAPH-6728}") == "[cjk unified ideograph-6728]"


def test_invisible_signs_go() -> None:
    assert printable("a\x00\x07b\N{ZERO WIDTH JOINER}\N{VARIATION SELECTOR-16}c") == "abc"


def test_an_accent_typed_apart_is_joined_to_its_letter() -> None:
    assert printable("e\N{COMBINING ACUTE ACCENT}") == "é"


def test_an_endless_word_can_be_broken_and_reads_the_same() -> None:
    word = "x" * 300
    broken = printable(word)
    assert broken.replace("\u200b", "") == word
    assert max(len(part) for part in broken.split("\u200b")) <= 24


@given(st.text(alphabet=st.characters(codec="utf-8", categories=["L", "N", "P", "S", "Zs"]), max_size=60))
def test_no_letter_is_dropped(text: str) -> None:
    """A text with anything to see in it never becomes shorter than what is to see."""
    seen = printable(text).replace("\u200b", "")
    for sign in text:
        assert sign in seen or "[" in seen or not sign.isascii()
    assert bool(seen.strip()) == bool(text.strip())


@given(st.text(max_size=200))
def test_making_a_text_printable_twice_changes_nothing(text: str) -> None:
    once = printable(text)
    assert printable(once).replace("\u200b", "") == once.replace("\u200b", "")
