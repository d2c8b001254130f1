"""Ways of working: their figures, trials, coverages, habits of the trade, kill and labour."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.days import Window
from rootcollar.kernel.sources import Cited
from rootcollar.reference.spans import Figure, Row, Span

__all__ = ["Coverage", "KillRow", "LabourRow", "MethodFacts", "NamedFigure", "Practice", "TrialRow"]


@dataclass(frozen=True, slots=True)
class NamedFigure:
    """A figure with the name a formula asks for, and what it is bound to; empty means: not bound."""

    name: str
    figure: Figure
    ingredients: tuple[str, ...] = ()
    species: tuple[str, ...] = ()
    carrier: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialRow(Row):
    """A published trial or count, as printed: who was treated how, when, and what came of it."""

    species: str
    treatment: str
    when: str
    result: str
    counted: str
    ingredients: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MethodFacts:
    """A way of working: figures by name (conflicts all kept), warnings in words, trials, what to do beyond its size."""

    key: str
    title: str
    words: str
    uses_herbicide: bool
    beyond_size: str
    figures: tuple[NamedFigure, ...]
    trials: tuple[TrialRow, ...]

    def rows(self, name: str, ingredient: str = "", carrier: str = "", species: str = "") -> tuple[Figure, ...]:
        """Return every figure of that name, all sources, that is not bound to something else than what is asked for.

        ingredient, species: keys. Asked for nothing, a row's binding does not matter; a row bound to nothing holds
        for all. Returns an empty tuple when nobody published one.
        """
        return tuple(
            row.figure
            for row in self.figures
            if row.name == name
            and (not row.ingredients or not ingredient or ingredient in row.ingredients)
            and (not row.carrier or not carrier or carrier == row.carrier)
            and (not row.species or not species or species in row.species)
        )


@dataclass(frozen=True, slots=True)
class Coverage:
    """How much mix wets a square centimetre of bark or of cut ring, for one carrier, strength range and nozzle.

    A coverage never crosses over to another strength or nozzle: flooding with a strong mix is an overdose.
    ml_per_cm2: best, low, high as a `Span` [mL/cm²].
    """

    key: str
    words: str
    methods: tuple[str, ...]
    carrier: str
    strength_pct: Span
    nozzle: str
    ml_per_cm2: Cited[Span]


@dataclass(frozen=True, slots=True, kw_only=True)
class Practice(Row):
    """A habit of the trade that no source was needed for, in our words, with its numbers typed."""

    key: str
    words: str
    methods: tuple[str, ...]
    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KillRow(Row):
    """Share of treated plants that die of one visit, as a prior. Trial, not crew.

    share: low, best, high (0…1); low and high are meant as 10 % and 90 % of the belief. spread: how those two ends
    were come by ("published", "binomial", "guess", "ours"). outcome: only `mortality` and `no_resprout` are kill in the
    strict sense. species empty: holds for the growth form. herbicide without ingredients: any labelled one. n: plants
    of the treatment, None where it is not told. windows: days of treatment, empty: not told. strength_pct: product in
    the mix [% v/v]. growing_season: the one after treatment in which it was looked at; months: after treatment.
    regrowth: sprayed on what grew again after cutting.
    """

    key: str
    species: str
    growth_form: str
    method: str
    herbicide: bool
    ingredients: tuple[str, ...]
    carrier: str
    share: Span
    outcome: str
    spread: str
    n: int | None
    months: Span | None
    windows: tuple[Window, ...]
    strength_pct: float | None
    growing_season: int | None
    regrowth: bool
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LabourRow(Row):
    """Minutes on one stem (or plant) of a size by a method: a guess until there are own times."""

    method: str
    diameter_cm: Span
    minutes: Span
    words: str
