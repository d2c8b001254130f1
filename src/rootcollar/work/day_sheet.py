"""Page one: the day sheet of one unit, from lines that have been cleared, in one language."""

from __future__ import annotations

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
    method_in_words,
    mix_words,
    poured_ml,
    proving_batch,
    stems,
    trigger,
)  # fmt: skip
from rootcollar.kernel.tongue import Tongue
from rootcollar.kernel.units import convert, show
from rootcollar.mix import Recipe, sides
from rootcollar.reference import Species
from rootcollar.shelf import Distance, Sheet
from rootcollar.site import Unit, sketch
from rootcollar.work import text
from rootcollar.work.after_cut import CUTTING
from rootcollar.work.again import poured_again, stems_again
from rootcollar.work.batches import Batches, batches, card_again, limits_of, loads_again, short
from rootcollar.work.cards import product_words
from rootcollar.work.crew import Crew
from rootcollar.work.dangers import danger_boxes
from rootcollar.work.day_crew import emergency_rows, role_rows
from rootcollar.work.day_label import boxes, entry_words, first_aid_words, wear_rows, weather_rows
from rootcollar.work.in_tongue import day_words, label_words, month_words, plant_name, plant_words, target_name
from rootcollar.work.look_alikes import look_boxes
from rootcollar.work.own_reason import own_boxes
from rootcollar.work.packet import DaySheet, LoadRow, MixLine, SizeRow, Sketch, Target
from rootcollar.work.standing import standing_on
from rootcollar.work.steps_words import step_note
from rootcollar.work.struck import struck_lines, struck_ways
from rootcollar.work.worked import number, within

_SAWN = frozenset({"cut_stump", "vine_cut", "girdle"})
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


def day_sheet(asked: DayAsked, tongue: Tongue) -> DaySheet:
    """Return the content of page one in a language.

    Names, amounts and products stay as they are; a label's words are quoted where they are in another language.
    """
    recipes = _recipes(asked)
    sheets, cuts = _sheets(recipes, asked.setting), _cuts(asked.lines)
    made = _batches(recipes, asked)
    return DaySheet(
        title=tongue.say("head.title", unit=asked.unit.name),
        when=day_words(asked.day, tongue) if asked.day else "",
        season=_season(asked.lines, tongue),
        sketch=_sketch(asked, sheets, tongue),
        roles=role_rows(asked.crew, cuts, tongue),
        targets=_targets(asked.lines, asked.setting, tongue),
        sizes=tuple(_size_row(one, asked, tongue) for one in alike(asked.lines)),
        struck=(
            *struck_lines(asked.held, asked.setting, tongue, asked.day),
            *struck_ways((*asked.lines, *asked.held), tongue),
        ),
        mixes=tuple(_mix_line(letter, one, made.get(letter), asked, tongue) for letter, one in recipes.items()),
        proving=_proving(recipes, asked, tongue),
        weather=weather_rows(sheets, recipes, tongue),
        boxes=(
            *own_boxes(asked.lines, asked.setting, tongue),
            *look_boxes(asked.lines, asked.day, asked.setting.reference, tongue),
            *danger_boxes(asked.lines, asked.setting.reference, tongue),
            *boxes(asked.lines, asked.setting, tongue),
        ),
        wear=wear_rows(sheets, cuts, tongue),
        wear_note=tongue.say("wear.note"),
        entry=entry_words(sheets, recipes, tongue),
        emergency=emergency_rows(asked.unit, asked.setting, tongue),
        first_aid=first_aid_words(sheets, recipes, tongue),
        loads=_loads(made),
        leftovers=_left(asked.lines, tongue),
        load_heads=tuple(words for _, words in tongue.group("load")),
        words=tongue.group("sheet"),
        note=tongue.note,
        standing=_standing(asked, tongue),
    )


def _left(lines: Sequence[Choice], tongue: Tongue) -> str:
    """Say what is done with leftover mix, and with what is cut where anything may be."""
    cut = any(option.way.visit.method in CUTTING for line in lines for option in line.options)
    return " ".join((tongue.say("left.over"), *([tongue.say("left.cut")] if cut else [])))


