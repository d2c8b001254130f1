"""One figure is chosen where several stand: mark, then year, then the cautious end."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.sources import Cited, Mark, Source
from rootcollar.reference import Figure, Span, Value, best, numbers, spans, why

SOURCES = {
    "old": Source("old", "old", year=1990),
    "new": Source("new", "new", year=2020),
    "undated": Source("undated", "u"),
}
RANK = [Mark.READ, Mark.PRACTICE, Mark.RECKONED, Mark.OURS, Mark.MEMORY]

rows = st.lists(
    st.builds(Cited, st.floats(0, 100), st.just("mL"), st.sampled_from(sorted(SOURCES)), st.sampled_from(list(Mark))),
    min_size=1,
    max_size=8,
)


def cited(value: Value, source: str = "old", mark: Mark = Mark.READ) -> Figure:
    return Cited(value, "mL", source, mark)


@given(rows)
def test_nothing_better_marked_is_ever_passed_over(given_rows: list[Cited[float]]) -> None:
    chosen = best(given_rows, sources=SOURCES)
    assert chosen in given_rows
    assert RANK.index(chosen.mark) == min(RANK.index(row.mark) for row in given_rows)


@given(rows)
def test_the_order_of_rows_does_not_matter(given_rows: list[Cited[float]]) -> None:
    one, other = (best(order, sources=SOURCES) for order in (given_rows, given_rows[::-1]))
    assert (one.value, one.mark) == (other.value, other.mark)


def test_read_beats_practice_beats_ours_beats_memory() -> None:
    every = [cited(place, mark=mark) for place, mark in enumerate(RANK)]
    while every:
        assert best(every[::-1], sources=SOURCES) is every[0]
        every.pop(0)


def test_newer_beats_older_and_undated_comes_last() -> None:
    assert best([cited(1, "undated"), cited(2, "old"), cited(3, "new")], sources=SOURCES).value == 3
    assert best([cited(1, "undated"), cited(2, "old")], sources=SOURCES).value == 2


def test_among_equals_the_cautious_end_is_taken() -> None:
    equal = [cited(1.0), cited(3.0), cited(2.0)]
    assert best(equal, sources=SOURCES).value == 1.0
    assert best(equal, cautious="high", sources=SOURCES).value == 3.0


def test_spans_are_judged_by_their_cautious_end_and_words_come_last() -> None:
    mixed = [cited("at once"), cited(Span(2, 9)), cited(Span(None, 5))]
    assert best(mixed, sources=SOURCES).value == Span(2, 9)
    assert best(mixed, cautious="high", sources=SOURCES).value == Span(2, 9)
    assert best([cited("at once"), cited(100.0)], sources=SOURCES).value == 100.0


def test_no_row_no_choice() -> None:
    with pytest.raises(ValueError, match="no figure"):
        best([])


def test_numbers_and_spans_part_the_rows() -> None:
    mixed = [cited(1.0), cited(True), cited("words"), cited(Span(1, 2))]
    assert [row.value for row in numbers(mixed)] == [1.0]
    assert [row.value for row in spans(mixed)] == [Span(1, 2)]


def test_why_names_the_step_that_decided() -> None:
    assert why([cited(1, mark=Mark.MEMORY), cited(2)], sources=SOURCES) == "the only one read in a source"
    assert why([cited(1, "new"), cited(2, "old")], sources=SOURCES) == "the newest of those read in a source (2020)"
    assert why([cited(1), cited(2)], sources=SOURCES) == "the careful end of those read in a source"
    mixed = [cited(1, "new"), cited(2, "new"), cited(3, "old")]
    assert why(mixed, sources=SOURCES) == "the careful end of those read in a source in 2020"


@given(rows)
def test_why_speaks_of_the_mark_of_the_one_chosen(given_rows: list[Cited[float]]) -> None:
    chosen = best(given_rows, sources=SOURCES)
    words = {
        Mark.READ: "read",
        Mark.PRACTICE: "practice",
        Mark.RECKONED: "reckoned",
        Mark.OURS: "own",
        Mark.MEMORY: "memory",
    }
    assert words[chosen.mark] in why(given_rows, sources=SOURCES)
