"""Worked numbers: a formula is a function that can be watched.

Off, watching costs one look-up. On, calls nest as a tree of steps, so that a number opens into formula,
inputs, units and source. Nothing is stored with results: opening a number reruns the pure job, watched.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from functools import wraps
from inspect import signature
from math import erf, isfinite
from typing import Any, ParamSpec, TypeVar

import numpy as np

from rootcollar.kernel.sources import Cited

__all__ = [
    "FORMULAS",
    "Formula",
    "Step",
    "add_up",
    "as_tree",
    "evaluate",
    "formula",
    "note",
    "unwatched",
    "use",
    "watch",
]

P = ParamSpec("P")
R = TypeVar("R")
T = TypeVar("T")

_WORDS: dict[str, Any] = {
    "pi": np.pi,
    "sqrt": np.sqrt,
    "ceil": np.ceil,
    "floor": np.floor,
    "minimum": np.minimum,
    "maximum": np.maximum,
    "where": np.where,
    "exp": np.exp,
    "log": np.log,
    "log10": np.log10,
    "sin": np.sin,
    "cos": np.cos,
    "tan": np.tan,
    "arcsin": np.arcsin,
    "arccos": np.arccos,
    "arctan": np.arctan,
    "erf": np.vectorize(erf, otypes=[float]),
    "sum": np.sum,
}


@dataclass(frozen=True, slots=True)
class Formula:
    """A named expression, its unit, where it comes from and the range it was published for."""

    name: str
    says: str
    gives: str
    source: str
    over: Mapping[str, tuple[float, float]]


@dataclass(slots=True)
class Step:
    """One call of a formula while watched: its inputs as given, the steps beneath it, its result."""

    formula: Formula
    inputs: Mapping[str, object]
    steps: list[Step] = field(default_factory=list)
    result: object = None


FORMULAS: dict[str, Formula] = {}
_watcher: ContextVar[list[Step] | None] = ContextVar("watcher", default=None)


def formula(
    says: str, *, gives: str, source: str, **over: tuple[float, float]
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Mark a function as a worked number.

    says: the expression over the argument names, printed beside the result and evaluated by a test.
    gives: unit of the result. source: source key. over: for each argument the range it holds for
    (numbers; the test draws from it), in the argument's own unit.
    """

    def mark(fn: Callable[P, R]) -> Callable[P, R]:
        name = f"{fn.__module__.removeprefix('rootcollar.')}.{fn.__name__}"
        if name in FORMULAS:
            raise ValueError(f"two formulas are called {name}")
        known = FORMULAS[name] = Formula(name, says, gives, source, over)
        names = signature(fn)

        @wraps(fn)
        def call(*args: P.args, **kwargs: P.kwargs) -> R:
            above = _watcher.get()
            if above is None:
                return fn(*args, **kwargs)
            bound = names.bind(*args, **kwargs)
            bound.apply_defaults()
            step = Step(known, bound.arguments)
            above.append(step)
            token = _watcher.set(step.steps)
            try:
                result = fn(*args, **kwargs)
            finally:
                _watcher.reset(token)
            step.result = result
            return result

        return call

    return mark


def use(figure: Cited[T]) -> T:
    """Return the figure's value; while watched, leave a leaf step that names its source."""
    above = _watcher.get()
    if above is not None:
        says = f"{figure.mark}: {figure.holds_for}" if figure.holds_for else str(figure.mark)
        leaf = Formula("figure", says, figure.unit, figure.source, {})
        above.append(Step(leaf, {"locator": figure.locator} if figure.locator else {}, result=figure.value))
    return figure.value


def note(what: str, says: str, result: T, gives: str, source: str = "") -> T:
    """Return a result; while watched, leave a leaf step that says in its own words how it came about.

    For what no expression over arguments tells: a sum of many, a line of a file or a label, a choice among sizes. what:
    the step's name. says: an expression in plain numbers, or words. gives: unit of the result. source: source key.
    """
    above = _watcher.get()
    if above is not None:
        above.append(Step(Formula(what, says, gives, source, {}), {}, result=result))
    return result


def add_up(parts: Sequence[T], gives: str, what: str = "together") -> T:
    """Return the sum of one or more numbers or worlds; while watched, of more than one, a step that shows each part."""
    whole: Any = parts[0]
    for part in parts[1:]:
        whole = whole + part
    if len(parts) > 1:
        note(what, " + ".join(f"{_plain(part):.6g}" for part in parts), whole, gives)
    found: T = whole
    return found


@contextmanager
def watch() -> Iterator[list[Step]]:
    """Collect the steps of every formula called inside the block."""
    steps: list[Step] = []
    token = _watcher.set(steps)
    try:
        yield steps
    finally:
        _watcher.reset(token)


@contextmanager
def unwatched() -> Iterator[None]:
    """Leave the steps inside the block out: of a search, what was tried is no part of the working."""
    token = _watcher.set(None)
    try:
        yield
    finally:
        _watcher.reset(token)


def evaluate(says: str, values: Mapping[str, object]) -> Any:
    """Return the printed expression worked out over the given values, for the test that keeps it honest."""
    return eval(says, {"__builtins__": {}}, {**_WORDS, **values})  # noqa: S307  our own expressions only


def as_tree(step: Step) -> dict[str, Any]:
    """Return a step as plain values: formula, says, inputs, result, unit, source, steps.

    Arrays of worlds are shown by world 0, the best figure, so that a reader with a calculator agrees.
    """
    return {
        "formula": step.formula.name,
        "says": step.formula.says,
        "inputs": {name: _plain(value) for name, value in step.inputs.items()},
        "result": _plain(step.result),
        "unit": step.formula.gives,
        "source": step.formula.source,
        "steps": [as_tree(below) for below in step.steps],
    }


def _plain(value: object) -> Any:
    if isinstance(value, np.ndarray):
        return _plain(value.ravel()[0].item()) if value.size else None
    if isinstance(value, np.generic):
        return _plain(value.item())
    if isinstance(value, Cited):
        return _plain(value.value)
    if isinstance(value, Mapping):
        return {str(key): _plain(one) for key, one in value.items()}
    if isinstance(value, (tuple, list)):
        return [_plain(one) for one in value]
    if isinstance(value, float) and not isfinite(value):
        return str(value)  # JSON has no word for it
    if value is None or isinstance(value, (bool, int, float, str)):
        return value
    return str(value)
