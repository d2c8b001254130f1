"""The benchmarks at a small part of their size, untimed, so that they cannot rot."""

import pytest

from benchmarks import choosing, stems, weighing
from benchmarks import help as help_benchmark


def test_a_hundredth_of_the_stems_is_dosed_as_the_barest_numpy_does(capsys: pytest.CaptureFixture[str]) -> None:
    assert stems.main(["--scale", "0.01"]) == 0
    assert capsys.readouterr().out.startswith("10,000 stems")


def test_a_sum_that_differs_from_the_barest_numpy_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(stems, "barest", lambda cut, bark: lambda cut_cm, bark_cm: 1.0)
    assert stems.main(["--scale", "0.001"]) == 1


def test_help_is_asked_once_beside_a_bare_python(capsys: pytest.CaptureFixture[str]) -> None:
    assert help_benchmark.main(["--scale", "0.05"]) == 0
    assert "bare Python" in capsys.readouterr().out


def test_a_hundredth_of_the_property_is_told_the_same_as_one_by_one(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(weighing, "SAMPLE", 20)
    assert weighing.main(["--scale", "0.01"]) == 0
    assert "same words: True" in capsys.readouterr().out


def test_words_that_differ_from_one_by_one_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(weighing, "SAMPLE", 2)
    monkeypatch.setattr(weighing, "one_by_one", lambda place, pairs: [()] * len(pairs))
    assert weighing.main(["--scale", "0.01"]) == 1


def test_a_hundredth_of_the_property_is_chosen_the_same_as_one_by_one(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(choosing, "SAMPLE", 4)
    assert choosing.main(["--scale", "0.01"]) == 0
    assert "same: True" in capsys.readouterr().out


def test_a_choice_that_differs_from_one_by_one_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(choosing, "SAMPLE", 2)
    monkeypatch.setattr(choosing, "_told", lambda one: (id(one),))
    assert choosing.main(["--scale", "0.01"]) == 1
