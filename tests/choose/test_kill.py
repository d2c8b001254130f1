"""The kill of a visit: every row alone gives itself back; nearer, later, larger and in season counts for more."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.choose import Counted, KillPool, Way, dead_and_alive, kill_pool, kill_share
from rootcollar.choose.kill import as_crew, kill_words, mean_share
from rootcollar.choose.option import joined
from rootcollar.kernel.doubt import Doubt, band
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.sources import Mark
from rootcollar.mix.recipe import Carrier, Recipe, Visit
from rootcollar.reference import KillRow, Reference, Span, find_species, load

ALL_YEAR = frozenset(range(1, 13))
DOUBT = Doubt(7, 2000)
ROWS = {row.key: row for row in load().kill}


def way(
    method: str, ingredient: str = "", carrier: Carrier = "none", pct: float = 100, months: frozenset[int] = ALL_YEAR
) -> Way:
    recipe = Recipe(None, "any", ingredient, 400.0, pct, carrier) if ingredient else None
    return Way((Visit(method, recipe, months),), ())


def with_rows(*rows: KillRow) -> Reference:
    """The reference with no other rows of kill than these; the same one each time, for reading it takes long."""
    reference = _spare()
    reference.__dict__["kill"] = rows
    return reference


@cache
def _spare() -> Reference:
    return Reference(load()._texts)


def own_way(row: KillRow) -> Way:
    """The way that a row speaks of outright."""
    carrier: Carrier = "water" if row.carrier == "water" else "oil" if row.carrier == "oil" else "none"
    ingredient = next(iter(row.ingredients), "glyphosate") if row.herbicide else ""
    return way(row.method, ingredient, carrier, row.strength_pct or 100)


def plant_of(row: KillRow) -> str:
    first = next(one.key for one in load().species.values() if one.growth_form == row.growth_form)
    return row.species or first


def pooled(way_: Way, plant: str, *rows: KillRow) -> KillPool:
    return kill_pool(way_, load().species[plant], with_rows(*rows))


def sums(pool: KillPool) -> tuple[float, float]:
    both = [dead_and_alive(one) for one in pool.rows]
    return sum(one for one, _ in both), sum(one for _, one in both)


@pytest.mark.parametrize("key", sorted(ROWS))
def test_a_row_alone_gives_back_its_percentage_and_with_full_weight_its_plants(key: str) -> None:
    row = ROWS[key]
    pool = pooled(own_way(row), plant_of(row), row)
    (one,) = pool.rows
    kill = kill_share(pool, DOUBT)
    assert kill[0] == pytest.approx(max(row.share.best or 0, 0.01), abs=1e-12)
    dead, alive = dead_and_alive(replace(one, parts=()))
    assert dead == pytest.approx((row.share.best or 0) * one.plants.value)
    assert mean_share(dead, alive) == pytest.approx(row.share.best or 0)
    if row.species and row.n:
        assert dead + alive == pytest.approx(row.n)
    else:
        assert dead + alive <= 10


def test_the_first_world_is_the_mean_and_the_rest_the_curve_around_it() -> None:
    pool = kill_pool(way("basal_bark", "triclopyr", "oil", 20), find_species("aial", load()), load())
    dead, alive = sums(pool)
    kill = kill_share(pool, DOUBT)
    assert kill[0] == dead / (dead + alive)
    assert kill[1:].mean() == pytest.approx(kill[0], abs=0.003)
    tell = as_crew(dead + alive, pool.crew.value)
    assert kill[1:].var() == pytest.approx(kill[0] * (1 - kill[0]) / (tell + 1), rel=0.05)


def test_a_share_is_the_same_whatever_was_asked_before() -> None:
    pools = [
        kill_pool(way("cut_stump", "glyphosate", "water"), find_species(plant, load()), load())
        for plant in ("loma6", "rhca3")
    ]
    there = [kill_share(pool, Doubt(3, 50)) for pool in pools]
    back = [kill_share(pool, Doubt(3, 50)) for pool in reversed(pools)]
    np.testing.assert_array_equal(there[0], back[1])
    np.testing.assert_array_equal(there[1], back[0])
    assert pools[0].name != pools[1].name


def test_of_the_same_trees_the_second_season_stands_and_the_first_is_passed_by() -> None:
    """Injected triclopyr on tree-of-heaven: crown loss of 66.7 % fell to 31.4 % in the second season."""
    first, second = ROWS["aial-injection-triclopyr-first"], ROWS["aial-injection-triclopyr"]
    pool = pooled(way("injection", "triclopyr"), "aial", first, second)
    assert [one.row for one in pool.rows] == [second]
    assert pool.earlier == (first,)
    assert kill_share(pool, DOUBT)[0] == pytest.approx(0.314)


def alone(row: KillRow, way_: Way, plant: str = "aial") -> Counted:
    return pooled(way_, plant, row).rows[0]


BASE = replace(
    ROWS["aial-basal-bark-triclopyr-3"], n=30, months=Span(best=24), share=Span(0.5, 0.9, 0.8), strength_pct=20
)  # fmt: skip
BARK = way("basal_bark", "triclopyr", "oil", 20)


@pytest.mark.parametrize(
    "less",
    [
        {"months": Span(best=12)},
        {"months": None},
        {"growing_season": 1},
        {"outcome": "canopy_reduction"},
        {"strength_pct": 5},
        {"ingredients": ("triclopyr", "imazapyr")},
        {"species": ""},
        {"species": "pyca80"},
    ],
)
def test_what_is_less_near_or_looked_at_sooner_counts_for_less(less: dict[str, object]) -> None:
    assert alone(BASE, BARK).weight == 1
    assert alone(replace(BASE, **less), BARK).weight < 1  # type: ignore[arg-type]


def test_its_own_plant_counts_before_its_genus_before_its_form_before_another() -> None:
    honeysuckle = replace(BASE, species="loma6", growth_form="shrub")
    weights = [alone(honeysuckle, BARK, plant).weight for plant in ("loma6", "lota", "rhca3", "aial")]
    assert weights == sorted(weights, reverse=True)
    assert len(set(weights)) == 4


def test_a_trial_in_other_months_counts_for_less_the_fewer_are_open() -> None:
    june = replace(ROWS["lisi-foliar-triclopyr-summer"], n=10)
    in_june = way("foliar", "triclopyr", "water", months=frozenset({6, 8}))
    spring = way("foliar", "triclopyr", "water", months=frozenset({4, 5, 6}))
    winter = way("foliar", "triclopyr", "water", months=frozenset({12}))
    assert alone(june, in_june, "lisi").weight > alone(june, spring, "lisi").weight > alone(june, winter, "lisi").weight


def test_privet_sprayed_in_summer_dies_less_than_out_of_it() -> None:
    """14 to 26 % in June and August, 49 to 70 % in April, October and December."""
    shares = [
        kill_share(
            kill_pool(way("foliar", "triclopyr", "water", months=frozenset(open_)), load().species["lisi"], load()),
            DOUBT,
        )[0]
        for open_ in ({6, 8}, {4, 10, 12})
    ]
    assert shares[0] < shares[1] - 0.03


@pytest.mark.parametrize("less", [{"mark": Mark.MEMORY}, {"n": None}])
def test_what_is_remembered_or_has_no_number_counts_as_a_few_plants(less: dict[str, object]) -> None:
    assert alone(replace(BASE, **less), BARK).plants.value <= 4  # type: ignore[arg-type]
    assert alone(BASE, BARK).plants.value == 30


def test_a_larger_trial_narrows_but_never_to_what_one_crew_does() -> None:
    widths = []
    for n in (5, 50, 5_000, 500_000):
        here = band(kill_share(pooled(BARK, "aial", replace(BASE, n=n)), DOUBT))
        widths.append(here.high - here.low)
    assert widths == sorted(widths, reverse=True)
    assert widths[-1] > 0.15


def test_farther_plants_speak_only_where_no_trial_is_nearer() -> None:
    far = replace(BASE, species="pyca80")
    near = replace(BASE, key="near", species="loma6", growth_form="shrub")
    assert len(pooled(BARK, "rhca3", far).rows) == 1
    assert [one.row for one in pooled(BARK, "rhca3", far, near).rows] == [near]


def test_trials_that_differ_by_more_than_their_spread_are_both_told() -> None:
    high = replace(BASE, key="high", share=Span(0.9, 1.0, 0.95), source="ferrum")
    low = replace(BASE, key="low", share=Span(0.5, 0.7, 0.6), n=10)
    pool = pooled(BARK, "aial", low, high)
    words = joined(kill_words(pool, kill_share(pool, DOUBT)))
    assert words.endswith("trials differ: 95% and 60%")
    assert f"of a visit {0.95 * 0.75 + 0.6 * 0.25:.0%}" in words
    alike = pooled(BARK, "aial", replace(low, share=Span(0.5, 0.92, 0.6)), high)
    assert "differ" not in joined(kill_words(alike, kill_share(alike, DOUBT)))


def test_the_words_say_whose_trial_it_is() -> None:
    told = {}
    for plant, row in (("aial", BASE), ("moal", BASE), ("aial", ROWS["tree-basal-bark-any-ours"])):
        pool = pooled(BARK, plant, row)
        told[(plant, row.key)] = joined(kill_words(pool, kill_share(pool, DOUBT)))
    own, other, guess = told.values()
    assert own.endswith("die, trial, not crew (peugh2013, read, 30 plants)")
    assert "trial on other plants, not crew (peugh2013, read" in other
    assert guess.endswith("our guess, no trial was found")


def test_where_nobody_has_a_share_it_is_refused() -> None:
    with pytest.raises(Refusal, match="no source gives one"):
        pooled(way("girdle"), "aial", BASE)


KINDS = sorted({(row.method, row.herbicide, row.outcome) for row in ROWS.values()}, key=str)


@pytest.mark.parametrize(("method", "herbicide", "outcome"), KINDS)
@given(n=st.integers(1, 1_000_000), share=st.floats(0.01, 1.0))
@settings(max_examples=5, deadline=None)
def test_a_single_trial_of_any_kind_gives_back_its_percentage(
    method: str, herbicide: bool, outcome: str, n: int, share: float
) -> None:
    """n plants of which a share died: the pooled curve's mean is that share, whatever the trial weighs."""
    kind = next(
        row for row in ROWS.values() if (row.method, row.herbicide, row.outcome) == (method, herbicide, outcome)
    )
    row = replace(kind, n=n, share=Span(best=share))
    pool = pooled(own_way(row), plant_of(row), row)
    dead, alive = sums(pool)
    assert dead / (dead + alive) == pytest.approx(share)
    assert dead + alive <= max(n, 10) * (1 + 1e-9)
    assert kill_share(pool, Doubt(1, 20))[0] == pytest.approx(share)


