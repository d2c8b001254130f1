"""The mixes of a day, each once: those that are poured, and those of the fallbacks, with their labels."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from rootcollar.choose import Choice, mix_words, on_day
from rootcollar.mix import Limits, Recipe, sides
from rootcollar.shelf import Sheet, strictest
from rootcollar.work.asked import PacketAsked
from rootcollar.work.batches import limits_of
from rootcollar.work.cards import product_words

__all__ = ["DayMix", "Product", "day_mixes", "day_products", "limits_of_mix", "recipes_of", "work_lines"]


@dataclass(frozen=True, slots=True, eq=False)
class DayMix:
    """One mix of the day. lines: those it is poured for; none where it is only a fallback's.

    place: which of the plan's mixes it is, from 0. methods: the ways it is used by. sheet, partner_sheet: of its
    product and of the second one; None, no label typed.
    """

    letter: str
    place: int
    recipe: Recipe
    words: str
    lines: tuple[Choice, ...]
    methods: tuple[str, ...]
    sheet: Sheet | None
    partner_sheet: Sheet | None = None

    @property
    def each(self) -> tuple[DayMix, ...]:
        """The mix as each of its products is in it: itself, and with the partner in the first place."""
        return (
            self,
            *(
                replace(
                    self, recipe=one, words=one.product or one.formulation, sheet=self.partner_sheet,
                    partner_sheet=self.sheet,
                )
                for one in sides(self.recipe)[1:]
            ),
        )  # fmt: skip

    @property
    def strictest(self) -> Sheet | None:
        """The strictest of the labels of its products; None while one of them has no sheet."""
        sheets = [one.sheet for one in self.each]
        known = [one for one in sheets if one is not None]
        return strictest(known) if len(known) == len(sheets) else None

    @property
    def undiluted(self) -> bool:
        """Whether it is the product itself."""
        return self.recipe.carrier == "none"


@dataclass(frozen=True, slots=True, eq=False)
class Product:
    """One product of the day, and the mixes it goes into. name: as on its label, else its kind in words."""

    name: str
    sheet: Sheet | None
    mixes: tuple[DayMix, ...]

    @property
    def ingredient(self) -> str:
        """Key of what it works by."""
        return self.mixes[0].recipe.ingredient

    @property
    def letters(self) -> str:
        """The letters of its mixes: "B, D, E"."""
        return ", ".join(one.letter for one in self.mixes)


def work_lines(asked: PacketAsked) -> tuple[Choice, ...]:
    """Return the cleared lines that are work on the day; of two steps, with the one that is due."""
    found = (on_day(one, asked.day, asked.setting) for one in asked.cleared.lines)
    return tuple(one for one in found if one is not None)


def recipes_of(lines: Iterable[Choice]) -> tuple[Recipe, ...]:
    """Return the mixes of lines and their fallbacks, each once."""
    found = (option.way.visit.recipe for line in lines for option in line.options)
    return tuple(dict.fromkeys(one for one in found if one is not None))


def day_mixes(asked: PacketAsked) -> tuple[DayMix, ...]:
    """Return the mixes of the day in letter order, as they have cards."""
    lines = work_lines(asked)
    wanted = recipes_of(lines)
    letters = enumerate(asked.prescription.letters.items())
    return tuple(_mix(place, letter, recipe, lines, asked) for place, (letter, recipe) in letters if recipe in wanted)


def day_products(mixes: Sequence[DayMix]) -> tuple[Product, ...]:
    """Return the products of some mixes, each once, in the order of their first mix."""
    found: dict[str, list[DayMix]] = {}
    for mix in mixes:
        for one in mix.each:
            found.setdefault(one.recipe.product or one.recipe.formulation, []).append(one)
    return tuple(_product(tuple(ones)) for ones in found.values())


def limits_of_mix(mix: DayMix) -> Limits:
    """Return the strengths that keep to the label for every way the mix is used by: one jug serves them all."""
    each = [limits_of(mix.recipe, method, mix.sheet) for method in mix.methods]
    most = [one.max_pct for one in each if one.max_pct is not None]
    least = [one.min_pct for one in each if one.min_pct is not None]
    made = Limits(min(most, default=None), max(least, default=None))
    if mix.recipe.partner is None:
        return made
    others = [limits_of(other.recipe, method, other.sheet) for other in mix.each[1:] for method in mix.methods]
    most = [one.max_pct for one in others if one.max_pct is not None] or [mix.recipe.partner.strength_pct]
    least = [one.min_pct for one in others if one.min_pct is not None]
    return replace(made, partner_max_pct=min(most), partner_min_pct=max(least, default=None))


def _mix(place: int, letter: str, recipe: Recipe, lines: Sequence[Choice], asked: PacketAsked) -> DayMix:
    options = [option for line in lines for option in line.options if option.way.visit.recipe == recipe]
    return DayMix(
        letter,
        place,
        recipe,
        mix_words(recipe, product_words(recipe, asked.setting)),
        tuple(one for one in lines if one.recipe == recipe),
        tuple(dict.fromkeys(one.way.visit.method for one in options)),
        asked.setting.sheet(recipe.product),
        asked.setting.sheet(recipe.partner.product) if recipe.partner else None,
    )


def _product(mixes: tuple[DayMix, ...]) -> Product:
    sheet = mixes[0].sheet
    return Product(sheet.product if sheet else mixes[0].words.partition(", ")[0], sheet, mixes)
