"""The share of stems that dies of one visit: all rows that speak of a way, weighed, pooled as plants dead and alive."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache

from rootcollar.choose.option import Piece, Way
from rootcollar.kernel.beta import beta
from rootcollar.kernel.days import months
from rootcollar.kernel.doubt import Doubt, Worlds, band, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import add_up, formula, note, use
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.reference import KillRow, Reference, Species

__all__ = [
    "Counted", "KillPool", "as_crew", "dead_and_alive", "kill_pool", "kill_share", "kill_words", "mean_share",
    "plants_alive", "plants_dead",
]  # fmt: skip

THIS, GENUS, HABIT, ELSEWHERE, GUESS = 0, 1, 2, 3, 4
_NEAR = {GENUS: "genus", HABIT: "habit", ELSEWHERE: "elsewhere"}
_STRICT = frozenset({"mortality", "no_resprout"})
_WOODY = frozenset({"tree", "shrub", "vine"})
_LEAST_KILL = 1 / 100  # below this a way kills nothing worth costing; keeps the cost of a kill finite


@dataclass(frozen=True, slots=True)
class Counted:
    """A row as it counts for a line. near: of which plant it speaks, the nearest is 0. plants: of which it counts.

    parts: what makes it count for less, each from 0 to 1, in words.
    """

    row: KillRow
    near: int
    plants: Cited[float]
    parts: tuple[Cited[float], ...]

    @property
    def weight(self) -> float:
        """The share of its plants that counts: the parts multiplied; 1 where nothing makes it count for less."""
        return math.prod(one.value for one in self.parts)

    @property
    def share(self) -> float:
        """The share of its plants that died, as the source has it."""
        return self.row.share.best or 0.0


@dataclass(frozen=True, slots=True)
class KillPool:
    """All that is known of the kill of a way on a plant. name: of the unknown.

    rows: as they count, those of the nearest plant first, then those that count most. earlier: rows passed by, because
    the same plants were looked at again in a later season. crew: plants that no trial tells more than, of another crew.
    """

    name: str
    rows: tuple[Counted, ...]
    earlier: tuple[KillRow, ...]
    crew: Cited[float]

    @property
    def differ(self) -> tuple[Counted, Counted] | None:
        """The trials on the nearest plants that differ most, where by more than their own spread: the higher first."""
        trials = [one for one in self.rows if one.near == self.rows[0].near < GUESS]
        if not trials:
            return None
        high, low = max(trials, key=lambda one: _low(one.row)), min(trials, key=lambda one: _high(one.row))
        return (high, low) if _low(high.row) > _high(low.row) else None


@formula(
    "share * plants * weight", gives="plants", source="ours", share=(0, 1), plants=(1, 100), weight=(0.01, 1)
)  # fmt: skip
def plants_dead(share: float, plants: float, weight: float) -> float:
    """Return the dead plants that a row brings to the pool [plants]. share: that died. weight: how much it counts."""
    return share * plants * weight


@formula(
    "(1 - share) * plants * weight", gives="plants", source="ours", share=(0, 1), plants=(1, 100), weight=(0.01, 1)
)  # fmt: skip
def plants_alive(share: float, plants: float, weight: float) -> float:
    """Return the living plants that a row brings to the pool [plants]. share: that died. weight: how much it counts."""
    return (1 - share) * plants * weight


@formula("dead / (dead + alive)", gives="share", source="arithmetic", dead=(0.1, 100), alive=(0.1, 100))
def mean_share(dead: float, alive: float) -> float:
    """Return the mean of the Beta curve of plants seen dead and alive [share]."""
    return dead / (dead + alive)


@formula("plants * crew / (plants + crew)", gives="plants", source="ours", plants=(0.1, 1000), crew=(1, 100))
def as_crew(plants: float, crew: float) -> float:
    """Return how many plants of trials tell of another crew [plants]: all of few, never more than crew.

    Crews differ as if each were a draw of so many plants; that doubt stays however large a trial was.
    """
    return plants * crew / (plants + crew)


def kill_pool(way: Way, species: Species, reference: Reference) -> KillPool:
    """Return every row of kill that speaks of a way on a plant, with how much it counts.

    Trials on this plant speak; where there are none, those of its genus, then its growth form, then another. What was
    injected speaks of poured cuts on the same plant only. Our guess gives way, plant for plant, to trials.
    Raises Refusal when nobody has published or guessed a share.
    """
    fit = [(row, _near(row, species, reference)) for row in reference.kill if _fits(row, way)]
    rows = [(row, near) for row, near in fit if near is not None and (near == THIS or row.method == way.visit.method)]
    nearest = min((near for _, near in rows), default=GUESS)
    rows = [(row, near) for row, near in rows if near in (nearest, GUESS)]
    if not rows:
        raise Refusal(
            f"kill of {way.visit.method} on {species.common_name}",
            limit="no source gives one",
            do="treat a few, look back, and put in your own figure",
        )
    earlier = tuple(row for row, _ in rows if any(_again(row, other) for other, _ in rows))
    counted = [_counted(row, near, way, reference) for row, near in rows if row not in earlier]
    counted = _guess_gives_way(counted, reference.kill_weights["habit"].value)
    counted.sort(key=lambda one: (one.near, -one.plants.value * one.weight, one.row.key))
    recipe = way.visit.recipe
    mix = f"{recipe.ingredient}/{recipe.carrier}" if recipe else "none"
    name = f"kill/{species.key}/{way.visit.method}/{mix}{'/regrown' if way.step else ''}"
    return KillPool(name, tuple(counted), earlier, reference.kill_weights["crew"])


def kill_share(pool: KillPool, doubt: Doubt) -> Worlds:
    """Return the share of stems that dies of one visit, never so small that a kill could not be costed.

    World 0 is the mean of the pooled plants; the doubt is the Beta curve of as many plants as tell of another crew.
    """
    both = [dead_and_alive(one) for one in pool.rows]
    dead = add_up([one for one, _ in both], "plants", "dead of all rows")
    alive = add_up([one for _, one in both], "plants", "alive of all rows")
    mean = mean_share(dead, alive)
    tell = as_crew(dead + alive, use(pool.crew))
    return _drawn(doubt, pool.name, mean, tell)


def dead_and_alive(one: Counted) -> tuple[float, float]:
    """Return the plants that a row brings to the pool, dead and alive [plants]."""
    row = one.row
    share = use(Cited(one.share, "share of stems", row.source, row.mark, "die of a visit"))
    plants = use(one.plants)
    parts = " * ".join(f"{part.value:.6g} ({part.holds_for})" for part in one.parts)
    weight = note("weight", parts or "nothing makes it count for less", one.weight, "", "ours")
    return plants_dead(share, plants, weight), plants_alive(share, plants, weight)


def kill_words(pool: KillPool, kill: Worlds) -> tuple[Piece, ...]:
    """Return how many die of a visit, the doubt, whose figure it is most, and whether trials differ."""
    here = band(kill)
    spread = f" ({here.low:.0%}–{here.high:.0%})" if here.low < here.high else ""
    words = f"{spread} die, {_whose(pool)}"
    if pool.differ:
        words += f"; trials differ: {pool.differ[0].share:.0%} and {pool.differ[1].share:.0%}"
    return Piece("of a visit "), Piece(f"{here.best:.0%}", "kill"), Piece(words)


def _whose(pool: KillPool) -> str:
    first, *rest = (one for one in pool.rows if one.near < GUESS) if pool.rows[0].near < GUESS else pool.rows
    row = first.row
    if first.near == GUESS:
        return "our guess, no trial was found"
    counted = f", {row.n} plants" if row.n else ""
    more = f", and {len(rest)} more" if rest else ""
    whose = "trial" if first.near == THIS else "trial on other plants"
    return f"{whose}, not crew ({row.source}, {row.mark}{counted}{more})"


@lru_cache(maxsize=4096)
def _drawn(doubt: Doubt, name: str, mean: float, plants: float) -> Worlds:
    """Return the worlds of a share; kept, because every stand of a species asks for the same."""
    if not 0 < mean < 1:
        return sure(max(mean, _LEAST_KILL))
    out = doubt.worlds(name, mean, beta(mean * plants, (1 - mean) * plants)).clip(_LEAST_KILL, 1)
    out.flags.writeable = False
    return out


def _fits(row: KillRow, way: Way) -> bool:
    """Whether a row speaks of this way of working, with this ingredient in this carrier."""
    visit = way.visit
    ingredient, carrier = (visit.recipe.ingredient, visit.recipe.carrier) if visit.recipe else ("", "")
    return (
        row.method in {visit.method, "injection" if visit.method == "hack_squirt" else visit.method}
        and row.herbicide is (visit.recipe is not None)
        and (not row.ingredients or ingredient in row.ingredients)
        and row.carrier in {"", carrier, "none" if carrier == "water" else carrier}
    )


def _near(row: KillRow, species: Species, reference: Reference) -> int | None:
    """Return how near the row's plants are to this one; None: nothing can be told of it by them."""
    if row.mark is Mark.OURS:
        return GUESS if row.growth_form in {"", species.growth_form} else None
    if row.species == species.key:
        return THIS
    if row.species and _genus(reference.species[row.species]) == _genus(species):
        return GENUS
    if row.growth_form in {"", species.growth_form}:
        return HABIT
    return ELSEWHERE if {row.growth_form, species.growth_form} <= _WOODY else None


