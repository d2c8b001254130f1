"""What the crew has along beside its wear, what stands in the shed of a product, and the floors of the law."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from rootcollar.label.rule import Facts
from rootcollar.reference import NamedFigure
from rootcollar.shelf import Line, Sheet, Stock

__all__ = ["NOTHING_SAID", "Aboard", "Jugs", "aboard_facts", "jugs_of", "law_facts", "same_number"]


@dataclass(frozen=True, slots=True)
class Aboard:
    """What goes along, as the crew has written it; None: nobody has said.

    metals: what sprayers and tools are made of where a mix touches them. wash_ml: water to wash with [mL]. flush_ml:
    to flush eyes with at the mixing site [mL]. flasks: of a pint, one on each who applies. soap: soap and towels.
    labels: whether the booklets themselves ride along. files: names of the label's files that are in the folder.
    """

    metals: tuple[str, ...] | None = None
    wash_ml: float | None = None
    flush_ml: float | None = None
    flasks: int | None = None
    soap: bool | None = None
    labels: bool | None = None
    files: frozenset[str] = frozenset()


NOTHING_SAID = Aboard()


@dataclass(frozen=True, slots=True)
class Jugs:
    """The jugs of a product. versions: of their labels, as written down. twins: other sheets of the same number."""

    versions: tuple[str, ...] = ()
    twins: tuple[str, ...] = ()


def aboard_facts(aboard: Aboard, treaters: int | None, jugs: Jugs) -> Facts:
    """Return what is along and in the shed as facts. treaters: how many may treat, None while nobody has said."""
    return {"people.aboard": Line((aboard, treaters)), "shed.jugs": Line(jugs)}


def law_facts(hazard: Mapping[str, Sequence[NamedFigure]]) -> Facts:
    """Return the figures of the law that rules need. hazard: the facts of that kind, by topic."""
    return {f"law.{topic}": Line(tuple(hazard[topic])) for topic in ("wear_floor", "wash", "transport")}


def jugs_of(sheet: Sheet, shelf: Mapping[str, Sheet], stock: Stock | None) -> Jugs:
    """Return what the shed and the shelf hold beside a sheet: label versions of its lots, sheets of its number."""
    lots = stock.lots if stock else ()
    versions = dict.fromkeys(one.label_version for one in lots if one.what == sheet.key and one.left_ml > 0)
    return Jugs(tuple(one for one in versions if one), same_number(sheet, shelf.values()))


def same_number(sheet: Sheet, others: Collection[Sheet]) -> tuple[str, ...]:
    """Return the keys of other sheets with the registration number of this one; a local-need number makes another."""
    number = _number(sheet)
    return tuple(one.key for one in others if number[0] and one.key != sheet.key and _number(one) == number)


def _number(sheet: Sheet) -> tuple[str, str]:
    said = (str(sheet.says(f"identity.{one}") or "").strip() for one in ("epa_reg_no", "sln_no"))
    return next(said), next(said)
