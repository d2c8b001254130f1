"""The whole packet, put together from cleared lines."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from rootcollar.choose import Choice, opens_most
from rootcollar.kernel.sources import Source
from rootcollar.kernel.verdict import Level, Stage, worst_first
from rootcollar.label import NOT_CHECKED, RULES
from rootcollar.mix import sides
from rootcollar.work.asked import PacketAsked
from rootcollar.work.cards import mix_cards
from rootcollar.work.dangers import danger_words
from rootcollar.work.day_rules import day_verdicts
from rootcollar.work.day_sheet import DayAsked, day_sheet
from rootcollar.work.look_alikes import look_boxes
from rootcollar.work.mixes import work_lines
from rootcollar.work.packet import Packet, RulesPage, Said, UnitPage
from rootcollar.work.pages import pages
from rootcollar.work.readers import readers_of
from rootcollar.work.record_form import record_fields
from rootcollar.work.signs import signs
from rootcollar.work.standing import leaves_words, standing_on
from rootcollar.work.tags import tags
from rootcollar.work.unit_page import said, unit_page

__all__ = ["packet"]

_NOT_CHECKED = "NOT CHECKED AGAINST A LABEL"
_FIRST = "en"  # the language of the rest of the packet, and of the labels
_FOOT = "Rootcollar says which rules it weighed; it does not say that the work is lawful. The label in your hand does."


def packet(asked: PacketAsked) -> Packet:
    """Return the content of a packet: day sheet, unit pages, mix cards, papers, record sheet, rules, sources.

    Where the day is known, what the sources do not name for its month stands on the day sheet as struck out.
    """
    work = work_lines(asked)
    first = next((key for key in asked.units if any(one.stand.unit == key for one in work)), asked.units[0])
    units = asked.setting.ground.units
    of_first = tuple(one for one in work if one.stand.unit == first)
    done = {one.stand.key for one in of_first}
    held = tuple(one for one in asked.lines if one.stand.unit == first and one.stand.key not in done)
    page_one = DayAsked(units[first], of_first, held, asked.prescription, asked.setting, asked.crew, asked.day)
    tongues = asked.setting.reference.tongues
    made = Packet(
        property_name=asked.setting.ground.name,
        made_on=asked.made_on.isoformat(),
        banner=_banner(asked),
        day=day_sheet(page_one, tongues[_FIRST]),
        units=tuple(_unit_page(key, work, asked) for key in asked.units),
        cards=mix_cards(work, asked.prescription, asked.setting, asked.crew),
        record_fields=record_fields(asked.setting, units[first], of_first, asked.day),
        rules=_rules(asked),
        sources=(),
        foot=_FOOT,
        pages=pages(asked),
        tags=tags(asked),
        signs=signs(asked),
        days=tuple((code, day_sheet(page_one, tongues[code])) for code in _further(asked)),
    )
    return _with_sources(made, asked.setting.reference.sources)


def _unit_page(key: str, work: Sequence[Choice], asked: PacketAsked) -> UnitPage:
    setting, mine = asked.setting, [one for one in work if one.stand.unit == key]
    english = setting.reference.tongues[_FIRST]
    return replace(
        unit_page(setting.ground.units[key], asked.prescription, setting, asked.day),
        look_alikes=look_boxes(mine, asked.day, setting.reference, english),
        dangers=danger_words(mine, setting.reference, english),
        standing=standing_on(key, setting.history, asked.day or setting.on, setting.reference, english),
        leaves=leaves_words(mine, setting.reference, english),
    )


def _further(asked: PacketAsked) -> tuple[str, ...]:
    """The languages of further day sheets: those asked for, and those that people of the crew read."""
    wanted = dict.fromkeys((*asked.languages, *(one.language for one in asked.crew.people)))
    return tuple(code for code in wanted if code != _FIRST)


def _banner(asked: PacketAsked) -> str:
    """Return the strip for every page: the demo's labels are invented, and a mix without a sheet has no label."""
    if asked.setting.ground.demo:
        return f"{_NOT_CHECKED}. INVENTED LABEL, DEMO ONLY: invented labels, an invented place; not for work."
    missing = any(
        any(side.product is None for side in sides(one.recipe)) for one in asked.lines if one.recipe is not None
    )
    if missing or not asked.setting.shelf:
        return f"{_NOT_CHECKED}. For at least one mix no label sheet has been typed; read the label before anything."
    return ""


def _opening(asked: PacketAsked) -> tuple[Said, ...]:
    """Return the one change that opens most of what this packet cannot have done; nothing where all is work."""
    opening = opens_most(asked.lines)
    return (Said("ask", opening.words),) if opening else ()


def _rules(asked: PacketAsked) -> RulesPage:
    spoken = [*(one for line in asked.lines for one in line.verdicts), *day_verdicts(asked)]
    levels: dict[str, Level] = {}
    for one in spoken:
        if one.rule:
            levels[one.rule] = max(levels.get(one.rule, Level.OK), one.level)
    products = {one.recipe.product for one in asked.lines if one.recipe and one.recipe.product}
    questions = {(one.rule, one.because): one for one in spoken if one.level is Level.ASK}
    return RulesPage(
        weighed=tuple((number, RULES[number].sentence, level.word) for number, level in sorted(levels.items())),
        not_checked=tuple((one.number, one.sentence) for one in NOT_CHECKED if one.stage is Stage.PLAN),
        waits=tuple((one.number, one.sentence, _WAITS[one.stage]) for one in NOT_CHECKED if one.stage in _WAITS),
        questions=(*_opening(asked), *(said(one) for one in worst_first(questions.values()))),
        must_read=(
            "The complete label booklet of every product, before mixing, by the person who mixes.",
            "The rules of this state, county and land manager: rootcollar knows none of them.",
            "The safety data sheets; they travel with the products.",
        ),
        readers=readers_of(sheet for key in sorted(products) if (sheet := asked.setting.sheet(key))),
    )


# A source is named as [KEY], as (KEY, read), with others before it or alone, or as KEY (read) gives ...: never as a
# bare word.
_CITED = re.compile(
    r"\[([\w.-]+)\]|[(,;'] ?([\w.-]+)(?=, (?:[\w.-]+, )*(?:read|practice|reckoned|ours|memory)\b)"
    r"|\b([\w.-]+) \((?:read|practice|reckoned|ours|memory)\)|coverage \w+ \(([\w.-]+)\)"
)
_WAITS: Mapping[Stage, str] = {Stage.HOURS: "the hour of work, by hand", Stage.CLOSE: "the record, by hand"}


def _with_sources(made: Packet, sources: Mapping[str, Source]) -> Packet:
    """Return the packet with the citation of every source key that is printed anywhere in it."""
    printed = {key for found in _CITED.findall(repr(made)) for key in found}
    return replace(made, sources=tuple((key, sources[key].cite) for key in sorted(printed & set(sources))))
