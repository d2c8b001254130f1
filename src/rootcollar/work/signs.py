"""Signs for where people come in, and what is known of who wants them where."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.choose import Choice
from rootcollar.shelf import FIELDS, Sheet
from rootcollar.site import Unit
from rootcollar.work.asked import PacketAsked
from rootcollar.work.mixes import Product, day_mixes, day_products, recipes_of, work_lines
from rootcollar.work.packet import Page, Part, Sign
from rootcollar.work.printed import NO_SHEET, active_words, closed_for, quoted, registration
from rootcollar.work.worked import Worked

__all__ = ["signs", "signs_page"]

_TITLE = "Herbicide work on plants here"
_FIRST = "en"  # the language of the rest of a sign
_PURPOSE = "removal of invasive shrubs, trees and vines, stem by stem"
_FOOT = "Do not touch treated or dyed stems. Keep children away and dogs on the lead. Questions: call the number above."
_NOT_ALL = (
    "not a list of all states, and rules change. Where the worker protection standard holds, its own sign hangs too: "
    "this packet does not print that one."
)
_WHERE = (
    "at every way in: gate, trail, path, parking place",
    "where a trail crosses the unit",
    "at chest height, in a plastic sleeve, so that rain does not wash the writing off",
    "times written in before anybody leaves the sign",
    "down, or covered, when the time has passed; written into the record",
)


def signs(asked: PacketAsked) -> tuple[Sign, ...]:
    """Return a sign for each unit on which a mix is poured, with all that may be poured there."""
    mixes = {one.recipe: one for one in day_mixes(asked)}
    made = []
    for key in asked.units:
        lines = [one for one in work_lines(asked) if one.stand.unit == key]
        used = [mixes[recipe] for recipe in recipes_of(lines)]
        if used:
            made.append(_sign(asked.setting.ground.units[key], lines, day_products(used), asked))
    return tuple(made)


def _sign(unit: Unit, lines: Sequence[Choice], products: Sequence[Product], asked: PacketAsked) -> Sign:
    species = asked.setting.reference.species
    plants = ", ".join(dict.fromkeys(species[one.stand.species].common_name for one in lines))
    day = f"{asked.day.isoformat()}, " if asked.day else "day ________ "
    tongues = asked.setting.reference.tongues
    keep_out = {code: one.say("sign.keep_out") for code, one in tongues.items()}
    return Sign(
        _TITLE,
        keep_out.pop(_FIRST),
        (
            ("Place", f"{unit.name}, {asked.setting.ground.name}"),
            *((what, words) for one in products for what, words in _product_lines(one)),
            ("Why", f"{_PURPOSE}: {plants}"),
            ("Work", f"{day}began ______ ended ______"),
            ("No entry for", _hours([one.sheet for one in products])),
            (" / ".join(one.say("sign.entry_from") for one in tongues.values()), "day ________ time ______"),
            ("Who applied", ""),
            ("Telephone", ""),
            ("Take down after", ""),
        ),
        _FOOT,
        tuple(keep_out.items()),
    )


def _product_lines(one: Product) -> tuple[tuple[str, str], ...]:
    number = registration(one.sheet)
    return (
        ("Product", one.name),
        ("EPA Reg. No.", number or "____________"),
        ("Active", active_words(one.sheet, one.ingredient)),
    )


def _hours(sheets: Sequence[Sheet | None]) -> str:
    """The longest of the labels; where one is not known, until somebody has read it."""
    known = [one for one in sheets if one is not None]
    hours = closed_for(known) if len(known) == len(sheets) else None
    if hours is None:
        return "______ hours (not read on every label: read it first, keep out until then)"
    return Worked(hours, " after the last load, the longest of the labels")


def signs_page(asked: PacketAsked) -> Page | None:
    """Return the page on signs and notice, or None on a day without mix."""
    mixes = day_mixes(asked)
    if not mixes:
        return None
    rows = asked.setting.reference.posting
    seen = max(row.seen_on for row in rows).isoformat()
    return Page(
        "Signs and notice",
        "Who must be told, and where a sign must hang, is for the label, the state and the land manager to say.",
        (
            Part("What the labels say", "pairs", tuple(_labels(day_products(mixes)))),
            Part("Hang a sign", "ticks", tuple((one,) for one in _WHERE), note="Advice (ours). One for each way in."),
            Part("Told, or asked to be told", "text", (("Who ___________ when _____",),) * 3),
            Part(
                "Ask your state: examples seen",
                "table",
                tuple((one.place, one.who, one.sign, one.when, f"{one.source}, {one.mark}") for one in rows),
                ("Place", "Whom it binds", "Sign", "How long", "Source"),
                f"Looked at by {seen}; {_NOT_ALL}",
            ),
        ),
    )


def _labels(products: Sequence[Product]) -> Iterator[tuple[str, str]]:
    for one in products:
        yield f"{one.name} ({one.letters})", "; ".join(_label_words(one.sheet))


def _label_words(sheet: Sheet | None) -> tuple[str, ...]:
    if sheet is None:
        return (NO_SHEET,)
    return (
        _flag(sheet, "entry.tell_and_post", "people must be told and signs posted", "telling and posting not demanded"),
        _flag(sheet, "entry.wps_box", "it has an agricultural use box", "it has no agricultural use box"),
        f"elsewhere: {quoted(sheet, 'entry.non_wps_entry')}",
    )


def _flag(sheet: Sheet, path: str, yes: str, no: str) -> str:
    says = sheet.says(path)
    return f"{FIELDS[path].words}: {quoted(sheet, path)}" if says is None else yes if says else no
