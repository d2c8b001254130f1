"""What the labels say on the day sheet: weather, boxes, wear, entry, first aid; never more than they say."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from rootcollar.choose import Choice, Setting
from rootcollar.kernel.tongue import Tongue
from rootcollar.kernel.units import show
from rootcollar.mix import Recipe, sides
from rootcollar.shelf import FIELDS, SILENT, Sheet, wear
from rootcollar.work.in_tongue import label_list, label_words
from rootcollar.work.printed import closed_for
from rootcollar.work.worked import within

__all__ = ["boxes", "entry_words", "first_aid_words", "wear_rows", "weather_rows"]

_BOXES = ("wind", "air", "dry", "haze", "signs", "label")
_TASKS = ("mixing", "applying", "cleaning")
_SPANS = (("wind", "weather.wind_mph"), ("air", "weather.air_temp_f"))
_HOURS = ("rain_free", "no_rain_forecast")

Recipes = Mapping[str, Recipe]  # by letter


def weather_rows(sheets: Sequence[Sheet], recipes: Recipes, tongue: Tongue) -> tuple[tuple[str, str], ...]:
    """Return the label's weather by mix letters; what nobody has read is named; alike ones stand together."""
    by_words: dict[str, list[str]] = {}
    for sheet in sheets:
        words = "; ".join(_weather(sheet, tongue))
        unread = [
            tongue.fields.get(path) or row.words
            for path, row in FIELDS.items()
            if path.startswith("weather.") and not sheet.line(path)
        ]
        if unread:
            words = ". ".join(part for part in (words, tongue.say("weather.unread", lines=", ".join(unread))) if part)
        by_words.setdefault(words or tongue.say("label.none_of_weather"), []).append(_letters_of(sheet, recipes))
    return tuple((_once(letters), words) for words, letters in by_words.items())


def _weather(sheet: Sheet, tongue: Tongue) -> Iterator[str]:
    for name, path in _SPANS:
        low, high = sheet.says(f"{path}.low"), sheet.says(f"{path}.high")
        unit = FIELDS[f"{path}.high"].unit
        if low is not None and high is not None:
            yield tongue.say(f"weather.{name}_between", low=f"{low:g}", high=show(high, unit))
        elif low is not None:
            yield tongue.say(f"weather.{name}_least", low=show(low, unit))
        elif high is not None:
            yield tongue.say(f"weather.{name}_most", high=show(high, unit))
    for name in _HOURS:
        path = f"weather.{name}_hours"
        if (hours := sheet.says(path)) is not None:
            yield tongue.say(f"weather.{name}", hours=show(hours, FIELDS[path].unit))
    if (forbidden := sheet.says("weather.inversion_forbidden")) is not None:
        yield tongue.say("weather.inversion_forbidden" if forbidden else "weather.inversion_allowed")
    if states := sheet.says("weather.soil_states_forbidden"):
        yield tongue.say("weather.ground", states=label_list(states, tongue))
    if state := sheet.says("weather.foliage_state"):
        yield tongue.say("weather.leaves", state=label_words(state, tongue))


def boxes(lines: Iterable[Choice], setting: Setting, tongue: Tongue) -> tuple[str, ...]:
    """Return what to tick before starting.

    The label's times to leave out, and its minutes from cut to treatment, are boxes too: nobody else weighs them.
    """
    found = dict.fromkeys(tongue.say(f"box.{one}") for one in _BOXES)
    for option in (option for line in lines for option in line.options):
        visit = option.way.visit
        sheets = [setting.sheet(one.product) for one in sides(visit.recipe)] if visit.recipe else []
        for sheet in (one for one in sheets if one is not None):
            for time in sheet.says("season_exclude", visit.method) or ():
                found[tongue.say("box.not_in", time=label_words(time, tongue))] = None
            minutes = sheet.says("max_minutes_after_cut", visit.method)
            if minutes is not None:
                found[tongue.say("box.minutes", time=show(minutes, "min"))] = None
    return tuple(found)


def wear_rows(sheets: Sequence[Sheet], cuts: bool, tongue: Tongue) -> tuple[tuple[str, str], ...]:
    """Return what to wear by task, tasks with the same items together; the saw's wear is practice of the trade."""
    by_items: dict[str, list[str]] = {}
    for task in _TASKS if sheets else ():
        items = wear(sheets, task)
        words = label_list(items, tongue) if items else tongue.say("wear.not_read")
        by_items.setdefault(words, []).append(tongue.say(f"wear.{task}"))
    rows = [(", ".join(tasks).capitalize(), words) for words, tasks in by_items.items()]
    if cuts:
        rows.append((tongue.say("wear.saw"), tongue.say("wear.saw_items")))
    gloves = dict.fromkeys(tuple(sheet.says("ppe.glove_types") or ()) for sheet in sheets)
    either = tongue.say("label.or")
    rows += [
        (tongue.say("wear.gloves"), either.join(label_words(one, tongue) for one in types)) for types in gloves if types
    ]
    return tuple(rows)


def entry_words(sheets: Sequence[Sheet], recipes: Recipes, tongue: Tongue) -> str:
    """Return when people may enter again: the longest of the mixes, from the last load."""
    if not sheets:
        return tongue.say("entry.none")
    hours, letters = closed_for(sheets), ", ".join(sorted(recipes))
    first = (
        tongue.say("entry.unknown", letters=letters)
        if hours is None
        else tongue.say("entry.hours", hours=hours, letters=letters)
    )
    words = dict.fromkeys(str(one.says("entry.non_wps_entry")) for one in sheets if one.says("entry.non_wps_entry"))
    whole = " ".join((first, *(tongue.say("entry.elsewhere", words=label_words(one, tongue)) for one in words)))
    return within(whole, hours) if hours else whole


def first_aid_words(sheets: Sequence[Sheet], recipes: Recipes, tongue: Tongue) -> tuple[str, ...]:
    """Return the labels' first aid for skin and eyes by mix letters, and what holds whatever was poured."""
    by_words: dict[str, list[str]] = {}
    for sheet in sheets:
        told = {where: _aid(sheet, f"hazard.first_aid.{where}", tongue) for where in ("skin", "eyes")}
        words = " ".join(tongue.say(f"emergency.{where}", words=words) for where, words in told.items())
        by_words.setdefault(words, []).append(_letters_of(sheet, recipes))
    aid = tuple(f"{_once(letters)}: {words}" for words, letters in by_words.items())
    return (*aid, tongue.say("emergency.all"))


def _aid(sheet: Sheet, path: str, tongue: Tongue) -> str:
    line = sheet.line(path)
    if line is None:
        return tongue.say("label.not_read")
    return tongue.say("label.silent") if line.says is SILENT else label_words(str(line.says), tongue)


def _once(letters: Sequence[str]) -> str:
    """Letters of several products, each once: two of one mix have the same."""
    return ", ".join(dict.fromkeys(one for some in letters for one in some.split(", ")))


def _letters_of(sheet: Sheet, recipes: Recipes) -> str:
    return ", ".join(
        letter for letter, recipe in recipes.items() if any(one.product == sheet.key for one in sides(recipe))
    )
