"""Page one: the day sheet of one unit, from lines that have been cleared."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from rootcollar.choose import (
    Choice,
    Prescription,
    Setting,
    Way,
    alike,
    instruction,
    mix_words,
    poured_ml,
    stems,
)  # fmt: skip
from rootcollar.choose.words import METHOD_WORDS
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.doubt import best
from rootcollar.kernel.units import convert, show
from rootcollar.mix import Recipe
from rootcollar.reference import Species
from rootcollar.shelf import FIELDS, NOT_READ, Distance, Sheet, entry_hours, first_aid, wear, weather_words
from rootcollar.site import Unit, sketch
from rootcollar.work import text
from rootcollar.work.batches import Batches, batches
from rootcollar.work.cards import product_words
from rootcollar.work.crew import Crew
from rootcollar.work.packet import DaySheet, LoadRow, MixLine, SizeRow, Sketch, Target
from rootcollar.work.struck import struck_lines, struck_ways

_BOXES = ("wind ___ mph", "air ___ °F", "bark or leaves dry", "no haze lying", "signs up", "label aboard")
_SAWN = frozenset({"cut_stump", "vine_cut", "girdle"})
_CITED = re.compile(r" ?\([A-Za-z0-9_.-]+, (?:read|memory)\)")  # a source inside a tell: for the facts, not the woods
_DRAWN = {"surface water": "water", "water": "water", "stream": "water", "well": "well"}  # as the rules take them

__all__ = ["DayAsked", "day_sheet", "in_season", "letter_of"]


@dataclass(frozen=True, slots=True, eq=False)
class DayAsked:
    """What a day sheet is made from. lines: cleared lines of the unit. held: its struck and held ones."""

    unit: Unit
    lines: tuple[Choice, ...]
    held: tuple[Choice, ...]
    prescription: Prescription
    setting: Setting
    crew: Crew
    day: date | None = None


def day_sheet(asked: DayAsked) -> DaySheet:
    """Return the content of page one."""
    recipes = _recipes(asked)
    sheets = _sheets(recipes, asked.setting)
    made = {
        letter: batches(
            recipe, poured_ml(_lines_with(recipe, asked.lines)), _method(recipe, asked.lines), asked.crew, asked.setting
        )
        for letter, recipe in recipes.items()
        if _lines_with(recipe, asked.lines)
    }
    return DaySheet(
        title=f"{asked.unit.name}, day sheet",
        when=f"{asked.day:%A} {asked.day.day} {asked.day:%B %Y}" if asked.day else "",
        season=_season(asked.lines),
        sketch=_sketch(asked, sheets),
        roles=_roles(asked.crew, asked.lines),
        targets=_targets(asked.lines, asked.setting),
        sizes=tuple(_size_row(one, asked) for one in alike(asked.lines)),
        struck=(*struck_lines(asked.held, asked.setting, asked.day), *struck_ways((*asked.lines, *asked.held))),
        mixes=tuple(_mix_line(letter, recipe, made.get(letter), asked) for letter, recipe in recipes.items()),
        proving=_proving(recipes),
        weather=_weather(sheets, recipes),
        boxes=(*_BOXES, *_label_times(asked)),
        wear=_wear(sheets, asked.lines),
        wear_note="Never leather or cotton gloves. Rubber boots in wet treated growth. Ticks: tuck, check.",
        entry=_entry(sheets, recipes),
        emergency=_emergency(asked),
        first_aid=_first_aid(sheets, recipes),
        loads=_loads(made),
        leftovers="Leftover and rinse water: on ground the label lists, within its rate; never a drain.",
    )


def letter_of(recipe: Recipe | None, prescription: Prescription) -> str:
    """Return a recipe's letter in the plan; nothing where there is no mix."""
    return next((letter for letter, one in prescription.letters.items() if one == recipe), "")


def in_season(way: Way, day: date | None) -> bool:
    """Return whether the sources name the day's month for a way; True while no day is set."""
    return day is None or day.month in way.visit.months


def _recipes(asked: DayAsked) -> dict[str, Recipe]:
    wanted: set[Recipe] = set()
    for line in asked.lines:
        for option in line.options:
            if option.way.visit.recipe is not None:
                wanted.add(option.way.visit.recipe)
    return {letter: recipe for letter, recipe in asked.prescription.letters.items() if recipe in wanted}


def _sheets(recipes: dict[str, Recipe], setting: Setting) -> tuple[Sheet, ...]:
    found = dict.fromkeys(recipe.product for recipe in recipes.values())
    return tuple(sheet for sheet in (setting.sheet(key) for key in found) if sheet is not None)


def _lines_with(recipe: Recipe, lines: Sequence[Choice]) -> list[Choice]:
    return [one for one in lines if one.recipe == recipe]


def _method(recipe: Recipe, lines: Sequence[Choice]) -> str:
    return _lines_with(recipe, lines)[0].way.visit.method


