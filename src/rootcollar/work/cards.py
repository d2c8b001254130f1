"""Mix cards: what to pour for a full load and for the last one, in which order, what to buy, and the working."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.choose import Choice, Prescription, Setting, line_mix_ml, mix_words, sum_worlds
from rootcollar.kernel.doubt import best
from rootcollar.kernel.formula import watch
from rootcollar.mix import Recipe
from rootcollar.work import text
from rootcollar.work.batches import batches
from rootcollar.work.crew import Crew
from rootcollar.work.day_sheet import product_words
from rootcollar.work.packet import Card
from rootcollar.work.shopping import to_buy
from rootcollar.work.working import steps_in_words

__all__ = ["mix_cards"]


def mix_cards(lines: Sequence[Choice], prescription: Prescription, setting: Setting, crew: Crew) -> tuple[Card, ...]:
    """Return a card for each mix that the cleared lines or their fallbacks use, in letter order."""
    cards = []
    for letter, recipe in prescription.letters.items():
        mine = [one for one in lines if one.recipe == recipe and one.option]
        backs = [one for one in lines if one.fallback and one.fallback.option.way.visit.recipe == recipe]
        if mine:
            cards.append(_card(letter, recipe, mine, setting, crew))
        elif backs:
            cards.append(_spare(letter, recipe, setting, crew))
    return tuple(cards)


def _card(*a): ...
def _spare(*a): ...
