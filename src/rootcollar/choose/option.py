"""What choosing is made of: a way, its figures per stem, an option, a choice, and what was set aside."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import TYPE_CHECKING, Any, Literal, overload

from rootcollar.choose.cost import expected
from rootcollar.kernel.doubt import Worlds, sure
from rootcollar.kernel.verdict import Level, Verdict, worst
from rootcollar.label import Heard
from rootcollar.mix.recipe import Recipe, Treatment, Visit
from rootcollar.reference import MethodRow, StepRow
from rootcollar.survey.stand import Stand

if TYPE_CHECKING:
    from rootcollar.choose.first import Place

__all__ = [
    "Choice",
    "Fallback",
    "Figured",
    "Gate",
    "Later",
    "Option",
    "PerStem",
    "Pick",
    "Piece",
    "Prescription",
    "SetAside",
    "Way",
    "joined",
    "plain",
]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a reason in words, so that a number in it can be asked how it was come by.

    figure: which number of the way the words are, "" for words alone. kill: share dying of a visit. minutes: work on
    one stem. per_kill: expected cost of a stem killed. cost: expected cost of a visit to one stem. counted: share that
    alone would cost as much per stem killed. needed: share at which the way would win. first: what the chosen way
    costs per stem killed. side: ground hit beside one stem. minutes_at, mix_at, price_at: work, mix and price of
    product at which the way would win.
    """

    words: str
    figure: Literal[
        "", "kill", "minutes", "per_kill", "cost", "counted", "needed", "first", "side", "minutes_at", "mix_at",
        "price_at",
    ] = ""  # fmt: skip


def plain(words: str) -> tuple[Piece, ...]:
    """Return a reason without a number to ask about."""
    return (Piece(words),) if words else ()


class Later(Sequence[Piece]):
    """A reason put into words when it is read: of thousands of ways set aside few reasons are ever read."""

    __slots__ = ("_at", "_make", "_of")

    def __init__(self, make: Callable[[Any, int], Sequence[Piece]], of: object, at: int) -> None:
        """Keep what makes the words, and what of. make: gives the same each time."""
        self._make, self._of, self._at = make, of, at

    @overload
    def __getitem__(self, at: int) -> Piece: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Piece]: ...
    def __getitem__(self, at: int | slice) -> Piece | Sequence[Piece]:
        """Return a piece, or some."""
        return self._make(self._of, self._at)[at]

    def __len__(self) -> int:
        """Return how many pieces there are."""
        return len(self._make(self._of, self._at))

    def __eq__(self, other: object) -> bool:
        """Return whether the pieces are the same."""
        return isinstance(other, Sequence) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        """Return the hash of the pieces."""
        return hash(tuple(self))

    def __repr__(self) -> str:
        """Return the pieces as they are written."""
        return repr(tuple(self))


def joined(pieces: Iterable[Piece]) -> str:
    """Return a reason in words."""
    return "".join(one.words for one in pieces)


@dataclass(frozen=True, slots=True)
class Gate:
    """Why a way is shut for a stand, and what would open it. asks: it is shut because a fact is not known.

    own_reason: a source advises against it, and a person may do it all the same, with a reason of their own.
    """

    because: str
    would_win_if: str
    asks: bool = False
    own_reason: bool = False


@dataclass(frozen=True, slots=True)
class Way:
    """One way that the sources give for a species, with one product.

    treatment: the visits. rows: the source rows behind it, best first. strength_because: how the strength was
    come by, in words with sources. despite: what a source says against it, where a person does it all the same.
    step: the row that a way of two visits rests on.
    """

    treatment: Treatment
    rows: tuple[MethodRow, ...]
    strength_because: str = ""
    despite: str = ""
    step: StepRow | None = None

    @property
    def visit(self) -> Visit:
        """The visit that does the killing: the last one."""
        return self.treatment[-1]

    @property
    def methods(self) -> tuple[str, ...]:
        """The methods of its visits, in order."""
        return tuple(one.method for one in self.treatment)

    @property
    def months(self) -> frozenset[int]:
        """The months in which any of its visits may be done."""
        return frozenset[int]().union(*(one.months for one in self.treatment))

    @property
    def key(self) -> str:
        """A stable name to break ties by: method, product or formulation, carrier; of two steps, theirs before it."""
        recipe = self.visit.recipe
        mix = f"{recipe.product or recipe.formulation}/{recipe.carrier}" if recipe else "-"
        return f"{f'{self.step.key}/' if self.step else ''}{self.visit.method}/{mix}"


