"""The least to wear for a task by toxicity category: a floor under the label's own list, which always wins."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from rootcollar.hazard.categories import Category, Route, SignalWord, worse_category
from rootcollar.reference import NamedFigure

__all__ = ["TASKS", "Floor", "Task", "wear_floor"]

Task = Literal["mixing", "applying", "cleaning"]
TASKS: tuple[Task, ...] = ("mixing", "applying", "cleaning")

_BY_MOUTH: tuple[Route, ...] = ("dermal", "inhalation")  # routes for which a figure by mouth stands in


@dataclass(frozen=True, slots=True)
class Floor:
    """The least to wear for one task. items: in the words of the rule's table, in its order.

    stands_in: in words, what was taken for a route whose category is not known. unknown: routes of which nothing was
    known at all, so that the floor says nothing of them.
    """

    items: tuple[str, ...]
    stands_in: tuple[str, ...] = ()
    unknown: tuple[Route, ...] = ()


def wear_floor(
    task: Task,
    categories: Mapping[Route, Category],
    word: SignalWord | None,
    rows: Sequence[NamedFigure],
    *,
    ready_to_use: bool = False,
    overhead: bool = False,
) -> Floor:
    """Return the least to wear for a task [CFR15, 156.212(e) and (i)].

    categories: of the product as sold, by route. word: its signal word, None while not known. rows: the topic
    `wear_floor` of the facts. ready_to_use: not diluted, so that nothing is loaded. overhead: sprayed above the head.
    """
    known, stands_in = _filled(categories, word)
    skin = _worse(known.get("dermal"), known.get("skin"))
    items: list[str] = []
    if skin is not None:
        items += _items(rows, f"skin_{skin.name.lower()}")
        if skin <= Category.II:
            if task == "cleaning" or (task == "mixing" and not ready_to_use):
                items += _items(rows, f"more_{task}")
            items += _items(rows, "more_overhead") if overhead else ()
    for route in ("eye", "inhalation"):
        if (found := known.get(route)) is not None:
            items += _items(rows, f"{route}_{found.name.lower()}")
    needed: tuple[Route, ...] = ("dermal", "inhalation", "eye", "skin")
    return Floor(tuple(dict.fromkeys(items)), stands_in, tuple(one for one in needed if one not in known))


def _filled(
    categories: Mapping[Route, Category], word: SignalWord | None
) -> tuple[dict[Route, Category], tuple[str, ...]]:
    """Fill what is missing: by mouth for skin contact and breathing, then by the signal word."""
    known, said = dict(categories), []
    for route in ("dermal", "inhalation", "eye", "skin"):
        if route in known:
            continue
        if route in _BY_MOUTH and "oral" in known:
            known[route] = known["oral"]
            said.append(f"{route} not known: oral {known['oral'].name} stands in")
        elif word is not None:
            known[route] = Category(Category.IV - min(word, SignalWord.DANGER))
            said.append(f"{route} not known: the signal word stands in, as {known[route].name}")
    return known, tuple(said)


def _worse(one: Category | None, other: Category | None) -> Category | None:
    if one is None or other is None:
        return other if one is None else one
    return Category(worse_category(one, other))


def _items(rows: Sequence[NamedFigure], name: str) -> tuple[str, ...]:
    """The items that the rule's table names for a category; none where it names none."""
    found = (row.figure.value for row in rows if row.name == name)
    return tuple(item for value in found if isinstance(value, tuple) for item in value)
