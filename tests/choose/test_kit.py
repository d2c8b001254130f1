"""The best kit of mixes: against every kit weighed the plainest way, whatever the order, and honest where it is not."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose.kit import best_kit

MIXES = ("a", "b", "c", "d", "e")
LINES = st.lists(st.dictionaries(st.sampled_from(("", *MIXES)), st.integers(0, 40), max_size=5), max_size=7)


def plainest(lines: Sequence[Mapping[str, int]], per_mix: int) -> tuple[int, int, int, tuple[str, ...]]:
    """Return lines without a way, cents, number and keys of the best of every kit."""
    kits = [kit for size in range(len(MIXES) + 1) for kit in combinations(MIXES, size)]
    found = []
    for kit in kits:
        each = [min((cents for mix, cents in line.items() if mix in ("", *kit)), default=None) for line in lines]
        cents = sum(one for one in each if one is not None) + per_mix * max(len(kit) - 1, 0)
        found.append((sum(one is None for one in each), cents, len(kit), kit))
    return min(found)


@given(LINES, st.integers(0, 30))
def test_the_kit_is_the_best_of_every_kit(lines: list[dict[str, int]], per_mix: int) -> None:
    found = best_kit(lines, per_mix)
    assert (found.uncovered, found.cents, len(found.mixes), found.mixes) == plainest(lines, per_mix)
    assert found.exact


@given(LINES, st.integers(0, 30))
def test_the_order_of_the_lines_is_nothing_to_it(lines: list[dict[str, int]], per_mix: int) -> None:
    shuffled = [dict(sorted(line.items(), reverse=True)) for line in lines[::-1]]
    assert best_kit(shuffled, per_mix) == best_kit(lines, per_mix)


@given(LINES, st.integers(0, 30))
def test_too_many_mixes_are_said_and_still_give_a_kit_that_holds(lines: list[dict[str, int]], per_mix: int) -> None:
    found, best = best_kit(lines, per_mix, most=2), plainest(lines, per_mix)
    assert (found.uncovered, found.cents) >= best[:2]
    assert len(found.mixes) <= 2 or found.exact
    assert ("may be missed" in found.said) != found.exact
    each = [min((cents for mix, cents in line.items() if mix in ("", *found.mixes)), default=None) for line in lines]
    assert found.uncovered == sum(one is None for one in each)
    assert found.cents == sum(one or 0 for one in each) + per_mix * max(len(found.mixes) - 1, 0)


def test_a_mix_that_saves_less_than_its_price_is_left_at_home() -> None:
    lines = [{"oil": 100, "water": 150}, {"oil": 90}, {"": 500, "water": 60, "oil": 80}]
    assert best_kit(lines, 19).mixes == ("oil", "water")
    assert best_kit(lines, 20).mixes == ("oil",)  # as dear, and fewer to carry


def test_no_lines_need_no_kit() -> None:
    assert best_kit([], 50).mixes == ()
