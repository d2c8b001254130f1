"""Ways of two visits, one that prepares and one that kills; and how long what was treated is left standing."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.sources import Cited
from rootcollar.reference.plants import Species
from rootcollar.reference.spans import Row, Span, Window
from rootcollar.reference.table import Table

__all__ = ["HoldRow", "StepRow", "read_hold", "read_step"]


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRow(Row):
    """Two visits that a source gives for plants, by their keys. first: the method that prepares; second: that kills.

    first_windows: of the first, empty: any day. wait_days: between them [days], None: the windows alone set it.
    windows: of the second in the same year; next_windows: in the year after, empty: it is not to wait so long.
    regrowth_m: how high it then stands [m]. kills: what is killed, and by what. where: how the first cut is
    made, by its name among the texts of steps; empty: low.
    taken: how a source's words were read as days.
    """

    key: str
    species: tuple[str, ...]
    first: str
    first_windows: tuple[Window, ...]
    wait_days: Cited[Span] | None
    second: str
    windows: tuple[Window, ...]
    next_windows: tuple[Window, ...]
    regrowth_m: Cited[Span]
    kills: str
    where: str
    taken: str

    @property
    def least_days(self) -> int:
        """The least wait [days]; 0 where none is told."""
        return int(self.wait_days.value.low or 0) if self.wait_days else 0

    @property
    def most_days(self) -> int | None:
        """The longest wait [days]; None where none is told."""
        high = self.wait_days.value.high if self.wait_days else None
        return None if high is None else int(high)


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldRow(Row):
    """How long treated plants are left uncut [days]. species, growth_forms, methods: bound to; empty: not bound.

    windows: when in the year they are then cut; empty: the source names none.
    """

    species: tuple[str, ...]
    growth_forms: tuple[str, ...]
    methods: tuple[str, ...]
    days: Cited[Span]
    windows: tuple[Window, ...]

    def speaks_of(self, species: Species, method: str) -> bool:
        """Return whether it holds for a plant treated by a method."""
        return (
            (not self.species or species.key in self.species)
            and (not self.growth_forms or species.growth_form in self.growth_forms)
            and (not self.methods or method in self.methods)
        )


def read_step(row: Table) -> StepRow:
    """Return a way of two visits. Raises ValueError on any key, word or source not known."""
    return StepRow(
        key=row.text("key"),
        species=row.words("species", "species"),
        first=row.word("first", "method"),
        first_windows=tuple(one.window() for one in row.children("first_windows")),
        wait_days=row.maybe_cited("wait_days", Span),
        second=row.word("second", "method"),
        windows=tuple(one.window() for one in row.children("windows")),
        next_windows=tuple(one.window() for one in row.children("next_windows")),
        regrowth_m=row.cited("regrowth_m", Span),
        kills=row.text("kills"),
        where=row.text("where", ""),
        taken=row.text("taken", ""),
        source=row.source(),
        mark=row.mark(),
    )


def read_hold(row: Table) -> HoldRow:
    """Return how long treated plants are left uncut. Raises ValueError on any key, word or source not known."""
    return HoldRow(
        species=row.words("species", "species"),
        growth_forms=row.words("growth_forms", "growth_form"),
        methods=row.words("methods", "method"),
        days=row.cited("days", Span),
        windows=tuple(one.window() for one in row.children("windows")),
        source=row.source(),
        mark=row.mark(),
    )
