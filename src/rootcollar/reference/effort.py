"""What a visit takes beside the work at the stem: thorns, what is cut, and fruit, by way of working and size."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.reference.spans import Row, Span
from rootcollar.reference.table import Table

__all__ = ["EffortRow", "read_effort"]


@dataclass(frozen=True, slots=True, kw_only=True)
class EffortRow(Row):
    """A guess until there are own times. figure: minutes of one stem; of thorns, times as long as without them.

    diameter_cm: of stems of this size [cm]; None: of all.
    """

    methods: tuple[str, ...]
    diameter_cm: Span | None
    figure: Span
    words: str

    def holds(self, method: str, diameter_cm: float) -> bool:
        """Return whether the row speaks of a way of working on stems of a size [cm]."""
        return method in self.methods and (self.diameter_cm is None or self.diameter_cm.holds(diameter_cm))


def read_effort(row: Table) -> EffortRow:
    """Return a row of effort.toml; its figure must have low, best and high. Raises ValueError for another."""
    figure = row.span("figure")
    if figure.low is None or figure.high is None or figure.best is None:
        raise row.fault("figure", "wanted low, best and high")
    return EffortRow(
        methods=row.words("methods", "method"),
        diameter_cm=row.maybe_span("diameter_cm"),
        figure=figure,
        words=row.text("words"),
        source=row.source(),
        mark=row.mark(),
    )
