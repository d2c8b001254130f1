"""A packet as its page shows it: what stands in the way first, then the sheets one by one, and the files to print."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from difflib import get_close_matches
from urllib.parse import urlencode

from rootcollar.choose import Choice, Prescription, Setting, on_day
from rootcollar.jobs.plan import Prepared, prepare, prescribed, setting_of
from rootcollar.kernel.days import read_date
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.verdict import Level, worst_first
from rootcollar.paper import PAPERS, render_packet, render_picture
from rootcollar.reference import find_tongue
from rootcollar.web.desk import Open, of_the_last_few
from rootcollar.web.views.packet import Drawn, bars_of, day_page
from rootcollar.work import text
from rootcollar.work.packet import Packet, Page, Part, Said, Tag
from rootcollar.work.struck import struck_lines
from rootcollar.work.unit_page import said as printed

__all__ = [
    "ALL",
    "FIRST_TONGUE",
    "PAPER_WORDS",
    "Barrier",
    "PacketView",
    "UnitStep",
    "Wanted",
    "first_with_work",
    "packet_view",
    "pdf_of",
    "picture_of",
    "wanted_of",
]

ALL = "all"  # as an address says that it wants the packet of every unit
FIRST_TONGUE = "en"  # of the packet itself; a day sheet in it is printed anyway
PAPER_WORDS = (("us-letter", "US letter"), ("a4", "A4"))
_PICTURE = {"us-letter": (935, 1210), "a4": (909, 1286)}  # dots, as `render_picture` makes them: its place is kept free
_NOT_A_NAME = re.compile(r"[^a-z0-9]+")
_HELD = {Level.STOP.word: "Strikes out", Level.ASK.word: "Holds"}


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a packet is asked for. units: keys, none for all; languages: codes of further ones; paper: of `PAPERS`."""

    units: tuple[str, ...] = ()
    day: date | None = None
    languages: tuple[str, ...] = ()
    paper: str = PAPERS[0]

    @property
    def query(self) -> str:
        """The choice as an address holds it, with its question mark."""
        said = [("unit", key) for key in self.units] or [("units", ALL)]
        said += [("day", self.day.isoformat())] if self.day else []
        said += [("language", code) for code in self.languages]
        said += [("paper", self.paper)] if self.paper != PAPERS[0] else []
        return f"?{urlencode(said)}"

    def on(self, *units: str) -> str:
        """Return the address of the same for other units, none for all."""
        return replace(self, units=units).query


@dataclass(frozen=True, slots=True)
class Barrier:
    """What keeps lines from being work, and which: (unit, its name, its lines in words). does: strikes out, holds."""

    said: Said
    does: str
    lines: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class UnitStep:
    """A unit to step to. query: of its packet; level: the worst that keeps a line of it; lines: how many are work."""

    key: str
    name: str
    query: str
    level: str
    lines: str
    here: bool


@dataclass(frozen=True, slots=True)
class PacketView:
    """A packet on a page. asked: whether an answer would clear a line; contents: (anchor, title) of its sections.
    steps: every unit of the plan, and whether it alone is looked at; whole: the query of all of them together.

    units: (key, name); picture: width and height of page one; tags: each with its tape drawn; strip: the banner that is
    printed on every page, where the head of this page does not say it already.
    """

    packet: Packet
    strip: str
    units: tuple[tuple[str, str], ...]
    barriers: tuple[Barrier, ...]
    cleared: bool
    asked: bool
    day: Page
    pages: tuple[tuple[str, Page], ...]
    tags: tuple[tuple[Tag, Drawn], ...]
    contents: tuple[tuple[str, str], ...]
    query: str
    steps: tuple[UnitStep, ...]
    whole: str
    picture: tuple[int, int]
    file: str


