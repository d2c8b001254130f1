"""Days, months, plants and words of labels in the language of a sheet."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date

from rootcollar.kernel.days import MONTHS, month_runs
from rootcollar.kernel.tongue import PlantWords, Tongue
from rootcollar.label.words import flat
from rootcollar.reference import Species

__all__ = ["day_words", "label_list", "label_words", "month_words", "plant_name", "plant_words", "target_name"]

# Sources and pages inside a tell are for the facts, not for the woods.
_CITED = re.compile(r" ?\((?:[^()]*\b(?:read|memory)\b[^()]*|p\. [0-9]+)\)|^p\. [0-9]+$")


def day_words(day: date, tongue: Tongue) -> str:
    """Return a day with its weekday: "Friday 9 October 2026"."""
    weekday, month = tongue.say(f"weekday.{day.isoweekday()}"), tongue.say(f"month.{day.month}")
    return tongue.say("head.when", weekday=weekday, day=day.day, month=month, year=day.year)


def month_words(which: Iterable[int], tongue: Tongue) -> str:
    """Return months as people say them, runs joined: "September to November"; any month where it is all of them."""
    runs = month_runs(which)
    if runs == ((1, len(MONTHS)),):
        return tongue.say("season.any")
    *before, last = [_run(*one, tongue) for one in runs]
    return tongue.say("season.and", before=", ".join(before), last=last) if before else last


def _run(first: int, last: int, tongue: Tongue) -> str:
    names = tongue.say(f"month.{first}"), tongue.say(f"month.{last}")
    return names[0] if first == last else tongue.say("season.run", first=names[0], last=names[1])


def label_words(words: str, tongue: Tongue) -> str:
    """Return an item of a label in the sheet's language where it is a word that all labels use, else in quotes."""
    known = {flat(label): ours for label, ours in tongue.label.items()}
    return known.get(flat(words)) or tongue.say("label.quote", words=words)


def label_list(items: Iterable[str], tongue: Tongue) -> str:
    """Return a label's items, with commas between."""
    return ", ".join(label_words(one, tongue) for one in items)


def plant_words(species: Species, tongue: Tongue) -> PlantWords:
    """Return a plant's name, tells and look-alikes, without sources."""
    told = tongue.plants.get(species.key)
    if told is not None:
        return told
    thorns = "; ".join(one.detail for one in species.hazards if one.kind == "thorns")
    leaf, stem, thorns = (re.sub(_CITED, "", one) for one in (species.leaf.holds_for, species.stem.holds_for, thorns))
    looks = tuple((one.name, re.sub(_CITED, "", one.tell)) for one in species.look_alikes)
    return PlantWords(species.common_name, leaf, stem, thorns, looks)


def plant_name(species: Species, tongue: Tongue) -> str:
    """Return a plant's common name."""
    return plant_words(species, tongue).name


def target_name(species: Species, tongue: Tongue) -> str:
    """Return a plant's common name, with the others beside it where it is not that of the reference.

    Common names differ from country to country; maps and labels bear the English one.
    """
    name = plant_name(species, tongue)
    return name if name == species.common_name else f"{name} ({species.scientific_name}, {species.common_name})"
