"""Checking one typed value against its line of the sheet: what is allowed, said in words when it is not."""

from __future__ import annotations

import difflib
import math
import re
from collections.abc import Callable, Iterable, Mapping
from datetime import date, datetime

from rootcollar.shelf.fields import METHODS, Field
from rootcollar.shelf.sheet import Distance

__all__ = ["NotAllowed", "near", "read_value"]

_STATE = re.compile(r"[A-Z]{2}")
_DISTANCE_KEYS = {"from", "ft", "methods"}


class NotAllowed(Exception):
    """A value that its line cannot hold; the text says what it can hold."""


def near(name: str, known: Iterable[str]) -> str:
    """Return the known names nearest to a mistyped one, or else all of them, as a list in words."""
    names = list(known)
    return ", ".join(difflib.get_close_matches(name, names, n=3) or names)


def read_value(field: Field, raw: object) -> object:
    """Return a typed value as the rooms use it: lists as tuples, numbers as floats, counts whole.

    Raises NotAllowed with the words of what the line can hold.
    """
    return _READERS[field.kind](field, raw)


def _text(field: Field, raw: object) -> str:
    if not isinstance(raw, str) or not raw.strip():
        raise NotAllowed('text in quotes, or "silent"')
    return raw.strip()


def _texts(field: Field, raw: object) -> tuple[str, ...]:
    if not isinstance(raw, list) or not all(isinstance(one, str) and one.strip() for one in raw):
        raise NotAllowed('a list of texts such as ["one", "two"], or "silent"')
    return tuple(one.strip() for one in raw)


def _states(field: Field, raw: object) -> tuple[str, ...]:
    names = _texts(field, raw)
    if not all(_STATE.fullmatch(one) for one in names):
        raise NotAllowed('states by their two capital letters, such as ["WV", "OH"]')
    return names


def _choice(field: Field, raw: object) -> str:
    if raw not in field.among:
        raise NotAllowed(f'{", ".join(field.among)}, or "silent"')
    return str(raw)


def _choices(field: Field, raw: object) -> tuple[str, ...]:
    names = _texts(field, raw)
    if not set(names) <= set(field.among):
        raise NotAllowed(f'a list of {", ".join(field.among)}, or "silent"')
    return names


def _flag(field: Field, raw: object) -> bool:
    if not isinstance(raw, bool):
        raise NotAllowed('true, false or "silent", without quotes around true and false')
    return raw


def _number(field: Field, raw: object) -> float:
    if isinstance(raw, bool) or not isinstance(raw, (int, float)) or not math.isfinite(raw):
        unit = f" in {field.unit}" if field.unit else ""
        raise NotAllowed(f'a plain number{unit}, without quotes or unit, or "silent"')
    if raw < 0 and field.unit != "F":
        raise NotAllowed("a number of 0 or more")
    return float(raw)


def _percent(field: Field, raw: object) -> float:
    number = _number(field, raw)
    if number > 100:
        raise NotAllowed("a percent from 0 to 100")
    return number


def _count(field: Field, raw: object) -> int:
    number = _number(field, raw)
    if number != int(number):
        raise NotAllowed("a whole number")
    return int(number)


def _date(field: Field, raw: object) -> date:
    if isinstance(raw, datetime) or not isinstance(raw, date):
        raise NotAllowed("a day of the calendar as year-month-day, without quotes, such as 2025-05-20")
    return raw


def _distances(field: Field, raw: object) -> tuple[Distance, ...]:
    if not isinstance(raw, list):
        raise NotAllowed('a list such as [{ from = "surface water", ft = 25, methods = ["foliar"] }], or "silent"')
    return tuple(_distance(field, one) for one in raw)


def _distance(field: Field, raw: object) -> Distance:
    if not isinstance(raw, Mapping) or not {"from", "ft"} <= raw.keys() <= _DISTANCE_KEYS:
        raise NotAllowed("from, ft and, where it holds for some only, methods in each")
    methods = raw.get("methods", [])
    if not isinstance(methods, list) or any(one not in METHODS for one in methods):
        raise NotAllowed(f"methods among {', '.join(METHODS)}")
    return Distance(_text(field, raw["from"]), _number(field, raw["ft"]), tuple(methods))


_READERS: dict[str, Callable[[Field, object], object]] = {
    "text": _text,
    "texts": _texts,
    "states": _states,
    "choice": _choice,
    "choices": _choices,
    "flag": _flag,
    "number": _number,
    "percent": _percent,
    "count": _count,
    "date": _date,
    "distances": _distances,
}
