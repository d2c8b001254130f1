"""The loads of one mix and their jug steps, within the label's maximum."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.doubt import Worlds, best
from rootcollar.mix import Card, Limits, Recipe, card, plan_loads
from rootcollar.shelf import Sheet
from rootcollar.work.crew import Crew

__all__ = ["Batches", "batches"]

_STEP_ML = 100.0  # TODO
_JUG_ML = 3785.411784


@dataclass(frozen=True, slots=True, eq=False)
class Batches:
    """What to mix: the need as worlds [mL], the loads [mL], a card for each different load."""

    need_ml: Worlds
    loads_ml: tuple[float, ...]
    cards: tuple[Card, ...]

    @property
    def in_a_line(self) -> str:
        """The first load's steps in one line."""
        return "; ".join(self.cards[0].steps)


def batches(recipe: Recipe, need_ml: Worlds, crew: Crew, sheet: Sheet | None) -> Batches:
    """Return loads and cards for a mix. A bottle of a gallon is taken where the crew's tank is not known."""
    raise NotImplementedError
