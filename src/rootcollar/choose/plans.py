"""Whole-property plans side by side: as chosen, cheapest, simplest kit, least ground hit beside, without herbicide.

Every plan picks among the same ways, that no gate and no rule shuts, and its sums are weighed by the same rules. A
stand without a way under a plan is named in it, never dropped.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from rootcollar.choose.behind import like_the_first
from rootcollar.choose.cost import expected
from rootcollar.choose.decide import weighed
from rootcollar.choose.kinds import Kind, OfKind, kind_of, ways_of_kind
from rootcollar.choose.kit import best_kit
from rootcollar.choose.option import Choice, Option, Prescription, SetAside, plain
from rootcollar.choose.plan import with_sums
from rootcollar.choose.setting import Setting
from rootcollar.choose.visits import all_visits, share_to_reach, stem_visits, visits_to_share
from rootcollar.choose.words import way_words
from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import use
from rootcollar.kernel.verdict import Level
from rootcollar.label import Weigher
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import middle
from rootcollar.survey.stand import Stand

__all__ = ["PropertyPlan", "extra_mix_price", "mix_key", "plans"]

_CM2 = 10_000  # in a square metre
_Pick = Mapping[str, str]  # by stand key, the key of the way taken


@dataclass(frozen=True, slots=True, eq=False)
class PropertyPlan:
    """A plan for the whole property. key: a short name; rule: how it picks, in a sentence."""

    key: str
    name: str
    rule: str
    plan: Prescription

    @property
    def lines(self) -> tuple[Choice, ...]:
        """The lines that are done under it, held ones too: with a way that nothing strikes out."""
        return tuple(one for one in self.plan.choices if one.level < Level.STOP)

    @property
    def held(self) -> tuple[Choice, ...]:
        """The lines of it that a question holds."""
        return tuple(one for one in self.lines if not one.is_work)

    @property
    def without(self) -> tuple[tuple[Choice, str], ...]:
        """The stands without a way under it, each with why: none is open, or a rule stops what lines add up to."""
        return tuple((one, _why_not(one)) for one in self.plan.choices if one.level is Level.STOP)

    @property
    def mixes(self) -> tuple[Recipe, ...]:
        """The mixes of its lines, fallbacks aside, by key."""
        found = {mix_key(one.recipe): one.recipe for one in self.lines if one.recipe is not None}
        return tuple(found[key] for key in sorted(found))


@dataclass(frozen=True, slots=True)
class _Taken:
    """What a way takes on a whole stand until the share is dead: expected cents, and ground hit beside [cm2]."""

    key: str
    mix: str
    cents: int
    side_cm2: int


def plans(stands: Sequence[Stand], setting: Setting, chosen: Prescription) -> tuple[PropertyPlan, ...]:
    """Return the plans for a property, as chosen first. Same inputs, in whatever order, same plans.

    A way without a label is picked only where the stand has no other, as in the ranking. What people have chosen is
    followed in the first plan alone.
    """
    ordered = sorted(stands, key=lambda one: one.key)
    known: dict[Kind, tuple[OfKind, ...]] = {}
    weigher = Weigher(setting.answers, setting.on, setting.shelf)
    for one in ordered:
        if kind_of(one) not in known:
            known[kind_of(one)] = ways_of_kind(one, setting, weigher)
    taken = {one.key: _taken(one, _options(one, setting, known, weigher)[0], setting) for one in ordered}
    kit, kit_said = _kit(taken, setting)
    picks: list[tuple[str, str, str, _Pick]] = [
        ("cheapest", "Cheapest for each stand", "each stand by its cheapest way to the target", _least(taken, _cheap)),
        ("kit", "Simplest kit", kit_said, kit),
        ("side", "Least hit beside", "each stand by the way that hits least ground beside it", _least(taken, _side)),
        ("by-hand", "Without herbicide", "each stand by its cheapest way without a mix", _least(taken, _cheap, True)),
    ]
    made: dict[str, list[Choice]] = {key: [] for key, *_ in picks}
    for one in ordered:
        options, aside = _options(one, setting, known, weigher)
        for key, name, rule, pick in picks:
            option = next((each for each in options if each.way.key == pick.get(one.key)), None)
            why = f"{name}: {rule}" if option else _nothing(key, aside)
            made[key].append(Choice(one, option, plain(why), None, () if option else tuple(aside)))
    first = PropertyPlan("chosen", "As chosen", "each stand as the plan has it, with what people have chosen", chosen)
    others = (PropertyPlan(key, name, rule, with_sums(made[key], setting)) for key, name, rule, _ in picks)
    return first, *others


def mix_key(recipe: Recipe) -> str:
    """Return a stable name of a mix: product or formulation, carrier, strength, and what else is in it."""
    other = recipe.partner
    beside = f"{recipe.surfactant_pct!r}/{recipe.dye_pct!r}" + (f"/{other.key}/{other.strength_pct!r}" if other else "")
    return f"{recipe.product or recipe.formulation}/{recipe.carrier}/{recipe.strength_pct!r}/{beside}"


def extra_mix_price(setting: Setting) -> float:
    """Return what each mix after the first costs on a whole property [money]: the crew's own, or a guess of ours."""
    own = setting.own.extra_mix
    return use(middle(setting.reference.placeholders["extra_mix"])) if own is None else own


