"""The language a paper speaks: its fixed texts by key, and what else it calls by its own name."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

__all__ = ["PlantWords", "Tongue"]


@dataclass(frozen=True, slots=True)
class PlantWords:
    """A plant in a language: its name, the tells of leaf, stem and thorns, its look-alikes as (name, tell)."""

    name: str
    leaf: str
    stem: str
    thorns: str
    look_alikes: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, eq=False)
class Tongue:
    """A language. code: as in "en". names: what people call it, lower case. texts: by key, with braces to fill in.

    note: what the reader must know of the translation. plants: by species key; rules: a sentence by rule number;
    label: whole items of labels; fields: lines of a label sheet, by path. These are empty in the language that the
    reference, the rules and the labels speak anyway.
    """

    code: str
    names: tuple[str, ...]
    texts: Mapping[str, str]
    note: str = ""
    plants: Mapping[str, PlantWords] = field(default_factory=dict)
    rules: Mapping[str, str] = field(default_factory=dict)
    label: Mapping[str, str] = field(default_factory=dict)
    fields: Mapping[str, str] = field(default_factory=dict)

    def say(self, key: str, **values: object) -> str:
        """Return the text of a key with its braces filled in. Raises KeyError for a key or a value that is missing.

        >>> Tongue("en", ("english",), {"box.minutes": "treated within {time}"}).say("box.minutes", time="5 min")
        'treated within 5 min'
        """
        return self.texts[key].format_map(values)

    def group(self, name: str) -> tuple[tuple[str, str], ...]:
        """Return the texts of a group, each by the last part of its key."""
        start = f"{name}."
        return tuple((key.removeprefix(start), text) for key, text in self.texts.items() if key.startswith(start))
