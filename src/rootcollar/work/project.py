"""A project: everything known of one property at one moment. A folder of plain files is its first maker."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from rootcollar.choose import NO_OWN, Own, Pick
from rootcollar.label.answers import Answers
from rootcollar.label.applied import History
from rootcollar.shelf.sheet import Sheet
from rootcollar.shelf.stock import Stock
from rootcollar.site.ground import Ground
from rootcollar.survey.stand import Stand
from rootcollar.work.crew import Crew

__all__ = ["Project"]


@dataclass(frozen=True, slots=True, eq=False)
class Project:
    """An immutable snapshot. shelf: label sheets by key. stands: in key order. stock: None, nobody has looked.

    picked: choices of people, by line. label_files: names of files beside the sheets, photographs of labels.
    """

    ground: Ground
    stands: tuple[Stand, ...]
    shelf: Mapping[str, Sheet]
    crew: Crew
    answers: Answers
    history: History
    stock: Stock | None = None
    own: Own = NO_OWN
    picked: Mapping[str, Pick] = field(default_factory=dict)
    label_files: frozenset[str] = frozenset()