def _standing(asked: DayAsked, tongue: Tongue) -> str:
    setting = asked.setting
    return standing_on(
        asked.unit.key, setting.history, asked.day or setting.on, setting.reference, tongue, "standing.brief"
    )


def _proving(recipes: dict[str, Recipe], asked: DayAsked, tongue: Tongue) -> str:
    """Ask for a proving batch of each mix that the crew has not measured yet on one of its ways."""
    bare = [
        letter
        for letter, recipe in recipes.items()
        if any(
            proving_batch(option.way.visit.method, recipe, asked.setting) is None
            for line in asked.lines
            for option in line.options
            if option.way.visit.recipe == recipe
        )
    ]
    return tongue.say("mix.proving", letters=", ".join(bare)) if bare else ""


def letter_of(recipe: Recipe | None, prescription: Prescription) -> str:
    """Return a recipe's letter in the plan; nothing where there is no mix."""
    return next((letter for letter, one in prescription.letters.items() if one == recipe), "")


def in_season(way: Way, day: date | None) -> bool:
    """Return whether the sources name the day's month for a way, of two steps the first; True while no day is set."""
    return day is None or day.month in way.treatment[0].months


def _recipes(asked: DayAsked) -> dict[str, Recipe]:
    wanted: set[Recipe] = set()
    for line in asked.lines:
        for option in line.options:
            if option.way.visit.recipe is not None:
                wanted.add(option.way.visit.recipe)
    return {letter: recipe for letter, recipe in asked.prescription.letters.items() if recipe in wanted}


def _sheets(recipes: dict[str, Recipe], setting: Setting) -> tuple[Sheet, ...]:
    found = dict.fromkeys(one.product for recipe in recipes.values() for one in sides(recipe))
    return tuple(sheet for sheet in (setting.sheet(key) for key in found) if sheet is not None)


def _lines_with(recipe: Recipe, lines: Sequence[Choice]) -> list[Choice]:
    return [one for one in lines if one.recipe == recipe]


def _batches(recipes: dict[str, Recipe], asked: DayAsked) -> dict[str, Batches]:
    """What is to be mixed, by letter; nothing for a mix that only a fallback needs."""
    made = {}
    for letter, recipe in recipes.items():
        if lines := _lines_with(recipe, asked.lines):
            method = lines[0].way.visit.method
            made[letter] = batches(recipe, poured_ml(lines), method, asked.crew, asked.setting)
    return made


def _season(lines: Sequence[Choice], tongue: Tongue) -> str:
    months = [one.way.months for one in lines]
    if not months:
        return ""
    shared = frozenset.intersection(*months)
    return month_words(shared, tongue) if shared else tongue.say("season.none")


def _cuts(lines: Sequence[Choice]) -> bool:
    """Whether anybody may have to saw: for the first way or for a fallback."""
    return any(_SAWN & set(option.way.methods) for line in lines for option in line.options)


def _targets(lines: Sequence[Choice], setting: Setting, tongue: Tongue) -> tuple[Target, ...]:
    keys = dict.fromkeys(one.stand.species for one in lines)
    return tuple(_target(setting.reference.species[key], tongue) for key in keys)


def _target(species: Species, tongue: Tongue) -> Target:
    words = plant_words(species, tongue)
    tells = "; ".join(dict.fromkeys(part for part in (words.leaf, words.stem, words.thorns) if part))
    return Target(target_name(species, tongue), tells or tongue.say("target.no_tells"), words.look_alikes)


def _size_row(lines: Sequence[Choice], asked: DayAsked, tongue: Tongue) -> SizeRow:
    """One row for all stands that are treated alike: sizes by plant, stems added up."""
    verb, rest = instruction(lines[0].way, tongue)
    rest = "; ".join(
        one for one in (rest, step_note(lines[0], asked.prescription, asked.setting, asked.day, tongue)) if one
    )
    species = asked.setting.reference.species
    plants = dict.fromkeys(one.stand.species for one in lines)
    sizes = [
        (text.size(text.joined([one.stand.band_cm for one in lines if one.stand.species == key])), key)
        for key in plants
    ]
    plant = "; ".join(plant_name(species[key], tongue) + (f" {size}" if len(sizes) > 1 else "") for size, key in sizes)
    size = sizes[0][0] if len(sizes) == 1 else text.size(text.joined([one.stand.band_cm for one in lines]))
    letter = letter_of(lines[0].recipe, asked.prescription)
    counted = number(stems(lines), text.count, "stems", lambda: stems_again(lines, asked.setting))
    return SizeRow(size, plant, verb, rest, letter, counted, _instead(lines[0], asked, tongue))


