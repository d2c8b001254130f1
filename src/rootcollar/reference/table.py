"""One TOML table being read. Each key is taken once; a word not known, a source not listed, a key left over is a fault.

A fault in our own data is our own fault: a plain ValueError that names file, table and key.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar, cast

from rootcollar.kernel.days import Window, read_window
from rootcollar.kernel.errors import BadInput
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference.spans import Figure, Span

__all__ = ["Book", "Table"]

T = TypeVar("T")

_ENDS = ("low", "high", "best")


@dataclass(frozen=True, slots=True)
class Book:
    """What every file is checked against: the listed source keys, and the known words of each kind."""

    sources: frozenset[str]
    vocab: Mapping[str, Mapping[str, str]]


class Table:
    """A table on its way to becoming a dataclass."""

    def __init__(self, raw: object, where: str, book: Book) -> None:
        if not isinstance(raw, dict):
            raise ValueError(f"{where}: wanted a table, found {raw!r}")
        self._left: dict[str, Any] = dict(raw)
        self.where, self.book = where, book

    def fault(self, key: str, says: str) -> ValueError:
        """Return the error that names the place."""
        return ValueError(f"{self.where}: {key}: {says}")

    def has(self, key: str) -> bool:
        """Return whether the key is there and not yet taken."""
        return key in self._left

    def left(self) -> tuple[str, ...]:
        """Return the keys not yet taken."""
        return tuple(self._left)

    def close(self) -> None:
        """Raise ValueError when a key is left that nobody asked for: it is misspelt or does not belong here."""
        if self._left:
            raise self.fault(", ".join(self._left), "not a key of this table")

    def take(self, key: str, kind: type[T] | tuple[type[T], ...], default: T | None = None) -> T:
        """Take a value of the kind; the default stands in when the key is absent; without one it is a fault."""
        value = self._left.pop(key, default)
        if value is None:
            raise self.fault(key, "missing")
        if not isinstance(value, kind) or (isinstance(value, bool) and kind is not bool):
            raise self.fault(key, f"wanted {getattr(kind, '__name__', 'a number')}, found {value!r}")
        return value

    def text(self, key: str, default: str | None = None) -> str:
        """Take a text."""
        return self.take(key, str, default)

    def number(self, key: str) -> float:
        """Take a number."""
        return float(self.take(key, cast("tuple[type[float], ...]", (int, float))))

    def maybe_number(self, key: str) -> float | None:
        """Take a number, or None when the key is absent."""
        return self.number(key) if self.has(key) else None

    def maybe_count(self, key: str) -> int | None:
        """Take a whole number, or None when the key is absent."""
        return self.take(key, int) if self.has(key) else None

    def texts(self, key: str) -> tuple[str, ...]:
        """Take a list of texts, empty when the key is absent."""
        value = self.take(key, list, [])
        if not all(isinstance(one, str) for one in value):
            raise self.fault(key, f"wanted a list of texts, found {value!r}")
        return tuple(value)

    def _known(self, key: str, kind: str, word: str) -> str:
        if word not in self.book.vocab[kind]:
            raise self.fault(key, f"{word!r} is not a known {kind}; known: {', '.join(self.book.vocab[kind])}")
        return word

    def word(self, key: str, kind: str, default: str | None = None) -> str:
        """Take a word of the vocabulary of that kind; the default is not checked."""
        if default is not None and not self.has(key):
            return default
        return self._known(key, kind, self.text(key))

    def words(self, key: str, kind: str) -> tuple[str, ...]:
        """Take a list of words of the vocabulary of that kind, empty when the key is absent."""
        return tuple(self._known(key, kind, word) for word in self.texts(key))

    def source(self) -> str:
        """Take the source key; one that is not listed is a fault."""
        key = self.text("source")
        if key not in self.book.sources:
            raise self.fault("source", f"{key!r} is not in sources.toml")
        return key

    def mark(self, key: str = "mark", default: str | None = None) -> Mark:
        """Take a mark."""
        word = self.text(key, default)
        if word not in set(Mark):
            raise self.fault(key, f"{word!r} is not a mark; known: {', '.join(Mark)}")
        return Mark(word)

    def maybe_span(self, key: str) -> Span | None:
        """Take an inner table of low, high, best as a span, or None when the key is absent."""
        if not self.has(key):
            return None
        inner = self.child(key)
        span = inner._ends()
        inner.close()
        return span

    def span(self, key: str) -> Span:
        """Take an inner table of low, high, best as a span."""
        span = self.maybe_span(key)
        if span is None:
            raise self.fault(key, "missing")
        return span

    def _ends(self) -> Span:
        low, high, best = (self.maybe_number(end) for end in _ENDS)
        told = [one for one in (low, best, high) if one is not None]
        if not told or told != sorted(told):
            raise self.fault("low, best, high", f"wanted in rising order, found {told}")
        return Span(low, high, best)

    def window(self) -> Window:
        """Read this table as a stretch of the year, from and to as MM-DD."""
        try:
            window = read_window(self.text("from"), self.text("to"))
        except BadInput as fault:
            raise self.fault("from, to", str(fault)) from None
        self.close()
        return window

    def child(self, key: str) -> Table:
        """Take an inner table."""
        return Table(self._left.pop(key, None), f"{self.where} [{key}]", self.book)

    def children(self, key: str) -> Iterator[Table]:
        """Take a list of inner tables, none when the key is absent; each is closed after its turn."""
        for place, raw in enumerate(self.take(key, list, []), start=1):
            inner = Table(raw, f"{self.where} [{key} {place}]", self.book)
            yield inner
            inner.close()

    def cited(self, key: str, kind: type[T]) -> Cited[T]:
        """Take an inner table as a figure whose value is of the kind."""
        figure = self.child(key)
        cited = figure.here()
        figure.close()
        value: object = cited.value
        if kind is int and isinstance(value, float) and value.is_integer():
            value = int(value)
        if not isinstance(value, kind):
            raise self.fault(key, f"wanted a value of kind {kind.__name__}, found {value!r}")
        return Cited(value, cited.unit, cited.source, cited.mark, cited.holds_for, cited.locator)

    def maybe_cited(self, key: str, kind: type[T]) -> Cited[T] | None:
        """Take an inner table as a figure of the kind, or None when the key is absent."""
        return self.cited(key, kind) if self.has(key) else None

    def figures(self, key: str) -> tuple[Figure, ...]:
        """Take a list of figures, empty when the key is absent."""
        return tuple(one.here() for one in self.children(key))

    def here(self) -> Figure:
        """Read the figure that stands in this table: value (or low, high, best), unit, source, mark and so on."""
        value = self._value()
        return Cited(
            value,
            self.text("unit", ""),
            self.source(),
            self.mark(),
            self.text("holds_for", ""),
            self.text("locator", ""),
        )

    def _value(self) -> bool | float | str | Span | tuple[str, ...]:
        if not self.has("value"):
            return self._ends()
        value = self._left.pop("value")
        if isinstance(value, bool | str):
            return value
        if isinstance(value, int | float):
            return float(value)
        self._left["value"] = value
        return self.texts("value")
