"""Answers: a yes settles a question a person can settle, and nothing else."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label import Answer, settle

YES = Answer("L05", "*", True, "A. Steward", date(2026, 7, 1))
QUESTION = Verdict(Level.ASK, "is it?", "look", "L05", "bench/rhca3/2-5cm", answerable=True)

verdicts = st.builds(
    Verdict, st.sampled_from(Level), st.just("because"), st.just("clear"), st.sampled_from(["L05", "L12"]),
    st.sampled_from(["bench", "bench/a"]), st.just(""), st.booleans(),
)  # fmt: skip
answers = st.lists(
    st.builds(
        Answer, st.sampled_from(["L05", "L12"]), st.sampled_from(["*", "bench", "bench/a"]), st.booleans(),
        st.just("A. Steward"), st.just(date(2026, 7, 1)), st.just(""),
    )
)  # fmt: skip


@given(verdicts, answers)
def test_no_answer_lowers_a_stop_or_an_unread_line(verdict: Verdict, given_answers: list[Answer]) -> None:
    settled = settle(verdict, given_answers)
    if verdict.level is Level.STOP or (verdict.level is Level.ASK and not verdict.answerable):
        assert settled == verdict


@given(verdicts)
def test_without_an_answer_nothing_changes(verdict: Verdict) -> None:
    assert settle(verdict, []) == verdict


@pytest.mark.parametrize("about", ["*", "bench", "bench/rhca3/2-5cm"])
def test_a_yes_clears_the_question_and_keeps_the_name_and_day(about: str) -> None:
    settled = settle(QUESTION, [Answer("L05", about, True, "A. Steward", date(2026, 7, 1), "read twice")])
    assert settled.level is Level.OK
    assert settled.because == "is it?; answered yes by A. Steward, 2026-07-01: read twice"


def test_a_no_stops_the_line() -> None:
    settled = settle(QUESTION, [Answer("L05", "bench", False, "A. Steward", date(2026, 7, 1))])
    assert settled.level is Level.STOP


@pytest.mark.parametrize(("rule", "about"), [("L06", "*"), ("L05", "swale"), ("L05", "bench/rhca3")])
def test_an_answer_to_another_rule_or_line_does_not_count(rule: str, about: str) -> None:
    assert settle(QUESTION, [Answer(rule, about, True, "A. Steward", date(2026, 7, 1))]) == QUESTION


def test_a_no_is_not_undone_by_a_wider_yes() -> None:
    no = Answer("L05", "bench", False, "A. Steward", date(2026, 7, 2))
    assert settle(QUESTION, [YES, no]).level is Level.STOP
    assert settle(QUESTION, [no, YES]).level is Level.STOP


def test_a_later_yes_about_the_same_takes_a_no_back() -> None:
    no = Answer("L05", "bench", False, "A. Steward", date(2026, 6, 2))
    assert settle(QUESTION, [no, Answer("L05", "bench", True, "A. Steward", date(2026, 7, 2))]).level is Level.OK
    assert settle(QUESTION, [no, Answer("L05", "bench", True, "A. Steward", date(2026, 6, 2))]).level is Level.STOP
