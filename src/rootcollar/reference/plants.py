"""What the sources say of one plant, row by row."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference.spans import Figure, Row, Span, Window

__all__ = [
    "EfficacyRow",
    "FailRow",
    "General",
    "Hazard",
    "JudgeRow",
    "LookAlike",
    "MethodRow",
    "Species",
    "StatusRow",
    "SymptomRow",
    "TimingRow",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAlike(Row):
    """A plant to be kept that is taken for this one; `tell_mark` where the telling sign was seen otherwise.

    shows: when in the year the telling sign can be seen, with its own mark; empty: not known.
    """

    name: str
    scientific_name: str
    tell: str
    tell_mark: Mark
    shows: tuple[Window, ...] = ()
    shows_mark: Mark = Mark.OURS


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazard(Row):
    """What in this plant can hurt a worker."""

    kind: str
    detail: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StatusRow(Row):
    """A legal listing, where and as what."""

    where: str
    listing: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SymptomRow(Row):
    """When a treatment begins to show, in days after it."""

    method: str
    ingredients: tuple[str, ...]
    days: Span | None
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodRow(Row):
    """A way to treat this species that a source gives.

    Several ingredients mean: any one of them, unless detail says together. The formulation is mostly our reading of
    the ingredient a source names: treat it as memory even in a read row. applies_to: sizes in the source's words;
    diameter_cm and height_m the same as numbers where the words name one, the cautious one of two.
    """

    method: str
    ingredients: tuple[str, ...]
    formulations: tuple[str, ...]
    strength: Span | None
    strength_unit: str
    carrier: str
    windows: tuple[Window, ...]
    region: str
    applies_to: str
    diameter_cm: Span | None
    height_m: Span | None
    detail: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FailRow(Row):
    """A way that a source says fails or makes matters worse here."""

    method: str
    effect: str
    why: str
    ingredients: tuple[str, ...]
    windows: tuple[Window, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class EfficacyRow(Row):
    """A measured result on this species. value: share 0…1 of the named outcome."""

    method: str
    outcome: str
    value: float
    ingredients: tuple[str, ...]
    strength: float | None
    strength_unit: str
    carrier: str
    months: Span | None
    n: int | None
    sites: int | None
    applies_to: str
    note: str


@dataclass(frozen=True, slots=True)
class Species:
    """One plant and everything the sources say of it. A field that is None or empty is unknown.

    The figures in years, seeds and metres are spans, or words where a source gave no number. native_range: states in
    which the plant is at home; None for one at home in none of them, or of which it is not known.
    """

    key: str
    scientific_name: str
    common_name: str
    synonyms: tuple[str, ...]
    other_names: tuple[str, ...]
    name_note: str
    family: str
    growth_form: str
    plants_symbol: Cited[str]
    itis_tsn: Cited[int] | None
    leaf: Cited[str]
    stem: Cited[str]
    resprouts_from_stump: Cited[bool]
    root_suckers: Cited[bool] | None
    sucker_distance_m: Cited[float] | None
    dispersal: Cited[tuple[str, ...]]
    near_water: Cited[bool] | None
    native_range: Cited[tuple[str, ...]] | None
    seed_bank_years: tuple[Figure, ...]
    first_fruit_years: tuple[Figure, ...]
    seeds_per_year: tuple[Figure, ...]
    dispersal_distance_m: tuple[Figure, ...]
    followup_years: tuple[Figure, ...]
    look_alikes: tuple[LookAlike, ...]
    hazards: tuple[Hazard, ...]
    status: tuple[StatusRow, ...]
    symptoms: tuple[SymptomRow, ...]
    methods: tuple[MethodRow, ...]
    fails: tuple[FailRow, ...]
    efficacy: tuple[EfficacyRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgeRow(Row):
    """How long to wait before a kill may be judged."""

    applies_to: str
    min_months: float
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TimingRow(Row):
    """A season or weather rule that holds for a method on any species."""

    method: str
    note: str


@dataclass(frozen=True, slots=True)
class General:
    """What holds for all species."""

    symptoms: tuple[SymptomRow, ...]
    judge_kill: tuple[JudgeRow, ...]
    timing: tuple[TimingRow, ...]