def wanted_of(here: Open, told: Mapping[str, Sequence[str]]) -> Wanted:
    """Return what was asked for. told: by field, the texts as typed. Raises BadInput with every fault at its field."""
    faults: list[Fault] = []
    known = [key for key, _ in here.plan.order] if here.plan else []
    units = [key for one in told.get("unit", ()) if (key := one.strip())]
    for key in units:
        if key not in known:
            near = get_close_matches(key, known) or known
            faults.append(Fault(f"unit {key!r}", f"a unit with stems, such as {', '.join(near)}", field="unit"))
    day = _day(_first(told, "day"), faults)
    code = _language(_first(told, "language"), here.setting, faults)
    paper = _first(told, "paper") or PAPERS[0]
    if paper not in PAPERS:
        faults.append(Fault(repr(paper), " or ".join(PAPERS), field="paper"))
    whole = _first(told, "units")
    if whole not in ("", ALL):
        faults.append(Fault(repr(whole), ALL, field="unit"))
    if faults:
        raise BadInput(*faults)
    if whole:
        return Wanted((), day, (code,) if code else (), paper)
    chosen = tuple(key for key in known if key in units)
    return Wanted(() if len(chosen) == len(known) else chosen, day, (code,) if code else (), paper)


def _first(told: Mapping[str, Sequence[str]], field: str) -> str:
    return next(iter(told.get(field, ())), "").strip()


def _day(typed: str, faults: list[Fault]) -> date | None:
    try:
        return read_date(typed) if typed else None
    except BadInput as wrong:
        faults += (replace(one, field="day") for one in wrong.faults)
        return None


def _language(typed: str, setting: Setting, faults: list[Fault]) -> str:
    """Return the code of a further language; nothing for the first one, which is printed anyway."""
    try:
        code = find_tongue(typed, setting.reference).code if typed else ""
    except BadInput as wrong:
        faults += (replace(one, field="language") for one in wrong.faults)
        return ""
    return "" if code == FIRST_TONGUE else code


@of_the_last_few
def _weighed(here: Open, day: date | None) -> Prescription:
    """Return the plan weighed for a day; today's lies open already."""
    if here.plan is not None and day in (None, here.on):
        return here.plan
    return prescribed(here.project, setting_of(here.project, day or here.on))


@of_the_last_few
def _prepared(here: Open, units: tuple[str, ...], day: date | None, languages: tuple[str, ...]) -> Prepared:
    return prepare(here.project, here.on, units, day, languages, _weighed(here, day)).value


def _made(here: Open, wanted: Wanted) -> Prepared:
    return _prepared(here, wanted.units, wanted.day, wanted.languages)


@of_the_last_few
def pdf_of(here: Open, wanted: Wanted) -> bytes:
    """Return the packet as a PDF."""
    return render_packet(_made(here, wanted).packet, made_on=here.on, paper=wanted.paper)


@of_the_last_few
def picture_of(here: Open, wanted: Wanted) -> bytes:
    """Return page one of the packet as a PNG."""
    return render_picture(_made(here, wanted).packet, made_on=here.on, paper=wanted.paper)


@of_the_last_few
def packet_view(here: Open, wanted: Wanted) -> PacketView:
    """Return the packet as its page shows it."""
    prepared = _made(here, wanted)
    packet = prepared.packet
    keys = [key for key, _ in prepared.prescription.order if not wanted.units or key in wanted.units]
    lines = [one for one in prepared.prescription.choices if one.stand.unit in keys]
    pages = tuple((_anchor(one.title), replace(one, parts=tuple(filter(_said, one.parts)))) for one in packet.pages)
    return PacketView(
        packet,
        "" if here.project.ground.demo else packet.banner,
        tuple((key, here.project.ground.units[key].name) for key in keys),
        _barriers(lines, here, wanted.day),
        any(_is_work(one, wanted.day, here.setting) for one in lines),
        any(one.level is Level.ASK for one in lines),
        day_page(packet.day),
        pages,
        tuple((one, bars_of(one.bars)) for one in packet.tags),
        tuple(_contents(packet, pages)),
        wanted.query,
        tuple(_steps(prepared.prescription, here, wanted)),
        wanted.on(),
        _PICTURE[wanted.paper],
        f"packet-{_anchor(packet.property_name)}-{(wanted.day or here.on).isoformat()}.pdf",
    )


