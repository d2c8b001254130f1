"""Sharing plots out: together as asked, two at least, none beyond what fits, and no other sharing does better."""

from itertools import product
from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.survey.design import SHARED_BY, Stratum, share_out, stratum_part
from tests import draws

SCHOOLS = (  # data api of the R package survey: sizes and variances of its strata
    Stratum("E", 4421, 15687.42**0.5), Stratum("H", 755, 11947.09**0.5), Stratum("M", 1018, 13824.86**0.5),
)  # fmt: skip

ONE = st.tuples(st.floats(1, 50), st.floats(0.5, 9), st.floats(1, 9), st.integers(2, 12))
STRATA = st.lists(ONE, min_size=2, max_size=3).map(
    lambda many: tuple(Stratum(f"s{at}", *one) for at, one in enumerate(many))
)


def test_shares_of_the_schools() -> None:
    by_spread, by_size = (share_out(200, SCHOOLS, by) for by in ("size and spread", "size"))
    assert by_spread == {"E": 146, "H": 22, "M": 32}  # 146.5, 21.8, 31.7 before rounding
    assert by_size == {"E": 143, "H": 24, "M": 33}  # 142.75, 24.38, 32.87


@settings(max_examples=draws.of(60))
@given(STRATA, st.sampled_from(SHARED_BY), st.data())
def test_together_as_asked_within_the_bounds_and_the_same_in_any_order(strata, by, data) -> None:
    plots = data.draw(st.integers(2 * len(strata), int(sum(one.most for one in strata))))
    found = share_out(plots, strata, by)
    assert sum(found.values()) == plots
    assert all(2 <= found[one.key] <= one.most for one in strata)
    assert found == share_out(plots, strata[::-1], by)


@settings(max_examples=draws.of(40))
@given(STRATA)
def test_no_other_sharing_has_a_smaller_variance(strata) -> None:
    plots = min(12, int(sum(one.most for one in strata)))
    plots = max(plots, 2 * len(strata))
    found = share_out(plots, strata, "size and spread")

    def variance(shared) -> float:
        return sum((one.size * one.spread) ** 2 / n for one, n in zip(strata, shared, strict=True))

    others = [shared for shared in product(*(range(2, int(one.most) + 1) for one in strata)) if sum(shared) == plots]
    assert variance(found[one.key] for one in strata) <= min(map(variance, others)) * (1 + 1e-7)


def test_cheaper_ground_gets_more() -> None:
    near, far = Stratum("near", 10, 5, 1), Stratum("far", 10, 5, 4)
    found = share_out(30, (near, far), "size, spread and cost")
    assert found == {"far": 10, "near": 20}
    assert stratum_part(10, 5, 1) == 2 * stratum_part(10, 5, 4)


@pytest.mark.parametrize(
    ("plots", "strata", "by"),
    [
        (3, SCHOOLS, "size"),
        (10, (), "size"),
        (10, (SCHOOLS[0], SCHOOLS[0]), "size"),
        (10, (Stratum("a", 0),), "size"),
        (10, (Stratum("a", inf),), "size"),
        (10, (Stratum("a", 5),), "size and spread"),
        (10, (Stratum("a", 5, 1),), "size, spread and cost"),
        (10, (Stratum("a", 5, most=9),), "size"),
    ],
)
def test_what_cannot_be_shared_is_refused(plots, strata, by) -> None:
    with pytest.raises(ValueError, match=r"cannot share|want size"):
        share_out(plots, strata, by)
