"""Every rule has a plan that passes it and one that fails it, and both do as they say."""

import pytest

from rootcollar.kernel.verdict import Level
from rootcollar.label import RULES
from rootcollar.label.examples import EXAMPLES


def test_every_rule_has_its_examples_and_no_example_is_left_over() -> None:
    assert set(EXAMPLES) == set(RULES)


@pytest.mark.parametrize("number", RULES)
def test_the_passing_example_passes_and_the_failing_one_fails(number: str) -> None:
    known, shown = RULES[number], EXAMPLES[number]
    assert set(shown.passes.facts) == set(shown.fails.facts) == set(known.reads)
    assert shown.passes.weighed_by(known) is None
    found = shown.fails.weighed_by(known)
    assert found is not None and found.level >= Level.WARN and found.because and found.clear
    assert shown.passes.words != shown.fails.words
