"""From a species file to a Species."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rootcollar.kernel.sources import Mark
from rootcollar.reference.plants import (
    EfficacyRow,
    FailRow,
    General,
    Hazard,
    JudgeRow,
    LookAlike,
    MethodRow,
    Species,
    StatusRow,
    SymptomRow,
    TimingRow,
)
from rootcollar.reference.spans import Window
from rootcollar.reference.table import Table

__all__ = ["read_general", "read_species"]


def read_species(key: str, table: Table) -> Species:
    """Return the species told by the table. Raises ValueError on any key, word or source that is not known."""
    species = Species(
        key=key,
        scientific_name=table.text("scientific_name"),
        common_name=table.text("common_name"),
        synonyms=table.texts("synonyms"),
        other_names=table.texts("other_names"),
        name_note=table.text("name_note", ""),
        family=table.text("family"),
        growth_form=table.word("growth_form", "growth_form"),
        plants_symbol=table.cited("plants_symbol", str),
        itis_tsn=table.maybe_cited("itis_tsn", int),
        leaf=table.cited("leaf", str),
        stem=table.cited("stem", str),
        resprouts_from_stump=table.cited("resprouts_from_stump", bool),
        root_suckers=table.maybe_cited("root_suckers", bool),
        sucker_distance_m=table.maybe_cited("sucker_distance_m", float),
        dispersal=table.cited("dispersal", tuple),
        near_water=table.maybe_cited("near_water", bool),
        native_range=table.maybe_cited("native_range", tuple),
        seed_bank_years=table.figures("seed_bank_years"),
        first_fruit_years=table.figures("first_fruit_years"),
        seeds_per_year=table.figures("seeds_per_year"),
        dispersal_distance_m=table.figures("dispersal_distance_m"),
        followup_years=table.figures("followup_years"),
        look_alikes=tuple(_look_alike(row) for row in table.children("look_alikes")),
        hazards=tuple(_hazard(row) for row in table.children("hazards")),
        status=tuple(
            StatusRow(where=row.text("where"), listing=row.text("listing"), **_seen(row))
            for row in table.children("status")
        ),
        symptoms=tuple(_symptom(row) for row in table.children("symptoms")),
        methods=tuple(_method(row) for row in table.children("methods")),
        fails=tuple(_fail(row) for row in table.children("fails")),
        efficacy=tuple(_efficacy(row) for row in table.children("efficacy")),
    )
    table.close()
    _check_words(species, table)
    return species


def read_general(table: Table) -> General:
    """Return the rows that hold for all species."""
    general = General(
        symptoms=tuple(_symptom(row) for row in table.children("symptoms")),
        judge_kill=tuple(
            JudgeRow(
                applies_to=row.text("applies_to"),
                min_months=row.number("min_months"),
                note=row.text("note"),
                **_seen(row),
            )
            for row in table.children("judge_kill")
        ),
        timing=tuple(
            TimingRow(method=row.word("method", "method"), note=row.text("note"), **_seen(row))
            for row in table.children("timing")
        ),
    )
    table.close()
    return general


def _seen(row: Table) -> Mapping[str, Any]:
    return {"source": row.source(), "mark": row.mark()}


def _check_words(species: Species, table: Table) -> None:
    told = {"leaf_habit": (species.leaf.value,), "stem_form": (species.stem.value,), "agent": species.dispersal.value}
    for kind, words in told.items():
        for word in words:
            if word not in table.book.vocab[kind]:
                raise table.fault(kind, f"{word!r} is not a known {kind}")


def _windows(row: Table) -> tuple[Window, ...]:
    return tuple(window.window() for window in row.children("windows"))


def _look_alike(row: Table) -> LookAlike:
    seen = _seen(row)
    return LookAlike(
        name=row.text("name"),
        scientific_name=row.text("scientific_name"),
        tell=row.text("tell"),
        tell_mark=row.mark("tell_mark", default=Mark(seen["mark"])),
        shows=tuple(window.window() for window in row.children("shows")),
        shows_mark=row.mark("shows_mark", default=Mark.OURS),
        **seen,
    )


def _hazard(row: Table) -> Hazard:
    return Hazard(kind=row.word("kind", "hazard"), detail=row.text("detail"), **_seen(row))


def _symptom(row: Table) -> SymptomRow:
    return SymptomRow(
        method=row.word("method", "method"),
        ingredients=row.words("ingredients", "ingredient"),
        days=row.maybe_span("days"),
        note=row.text("note", ""),
        **_seen(row),
    )


def _method(row: Table) -> MethodRow:
    return MethodRow(
        method=row.word("method", "method"),
        ingredients=row.words("ingredients", "ingredient"),
        formulations=row.words("formulations", "formulation"),
        strength=row.maybe_span("strength"),
        strength_unit=row.word("strength_unit", "strength_unit", ""),
        carrier=row.word("carrier", "carrier", ""),
        windows=_windows(row),
        region=row.word("region", "region", ""),
        applies_to=row.text("applies_to", ""),
        diameter_cm=row.maybe_span("diameter_cm"),
        height_m=row.maybe_span("height_m"),
        detail=row.text("detail", ""),
        **_seen(row),
    )


def _fail(row: Table) -> FailRow:
    return FailRow(
        method=row.word("method", "method"),
        effect=row.word("effect", "fail_effect"),
        why=row.text("why"),
        ingredients=row.words("ingredients", "ingredient"),
        windows=_windows(row),
        **_seen(row),
    )


def _efficacy(row: Table) -> EfficacyRow:
    value = row.number("value")
    if not 0 <= value <= 1:
        raise row.fault("value", f"wanted a share from 0 to 1, found {value}")
    return EfficacyRow(
        method=row.word("method", "method"),
        outcome=row.word("outcome", "outcome"),
        value=value,
        ingredients=row.words("ingredients", "ingredient"),
        strength=row.maybe_number("strength"),
        strength_unit=row.word("strength_unit", "strength_unit", ""),
        carrier=row.word("carrier", "carrier", ""),
        months=row.maybe_span("months"),
        n=row.maybe_count("n"),
        sites=row.maybe_count("sites"),
        applies_to=row.text("applies_to", ""),
        note=row.text("note", ""),
        **_seen(row),
    )
