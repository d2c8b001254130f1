"""Answers: a yes settles a question a person can settle, and nothing else."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label import Answer, settle
from rootcollar.shelf import Line, Sheet

OK = Level.OK
YES = Answer("L05", "*", True, "A. Steward", date(2026, 7, 1))
QUESTION = Verdict(Level.ASK, "is it?", "look", "L05", "bench/rhca3/2-5cm", answerable=True)

DAY = date(2026, 7, 15)


def settled(verdict: Verdict, answers: list[Answer], on: date = DAY, sheet: Sheet | None = None) -> Verdict:
    """Return the verdict after the answers."""
    return settle(verdict, answers, on=on, sheet=sheet)


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
    found = settled(verdict, given_answers)
    if verdict.level is Level.STOP or (verdict.level is Level.ASK and not verdict.answerable):
        assert found == verdict


@given(verdicts)
def test_without_an_answer_nothing_changes(verdict: Verdict) -> None:
    assert settled(verdict, []) == verdict


@pytest.mark.parametrize("about", ["*", "bench", "bench/rhca3/2-5cm"])
def test_a_yes_clears_the_question_and_keeps_the_name_and_day(about: str) -> None:
    found = settled(QUESTION, [Answer("L05", about, True, "A. Steward", date(2026, 7, 1), "read twice")])
    assert found.level is Level.OK
    assert found.because == "is it?; answered yes by A. Steward, 2026-07-01: read twice"


def test_a_no_stops_the_line() -> None:
    found = settled(QUESTION, [Answer("L05", "bench", False, "A. Steward", date(2026, 7, 1))])
    assert found.level is Level.STOP


@pytest.mark.parametrize(("rule", "about"), [("L06", "*"), ("L05", "swale"), ("L05", "bench/rhca3")])
def test_an_answer_to_another_rule_or_line_does_not_count(rule: str, about: str) -> None:
    assert settled(QUESTION, [Answer(rule, about, True, "A. Steward", date(2026, 7, 1))]) == QUESTION


def test_a_no_is_not_undone_by_a_wider_yes() -> None:
    no = Answer("L05", "bench", False, "A. Steward", date(2026, 7, 2))
    assert settled(QUESTION, [YES, no]).level is Level.STOP
    assert settled(QUESTION, [no, YES]).level is Level.STOP


def test_a_later_yes_about_the_same_takes_a_no_back() -> None:
    no = Answer("L05", "bench", False, "A. Steward", date(2026, 6, 2))
    assert settled(QUESTION, [no, Answer("L05", "bench", True, "A. Steward", date(2026, 7, 2))]).level is Level.OK
    assert settled(QUESTION, [no, Answer("L05", "bench", True, "A. Steward", date(2026, 6, 2))]).level is Level.STOP


def read(percent: float, read_on: date = date(2026, 2, 14)) -> Sheet:
    """Return a label of which one line says so much."""
    lines = {"method.concentration.high": percent, "proof.read_on": read_on, "proof.read_by": "A. Steward"}
    return Sheet("sample", {path: Line(value) for path, value in lines.items()})


def test_a_yes_of_the_leafless_season_is_asked_again_when_the_leaves_come() -> None:
    seen = Answer("L05", "*", True, "A. Steward", date(2026, 3, 31))
    assert settled(QUESTION, [seen], date(2026, 3, 31)).level is Level.OK
    again = settled(QUESTION, [seen], date(2026, 4, 1))
    assert again.level is Level.ASK and again.answerable
    assert "A. Steward, 2026-03-31, but the season has turned since" in again.because


@given(st.dates(date(2024, 1, 1), date(2028, 12, 31)))
def test_no_yes_holds_for_longer_than_a_season(day: date) -> None:
    seen = Answer("L05", "*", True, "A. Steward", day)
    held = [on for on in (day + timedelta(days=one) for one in range(400)) if settled(QUESTION, [seen], on).level is OK]
    assert held[0] == day and (held[-1] - day).days == len(held) - 1 <= 214  # April to October


def test_a_no_does_not_wear_off() -> None:
    no = Answer("L05", "bench", False, "A. Steward", date(2024, 7, 1))
    assert settled(QUESTION, [no]).level is Level.STOP


def test_a_yes_about_a_label_is_asked_again_once_the_sheet_is_changed() -> None:
    as_it_was = read(2.0)
    seen = Answer("L05", "*", True, "A. Steward", DAY, sheets=(("sample", as_it_was.stamp),))
    assert settled(QUESTION, [seen], sheet=as_it_was).level is Level.OK
    assert "the label sheet was changed since" in settled(QUESTION, [seen], sheet=read(3.0)).because
    assert settled(QUESTION, [seen], sheet=read(3.0)).level is Level.ASK


def test_a_yes_typed_by_hand_is_asked_again_once_the_label_was_read_again() -> None:
    seen = Answer("L05", "*", True, "A. Steward", DAY)
    assert settled(QUESTION, [seen], sheet=read(2.0)).level is Level.OK
    assert settled(QUESTION, [seen], sheet=read(2.0, date(2026, 7, 16))).level is Level.ASK


def test_a_yes_to_a_question_of_the_ground_does_not_hang_on_a_label() -> None:
    asked = Verdict(Level.ASK, "is it?", "look", "P06", "bench", answerable=True)
    seen = Answer("P06", "*", True, "A. Steward", DAY, sheets=(("sample", "other"),))
    assert settled(asked, [seen], sheet=read(3.0)).level is Level.OK


def test_who_read_the_label_and_when_is_no_part_of_what_it_says() -> None:
    assert read(2.0).stamp == read(2.0, date(2026, 7, 16)).stamp != read(2.5).stamp


def test_the_page_of_the_label_is_kept_with_the_answer() -> None:
    found = settled(QUESTION, [replace(YES, page="4")])
    assert found.page == "4" and "2026-07-01, label page 4" in found.because