@given(n=st.integers(1, 1_000_000), share=st.floats(0.01, 1.0), second=st.floats(0.01, 1.0), m=st.integers(1, 300))
@settings(max_examples=20, deadline=None)
def test_beside_another_trial_the_mean_lies_as_far_off_as_the_weights_say_and_a_large_trial_decides(
    n: int, share: float, second: float, m: int
) -> None:
    one = replace(BASE, n=n, share=Span(best=share))
    other = replace(BASE, key="another", source="elsewhere", n=m, share=Span(best=second))
    pool = pooled(BARK, "aial", one, other)
    mine, theirs = (next(c for c in pool.rows if c.row.key == row.key) for row in (one, other))
    counts, total = mine.plants.value * mine.weight, sum(c.plants.value * c.weight for c in pool.rows)
    mean = kill_share(pool, Doubt(1, 20))[0]
    assert min(share, second) - 1e-9 <= mean <= max(share, second) + 1e-9
    assert mean - share == pytest.approx((1 - counts / total) * (second - share), abs=1e-9)
    assert abs(mean - share) <= m / (n + m) + 1e-9
    assert theirs.plants.value == m


@given(share=st.floats(0.01, 1.0))
@settings(max_examples=20, deadline=None)
def test_the_more_plants_the_nearer_the_mean_is_to_what_the_trial_found(share: float) -> None:
    guess = next(row for row in ROWS.values() if row.method == "basal_bark" and row.source == "ours")
    far = [
        abs(
            kill_share(pooled(BARK, "aial", replace(BASE, n=n, share=Span(best=share)), guess), Doubt(1, 20))[0] - share
        )
        for n in (1, 10, 100, 1_000_000)
    ]
    assert far == sorted(far, reverse=True)
    assert far[-1] < 1e-4