@dataclass(frozen=True, slots=True, eq=False)
class Means:
    """What a stem killed is expected to cost [money], in parts that need no draw of doubt where a stand is.

    work: of the work on level ground. steep: of what a slope of 100 % adds to it. mix: of the mix. walk: money for each
    minute between two stems, as worlds, because that differs from stand to stand.
    """

    work: float
    steep: float
    mix: float
    walk: Worlds


@dataclass(frozen=True, slots=True, eq=False)
class PerStem:
    """One template's figures for one stem and one visit, as worlds.

    kill: share that dies of a visit. mix_ml: finished mix [mL]. minutes: work [min]. cost: money, of the placeholder
    or own prices. cost_per_kill: expected cost to kill one stem. kill_because: which trial, in words.
    side_m2: ground on which other plants are hit beside it [m2]; no cost has it in it. side_because: in words. rates:
    what an hour of work, a litre of product and a litre of carrier were taken to cost [money].
    own_time: whose minutes they are, where they are not a guess. each: of two steps, the minutes of either on level
    ground. means: what it costs to kill a stem, in parts, before its ground was looked at.
    mean_cost_per_kill: its mean over the doubt, kept because every ranking asks for it.
    """

    kill: Worlds
    mix_ml: Worlds
    minutes: Worlds
    cost: Worlds
    cost_per_kill: Worlds
    dose_ml: float | None = None
    dose_per: str = ""
    kill_because: tuple[Piece, ...] = ()
    dose_because: str = ""
    side_m2: Worlds = field(default_factory=lambda: sure(0.0))
    side_because: tuple[Piece, ...] = ()
    rates: tuple[float, float, float] = (0.0, 0.0, 0.0)
    own_time: str = ""
    each: tuple[Worlds, ...] = ()
    means: Means | None = None
    mean_cost_per_kill: float = field(init=False)

    def __post_init__(self) -> None:
        """Work out what every ranking asks for."""
        object.__setattr__(self, "mean_cost_per_kill", expected(self.cost_per_kill))

    @property
    def mean_cost(self) -> float:
        """The mean cost of a visit over the doubt [money]."""
        return expected(self.cost)


@dataclass(frozen=True, slots=True, eq=False)
class Figured:
    """A way with its figures for one stem, whatever the rules say of it."""

    way: Way
    per_stem: PerStem


@dataclass(frozen=True, slots=True, eq=False)
class Option:
    """A way for a stand, with its figures and what the rules say of it.

    figures: makes its figures for one stem, the same each time: of thousands of options those of few are ever asked
    for. per_kill: what a stem killed is expected to cost [money], by which options are put in order.
    """

    stand: Stand
    way: Way
    figures: Callable[[], PerStem]
    per_kill: float
    heard: Heard

    @property
    def per_stem(self) -> PerStem:
        """Its figures for one stem where the stand is."""
        return self.figures()

    @property
    def verdicts(self) -> tuple[Verdict, ...]:
        """What the rules say of it; made when it is read, for most of what is said is never asked for."""
        return self.heard.of(self.stand.key)

    @property
    def level(self) -> Level:
        """The worst word said of it."""
        return self.heard.level

    @property
    def figured(self) -> Figured:
        """The way and its figures, without the stand."""
        return Figured(self.way, self.per_stem)


@dataclass(frozen=True, slots=True)
class Pick:
    """A way that a person has chosen for a stand, by its key, with the reason, who and when."""

    way: str
    reason: str
    by: str
    on: date


