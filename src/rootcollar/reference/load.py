"""Reading the fact files: each on first use, once, and strictly."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache, cached_property
from importlib.resources import files
from typing import Generic, TypeVar

from rootcollar.kernel.sources import Cited, Source
from rootcollar.kernel.tongue import Tongue
from rootcollar.reference.body import BodySize, read_body
from rootcollar.reference.disagree import Conflict, read_conflict
from rootcollar.reference.effort import EffortRow, read_effort
from rootcollar.reference.plants import General, Species
from rootcollar.reference.posting import PostingRow, read_posting
from rootcollar.reference.products import Form, Formulation, Ingredient
from rootcollar.reference.read_plants import read_general, read_species
from rootcollar.reference.read_products import read_form, read_formulation, read_ingredient
from rootcollar.reference.read_ways import read_coverage, read_kill, read_labour, read_method, read_named, read_practice
from rootcollar.reference.seasons import SeasonRow, read_season
from rootcollar.reference.spans import Span
from rootcollar.reference.steps import HoldRow, StepRow, read_hold, read_step
from rootcollar.reference.table import Book, Table
from rootcollar.reference.tongues import read_tongue
from rootcollar.reference.ways import Coverage, KillRow, LabourRow, MethodFacts, NamedFigure, Practice

__all__ = ["Lazy", "Reference", "load", "read"]

T = TypeVar("T")


class Lazy(Mapping[str, T], Generic[T]):
    """A mapping whose values are read when first asked for."""

    def __init__(self, keys: Iterable[str], make: Callable[[str], T]) -> None:
        self._keys, self._make = dict.fromkeys(keys), make
        self._made: dict[str, T] = {}

    def __getitem__(self, key: str) -> T:
        if key not in self._keys:
            raise KeyError(key)
        if key not in self._made:
            self._made[key] = self._make(key)
        return self._made[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._keys)

    def __len__(self) -> int:
        return len(self._keys)


class Reference:
    """All published facts, by room of the library. Built by `load` from the package, by `read` from texts."""

    def __init__(self, texts: Mapping[str, str]) -> None:
        self._texts = texts

    def _raw(self, name: str) -> dict[str, object]:
        try:
            return tomllib.loads(self._texts[name])
        except tomllib.TOMLDecodeError as fault:
            raise ValueError(f"{name}: not TOML: {fault}") from fault

    def _table(self, name: str) -> Table:
        return Table(self._raw(name), name, self._book)

    def _shelf(self, folder: str, make: Callable[[str, Table], T]) -> Lazy[T]:
        return Lazy(self._names(folder), lambda key: make(key, self._table(f"{folder}/{key}.toml")))

    def _names(self, folder: str) -> list[str]:
        inside = (name for name in self._texts if name.startswith(f"{folder}/"))
        return sorted(name.removeprefix(f"{folder}/").removesuffix(".toml") for name in inside)

    def _rows(self, name: str, key: str, make: Callable[[Table], T]) -> tuple[T, ...]:
        table = Table({key: self._raw(name).get(key)}, name, self._book)
        return tuple(make(row) for row in table.children(key))

    def _keyed(self, name: str, key: str, make: Callable[[Table], tuple[str, T]]) -> Mapping[str, T]:
        rows = self._rows(name, key, make)
        made = dict(rows)
        if len(made) < len(rows):
            raise ValueError(f"{name} [{key}]: a key stands twice")
        return made

    @cached_property
    def sources(self) -> Mapping[str, Source]:
        """Every source, by key."""
        made = {}
        empty = Book(frozenset(), {})
        for key, raw in self._raw("sources.toml").items():
            row = Table(raw, f"sources.toml [{key}]", empty)
            cite, url, kind = row.text("cite"), row.text("url", ""), row.text("kind", "")
            made[key] = Source(key, cite, url, kind, row.maybe_count("year"))
            row.close()
        return made

    @cached_property
    def vocab(self) -> Mapping[str, Mapping[str, str]]:
        """The known words of each kind, with what they mean; ingredients, formulations and species are words too."""
        written: dict[str, dict[str, str]] = {}
        for kind, raw in self._raw("vocab.toml").items():
            table = Table(raw, f"vocab.toml [{kind}]", Book(frozenset(), {}))
            written[kind] = {word: table.text(word) for word in table.left()}
        rows = self._raw("formulations.toml").get("formulations", [])
        named = rows if isinstance(rows, list) else []
        written["formulation"] = {row["key"]: row["words"] for row in named}
        written["ingredient"] = {**dict.fromkeys(self._names("ingredients"), ""), **written["other_ingredient"]}
        written["species"] = dict.fromkeys(self._names("species"), "")
        return written

    @cached_property
    def _book(self) -> Book:
        return Book(frozenset(self.sources), self.vocab)

    @cached_property
    def species(self) -> Mapping[str, Species]:
        """Every plant, by key (lower-case PLANTS symbol)."""
        return self._shelf("species", read_species)

    @cached_property
    def general(self) -> General:
        """What holds for all species."""
        return read_general(self._table("general.toml"))

    @cached_property
    def ingredients(self) -> Mapping[str, Ingredient]:
        """Every active ingredient, by key."""
        return self._shelf("ingredients", read_ingredient)

    @cached_property
    def forms(self) -> Mapping[tuple[str, str], Form]:
        """Every salt, ester and acid, by ingredient and form."""
        rows = self._rows("forms.toml", "forms", read_form)
        return {(row.ingredient, row.form): row for row in rows}

    @cached_property
    def formulations(self) -> Mapping[str, Formulation]:
        """Every generic formulation, by key."""
        rows = self._rows("formulations.toml", "formulations", lambda row: read_formulation(row, self.forms))
        if len({row.key for row in rows}) < len(rows):
            raise ValueError("formulations.toml [formulations]: a key stands twice")
        return {row.key: row for row in rows}

    @cached_property
    def methods(self) -> Mapping[str, MethodFacts]:
        """Every way of working, by key."""
        return self._shelf("methods", read_method)

    @cached_property
    def coverage(self) -> Mapping[str, Coverage]:
        """Mix per square centimetre, by key."""
        rows = self._rows("coverage.toml", "coverage", read_coverage)
        return {row.key: row for row in rows}

    @cached_property
    def mixing(self) -> Mapping[str, tuple[NamedFigure, ...]]:
        """Facts about mixing, by topic."""
        return self._topics("mixing.toml")

    @cached_property
    def hazard(self) -> Mapping[str, tuple[NamedFigure, ...]]:
        """Facts about harm and what keeps it off, by topic."""
        return self._topics("hazard.toml")

    @cached_property
    def weather(self) -> Mapping[str, tuple[NamedFigure, ...]]:
        """Facts about wind, air, rain and season, by topic."""
        return self._topics("weather.toml")

    @cached_property
    def emergency(self) -> Mapping[str, tuple[NamedFigure, ...]]:
        """Numbers to call and what must be told when something goes wrong, by topic."""
        return self._topics("emergency.toml")

    @cached_property
    def posting(self) -> tuple[PostingRow, ...]:
        """Examples of what some places ask of signs and notice."""
        return self._rows("posting.toml", "posting", read_posting)

    def _topics(self, name: str) -> Mapping[str, tuple[NamedFigure, ...]]:
        table = self._table(name)
        return {topic: tuple(read_named(row) for row in table.children(topic)) for topic in table.left()}

    @cached_property
    def conflicts(self) -> tuple[Conflict, ...]:
        """Where sources disagree about a practice."""
        return self._rows("conflicts.toml", "conflicts", read_conflict)

    @cached_property
    def practice(self) -> Mapping[str, Practice]:
        """Habits of the trade, by key."""
        return {row.key: row for row in self._rows("practice.toml", "practice", read_practice)}

    @cached_property
    def kill(self) -> tuple[KillRow, ...]:
        """Priors of kill per visit."""
        return self._rows("kill.toml", "kill", read_kill)

    @cached_property
    def kill_weights(self) -> Mapping[str, Cited[float]]:
        """How much a row of kill counts for a line that it does not speak of outright, by name."""
        table = self._table("kill_weights.toml")
        return {name: table.cited(name, float) for name in table.left()}

    @cached_property
    def labour(self) -> tuple[LabourRow, ...]:
        """Guesses of minutes per stem."""
        return self._rows("labour.toml", "labour", read_labour)

    @cached_property
    def walking(self) -> Mapping[str, Cited[Span]]:
        """Guesses of the walk between stems and of steep ground, by name."""
        return self._spans("walking", "effort.toml")

    @cached_property
    def effort(self) -> Mapping[str, tuple[EffortRow, ...]]:
        """Guesses of what a visit takes beside the work at the stem: of thorns, of slash and of fruit."""
        return {key: self._rows("effort.toml", key, read_effort) for key in ("thorns", "slash", "fruit")}

    @cached_property
    def seasons(self) -> tuple[SeasonRow, ...]:
        """Parts of the year in which ways of working do best, or do not work, whatever the plant."""
        return self._rows("seasons.toml", "seasons", read_season)

    @cached_property
    def body(self) -> tuple[BodySize, ...]:
        """Thicknesses that a crew tells by its own body, thinnest first."""
        return self._rows("body.toml", "body", read_body)

    @cached_property
    def steps(self) -> tuple[StepRow, ...]:
        """Ways of two visits: the first prepares, the second kills."""
        return self._rows("steps.toml", "steps", read_step)

    @cached_property
    def holds(self) -> tuple[HoldRow, ...]:
        """How long treated plants are left uncut."""
        return self._rows("steps.toml", "holds", read_hold)

    @cached_property
    def placeholders(self) -> Mapping[str, Cited[Span]]:
        """Wage, carrier prices and set-up times to start from until the user puts in their own."""
        return self._spans("placeholders")

    @cached_property
    def price_usd_per_gal(self) -> Mapping[str, Cited[Span]]:
        """Prices of formulations, by key, to start from until the user puts in their own [USD per US gallon]."""
        return self._spans("price_usd_per_gal")

    @cached_property
    def tongues(self) -> Mapping[str, Tongue]:
        """The languages of the day sheet, by code."""
        return Lazy([name for name in self._names("tongues") if "-" not in name], self._tongue)

    def _tongue(self, code: str) -> Tongue:
        known = self._names("tongues")
        beside = (f"{code}-{part}" for part in ("plants", "rules", "label"))
        tables = (self._table(f"tongues/{name}.toml") if name in known else None for name in beside)
        return read_tongue(code, self._table(f"tongues/{code}.toml"), *tables)

    def _spans(self, key: str, file: str = "labour.toml") -> Mapping[str, Cited[Span]]:
        table = self._table(file).child(key)
        return {name: table.cited(name, Span) for name in table.left()}


class _PackageTexts(Mapping[str, str]):
    """The fact files beside this module, read when asked for."""

    def __init__(self) -> None:
        self._root = files("rootcollar.reference") / "data"

    def __getitem__(self, name: str) -> str:
        return self._root.joinpath(name).read_text(encoding="utf-8")

    def __iter__(self) -> Iterator[str]:
        for entry in self._root.iterdir():
            if entry.is_dir():
                yield from (f"{entry.name}/{inner.name}" for inner in entry.iterdir())
            else:
                yield entry.name

    def __len__(self) -> int:
        return sum(1 for _ in self)


def read(texts: Mapping[str, str]) -> Reference:
    """Return the facts told by TOML texts, by file name as in the package ("species/rhca3.toml")."""
    return Reference(texts)


@cache
def load() -> Reference:
    """Return the facts of the package; files are read when first asked for."""
    return read(_PackageTexts())
