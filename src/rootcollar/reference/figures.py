"""Every fact of a thing as one flat list, so that a face can show each with its source and mark."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from rootcollar.kernel.sources import Cited
from rootcollar.reference.spans import Row, Span, Window

__all__ = ["figures", "row_words"]


def figures(thing: object) -> list[tuple[str, Cited[Any]]]:
    """Return (label path, figure) for every fact inside the thing, in the order of its fields.

    A `Cited` gives itself; a `Row` gives one figure whose value is its words (see `row_words`), its unit empty.
    """
    return list(_walk(thing, ""))


def _walk(thing: object, path: str) -> Iterator[tuple[str, Cited[Any]]]:
    if isinstance(thing, Cited):
        yield path, thing
    elif isinstance(thing, Row):
        yield path, Cited(row_words(thing), "", thing.source, thing.mark)
    elif isinstance(thing, Mapping):
        for key, one in thing.items():
            yield from _walk(one, _under(path, str(key)))
    elif isinstance(thing, tuple | list):
        for place, one in enumerate(thing, start=1):
            yield from _walk(one, f"{path} {place} {_title(one)}".strip())
    elif is_dataclass(thing):
        for each in fields(thing):
            yield from _walk(getattr(thing, each.name), path if each.name == "figure" else _under(path, each.name))


def _under(path: str, name: str) -> str:
    return f"{path}.{name}" if path else name


def _title(one: object) -> str:
    return next((str(getattr(one, name)) for name in ("name", "method", "kind", "species") if hasattr(one, name)), "")


def row_words(row: Row) -> str:
    """Return what a row says, column by column, without its source and mark; empty columns are left out."""
    told = ((each.name, getattr(row, each.name)) for each in fields(row) if each.name not in ("source", "mark"))
    return "; ".join(
        f"{name.replace('_', ' ')}: {_plain(value)}" for name, value in told if value not in (None, "", ())
    )


def _plain(value: object) -> str:
    if isinstance(value, Span):
        return _span_words(value)
    if isinstance(value, Cited):
        return f"{_plain(value.value)} {value.unit} {value.holds_for}".rstrip()
    if isinstance(value, Window):
        return "-".join(f"{month:02d}/{day:02d}" for month, day in (value.start, value.end))
    if isinstance(value, tuple):
        return ", ".join(_plain(one) for one in value)
    return f"{value:g}" if isinstance(value, float) else str(value)


def _span_words(span: Span) -> str:
    ends = [f"{end:g}" for end in (span.low, span.high) if end is not None]
    if span.low is None and span.high is not None:
        ends = [f"up to {span.high:g}"]
    if span.high is None and span.low is not None:
        ends = [f"at least {span.low:g}"]
    words = " to ".join(dict.fromkeys(ends))
    if span.best is None:
        return words
    return f"{span.best:g} ({words})" if words else f"{span.best:g}"