def _options(
    stand: Stand, setting: Setting, known: Mapping[Kind, tuple[OfKind, ...]], weigher: Weigher
) -> tuple[list[Option], list[SetAside]]:
    """Return the ways of a stand among which a plan may pick, and those that are shut or stopped."""
    found, aside = weighed(stand, setting, known, weigher)
    kept = {id(one.way) for one in like_the_first([each.figured for each in found])} if found else set()
    return [one for one in found if id(one.way) in kept], aside


def _taken(stand: Stand, options: Sequence[Option], setting: Setting) -> tuple[_Taken, ...]:
    share = share_to_reach(setting)
    return tuple(_takes(stand, one, share) for one in options)


def _takes(stand: Stand, option: Option, share: float) -> _Taken:
    figures, recipe = option.per_stem, option.way.visit.recipe
    times = stem_visits(figures.kill, visits_to_share(figures.kill, share))

    def whole(once: Worlds, in_one: int) -> int:
        return round(in_one * expected(all_visits(stand.stems * once, times)))

    return _Taken(
        option.way.key, mix_key(recipe) if recipe else "", whole(figures.cost, 100), whole(figures.side_m2, _CM2)
    )


def _cheap(one: _Taken) -> tuple[int, int, str]:
    return one.cents, one.side_cm2, one.key


def _side(one: _Taken) -> tuple[int, int, str]:
    return one.side_cm2, one.cents, one.key


def _least(
    taken: Mapping[str, Sequence[_Taken]], rank: Callable[[_Taken], tuple[int, int, str]], by_hand: bool = False
) -> _Pick:
    """Return the first way of each stand by a rank; by_hand: among those without a mix."""
    among = {key: [one for one in each if not (by_hand and one.mix)] for key, each in taken.items()}
    return {key: min(each, key=rank).key for key, each in among.items() if each}


def _kit(taken: Mapping[str, Sequence[_Taken]], setting: Setting) -> tuple[_Pick, str]:
    """Return the way of each stand with the best kit, and how it was found."""
    price = extra_mix_price(setting)
    lines: list[dict[str, int]] = []
    for each in taken.values():
        line: dict[str, int] = {}
        for one in each:
            line[one.mix] = min(line.get(one.mix, one.cents), one.cents)
        lines.append(line)
    kit = best_kit(lines, round(100 * price))
    carried = {key: [one for one in each if one.mix in ("", *kit.mixes)] for key, each in taken.items()}
    rule = f"each stand by its cheapest way with the mixes carried, each after the first at ${price:,.2f}; {kit.said}"
    return _least(carried, _cheap), rule


def _nothing(key: str, aside: Sequence[SetAside]) -> str:
    """Say why a stand has no way under a plan: the reasons of the ways it would have had, each once."""
    mine = [one for one in aside if key != "by-hand" or one.way.visit.recipe is None]
    told = dict.fromkeys(f"{way_words(one.way)}: {one.because}" for one in mine)
    what = "no way without herbicide is open" if key == "by-hand" else "no way is open"
    return f"{what}{'. ' if told else ''}{'; '.join(told)}"


def _why_not(line: Choice) -> str:
    return line.because if line.option is None else "; ".join(_stops(line))


def _stops(line: Choice) -> Iterator[str]:
    yield from dict.fromkeys(one.because for one in line.verdicts if one.level is Level.STOP)
