"""What stands on the paper of a packet: text and numbers, already in the reader's units; no layout.

Page one is the day sheet; a page a unit follows, then mix cards, a record sheet and the rules.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = [
    "Card",
    "DaySheet",
    "LoadRow",
    "MixLine",
    "Packet",
    "Page",
    "Part",
    "Reason",
    "RulesPage",
    "Said",
    "SizeRow",
    "Sign",
    "Sketch",
    "Struck",
    "Tag",
    "Target",
    "UnitLine",
    "UnitPage",
]

Point = tuple[float, float]  # metres east and north of the sketch's own corner


@dataclass(frozen=True, slots=True)
class Said:
    """A verdict as printed: level word (stop, ask, warn, ok), why, what clears it, rule, label page."""

    level: str
    because: str
    clear: str = ""
    rule: str = ""
    page: str = ""


@dataclass(frozen=True, slots=True)
class Sketch:
    """The unit drawn in plain shapes [m]; empty outline: no map was given, leave room to draw one.

    lines: (kind, name, points) of waters, trails, wells, keep trees, the gate. keep_out: (words, points) of lines
    that the work must not pass.
    """

    width_m: float
    height_m: float
    outline: tuple[Point, ...] = ()
    lines: tuple[tuple[str, str, tuple[Point, ...]], ...] = ()
    keep_out: tuple[tuple[str, tuple[Point, ...]], ...] = ()
    measure: str = "ft"  # unit of the scale bar: ft | m


@dataclass(frozen=True, slots=True)
class Target:
    """A plant to treat: its tells, and the look-alikes with a box to tick each."""

    name: str
    tells: str
    not_these: tuple[tuple[str, str], ...] = ()  # (name, tell)


@dataclass(frozen=True, slots=True)
class SizeRow:
    """One line of work: size words ("1-2 in"), plant, verb in bold, rest of the sentence, mix letter, fallback."""

    size: str
    plant: str
    verb: str
    rest: str
    mix: str
    stems: str
    fallback: str


@dataclass(frozen=True, slots=True)
class Struck:
    """A line that must not be done, or is held until a question is answered, and why."""

    level: str  # stop | ask
    what: str
    because: str
    clear: str


@dataclass(frozen=True, slots=True)
class MixLine:
    """One mix on the day sheet: letter, what is in it, the steps in jug measures, the total needed and its band."""

    letter: str
    what: str
    steps: str
    total: str
    band: str = ""


@dataclass(frozen=True, slots=True)
class LoadRow:
    """One row of the load table, to be written in by hand: number and mix letter."""

    number: int
    mix: str


@dataclass(frozen=True, slots=True)
class DaySheet:
    """Page one: all a crew lead needs from one sheet of paper."""

    title: str
    when: str
    season: str
    sketch: Sketch
    roles: tuple[tuple[str, str], ...]
    targets: tuple[Target, ...]
    sizes: tuple[SizeRow, ...]
    struck: tuple[Struck, ...]
    mixes: tuple[MixLine, ...]
    proving: str
    weather: tuple[tuple[str, str], ...]  # (mix letters, the label's words)
    boxes: tuple[str, ...]  # to tick before starting
    wear: tuple[tuple[str, str], ...]  # (task, items)
    wear_note: str
    entry: str
    emergency: tuple[tuple[str, str], ...]  # (what, text or "" for a line to write on)
    first_aid: tuple[str, ...]
    loads: tuple[LoadRow, ...]
    leftovers: str
    load_heads: tuple[str, ...]  # columns to write in
    words: tuple[tuple[str, str], ...]  # (name, text) of what the layout prints itself: paper.day_words names them
    note: str = ""  # what the reader must know of a translation
    standing: str = ""  # trees killed on their feet by earlier work and not down yet; nothing where there are none


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a way was set aside, and what would make it win."""

    option: str
    because: str
    would_win_if: str


@dataclass(frozen=True, slots=True)
class UnitLine:
    """One stand on a unit's page: what, how, how much, hours, why so, what was set aside, what the rules say."""

    plant: str
    size: str
    stems: str
    instruction: str
    mix: str
    amount: str
    time: str
    cost: str
    because: str
    set_aside: tuple[Reason, ...]
    said: tuple[Said, ...]
    struck: str = ""  # "", "stop" or "ask": a struck line is never printed as work
    months: tuple[
        str, ...
    ] = ()  # of a line of work: when it is best, then months open, open on some days, shut, and why
    steps: tuple[
        str, ...
    ] = ()  # of a way of two visits: both with their days; and how long what is treated stays uncut
    side: str = ""  # ground beside the stems on which other plants are hit; nothing for a line without mix
    to_share: str = ""  # visits, hours and money until enough stems are dead; nothing for a line that is not work
    after: tuple[str, ...] = ()  # what to do with what is cut; nothing where nothing is
    most: str = ""  # stems and mix on an acre at which the label's rates are reached; nothing for a line not work


