"""An outcome: a value with its verdicts."""

import pytest

from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.verdict import Level, Verdict


@pytest.mark.parametrize("worst", Level)
def test_the_worst_verdict_is_the_level_of_the_outcome(worst: Level) -> None:
    said = [Verdict(level, "because") for level in Level if level <= worst]
    assert Outcome("plan", tuple(said)).level is worst
    assert Outcome("plan", tuple(reversed(said))).level is worst


def test_an_outcome_nobody_weighed_is_ok() -> None:
    assert Outcome(3.0).level is Level.OK