def _said(part: Part) -> bool:
    return bool(part.rows)


def first_with_work(here: Open, day: date | None) -> str:
    """Return the key of the first unit in the plan's order with a line that is work on the day; else the first."""
    plan = _weighed(here, day)
    keys = [key for key, _ in plan.order]
    begun = {one.stand.unit for one in plan.choices if _is_work(one, day, here.setting)}
    return next((key for key in keys if key in begun), keys[0])


def _steps(plan: Prescription, here: Open, wanted: Wanted) -> Iterator[UnitStep]:
    """Yield every unit in the plan's order."""
    alone = wanted.units or tuple(key for key, _ in plan.order)
    for key, _ in plan.order:
        lines = [one for one in plan.choices if one.stand.unit == key]
        work = [one for one in lines if _is_work(one, wanted.day, here.setting)]
        kept = [one.level for one in lines if one not in work]
        level = "ok" if not kept else Level.ASK.word if all(one is Level.ASK for one in kept) else Level.STOP.word
        name, words = here.project.ground.units[key].name, f"{len(work)} of {len(lines)} lines are work"
        yield UnitStep(key, name, wanted.on(key), level, words, alone == (key,))


def _contents(packet: Packet, pages: Sequence[tuple[str, Page]]) -> Iterator[tuple[str, str]]:
    yield "day-sheet", "Day sheet"
    if packet.cards:
        yield "mix-cards", "Mix cards"
    yield from ((anchor, page.title) for anchor, page in pages)
    if packet.tags:
        yield "tags", "Tags"
    if packet.signs:
        yield "signs", "Signs"


def _anchor(words: str) -> str:
    """Return words as an address or a file is called."""
    return _NOT_A_NAME.sub("-", words.casefold()).strip("-")


def _is_work(line: Choice, day: date | None, setting: Setting) -> bool:
    return line.is_work and on_day(line, day, setting) is not None


def _barriers(lines: Sequence[Choice], here: Open, day: date | None) -> tuple[Barrier, ...]:
    """Return what stands in the way, worst first and then what holds most lines; alike ones once."""
    setting = here.setting if day is None else setting_of(here.project, day)
    found: dict[Said, list[Choice]] = {}
    for line in sorted(lines, key=lambda one: (one.stand.species, one.stand.band_cm)):
        for one in _against(line, setting, day):
            found.setdefault(one, []).append(line)
    worst = sorted(found, key=lambda one: (one.level != Level.STOP.word, -len(found[one])))
    return tuple(Barrier(one, _HELD[one.level], tuple(_by_unit(found[one], setting))) for one in worst)


def _by_unit(lines: Sequence[Choice], setting: Setting) -> Iterator[tuple[str, str, str]]:
    """Yield each unit with its lines in words, the sizes of a plant together."""
    for key in dict.fromkeys(one.stand.unit for one in lines):
        sizes: dict[str, list[str]] = {}
        for one in (one for one in lines if one.stand.unit == key):
            sizes.setdefault(one.stand.species, []).append(text.size(one.stand.band_cm))
        plants = setting.reference.species
        words = "; ".join(f"{plants[name].common_name} {', '.join(some)}" for name, some in sizes.items())
        yield key, setting.ground.units[key].name, words


def _against(line: Choice, setting: Setting, day: date | None) -> tuple[Said, ...]:
    """Return what keeps a line from being work on the day; nothing where it is work."""
    if _is_work(line, day, setting):
        return ()
    spoken = tuple(printed(one) for one in worst_first(line.verdicts) if one.level >= Level.ASK)
    if spoken:
        return spoken
    tongue = setting.reference.tongues[FIRST_TONGUE]
    return tuple(Said(one.level, one.because, one.clear) for one in struck_lines([line], setting, tongue, day))
