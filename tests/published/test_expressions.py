"""The expression printed beside a result is what the function does: both are worked out over drawn inputs."""

from __future__ import annotations

import importlib
import inspect
from collections.abc import Callable
from typing import Any, get_args, get_origin, get_type_hints

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.kernel.formula import FORMULAS, evaluate
from tests import draws
from tools.checks import every_formula

NAMES = sorted(every_formula())


def function_of(name: str) -> Callable[..., Any]:
    module, _, last = name.rpartition(".")
    found: Callable[..., Any] = getattr(importlib.import_module(f"rootcollar.{module}"), last)
    return found


def takes_arrays(hint: object) -> bool:
    """Whether an argument's annotation is an array, or a number or an array."""
    return get_origin(hint) is np.ndarray or any(get_origin(one) is np.ndarray for one in get_args(hint))


def inputs_of(name: str, arrays: bool) -> st.SearchStrategy[dict[str, Any]]:
    hints = get_type_hints(function_of(name))
    drawn = {}
    for argument, (low, high) in FORMULAS[name].over.items():
        hint = hints[argument]
        one = st.integers(int(low), int(high)) if hint is int else st.floats(low, high)
        many = arrays and takes_arrays(hint)
        drawn[argument] = st.lists(one, min_size=3, max_size=3).map(np.array) if many else one
    return st.fixed_dictionaries(drawn)


@pytest.mark.parametrize("name", NAMES)
def test_every_argument_has_its_range(name: str) -> None:
    arguments = list(inspect.signature(function_of(name)).parameters)
    over = FORMULAS[name].over
    assert sorted(over) == sorted(arguments)
    assert all(low < high for low, high in over.values())


@pytest.mark.parametrize("arrays", [False, True], ids=["numbers", "arrays"])
@pytest.mark.parametrize("name", NAMES)
def test_the_printed_expression_gives_the_functions_result(name: str, arrays: bool) -> None:
    @settings(max_examples=draws.of(50))
    @given(inputs_of(name, arrays))
    def same(inputs: dict[str, Any]) -> None:
        said = evaluate(FORMULAS[name].says, inputs)
        np.testing.assert_allclose(function_of(name)(**inputs), said, rtol=1e-9, atol=1e-12)

    same()


def test_a_wrong_expression_would_be_noticed() -> None:
    inputs = {"diameter_cm": 10.0, "height_cm": 30.0}
    right = evaluate(FORMULAS["dose.geometry.band_area_cm2"].says, inputs)
    assert right != pytest.approx(evaluate("pi * diameter_cm ** 2 * height_cm", inputs), rel=1e-9)