def _genus(species: Species) -> str:
    return species.scientific_name.split()[0]


def _again(row: KillRow, other: KillRow) -> bool:
    """Whether the other row is of the same treated plants, looked at in a later season."""

    def treated(one: KillRow) -> tuple[object, ...]:
        return one.source, one.species, one.method, one.ingredients, one.carrier, one.strength_pct, one.windows

    return (
        treated(row) == treated(other)
        and (row.growing_season or 0) < (other.growing_season or 0)
        and (row.growing_season is not None)
    )


def _counted(row: KillRow, near: int, way: Way, reference: Reference) -> Counted:
    weights = reference.kill_weights
    if near == GUESS:
        return Counted(row, near, weights["guess"], ())
    if row.mark is Mark.MEMORY:
        plants = weights["remembered"]
    elif row.n is None:
        plants = weights["unsized"]
    elif near != THIS and row.n > weights["other_plant"].value:
        plants = weights["other_plant"]
    else:
        plants = Cited(float(row.n), "plants", row.source, row.mark, "in the trial")
    less = {
        _NEAR.get(near, ""): near != THIS,
        "other_way": row.regrowth is not (way.step is not None),
        "together": bool(way.visit.recipe) and len(row.ingredients) != 1,
        "other_strength": _other_strength(row, way, weights["strength_apart"].value),
        "first_season": not _saw_second(row, weights["second_season"].value),
        "not_death": row.outcome not in _STRICT,
    }
    parts = [weights[name] for name, holds in less.items() if holds]
    return Counted(row, near, plants, (*parts, *_season(row, way, weights["other_season"])))


