"""Toxicity categories of the five routes, and the signal word they lead to. The word on the label is never replaced."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import IntEnum
from typing import Literal

from rootcollar.kernel.formula import formula, use
from rootcollar.reference import NamedFigure, named, numbers

__all__ = [
    "MEASURED",
    "ROUTES",
    "Category",
    "Route",
    "SignalWord",
    "entry_default_h",
    "signal_word",
    "toxicity_category",
    "worse_category",
]

Route = Literal["oral", "dermal", "inhalation", "eye", "skin"]
ROUTES: tuple[Route, ...] = ("oral", "dermal", "inhalation", "eye", "skin")
MEASURED: tuple[Route, ...] = ("oral", "dermal", "inhalation")  # those told by a dose, not by what is seen


class Category(IntEnum):
    """I is the most toxic, IV the least."""

    I = 1  # noqa: E741  the numeral that labels and the rule print
    II = 2
    III = 3
    IV = 4


class SignalWord(IntEnum):
    """The words of a label from the mildest to the most severe; Poison stands beside DANGER."""

    NONE = 0
    CAUTION = 1
    WARNING = 2
    DANGER = 3
    DANGER_POISON = 4

    @property
    def label(self) -> str:
        """The word as a label prints it."""
        return {SignalWord.NONE: "no word", SignalWord.DANGER_POISON: "DANGER with Poison and skull"}.get(
            self, self.name
        )


@formula(
    "1 + (figure > up_to_i) + (figure > up_to_ii) + (figure > up_to_iii)",
    gives="category",
    source="CFR15",
    figure=(0.01, 30000),
    up_to_i=(0.05, 200),
    up_to_ii=(0.5, 2000),
    up_to_iii=(2, 20000),
)
def toxicity_category(figure: float, up_to_i: float, up_to_ii: float, up_to_iii: float) -> int:
    """Return the category (1 to 4) of an LD50 [mg/kg] or LC50 [mg/L]; an edge belongs to the more toxic side [CFR15].

    up_to_i, up_to_ii, up_to_iii: the largest figure of each category, in the figure's unit.
    """
    return 1 + (figure > up_to_i) + (figure > up_to_ii) + (figure > up_to_iii)


@formula("minimum(one, other)", gives="category", source="CFR15", one=(1, 4), other=(1, 4))
def worse_category(one: int, other: int) -> int:
    """Return the more toxic of two categories, 1 to 4: the worst route counts for the whole product [CFR15]."""
    return min(one, other)


def entry_default_h(categories: Mapping[Route, Category], rows: Sequence[NamedFigure]) -> float | None:
    """Return the entry time that a label starts from under worker protection [h], 40 CFR 156.208(c) [CFR15].

    categories: of the most toxic active ingredient, not of the product; by skin contact, eye and skin irritation; by
    mouth where skin contact is not known. None where none of these is known. rows: entry_default of hazard.
    A label may differ, and its own hours hold.
    """
    routes: tuple[Route, ...] = ("dermal" if "dermal" in categories else "oral", "eye", "skin")
    known = [categories[one] for one in routes if one in categories]
    return use(numbers(named(rows, min(known).name.lower()))[0]) if known else None


def signal_word(categories: Mapping[Route, Category]) -> SignalWord:
    """Return the word that categories lead to [CFR15, 156.64]: I DANGER, II WARNING, III CAUTION, IV none.

    Poison is added where I is by mouth, skin contact or breathing, not where it is irritation of skin or eye.
    categories: of the routes that are known; with fewer than five the word is a floor. Raises ValueError for none.
    """
    worst = Category.IV
    if not categories:
        raise ValueError("no route is known")
    for found in categories.values():
        worst = Category(worse_category(worst, found))
    if worst is Category.I and any(categories.get(route) is Category.I for route in MEASURED):
        return SignalWord.DANGER_POISON
    return SignalWord(Category.IV - worst)
