"""Texts with numbers that open: plain text to whoever prints them, and each number keeps its own working."""

from __future__ import annotations

import copy
import json

from rootcollar.work.worked import Worked, number, strung, within


def euros(amount: float) -> str:
    return f"{amount:.0f} EUR"


def test_a_worked_text_is_the_plain_text_to_a_printer() -> None:
    worked = Worked("costs ", number(2.0, euros, "money", lambda: 2.0), ".")
    assert worked == "costs 2 EUR."
    assert type(copy.deepcopy(worked)) is str
    assert json.dumps({"it": worked}) == '{"it": "costs 2 EUR."}'
    assert repr(worked) == repr("costs 2 EUR.")


def test_numbers_keep_their_order_and_their_own_working() -> None:
    one, other = number(1.0, euros, "money", lambda: 1.0), number(2.0, euros, "money", lambda: 2.0)
    for text in (Worked(one, " and ", other), strung(" and ", [one, other]), within("1 EUR and 2 EUR", one, other)):
        assert text == "1 EUR and 2 EUR"
        assert isinstance(text, Worked)
        assert [found.again() for found in text.numbers] == [1.0, 2.0]
        assert "".join(run if isinstance(run, str) else run.words for run in text.runs) == text


def test_a_number_opens_only_where_its_words_stand() -> None:
    one = number(1.0, euros, "money", lambda: 1.0)
    assert within("nothing here", one) == "nothing here"
    assert not isinstance(within("nothing here", one), Worked)
    assert type(strung(", ", ["a", "b"])) is str


def test_words_that_stand_twice_open_at_the_first_place_after_the_last_number() -> None:
    one, same = number(1.0, euros, "money", lambda: 1.0), number(1.0, euros, "money", lambda: 10.0)
    text = within("1 EUR, then 1 EUR", one, same)
    assert isinstance(text, Worked)
    assert [found.again() for found in text.numbers] == [1.0, 10.0]