def _guess_gives_way(counted: list[Counted], least: float) -> list[Counted]:
    """Return the rows with our guess counting only as many plants as trials leave of it, down to a least part."""
    told = sum(one.plants.value * one.weight for one in counted if one.near < GUESS)

    def left(one: Counted) -> Counted:
        part = max(1 - told / one.plants.value, least)
        return replace(one, parts=(Cited(part, "", "ours", Mark.OURS, "what trials leave of a guess"),))

    return [left(one) if one.near == GUESS and told else one for one in counted]


def _other_strength(row: KillRow, way: Way, apart: float) -> bool:
    """Whether the mix was much stronger or weaker; by volume of product, for few trials tell their product's acid."""
    recipe = way.visit.recipe
    if recipe is None or not row.strength_pct or not recipe.strength_pct:
        return False
    return not 1 / apart <= row.strength_pct / recipe.strength_pct <= apart


def _saw_second(row: KillRow, after_months: float) -> bool:
    """Whether the plants were looked at in a second season after treatment or later; not where nobody tells when."""
    if row.growing_season is not None:
        return row.growing_season >= 2
    if row.months is None:
        return False
    ends = [one for one in (row.months.low, row.months.high) if one is not None]
    return (row.months.best if row.months.best is not None else sum(ends) / len(ends)) >= after_months


def _season(row: KillRow, way: Way, least: Cited[float]) -> tuple[Cited[float], ...]:
    """Return the part of the months open to the way in which the trial treated, and not less than the least."""
    treated, open_ = frozenset[int]().union(*(months(one) for one in row.windows)), way.visit.months
    share = len(treated & open_) / len(open_) if treated and open_ else 1.0
    if share == 1:
        return ()
    if share < least.value:
        return (least,)
    return (Cited(share, "", "ours", Mark.OURS, f"treated in {len(treated & open_)} of the {len(open_)} open months"),)


def _low(row: KillRow) -> float:
    return row.share.low or 0.0


def _high(row: KillRow) -> float:
    return 1.0 if row.share.high is None else row.share.high
