"""Gear: what each wears for each task and who says so, what goes along, and who does what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.hazard import felling_distance_m
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, worst_first
from rootcollar.reference import Reference, named, numbers
from rootcollar.work.after_cut import bags_for
from rootcollar.work.asked import PacketAsked
from rootcollar.work.crew import SAWN
from rootcollar.work.day_rules import day_verdicts
from rootcollar.work.gear_aboard import aboard_parts, water_part
from rootcollar.work.gear_gloves import GLOVE_HEADS, clashes, glove_rows
from rootcollar.work.gear_people import people_part
from rootcollar.work.gear_wear import HEADS, below_floor, not_read, wear_rows
from rootcollar.work.mixes import Product, day_mixes, day_products, work_lines
from rootcollar.work.packet import Page, Part
from rootcollar.work.worked import Worked, number

__all__ = ["gear_page"]

_HACKED = frozenset({"hack_squirt"})  # cut with a hatchet, by whoever treats
_ALWAYS = "Never leather or cotton with herbicide, never a lining that stays in the glove (CFR15, read)."


def gear_page(asked: PacketAsked) -> Page | None:
    """Return the page, or None on a day with neither mix nor cut."""
    mixes = day_mixes(asked)
    methods = {one for line in work_lines(asked) for option in line.options for one in option.way.methods}
    sawn, cutting = bool(methods & SAWN), bool(methods & (SAWN | _HACKED))
    if not mixes and not cutting:
        return None
    reference, crew, products = asked.setting.reference, asked.crew, day_products(mixes)
    power = sawn and (not crew.people or any("saw" in one.may for one in crew.people))
    wear = wear_rows(products, reference, crew, power=power, hand=cutting)
    gloves = Part("Gloves", "table", glove_rows(mixes, asked), GLOVE_HEADS, _glove_note(reference))
    clashing = (*clashes(mixes, products, asked, cutting=sawn), *_below(products, reference))
    return Page(
        "Gear and crew",
        _below_title(products),
        (
            Part("Wear, and who says so", "table", wear, HEADS, _wear_note(products)),
            Part("Not read", "text", tuple((one,) for one in not_read(products, reference))),
            *([gloves] if mixes else []),
            people_part(
                crew, asked.day or asked.setting.on, reference, cutting=cutting, mixing=bool(mixes)
            ),
            Part("What gets in each other's way", "text", tuple((one,) for one in clashing), note="Advice, where no "
                 "rule is named."),
            *([water_part(products, asked)] if mixes else []),
            *([_saw_part(asked, power=power)] if sawn else []),
            *([_bags_part(bags)] if (bags := bags_for(work_lines(asked), asked.setting)) else []),
            *(aboard_parts(mixes, products, asked) if mixes else []),
            *([Part("What the rules say of the day", "text", said)] if (said := _of_the_day(asked)) else []),
            _heat_part(reference),
        ),
    )  # fmt: skip


def _bags_part(bags: tuple[str, ...]) -> Part:
    note = "How many bags is not known: count the first ones. What is done with what is cut stands on the unit's page."
    return Part("For what is cut", "ticks", tuple((one,) for one in bags), note=note)


def _of_the_day(asked: PacketAsked) -> tuple[tuple[str, ...], ...]:
    said = worst_first(one for one in day_verdicts(asked) if one.level > Level.OK)
    told = dict.fromkeys(f"{one.level.word}: {one.because}. {one.clear} [{one.rule}]" for one in said)
    return tuple((one,) for one in told)


def _below_title(products: Sequence[Product]) -> str:
    if any(one.sheet is None for one in products):
        return "For at least one mix no label was read: what stands here is a floor at best. Read the label first."
    return "The label comes first. Floor: the least the federal rule lets a label say. Advice is the trade's or ours."


def _wear_note(products: Sequence[Product]) -> str:
    floor = "Floor: 40 CFR 156.212 by the categories on the sheet (CFR15, read). " if products else ""
    return f"{floor}Logging rule: CFR1910-266 (read). A line to tick when it is on the person or in the bag."


def _glove_note(reference: Reference) -> str:
    mil = numbers(named(reference.hazard["gloves_time"], "thickness_mil"))[0]
    hours = [numbers(named(reference.hazard["gloves_time"], name))[0].value for name in ("liner_use_h", "liner_wear_h")]
    return (
        f"The chart holds for gloves of {mil.value:g} mil and more. {_ALWAYS} A separable liner goes after "
        f"{hours[0]:g} h of use, or {hours[1]:g} h from first wear. E: kerosene, diesel, mineral oil. G: xylene and "
        "its like; the label or the safety sheet says which."
    )


def _below(products: Sequence[Product], reference: Reference) -> Iterator[str]:
    for one in products:
        yield from below_floor(one, reference)


def _saw_part(asked: PacketAsked, *, power: bool) -> Part:
    rows = asked.setting.reference.hazard["saw"]
    lengths, fuel, carry = (numbers(named(rows, name))[0].value for name in ("tree_lengths", "fuel_ft", "carry_ft"))
    alone, way_out, stop = (named(rows, name)[0] for name in ("sprayer", "way_out", "stop"))
    said: list[str] = [
        "Nobody saws alone: in sight or hearing of another, always.",
        Worked(
            "All others stay ",
            _apart(asked, lengths),
            " off; the treater comes when the sawyer calls, and treats at once.",
        ),
        f"{str(alone.value).capitalize()}.",
        f"Before the cut: {way_out.value}.",
        f"Stop for {stop.value}. First-aid kit at the saw and in each vehicle.",
    ]
    if power:
        said.append(
            f"Fuel {fuel:g} ft from any fire, start {fuel:g} ft from there; brake on when carried {carry:g} ft."
        )
    note = "Where cutting counts as logging: CFR1910-266 (read); else advice. No sprayer: practice."
    return Part("Saw", "text", tuple((one,) for one in said), note=note)


def _apart(asked: PacketAsked, lengths: float) -> str:
    """How far off the others stay: in feet where every plant to be sawn has its height in the tally."""
    lines = [one for one in work_lines(asked) if any(SAWN & set(option.way.methods) for option in one.options)]
    heights = [one.stand.height_m for one in lines]
    known = [one for one in heights if one is not None]
    if len(known) < len(heights):
        return "two tree lengths (___ ft)"
    away = number(felling_distance_m(max(known), lengths), _feet, "m", lambda: felling_distance_m(max(known), lengths))
    return Worked("two tree lengths (", away, " for the tallest in the tally)")


def _feet(away_m: float) -> str:
    return show(round(convert(away_m, "m", "ft")), "ft")


def _heat_part(reference: Reference) -> Part:
    rows = reference.hazard["heat"]
    index, drink = (numbers(named(rows, name))[0] for name in ("heat_index_f", "drink_fl_oz"))
    water = f"{show(drink.value, drink.unit)}, {drink.holds_for}"
    said = (
        f"Heat index of {index.value:g} F and more: {water}; rest in shade.",
        "Dizzy, sick or confused: stop, gear off, wash, cool, call for help. Heat and poisoning look alike.",
    )
    return Part("Heat", "text", tuple((one,) for one in said), note="Advice (EXT-GEN, memory; ours).")