def _season(lines: Sequence[Choice]) -> str:
    months = [one.way.visit.months for one in lines]
    if not months:
        return ""
    shared = frozenset.intersection(*months)
    if shared:
        return "any month the label and the weather allow" if len(shared) == len(MONTHS) else name_months(shared)
    return "no one month serves every line: see the unit's page"


def _roles(crew: Crew, lines: Sequence[Choice]) -> tuple[tuple[str, str], ...]:
    names = {what: ", ".join(one.name for one in crew.people if what in one.may) for what in ("lead", "treat", "saw")}
    cuts = _cuts(lines)
    does = {
        "lead": "mixes, keeps this sheet, says yes or no",
        "treat": "treats each stem as below, marks it with dye",
        "saw": "cuts low, treater beside; carries no sprayer, never alone",
    }
    rows = [
        (what.capitalize(), f"{names[what]}: {doing}" if names[what] else f"______ {doing}")
        for what, doing in does.items()
        if what != "saw" or cuts
    ]
    return tuple(rows)


def _cuts(lines: Sequence[Choice]) -> bool:
    """Whether anybody may have to saw: for the first way or for a fallback."""
    return any(option.way.visit.method in _SAWN for line in lines for option in line.options)


def _targets(lines: Sequence[Choice], setting: Setting) -> tuple[Target, ...]:
    keys = dict.fromkeys(one.stand.species for one in lines)
    return tuple(_target(setting.reference.species[key]) for key in keys)


def _target(species: Species) -> Target:
    thorns = "; ".join(one.detail for one in species.hazards if one.kind == "thorns")
    tells = "; ".join(part for part in (species.leaf.holds_for, species.stem.holds_for, thorns) if part)
    return Target(
        species.common_name,
        re.sub(_CITED, "", tells) or "see the species' facts",
        tuple((one.name, re.sub(_CITED, "", one.tell)) for one in species.look_alikes),
    )


def _size_row(lines: Sequence[Choice], asked: DayAsked) -> SizeRow:
    """One row for all stands that are treated alike: sizes by plant, stems added up."""
    back = lines[0].fallback
    verb, rest = instruction(lines[0].way)
    words = ""
    if back is not None and in_season(back.option.way, asked.day):
        way = back.option.way
        letter = letter_of(way.visit.recipe, asked.prescription)
        words = f"{back.trigger}: {METHOD_WORDS[way.visit.method]}{', mix ' + letter if letter else ''}"
    species = asked.setting.reference.species
    plants = dict.fromkeys(one.stand.species for one in lines)
    sizes = [
        (text.size(text.joined([one.stand.band_cm for one in lines if one.stand.species == key])), key)
        for key in plants
    ]
    plant = "; ".join(species[key].common_name + (f" {size}" if len(sizes) > 1 else "") for size, key in sizes)
    size = sizes[0][0] if len(sizes) == 1 else text.size(text.joined([one.stand.band_cm for one in lines]))
    letter = letter_of(lines[0].recipe, asked.prescription)
    return SizeRow(size, plant, verb, rest, letter, text.count(stems(lines)), words)


def _mix_line(letter: str, recipe: Recipe, made: Batches | None, asked: DayAsked) -> MixLine:
    words = mix_words(recipe, product_words(recipe, asked.setting))
    if made is None:
        return MixLine(letter, words, "only if the first way cannot be done: see its mix card", "–")
    return MixLine(letter, words, made.in_a_line, text.gallons(best(made.need_ml)), text.span(made.need_ml))


def _proving(recipes: dict[str, Recipe]) -> str:
    letters = ", ".join(recipes)
    return (f"Proving batch ({letters}): 1 qt, 25 measured stems, left ___") if letters else ""


def _letters_of(sheet: Sheet, recipes: dict[str, Recipe]) -> str:
    return ", ".join(letter for letter, recipe in recipes.items() if recipe.product == sheet.key)


def _weather(sheets: Sequence[Sheet], recipes: dict[str, Recipe]) -> tuple[tuple[str, str], ...]:
    """The label's weather by mix, what it is silent of left out, what nobody has read named; alike ones together."""
    by_words: dict[str, list[str]] = {}
    for sheet in sheets:
        known = [one for one in weather_words(sheet) if "label silent" not in one and NOT_READ not in one]
        unread = [row.words for path, row in FIELDS.items() if path.startswith("weather.") and not sheet.line(path)]
        words = "; ".join(known) + (f". NOT READ YET: {', '.join(unread)}" if unread else "")
        by_words.setdefault(words, []).append(_letters_of(sheet, recipes))
    return tuple((", ".join(letters), words) for words, letters in by_words.items())


def _label_times(asked: DayAsked) -> tuple[str, ...]:
    """The label's times to leave out, and its minutes from cut to treatment, as boxes: nobody else weighs them."""
    found: dict[str, None] = {}
    for line in asked.lines:
        for option in line.options:
            visit = option.way.visit
            sheet = asked.setting.sheet(visit.recipe.product) if visit.recipe else None
            if sheet is None:
                continue
            found |= {f"not in {time}": None for time in sheet.says("season_exclude", visit.method) or ()}
            minutes = sheet.says("max_minutes_after_cut", visit.method)
            if minutes is not None:
                found[f"stumps treated within {show(minutes, 'min')}"] = None
    return tuple(found)


