"""Everything a decision looks at, in one value: facts, ground, shelf, crew, answers, history, doubt, prices."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from rootcollar.choose.option import Pick
from rootcollar.choose.own import NO_OWN, Own
from rootcollar.choose.ways import Product
from rootcollar.kernel.doubt import Doubt
from rootcollar.label import NOTHING_SAID, Aboard, Answers, History, Person
from rootcollar.reference import Reference
from rootcollar.shelf import Sheet, Stock
from rootcollar.site import Ground

__all__ = ["Setting"]


@dataclass(frozen=True, slots=True, eq=False)
class Setting:
    """What choosing knows. on: the day the plan is weighed for. wear: items at hand, None: nobody has looked.

    picked: what people have chosen otherwise, by the stand's key. own: the crew's own figures. people: the crew, empty:
    nobody is written down. aboard: what goes along. stock: what stands in the shed, None: nobody looked.
    """

    reference: Reference
    ground: Ground
    shelf: Mapping[str, Sheet]
    products: tuple[Product, ...]
    wear: frozenset[str] | None
    answers: Answers
    history: History
    doubt: Doubt
    on: date
    picked: Mapping[str, Pick] = field(default_factory=dict)
    own: Own = NO_OWN
    people: tuple[Person, ...] = ()
    aboard: Aboard = NOTHING_SAID
    stock: Stock | None = None

    def sheet(self, product: str | None) -> Sheet | None:
        """Return the label sheet of a product key; None while there is no label for it."""
        return self.shelf.get(product) if product else None