@dataclass(frozen=True, slots=True)
class SetAside:
    """A way that was not chosen, why, and what would make it win (wins).

    stop: the rule's word, where a rule struck it. per_kill: what it costs to kill a stem, where it was only dearer.
    open: whether a person may choose it all the same, because nothing known shuts or stops it. own_reason: whether
    only a source's advice shuts it. level: the worst the rules say of it, where they weighed it. unbeaten: whether no
    other open way beats it in cost, visits, ground hit beside and products together; asked when it is read.
    """

    way: Way
    why: Sequence[Piece]
    wins: Sequence[Piece]
    asks: bool = False
    stop: Verdict | None = None
    per_kill: float | None = None
    open: bool = False
    own_reason: bool = False
    level: Level = Level.OK
    unbeaten: Callable[[], bool] | None = field(default=None, compare=False, repr=False)

    @property
    def front(self) -> bool:
        """Whether no other open way beats it in everything; a way that is shut or stopped is on no front."""
        return self.unbeaten is not None and self.unbeaten()

    @property
    def because(self) -> str:
        """Why it was not chosen, in words."""
        return joined(self.why)

    @property
    def would_win_if(self) -> str:
        """What would make it win, in words."""
        return joined(self.wins)


@dataclass(frozen=True, slots=True)
class Fallback:
    """The second way, weighed like the first, and when to turn to it."""

    option: Option
    trigger: str


@dataclass(frozen=True, slots=True, eq=False)
class Choice:
    """What to do with a stand, and why. option None: no way is open, leave it."""

    stand: Stand
    option: Option | None
    why: tuple[Piece, ...]
    fallback: Fallback | None = None
    set_aside: Sequence[SetAside] = ()
    total_verdicts: tuple[Verdict, ...] = ()

    @property
    def because(self) -> str:
        """Why this way, or why none, in words."""
        return joined(self.why)

    @property
    def verdicts(self) -> tuple[Verdict, ...]:
        """Everything said of the line: of the option, and of the totals it adds to; of a line left, its stops."""
        if self.option is None:
            stops = {one.stop.rule: one.stop for one in self.set_aside if one.stop is not None}
            return tuple(stops.values())
        return (*self.option.verdicts, *self.total_verdicts)

    @property
    def level(self) -> Level:
        """The worst word said of the line; a line with no open way is struck."""
        return max(self.option.level, worst(self.total_verdicts)) if self.option else Level.STOP

    @property
    def is_work(self) -> bool:
        """Whether the line is work: it has a way, and nothing said of it stops or asks."""
        return self.level < Level.ASK

    @property
    def options(self) -> tuple[Option, ...]:
        """All that may be done to the stand: the option, and its fallback if it has one; none for a line left."""
        return tuple(one for one in (self.option, self.fallback.option if self.fallback else None) if one is not None)

    @property
    def way(self) -> Way:
        """The chosen way. Raises ValueError for a line that is left."""
        return self._chosen().way

    @property
    def per_stem(self) -> PerStem:
        """The chosen way's figures for one stem. Raises ValueError for a line that is left."""
        return self._chosen().per_stem

    @property
    def recipe(self) -> Recipe | None:
        """The mix of the chosen way, if it has one."""
        return self.option.way.visit.recipe if self.option else None

    def _chosen(self) -> Option:
        if self.option is None:
            raise ValueError(f"{self.stand.key} is left: no way was chosen")
        return self.option


@dataclass(frozen=True, slots=True, eq=False)
class Prescription:
    """One choice a stand, in stand-key order; the units in the order to work them, each with its reason.

    decided: the choices as they were before the sums of the plan were weighed. places: why, unit by unit, with figures.
    """

    choices: tuple[Choice, ...]
    order: tuple[tuple[str, str], ...]
    letters: Mapping[str, Recipe] = field(default_factory=dict)
    decided: tuple[Choice, ...] = ()
    places: tuple[Place, ...] = ()
