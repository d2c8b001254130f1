"""Follow-up owed: what applied.csv says was begun, and when it must be looked at, treated again, watched for seed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from rootcollar.choose.after import LOOK, NOTHING, SEED, VISIT, bank_years, judge_years, survivors, timeline
from rootcollar.choose.figures import per_stem
from rootcollar.choose.kill import kill_pool, kill_share
from rootcollar.choose.option import PerStem, Way
from rootcollar.choose.setting import Setting
from rootcollar.choose.step_day import begun
from rootcollar.choose.sums import line_money, sum_worlds
from rootcollar.choose.visits import share_to_reach, visits_to_share
from rootcollar.choose.ways import ways_for
from rootcollar.kernel.doubt import Worlds, best, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import unwatched, use
from rootcollar.label import Applied
from rootcollar.reference import Species
from rootcollar.survey import Stand, stand_key

__all__ = ["Owed", "Part", "next_due", "owed", "owed_soon", "whole_years"]

_NOT_WORK = "look"  # the method of a row that says somebody came back, looked, and treated nothing
_SAID = {
    VISIT: "what lives is to be treated again", LOOK: "the look-back is due", SEED: "seedlings are to be looked for",
}  # fmt: skip


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """Stems treated in one way on the last visit. stems, kill, figures: None where nobody wrote or published it."""

    row: Applied
    kill: Worlds | None
    figures: PerStem | None

    def alive(self, visits: int) -> Worlds | None:
        """Return the stems that live after so many visits like the last, that one counted."""
        if self.row.stems is None or self.kill is None:
            return None
        return survivors(sure(self.row.stems), self.kill, visits)


@dataclass(frozen=True, slots=True, eq=False)
class Owed:
    """What is owed to one plant on one unit. plant: its name. kind: what comes next, due: when.

    ahead: what comes in the years after that, first the next. done: visits counted in applied.csv. last: the latest.
    area_m2: worked then. parts: what was treated on the last visit. not_known: what could not be reckoned, in words.
    """

    unit: str
    species: str
    plant: str
    kind: str
    due: date
    ahead: tuple[str, ...]
    last: date
    done: int
    area_m2: float
    parts: tuple[Part, ...]
    not_known: tuple[str, ...] = ()

    @property
    def spent(self) -> Worlds | None:
        """What the last visit cost on stems [money], which is lost if nobody comes again; None: not known of all."""
        known = [(one.row.stems, one.figures) for one in self.parts]
        told = [line_money(sure(stems), figures.cost) for stems, figures in known if stems is not None and figures]
        return sum_worlds(told) if len(told) == len(self.parts) else None

    @property
    def words(self) -> str:
        """What is owed and since when, in a clause."""
        times = "treated" if self.done == 1 else f"treated {self.done} times, last"
        return f"{self.plant} was {times} {self.last.isoformat()}: {_SAID[self.kind]}, by {self.due.isoformat()}"


def owed(setting: Setting) -> tuple[Owed, ...]:
    """Return what is still to come of everything begun, by unit and plant. Rows of plants nobody named stand apart."""
    groups: dict[tuple[str, str], list[Applied]] = {}
    for row in _plain_rows(setting.history.rows):
        groups.setdefault((row.unit, row.species), []).append(row)
    found = (_of_group(rows, setting) for _, rows in sorted(groups.items()))
    return tuple(one for one in found if one is not None)


def owed_soon(setting: Setting) -> Mapping[str, tuple[Owed, ...]]:
    """Return what is owed by unit: due already, or so soon that it may be done now; the longest owed first."""
    until = setting.on + timedelta(days=use(setting.reference.after["follow_up"]["soon"]))
    found: dict[str, tuple[Owed, ...]] = {}
    for one in sorted(owed(setting), key=lambda one: (one.due, one.species)):
        if one.due <= until:
            found[one.unit] = (*found.get(one.unit, ()), one)
    return found


def whole_years(start: date, end: date) -> int:
    """Return the whole years from one day to another; 0 for one that lies before."""
    years = end.year - start.year - ((end.month, end.day) < (start.month, start.day))
    return max(0, years)


def next_due(kinds: Sequence[str], last: date, looked: date | None, on: date, early: timedelta) -> tuple[int, date]:
    """Return which of the kinds comes next, counted from 0, and the day it is due; the number of kinds: none does.

    kinds: one, two, ... years after the last visit. looked: when somebody last looked and treated nothing; it counts
    for what was due then or soon after. What was missed for years is done once.
    """
    open_ = [at for at, kind in enumerate(kinds) if kind != NOTHING and not _seen(last, at, looked, early)]
    if not open_:
        return len(kinds), on
    missed = [at for at in open_ if _years_after(last, at + 1) <= on]
    heaviest = min(missed, key=lambda at: (kinds[at] != VISIT, kinds[at] != LOOK, at), default=open_[0])
    return heaviest, _years_after(last, open_[0] + 1)


def _seen(last: date, at: int, looked: date | None, early: timedelta) -> bool:
    return looked is not None and looked + early >= _years_after(last, at + 1)


def _years_after(day: date, years: int) -> date:
    """Return the same day some years on; of 29 February, the day before 1 March."""
    try:
        return day.replace(year=day.year + years)
    except ValueError:
        return day.replace(year=day.year + years, day=day.day - 1)


def _plain_rows(rows: Sequence[Applied]) -> tuple[Applied, ...]:
    """Return the rows without the second of a product of two ingredients, which says nothing of the stems."""
    kept: list[Applied] = []
    for row in rows:
        told = any((one.on, one.unit, one.product) == (row.on, row.unit, row.product) for one in kept)
        if not (told and row.product and not row.species and not row.method):
            kept.append(row)
    return tuple(kept)


def _of_group(rows: Sequence[Applied], setting: Setting) -> Owed | None:
    """Return what is owed for rows of one plant on one unit; None where nothing was treated or nothing comes."""
    visits = sorted({row.on for row in rows if row.method != _NOT_WORK and row.on <= setting.on})
    if not visits or _half_done(rows[0], setting):
        return None
    last = visits[-1]
    looks = [row.on for row in rows if row.method == _NOT_WORK and last <= row.on <= setting.on]
    species = setting.reference.species.get(rows[0].species)
    here = sorted((row for row in rows if row.on == last), key=lambda row: (row.method, row.diameter_cm or (0.0, 0.0)))
    parts = tuple(_part(row, species, setting) for row in here if row.method != _NOT_WORK)
    left, missing = _visits_left(parts, len(visits), setting)
    judge = max(judge_years(species, one.row.method, setting) for one in parts)
    bank = bank_years(species, setting) if species else None
    kinds = timeline(left, judge, bank or 0)
    early = timedelta(days=use(setting.reference.after["follow_up"]["soon"]))
    at, due = next_due(kinds, last, max(looks, default=None), setting.on, early)
    if at == len(kinds):
        return None
    ahead = _ahead(kinds, at, last, setting.on, timeline(max(left - 1, 0), judge, bank or 0))
    missing += _unknown(parts, species, bank, kinds[at])
    return Owed(
        rows[0].unit, rows[0].species, species.common_name if species else "a plant nobody named", kinds[at], due,
        ahead, last, len(visits), max(one.row.area_m2 for one in parts), parts, missing,
    )  # fmt: skip


def _half_done(row: Applied, setting: Setting) -> bool:
    """Return whether a first step that only prepares waits for its second: that is owed, and told as a step."""
    steps = (one for one in setting.reference.steps if row.species in one.species)
    return any(begun(row.unit, row.species, one, setting.history, setting.on) for one in steps)


def _ahead(kinds: Sequence[str], at: int, last: date, on: date, afresh: tuple[str, ...]) -> tuple[str, ...]:
    """Return what comes in the years after the next: of a visit, its own years afresh; else what is left of them."""
    if kinds[at] == VISIT:
        return afresh
    to_come = [place for place in range(at + 1, len(kinds)) if _years_after(last, place + 1) > on]
    return tuple(kinds[place] for place in to_come)


def _visits_left(parts: Sequence[Part], done: int, setting: Setting) -> tuple[int, tuple[str, ...]]:
    """Return the visits still to come until the share is dead, and what of them is not known."""
    kills = [one.kill for one in parts if one.kill is not None]
    if not kills:
        return 0, ("how many visits it takes is not known: no figure for the kill of that way on that plant",)
    needed = max(best(visits_to_share(one, share_to_reach(setting))) for one in kills)
    return max(0, int(needed) - done), ()


def _unknown(parts: Sequence[Part], species: Species | None, bank: int | None, kind: str) -> tuple[str, ...]:
    """Return what cannot be reckoned of what comes, in words."""
    found = []
    if species is None:
        found.append("which plant it was, so neither its visits nor its years of seed are known")
    elif bank is None:
        found.append(f"for how many years seed of {species.common_name} comes up is not known")
    if kind == VISIT and any(one.row.stems is None for one in parts):
        found.append("how many stems were treated is not known, so only the walk is counted")
    elif kind == VISIT and any(one.figures is None for one in parts):
        found.append("the diameter or the way is not known well enough for minutes on a stem; only the walk is counted")
    return tuple(found)


def _part(row: Applied, species: Species | None, setting: Setting) -> Part:
    way = _way_of(row, species, setting) if species else None
    if way is None or species is None:
        return Part(row, None, None)
    try:
        kill = kill_share(kill_pool(way, species, setting.reference), setting.doubt)
    except Refusal:
        return Part(row, None, None)
    if row.diameter_cm is None or row.stems is None:
        return Part(row, kill, None)
    key = stand_key(row.unit, row.species, row.diameter_cm)
    stand = Stand(key, row.unit, row.species, row.diameter_cm, sure(row.stems))
    try:
        return Part(row, kill, per_stem(way, species, stand, setting))
    except Refusal:
        return Part(row, kill, None)


def _way_of(row: Applied, species: Species, setting: Setting) -> Way | None:
    """Return the way of a row as choosing knows it: by method, then product, then ingredient; ties by key."""

    def far(way: Way) -> tuple[bool, bool, str]:
        recipe = way.visit.recipe
        product, ingredient = (recipe.product, recipe.ingredient) if recipe else ("", "")
        return product != row.product, ingredient != row.ingredient, way.key

    with unwatched():
        every = ways_for(species, setting.products, setting.reference)
    known = [one for one in every if one.visit.method == row.method]
    fit = [one for one in known if one.visit.recipe is None or one.visit.recipe.ingredient == row.ingredient]
    return min(fit, key=far, default=None)
