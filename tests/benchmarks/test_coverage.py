"""The surveys of maps at a small part of their number, so that the program cannot rot."""

from pathlib import Path

import numpy as np
import pytest

from benchmarks import coverage
from benchmarks.coverage_page import Row, figure, page


def test_a_few_surveys_of_a_made_map_are_told_by_kind_and_level(capsys: pytest.CaptureFixture[str]) -> None:
    assert coverage.main(["--scale", "0.002"]) == 0
    told = capsys.readouterr().out
    assert all(f"| {kind} | 80.0 % | 20 |" in told for kind in ("t", "negative binomial profile"))


def test_a_map_of_a_file_is_read_and_its_truth_is_what_is_on_it(tmp_path: Path) -> None:
    rng = np.random.default_rng(1)
    lines = [f"{x},{y}" for x, y in rng.uniform((10, 0), (30, 5), (50, 2)).tolist()]
    (tmp_path / "few.csv").write_text("\n".join(["# 10 30 0 5", *lines]), encoding="utf-8")
    found = coverage.read_map(tmp_path / "few.csv")
    assert found.tract.area == pytest.approx(10_000)
    rows = coverage.surveyed(found, 6.0, 20, 40, rng)
    by_chance = [row for row in rows if row.kind.startswith("exact") and row.level == 0.8]
    assert len(by_chance) == 1 and by_chance[0].held > 0.6


def test_the_figure_has_a_dot_for_each_line() -> None:
    rows = [Row("m", 2.0, plots, "t", level, 9, 0.05, 0.1, 1.0) for plots in (10, 20) for level in (0.8, 0.95)]
    drawn = figure(rows)
    assert drawn.count("<circle") == 4 and drawn.count('fill="white" stroke') == 2
    assert "**t**" in page(rows, 9)