def _entry(sheets: Sequence[Sheet], recipes: dict[str, Recipe]) -> str:
    """When people may enter again: the longest of the mixes, from the last load."""
    if not sheets:
        return "No herbicide on this sheet."
    hours, letters = entry_hours(sheets), ", ".join(sorted(recipes))
    first = (
        f"No entry until {show(hours, 'h')} after the last load (longest of {letters})."
        if hours is not None
        else f"Hours of entry are not known for every mix of {letters}: read them on the labels, keep out until then."
    )
    words = dict.fromkeys(str(one.says("entry.non_wps_entry")) for one in sheets if one.says("entry.non_wps_entry"))
    return " ".join((first, *(f"Elsewhere: {one}." for one in words)))


def _wear(sheets: Sequence[Sheet], lines: Sequence[Choice]) -> tuple[tuple[str, str], ...]:
    """What to wear by task, tasks with the same items together; the saw's wear is practice of the trade."""
    by_items: dict[str, list[str]] = {}
    for task in ("mixing", "applying", "cleaning") if sheets else ():
        items = wear(sheets, task)
        words = ", ".join(items) if items else "not read on every label yet: read it first"
        by_items.setdefault(words, []).append(task)
    rows = [(", ".join(tasks).capitalize(), words) for words, tasks in by_items.items()]
    if _cuts(lines):
        rows.append(("Saw", "chaps, helmet, eyes, ears (practice of the trade)"))
    gloves = dict.fromkeys(tuple(sheet.says("ppe.glove_types") or ()) for sheet in sheets)
    rows += [("Gloves of", " or ".join(types)) for types in gloves if types]
    return tuple(rows)


def _emergency(asked: DayAsked) -> tuple[tuple[str, str], ...]:
    known = asked.setting.ground.emergency or {}
    gate = next((one for one in asked.setting.ground.features if one.kind == "gate"), None)
    spot = gate.line[0] if gate else (asked.unit.polygon[0] if asked.unit.polygon else None)
    place = (
        f"{abs(spot[1]):.4f} {'N' if spot[1] >= 0 else 'S'}, {abs(spot[0]):.4f} {'E' if spot[0] >= 0 else 'W'}"
        if spot
        else ""
    )
    return (
        ("Position" + (f" of {gate.name}" if gate else ""), place),
        ("Meet at", known.get("meeting point", "")),
        ("Hospital", known.get("hospital", "")),
        ("Poison line", known.get("poison line", "")),
    )


def _first_aid(sheets: Sequence[Sheet], recipes: dict[str, Recipe]) -> tuple[str, ...]:
    by_words: dict[str, list[str]] = {}
    for sheet in sheets:
        words = " ".join(f"{what.capitalize()}: {do}" for what, do in first_aid(sheet) if what in {"skin", "eyes"})
        by_words.setdefault(words, []).append(_letters_of(sheet, recipes))
    aid = tuple(f"{', '.join(letters)}: {words}" for words, letters in by_words.items())
    return (*aid, "The label goes along to the doctor. Spill: stop it, ring it, soak it up, bag it.")


def _loads(made: dict[str, Batches]) -> tuple[LoadRow, ...]:
    letters = [letter for letter, one in made.items() for _ in one.loads.volumes_ml]
    return tuple(LoadRow(number, letter) for number, letter in enumerate([*letters, "", ""], start=1))


def _sketch(asked: DayAsked, sheets: Sequence[Sheet]) -> Sketch:
    """The unit with the labels' distances from water and wells, for the mixes and ways that they bind."""
    found = (_setback(row, sheet, asked) for sheet in sheets for row in sheet.says("water.buffers_ft") or ())
    setbacks = tuple(dict.fromkeys(one for one in found if one is not None))
    drawn = sketch(asked.unit, asked.setting.ground.features, setbacks)
    if drawn is None:
        return Sketch(0, 0)
    return Sketch(drawn.width_m, drawn.height_m, drawn.outline, drawn.lines, drawn.keep_out)


def _setback(row: Distance, sheet: Sheet, asked: DayAsked) -> tuple[str, float, str] | None:
    kind = _DRAWN.get(row.from_)
    mapped = any(one.kind == kind for one in asked.setting.ground.features)
    ways = [option.way for line in asked.lines for option in line.options]
    bound = {
        letter_of(way.visit.recipe, asked.prescription)
        for way in ways
        if way.visit.recipe
        and way.visit.recipe.product == sheet.key
        and (not row.methods or way.visit.method in row.methods)
    }
    if kind is None or not mapped or not bound:
        return None
    return kind, convert(row.ft, "ft", "m"), f"{row.ft:g} ft from {row.from_}: mix {', '.join(sorted(bound))}"