def _instead(line: Choice, asked: DayAsked, tongue: Tongue) -> str:
    """The fallback and its sign, where it is in season."""
    back = line.fallback
    if back is None or not in_season(back.option.way, asked.day):
        return ""
    way = back.option.way
    words, sign = method_in_words(way, tongue), trigger(line.way, tongue)
    letter = letter_of(way.visit.recipe, asked.prescription)
    key = "row.instead_mix" if letter else "row.instead"
    return tongue.say(key, trigger=sign, way=words, letter=letter)


def _mix_line(letter: str, recipe: Recipe, made: Batches | None, asked: DayAsked, tongue: Tongue) -> MixLine:
    words = mix_words(recipe, product_words(recipe, asked.setting), tongue)
    if made is None:
        return MixLine(letter, words, tongue.say("mix.spare"), "–")
    lines = _lines_with(recipe, asked.lines)
    total = number(made.need_ml, text.best_gallons, "mL", lambda: poured_again(lines, asked.setting))
    return MixLine(letter, words, _one_load(lines, made, asked, tongue), total, text.span(made.need_ml))


def _one_load(lines: Sequence[Choice], made: Batches, asked: DayAsked, tongue: Tongue) -> str:
    """The first load in one line; its mark, its product and its strength open."""
    method, setting, one = lines[0].way.visit.method, asked.setting, made.cards[0][1]
    limits = limits_of(made.recipe, method, setting.sheet(made.recipe.product))

    def again(part: str) -> float:
        return card_again(made.recipe, one.total_ml, limits, part)

    def mark() -> float:
        loads_again(made.recipe, poured_again(lines, setting), method, asked.crew, setting)
        return again("total_ml")

    return within(
        made.in_a_line(tongue),
        number(one.total_ml, text.mark, "mL", mark),
        number(one.product_ml, short, "mL", lambda: again("product_ml")),
        number(one.true_pct, _percent, "%", lambda: again("true_pct")),
    )


def _percent(share_pct: float) -> str:
    return f"{share_pct:.3g} %"


def _loads(made: dict[str, Batches]) -> tuple[LoadRow, ...]:
    letters = [letter for letter, one in made.items() for _ in one.loads.volumes_ml]
    return tuple(LoadRow(number, letter) for number, letter in enumerate([*letters, "", ""], start=1))


def _sketch(asked: DayAsked, sheets: Sequence[Sheet], tongue: Tongue) -> Sketch:
    """The unit with the labels' distances from water and wells, for the mixes and ways that they bind."""
    found = (_setback(row, sheet, asked, tongue) for sheet in sheets for row in sheet.says("water.buffers_ft") or ())
    setbacks = tuple(dict.fromkeys(one for one in found if one is not None))
    drawn = sketch(asked.unit, asked.setting.ground.features, setbacks)
    if drawn is None:
        return Sketch(0, 0)
    return Sketch(drawn.width_m, drawn.height_m, drawn.outline, drawn.lines, drawn.keep_out)


def _setback(row: Distance, sheet: Sheet, asked: DayAsked, tongue: Tongue) -> tuple[str, float, str] | None:
    kind = _DRAWN.get(row.from_)
    mapped = any(one.kind == kind for one in asked.setting.ground.features)
    ways = [option.way for line in asked.lines for option in line.options]
    bound = {
        letter_of(way.visit.recipe, asked.prescription)
        for way in ways
        if way.visit.recipe
        and any(one.product == sheet.key for one in sides(way.visit.recipe))
        and (not row.methods or way.visit.method in row.methods)
    }
    if kind is None or not mapped or not bound:
        return None
    place, letters = label_words(row.from_, tongue), ", ".join(sorted(bound))
    words = tongue.say("sketch.keep_out", distance=show(row.ft, "ft"), place=place, letters=letters)
    return kind, convert(row.ft, "ft", "m"), words
