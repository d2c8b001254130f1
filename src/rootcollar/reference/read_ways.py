"""From method, coverage, practice, kill and labour tables to their dataclasses."""

from __future__ import annotations

from rootcollar.reference.spans import Span
from rootcollar.reference.table import Table
from rootcollar.reference.ways import Coverage, KillRow, LabourRow, MethodFacts, NamedFigure, Practice, TrialRow

__all__ = ["read_coverage", "read_kill", "read_labour", "read_method", "read_named", "read_practice"]


def read_method(key: str, table: Table) -> MethodFacts:
    """Return the way of working told by the table. Raises ValueError on any key, word or source not known."""
    if key not in table.book.vocab["method"]:
        raise table.fault(key, "is not a known method")
    facts = MethodFacts(
        key=key,
        title=table.text("title"),
        words=table.text("words"),
        uses_herbicide=table.take("uses_herbicide", bool),
        beyond_size=table.text("beyond_size", ""),
        figures=tuple(read_named(row, "figure") for row in table.children("figures")),
        trials=tuple(_trial(row) for row in table.children("trials")),
    )
    table.close()
    return facts


def read_named(row: Table, kind: str = "") -> NamedFigure:
    """Return a figure with its name; where a kind of vocabulary is given the name must be one of its words."""
    return NamedFigure(
        name=row.word("name", kind) if kind else row.text("name"),
        ingredients=row.words("ingredients", "ingredient"),
        species=row.texts("species"),
        carrier=row.word("carrier", "carrier", ""),
        figure=row.here(),
    )


def _trial(row: Table) -> TrialRow:
    return TrialRow(
        species=row.text("species"),
        treatment=row.text("treatment"),
        when=row.text("when", ""),
        result=row.text("result"),
        counted=row.text("counted", ""),
        ingredients=row.words("ingredients", "ingredient"),
        source=row.source(),
        mark=row.mark(),
    )


def read_coverage(row: Table) -> Coverage:
    """Return a coverage, bound to its carrier, strength range and nozzle."""
    return Coverage(
        key=row.text("key"),
        words=row.text("words"),
        methods=row.words("methods", "method"),
        carrier=row.word("carrier", "carrier"),
        strength_pct=row.span("strength_pct"),
        nozzle=row.text("nozzle"),
        ml_per_cm2=row.cited("ml_per_cm2", Span),
    )


def read_practice(row: Table) -> Practice:
    """Return a habit of the trade."""
    return Practice(
        key=row.text("key"),
        words=row.text("words"),
        methods=row.words("methods", "method"),
        figures=row.figures("figures"),
        source=row.source(),
        mark=row.mark(),
    )


def read_kill(row: Table) -> KillRow:
    """Return a prior of kill per visit; its three figures must be shares."""
    share = row.span("share")
    if share.low is None or share.high is None or share.best is None or share.low < 0 or share.high > 1:
        raise row.fault("share", "wanted low, best and high from 0 to 1")
    return KillRow(
        key=row.text("key"),
        species=row.word("species", "species", ""),
        growth_form=row.word("growth_form", "growth_form"),
        method=row.word("method", "method"),
        herbicide=row.take("herbicide", bool),
        ingredients=row.words("ingredients", "ingredient"),
        carrier=row.word("carrier", "carrier", ""),
        share=share,
        outcome=row.word("outcome", "outcome"),
        spread=row.word("spread", "spread"),
        n=row.maybe_count("n"),
        months=row.maybe_span("months"),
        windows=tuple(window.window() for window in row.children("windows")),
        strength_pct=row.maybe_number("strength_pct"),
        growing_season=row.maybe_count("growing_season"),
        regrowth=row.take("regrowth", bool, False),
        note=row.text("note", ""),
        source=row.source(),
        mark=row.mark(),
    )


def read_labour(row: Table) -> LabourRow:
    """Return minutes on one stem of a size."""
    return LabourRow(
        method=row.word("method", "method"),
        diameter_cm=row.span("diameter_cm"),
        minutes=row.span("minutes"),
        words=row.text("words"),
        source=row.source(),
        mark=row.mark(),
    )
