"""One instruction for a mixed thicket: by thickness told by the body, whatever the kind, chosen over all there are.

In a thicket nobody sorts stems by kind. At most three bands, two mixes and two passes; what is to
stay is flagged first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise, product

from rootcollar.choose.cost import expected
from rootcollar.choose.decide import open_ways
from rootcollar.choose.judge import total_verdicts
from rootcollar.choose.kinds import Kind, OfKind, kind_of, ways_of_kind
from rootcollar.choose.option import Choice, Option
from rootcollar.choose.passes import Pass, passes_of
from rootcollar.choose.setting import Setting
from rootcollar.choose.visits import money_to_share
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.label import Weigher
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import BodySize
from rootcollar.survey.stand import Stand

__all__ = ["Band", "OneInstruction", "Thicket", "one_instruction", "thickets"]

MOST_BANDS, MOST_MIXES, MOST_PASSES = 3, 2, 2  # ours: as much as a crew keeps in mind among thorns
_BOTH_SIDES = "foliar"  # wets whatever stands beside: never where natives stand inside, or may

_Doing = tuple[tuple[str, ...], Recipe | None]  # what is done to a stem, whatever its kind: methods in order, and mix


@dataclass(frozen=True, slots=True, eq=False)
class Band:
    """Stems of a thickness, told by the body, treated alike. over: thinner are another band's; upto: thicker are.

    lines: the stands in it, each with its option.
    """

    over: BodySize | None
    upto: BodySize | None
    lines: tuple[Choice, ...]

    @property
    def doing(self) -> _Doing:
        """What is done to each stem of it."""
        return _doing(self.lines[0])


@dataclass(frozen=True, slots=True, eq=False)
class OneInstruction:
    """What is done in a thicket. cents: to the share of stems dead, all kinds together [1/100 of the money].

    said: what the rules say of the lines and of what they come to.
    """

    bands: tuple[Band, ...]
    passes: tuple[Pass, ...]
    cents: int
    said: tuple[Verdict, ...] = ()

    @property
    def lines(self) -> tuple[Choice, ...]:
        """All its lines, thinnest band first."""
        return tuple(line for band in self.bands for line in band.lines)

    @property
    def recipes(self) -> tuple[Recipe, ...]:
        """Its mixes, each once."""
        found = (band.doing[1] for band in self.bands)
        return tuple(dict.fromkeys(one for one in found if one is not None))

    @property
    def level(self) -> Level:
        """The worst word said of it."""
        return max((one.level for one in self.said), default=Level.OK)


@dataclass(frozen=True, slots=True, eq=False)
class Thicket:
    """Plants of several kinds that stand mixed on a unit.

    keep_inside: natives to flag and leave; None: nobody has said. instruction: None where no one treatment does for
    all, or a rule stops it: why_none. by_kind_cents: what choosing for each kind and size by itself costs to the share,
    of the same lines. left: lines that no way is open for.
    """

    unit: str
    name: str
    keep_inside: str | None
    instruction: OneInstruction | None
    by_kind_cents: int
    left: tuple[Choice, ...] = ()
    why_none: str = ""


def thickets(choices: Sequence[Choice], setting: Setting) -> tuple[Thicket, ...]:
    """Return every thicket of several kinds with its one instruction, by unit and name."""
    groups: dict[tuple[str, str], list[Choice]] = {}
    for one in choices:
        if one.stand.thicket:
            groups.setdefault((one.stand.unit, one.stand.thicket), []).append(one)
    mixed = [found for _, found in sorted(groups.items()) if len({one.stand.species for one in found}) > 1]
    if not mixed:
        return ()
    weigher = Weigher(setting.answers, setting.on, setting.shelf)
    known: dict[Kind, tuple[OfKind, ...]] = {}
    for one in (line for found in mixed for line in found):
        if kind_of(one.stand) not in known:
            known[kind_of(one.stand)] = ways_of_kind(one.stand, setting, weigher)
    return tuple(_thicket(found, setting, known, weigher) for found in mixed)


def _thicket(
    lines: Sequence[Choice], setting: Setting, known: Mapping[Kind, tuple[OfKind, ...]], weigher: Weigher
) -> Thicket:
    left = tuple(one for one in lines if one.option is None)
    done = [one for one in lines if one.option is not None]
    keep = _kept(lines)
    by_kind = sum(_cents(one, setting) for one in done)
    ways = {one.stand: open_ways(one.stand, setting, known, weigher) for one in done}
    found, why = one_instruction(ways, keep, setting) if done else (None, "no way is open for any of it")
    first = lines[0].stand
    return Thicket(first.unit, first.thicket, keep, found, by_kind, left, why)


def _kept(lines: Sequence[Choice]) -> str | None:
    """Return what is to stay inside, all rows together; None as soon as one row of them does not say."""
    said = [one.stand.keep_inside for one in lines]
    named = list(dict.fromkeys(one for one in said if one))
    if named:
        return "; ".join(named)
    return None if None in said else ""


def one_instruction(
    ways: Mapping[Stand, Sequence[Option]], keep: str | None, setting: Setting
) -> tuple[OneInstruction | None, str]:
    """Return the cheapest instruction that the rules do not stop, and "", or None and why there is none.

    Costs are those to the share of stems dead. ways: what is open for each stand. keep: what is to stay inside, None:
    nobody has said; unless somebody looked and found nothing, leaves are not sprayed. With a label before those
    without; ties go to fewer passes, then fewer bands, then by key.
    """
    table = {stand: _by_doing(stand, options, keep, setting) for stand, options in ways.items()}
    ranked = sorted(_all(table, setting), key=_rank)
    if not ranked:
        return None, f"no one treatment by thickness is open for every kind in it{_at_odds(table, setting)}"
    stopped = ""
    for one in ranked:
        said = _said(one, setting)
        worst = worst_first(said)[0] if said else None
        if worst is None or worst.level < Level.STOP:
            return replace(one, said=said), ""
        stopped = stopped or worst.because
    return None, f"what it comes to is stopped: {stopped}"


def _at_odds(table: Mapping[Stand, Mapping[_Doing, object]], setting: Setting) -> str:
    """Say which two kinds of the same thickness share no treatment; nothing where it is mixes or passes that lack."""
    names = setting.reference.species
    for one, other in combinations(table, 2):
        alike = not any(
            min(_middle(one), _middle(other)) <= size.diameter_cm.value < max(_middle(one), _middle(other))
            for size in setting.reference.body
        )
        if alike and not set(table[one]) & set(table[other]):
            return f": {names[one.species].common_name} and {names[other.species].common_name} of a size share none"
    return ", with two mixes in two passes"


def _by_doing(
    stand: Stand, options: Sequence[Option], keep: str | None, setting: Setting
) -> dict[_Doing, tuple[Choice, int]]:
    """Return what may be done to a stand, each with its line and what it costs to the share [1/100 of the money]."""
    found: dict[_Doing, tuple[Choice, int]] = {}
    for option in options:
        if keep != "" and _BOTH_SIDES in option.way.methods:
            continue
        line = Choice(stand, option, ())
        cents = _cents(line, setting)
        if _doing(line) not in found or cents < found[_doing(line)][1]:
            found[_doing(line)] = line, cents
    return found


def _all(table: Mapping[Stand, Mapping[_Doing, tuple[Choice, int]]], setting: Setting) -> Iterator[OneInstruction]:
    """Yield every instruction: each way to part the stems by the body, with each treatment open for all of a band."""
    sizes = setting.reference.body
    for many in range(MOST_BANDS):
        for cuts in combinations(sizes, many):
            parts = _parted(table, cuts)
            if parts is None:
                continue
            shared = [_open_for_all([table[one] for one in stands]) for _, _, stands in parts]
            for doings in product(*shared):
                found = _made(parts, doings, table)
                if found is not None:
                    yield found


def _parted(
    stands: Mapping[Stand, object], cuts: Sequence[BodySize]
) -> list[tuple[BodySize | None, BodySize | None, list[Stand]]] | None:
    """Return (over, up to, stands) of each band; None where one would be empty. A stand lies where its middle does."""
    ends = (None, *cuts, None)
    parts = []
    for over, upto in pairwise(ends):
        low = over.diameter_cm.value if over else 0.0
        high = upto.diameter_cm.value if upto else None
        inside = [one for one in stands if low < _middle(one) and (high is None or _middle(one) <= high)]
        if not inside:
            return None
        parts.append((over, upto, inside))
    return parts


def _open_for_all(each: Sequence[Mapping[_Doing, object]]) -> list[_Doing]:
    """Return the treatments open for all stands of a band, in the order of the first."""
    return [one for one in each[0] if all(one in other for other in each[1:])]


def _made(
    parts: Sequence[tuple[BodySize | None, BodySize | None, list[Stand]]],
    doings: Sequence[_Doing],
    table: Mapping[Stand, Mapping[_Doing, tuple[Choice, int]]],
) -> OneInstruction | None:
    """Return an instruction; None where it takes too many mixes or passes, or parts what is treated alike."""
    if len({mix for _, mix in doings if mix is not None}) > MOST_MIXES:
        return None
    if any(one == other for one, other in pairwise(doings)):
        return None
    bands = tuple(
        Band(over, upto, tuple(table[one][doing][0] for one in stands))
        for (over, upto, stands), doing in zip(parts, doings, strict=True)
    )
    passes = passes_of([[line.way for line in band.lines] for band in bands], MOST_PASSES)
    if passes is None:
        return None
    cents = sum(table[one][doing][1] for (_, _, stands), doing in zip(parts, doings, strict=True) for one in stands)
    return OneInstruction(bands, passes, cents)


def _rank(one: OneInstruction) -> tuple[bool, int, int, int, str]:
    bare = any(mix.product is None for mix in one.recipes)
    key = "|".join(f"{band.upto.word if band.upto else ''}:{band.lines[0].way.key}" for band in one.bands)
    return bare, one.cents, len(one.passes), len(one.bands), key


def _said(one: OneInstruction, setting: Setting) -> tuple[Verdict, ...]:
    """Return what the rules say of the lines, and of what they come to together."""
    sums = total_verdicts(one.lines, setting)
    each = [
        *(said for line in one.lines for said in line.verdicts),
        *(said for found in sums.values() for said in found),
    ]
    return tuple({(said.level, said.rule, said.because): said for said in each if said.level > Level.OK}.values())


def _doing(line: Choice) -> _Doing:
    return line.way.methods, line.way.visit.recipe


def _cents(line: Choice, setting: Setting) -> int:
    return round(100 * expected(money_to_share(line, setting)))


def _middle(stand: Stand) -> float:
    return sum(stand.band_cm) / 2
