"""A worked number opens into its formula, inputs and steps, and watching changes nothing."""

import json
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.formula import FORMULAS, Step, add_up, as_tree, evaluate, formula, note, unwatched, use, watch
from rootcollar.kernel.sources import Cited, Mark


@dataclass(frozen=True)
class Bench:
    """Two formulas, one calling the other."""

    area: Callable[..., float]
    pair: Callable[..., float]


@pytest.fixture(scope="module")
def bench() -> Bench:
    """Make the formulas and take them out of the register again: other tests walk it."""
    before = set(FORMULAS)

    @formula("pi / 4 * dbh_cm ** 2", gives="cm2", source="ours", dbh_cm=(1, 100))
    def area(dbh_cm: float, shape: float = 1.0) -> float:
        """Return a circle [cm2]."""
        return float(np.pi / 4 * dbh_cm**2 * shape)

    @formula("one + other", gives="cm2", source="ours", dbh_cm=(1, 100))
    def pair(dbh_cm: float) -> float:
        """Return two circles [cm2]."""
        if dbh_cm < 0:
            raise ValueError("below 0")
        return area(dbh_cm) + area(dbh_cm=2 * dbh_cm)

    names = set(FORMULAS) - before
    assert {name.rsplit(".", 1)[1] for name in names} == {"area", "pair"}
    for name in names:
        del FORMULAS[name]
    return Bench(area, pair)


@given(dbh_cm=st.floats(1, 100))
def test_watching_changes_no_result(bench: Bench, dbh_cm: float) -> None:
    plain = bench.pair(dbh_cm)
    with watch():
        assert bench.pair(dbh_cm) == plain


@given(dbh_cm=st.floats(1, 100))
def test_the_printed_expression_gives_the_result(bench: Bench, dbh_cm: float) -> None:
    with watch() as steps:
        bench.area(dbh_cm)
    says = steps[0].formula.says
    assert evaluate(says, steps[0].inputs) == pytest.approx(steps[0].result, rel=1e-12)


def test_calls_nest_as_a_tree(bench: Bench) -> None:
    with watch() as steps:
        bench.pair(10.0)
        bench.area(1.0)
    assert [step.formula.name.rsplit(".", 1)[1] for step in steps] == ["pair", "area"]
    below = steps[0].steps
    assert [step.inputs for step in below] == [{"dbh_cm": 10.0, "shape": 1.0}, {"dbh_cm": 20.0, "shape": 1.0}]
    assert sum(step.result for step in below if isinstance(step.result, float)) == steps[0].result


def test_unwatched_calls_leave_nothing(bench: Bench) -> None:
    with watch() as steps:
        pass
    bench.pair(1.0)
    assert steps == []


def test_a_watch_inside_a_watch_keeps_its_own(bench: Bench) -> None:
    with watch() as outer:
        bench.area(1.0)
        with watch() as inner:
            bench.area(2.0)
        bench.area(3.0)
    assert [step.inputs["dbh_cm"] for step in outer] == [1.0, 3.0]
    assert [step.inputs["dbh_cm"] for step in inner] == [2.0]


def test_a_formula_that_raises_leaves_the_watch_whole(bench: Bench) -> None:
    with watch() as steps:
        with pytest.raises(ValueError, match="below 0"):
            bench.pair(-1.0)
        bench.area(1.0)
    assert [(step.result is None, len(step.steps)) for step in steps] == [(True, 0), (False, 0)]


def test_wrong_arguments_are_a_type_error_watched_or_not(bench: Bench) -> None:
    with pytest.raises(TypeError):
        bench.area()
    with watch(), pytest.raises(TypeError):
        bench.area()


def test_a_figure_leaves_its_source(bench: Bench) -> None:
    figure = Cited(0.1, "mL/cm2", "PNW-STEM", Mark.READ, "cut stump", "table 2")
    assert use(figure) == 0.1
    with watch() as steps:
        assert use(figure) == 0.1
    tree = as_tree(steps[0])
    assert (tree["result"], tree["unit"], tree["source"]) == (0.1, "mL/cm2", "PNW-STEM")
    assert tree["says"] == "read: cut stump"
    assert tree["inputs"] == {"locator": "table 2"}


ANYTHING = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(allow_nan=False), st.text(), st.dates()),
    lambda inner: st.one_of(st.lists(inner), st.dictionaries(st.integers(), inner), st.tuples(inner)),
    max_leaves=8,
)


@given(inputs=st.dictionaries(st.text(max_size=5), ANYTHING, max_size=4), result=ANYTHING)
def test_a_tree_is_plain_values(bench: Bench, inputs: dict[str, object], result: object) -> None:
    with watch() as steps:
        bench.area(1.0)
    json.dumps(as_tree(Step(steps[0].formula, inputs, [], result)))


def test_a_tree_shows_world_0_of_an_array(bench: Bench) -> None:
    with watch() as steps:
        bench.area(1.0)
    worlds = np.array([4.0, 3.0, 5.0])
    made = as_tree(Step(steps[0].formula, {"stems": worlds, "n": np.int64(3), "no": np.array([])}, [], worlds))
    assert made["inputs"] == {"stems": 4.0, "n": 3, "no": None}
    assert made["result"] == 4.0
    json.dumps(made)


def test_an_expression_reaches_nothing_but_its_words() -> None:
    for says in ("open('x')", "__import__('os')", "exit()"):
        with pytest.raises(NameError):
            evaluate(says, {})
    assert evaluate("where(x > 1, sqrt(x), 0)", {"x": np.array([4.0, 1.0])}) == pytest.approx([2, 0])


def test_a_sum_leaves_its_parts_and_one_part_is_no_sum(bench: Bench) -> None:
    parts = [np.array([1.5, 1.0, 2.0]), np.array([2.25])]
    with watch() as steps:
        whole = add_up(parts, "mL", "both")
        add_up([3.0], "mL")
    assert whole.tolist() == [3.75, 3.25, 4.25]
    (node,) = map(as_tree, steps)
    assert (node["formula"], node["says"], node["result"], node["unit"]) == ("both", "1.5 + 2.25", 3.75, "mL")
    assert evaluate(node["says"], {}) == node["result"]


def test_a_note_gives_back_its_result_and_says_so_only_while_watched(bench: Bench) -> None:
    assert note("read", "a jug", 4.0, "mL") == 4.0
    with watch() as steps:
        assert note("read", "a jug", 4.0, "mL", "ours") == 4.0
        with unwatched():
            note("tried", "another jug", 5.0, "mL")
            bench.area(1.0)
    (node,) = map(as_tree, steps)
    assert (node["formula"], node["result"], node["source"]) == ("read", 4.0, "ours")
