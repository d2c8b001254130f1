"""What the door hands out, described: every model and field tells what it is, in which unit.

The door is for the user's own phone and programs on this computer. It only tells; nothing can be changed through it.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field

__all__ = [
    "Answer", "BandOf", "Entry", "FactPages", "Faults", "LineOf", "MixOf", "Missing", "OpenQuestion", "OpenQuestions",
    "Plan", "Questions", "Said", "Stops", "UnitOf",
]  # fmt: skip

Word = Literal["ok", "warn", "ask", "stop"]
Mark = Literal["read", "practice", "reckoned", "ours", "memory"]


class _Told(BaseModel):
    """What all models have in common: made from our own values, and nothing unknown goes out."""

    model_config = ConfigDict(from_attributes=True, extra="forbid", use_attribute_docstrings=True)


class Fault(_Told):
    """One thing wrong: where it stands, what was found, what is allowed."""

    field: str
    """The field it is about; empty where it is about no one field."""
    found: str
    allowed: str
    file: str = ""
    """The file of the property it stands in; empty where it was sent."""
    row: str = ""


class Faults(_Told):
    """What was sent, or what the files of the property hold, cannot be used: every fault at once."""

    faults: list[Fault]


class Missing(_Told):
    """There is nothing of that name."""

    what: str
    """What was looked for."""
    near: list[str]
    """Names that look alike, or that there are."""


class Stops(_Told):
    """The label forbids it: no amount is given. What stands, each with its way out."""

    stops: list[str]


class Said(_Told):
    """What one rule says. An ask holds its line back; a stop strikes it. No word of it permits anything."""

    level: Word
    because: str
    clear: str
    """What would clear it; empty where nothing does."""
    rule: str
    """The number of the rule, to be looked up under facts; empty where it is a gate of plant or place."""
    page: str
    """The page of the label, where one was read."""


class BandOf(_Told):
    """An uncertain number: the best figure, and the band that holds the middle 80 % of the doubt."""

    best: float
    low: float
    high: float


class MixOf(_Told):
    """A finished mix, as lettered in the plan."""

    letter: str
    words: str
    product: str | None
    """The key of the label sheet; none while the formulation has no label on the shelf."""
    formulation: str
    carrier: Literal["water", "oil", "none"]
    strength_pct: float
    """Volume of product in 100 volumes of finished mix [%]."""
    partner: str | None = None
    """The key of a second product in the mix; none where there is none."""
    partner_pct: float | None = None
    """Volume of the second product in 100 volumes of finished mix [%]."""


class LineOf(_Told):
    """A line of the plan: one species in one size on one unit.

    Only a line in state `work` has amounts; a held or struck line is no work, and what it would take is not told.
    """

    key: str
    species: str
    """The key of the plant, to be looked up under facts."""
    name: str
    """The common name of the plant."""
    diameter_cm: tuple[float, float]
    """Ends of the diameter class [cm]."""
    state: Literal["work", "held", "struck", "left"]
    """work: no known rule stops or asks. held: a question is open. struck: a rule stops it. left: no way is open."""
    method: str
    """The key of the way of working; empty for a line that is left."""
    instruction: str
    because: str
    fallback: str
    """When to turn to the second way, and which it is; empty where there is none."""
    months: list[int]
    """Months in which the way may be done, 1 to 12."""
    mix: str
    """The letter of the mix; empty where nothing is poured."""
    stems: BandOf
    """Stems counted."""
    mix_ml: BandOf | None
    """Finished mix for the line [mL]; none where nothing is poured or the line is not work."""
    minutes: BandOf | None
    """Working time of one person [min], a guess until own times; none where the line is not work."""
    verdicts: list[Said]
    """What the rules say of the line, worst first; those that did not object are left out."""


class UnitOf(_Told):
    """A unit of ground with its lines. because: why it stands at its place in the order."""

    key: str
    name: str
    area_m2: float | None
    """Area [m2]; none where nobody has measured it."""
    because: str
    lines: list[LineOf]


class Plan(_Told):
    """The plan as the files of the property stand now: units in the order to work them. A plan, no permission."""

    name: str
    on: Annotated[str, Field(pattern=r"^\d{4}-\d{2}-\d{2}$")]
    """The day it was weighed for."""
    demo: bool
    """Whether place and labels are invented: then it is for looking around, not for work."""
    units: list[UnitOf]
    mixes: list[MixOf]
    note: str


class About(_Told):
    """A unit that is asked about; or, for a question about a label, its sheet."""

    key: str
    name: str


class OpenQuestion(_Told):
    """A question that holds lines back. One that is answerable is settled by a yes or no; others by reading a label."""

    rule: str
    said: list[Said]
    lines: int
    """How many lines it holds back."""
    abouts: list[About]
    answerable: bool


class OpenQuestions(_Told):
    """Every open question once, the one that holds most lines first. They are answered in the app, not here."""

    questions: list[OpenQuestion]


class Source(_Told):
    """Where a figure comes from."""

    key: str
    cite: str
    url: str
    kind: str = ""
    year: int | None = None


class SpanOf(_Told):
    """A span with an end or both, and a best figure where the source gives one."""

    low: float | None
    high: float | None
    best: float | None


class FigureOf(_Told):
    """A figure as its source gives it."""

    value: bool | int | float | str | list[str] | SpanOf
    unit: str
    source: str
    mark: Mark
    """read: seen in the source. practice: of the trade. reckoned, ours. memory: recalled, to be confirmed."""
    holds_for: str
    locator: str


class FactRow(_Told):
    """One figure: what it is of, in words, and as it stands."""

    group: str
    name: str
    words: str
    figure: FigureOf


class SeenOf(_Told):
    """Who says so, how it was seen, and where it stands in the source."""

    source: str
    mark: Mark
    locator: str


class FactLine(_Told):
    """A line to read: a name, a figure, words, who says so. A line of a name only heads those beneath it."""

    name: str
    amount: str
    words: str
    seen: list[SeenOf]
    months: list[Literal["named", "remembered", "shut", "shut by memory", ""]]
    """Of a season, a state for each month of the year; shut: a month to keep out of. Empty otherwise."""


class FactSection(_Told):
    """Lines under one title."""

    title: str
    note: str
    lines: list[FactLine]


class FactPage(_Told):
    """All that is told of one thing: in sections to read, and every figure flat."""

    kind: str
    key: str
    title: str
    opening: str
    sections: list[FactSection]
    facts: list[FactRow]
    sources: list[Source]


class FactPages(_Told):
    """A page for everything of that name. No fact permits anything: the label in hand is the law."""

    pages: list[FactPage]
    note: str


class Entry(_Told):
    """A field of a quick question, filled in as one would write it on a bucket: `2.5 gal`, `20%`."""

    name: str
    words: str
    hint: str
    kind: Literal["text", "choice", "several", "sheet"]
    choices: list[str]
    needed: bool


class QuestionOf(_Told):
    """A quick question and its fields."""

    name: str
    words: str
    entries: list[Entry]


class Questions(_Told):
    """Every quick question there is."""

    questions: list[QuestionOf]


class StepSource(_Told):
    """The source of a step. mark: how a figure was come by; empty where the step is a formula."""

    key: str
    cite: str
    url: str
    mark: str


class Step(_Told):
    """A step of the working: a formula with its inputs and result, and the steps that its inputs came from."""

    formula: str
    says: str
    inputs: dict[str, Any]
    result: Any
    unit: str
    source: StepSource
    steps: list[Step]


class Answer(_Told):
    """What was asked and what came out, with its working and its sources."""

    question: str
    given: dict[str, str]
    says: str
    value: float
    unit: str
    low: float | None
    high: float | None
    figures: dict[str, float | list[float]]
    """Other numbers; each name ends in its unit."""
    details: list[str]
    assumed: list[str]
    """What the answer rests on that was not said."""
    cautions: list[str]
    note: str
    """Whether and against which label it was checked."""
    verdicts: list[Said]
    working: Step
    sources: list[Source]