@dataclass(frozen=True, slots=True)
class UnitPage:
    """One unit: facts of the ground as (label, text), its lines, and the ways set aside on it, alike ones together."""

    name: str
    first_because: str
    facts: tuple[tuple[str, str], ...]
    lines: tuple[UnitLine, ...]
    set_aside: tuple[Reason, ...] = ()
    dangers: tuple[str, ...] = ()  # of the plants worked
    thickets: tuple[tuple[str, str, tuple[str, ...]], ...] = ()  # mixed ones: title, "" or stop or ask, sentences
    standing: str = ""  # as on the day sheet
    leaves: str = ""  # what the work will leave dead on its feet, for next year's crew
    look_alikes: tuple[str, ...] = ()  # of a day: which plants cannot be told from which on it, and what then


@dataclass(frozen=True, slots=True)
class Card:
    """One mix card: steps in jug measures for a full load and the last one, order, gap, what to buy, limits."""

    letter: str
    title: str
    asked: str
    batches: tuple[tuple[str, tuple[str, ...], str], ...]  # (load words, steps, true percent)
    order: tuple[str, ...]
    cautions: tuple[str, ...]
    buy: tuple[tuple[str, str], ...]
    working: tuple[tuple[str, str], ...]  # (what, formula with numbers and source)


@dataclass(frozen=True, slots=True)
class RulesPage:
    """Which rules were weighed, with their worst word; which wait for hour or record; which were not checked."""

    weighed: tuple[tuple[str, str, str], ...]  # (number, sentence, level word)
    not_checked: tuple[tuple[str, str], ...]
    questions: tuple[Said, ...]
    must_read: tuple[str, ...]
    waits: tuple[tuple[str, str, str], ...] = ()  # (number, sentence, what it waits for: the hour, the record)
    readers: tuple[tuple[str, str], ...] = ()  # (product, who has read its label, and whether two agree)


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a page, under its own heading. rows: of one text each, but for pairs (label, text) and tables.

    kind: text, ticks (a box before each), steps (numbered), pairs, or table with heads. note: whose word it is, where
    one holds for the whole part ("advice, not the label"). A text with ___ in it has a line to write on there.
    """

    title: str
    kind: Literal["text", "ticks", "steps", "pairs", "table"]
    rows: tuple[tuple[str, ...], ...]
    heads: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Page:
    """A page of plain parts: shopping, gear, spill and first aid, top-up, leftovers. below: a line under the title."""

    title: str
    below: str
    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Tag:
    """What is tied to a sprayer or bottle. tape: the mix letter as a pattern of tape, in words, for cold wet hands.

    lines: (what, text or "" to write on): product, registration number, strength, signal word, mixed when, by whom.
    """

    letter: str
    title: str
    tape: str
    bars: tuple[int, ...]  # the same pattern to draw: widths of tape bars, 1 narrow, 2 wide
    lines: tuple[tuple[str, str], ...]
    foot: str = ""


@dataclass(frozen=True, slots=True)
class Sign:
    """What is posted where people come in. lines: (what, text or "" to write on). keep_out: the sentence in large.

    keep_out_in: (language, the same sentence in it).
    """

    title: str
    keep_out: str
    lines: tuple[tuple[str, str], ...]
    foot: str
    keep_out_in: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Packet:
    """A whole packet. banner: printed on every page when the plan was not weighed against a real label."""

    property_name: str
    made_on: str
    banner: str
    day: DaySheet
    units: tuple[UnitPage, ...]
    cards: tuple[Card, ...]
    record_fields: tuple[tuple[str, str], ...]  # (what, value or "" for a line to write on)
    rules: RulesPage
    sources: tuple[tuple[str, str], ...]  # (key, citation) of every figure used
    foot: str
    pages: tuple[Page, ...] = ()
    tags: tuple[Tag, ...] = ()
    signs: tuple[Sign, ...] = ()
    days: tuple[tuple[str, DaySheet], ...] = ()  # (language, day sheet) in further languages
