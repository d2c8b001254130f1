"""The choice for one stand: every way weighed, the cheapest per stem killed taken, the rest set aside with reasons."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from rootcollar.choose.beside import side_words
from rootcollar.choose.cost import share_needed
from rootcollar.choose.figures import on_its_ground
from rootcollar.choose.gates import ground_gate, overruled, spared
from rootcollar.choose.judge import once
from rootcollar.choose.kinds import Kind, OfKind, kind_of, ways_of_kind, weighed
from rootcollar.choose.option import Choice, Fallback, Option, Pick, Piece, SetAside, plain
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import OnGround, on_ground
from rootcollar.choose.words import trigger, way_words
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.doubt import best
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.label import Weigher, heard_of
from rootcollar.survey.stand import Stand

__all__ = ["decide"]


def decide(
    stand: Stand,
    setting: Setting,
    known: Mapping[Kind, tuple[OfKind, ...]] = MappingProxyType({}),
    weigher: Weigher | None = None,
) -> Choice:
    """Return the choice for a stand.

    Among the ways that no gate and no rule stops: those with a label before those without, then the least expected
    cost per stem killed in whole cents, then by name. A way that a question holds keeps its place: a worse way is no
    answer to a question. The fallback is the next of another method that is as clear. When nothing is open the stand
    is left, with the reasons. What a person has chosen goes before the ranking. It may overrule what a source advises
    against, with a warning that names the source; never size, ground, a fact that is missing, or a rule's stop.
    known: the ways for kinds of stem, as `ways_of_kind` has them, where they are at hand. weigher: that weighed them.
    """
    judge = weigher or Weigher(setting.answers, setting.on, setting.shelf)
    options: list[Option] = []
    aside: list[SetAside] = []
    ground = on_ground(stand, setting)
    for one in known.get(kind_of(stand)) or ways_of_kind(stand, setting, judge):
        found = _weigh(one, stand, ground, setting, judge)
        if isinstance(found, SetAside):
            aside.append(found)
        else:
            options.append(found)
    ranked = sorted((one for one in options if one.level < Level.STOP), key=_rank)
    aside += [_stopped(one) for one in options if one.level is Level.STOP]
    pick = setting.picked.get(stand.key)
    if not ranked:
        return Choice(stand, None, plain(_nothing(aside) + _left(pick, aside)), None, tuple(aside))
    taken = next((one for one in ranked if pick and one.way.key == pick.way), None)
    first = taken or ranked[0]
    rest = [one for one in ranked if one is not first]
    fallback = next((one for one in rest if _can_replace(one, first)), None)
    aside = [_behind(one, first, setting.on.month) for one in rest if one is not fallback] + aside
    if pick and taken is None:
        first = _not_followed(first, pick, aside)
    # What is done against a source's advice is in no ranking.
    cheapest = next((one for one in ranked if not one.way.despite), None)
    because = _chosen(pick, first, cheapest) if pick and taken else (Piece("least "), *_because(first))
    back = Fallback(fallback, trigger(first.way)) if fallback else None
    return Choice(stand, first, because, back, tuple(aside))


def _chosen(pick: Pick, option: Option, cheapest: Option | None) -> tuple[Piece, ...]:
    """Say who chose, and what the ranking would have taken; cheapest None: it would have left the line."""
    own = f"chosen by {pick.by}, {pick.on.isoformat()}: {pick.reason.rstrip('.')}"
    first = "would leave it" if cheapest is None else f"has {way_words(cheapest.way)} first"
    else_ = "" if cheapest is option else f"; the ranking {first}"
    return Piece(f"{own}{else_}; "), *_because(option)


def _not_followed(first: Option, pick: Pick, aside: Sequence[SetAside]) -> Option:
    """Return the option with a warning that a person's choice was not followed, and why."""
    told = Verdict(Level.WARN, _unheeded(pick, aside), "choose again", about=first.stand.key)
    return replace(first, heard=heard_of((*first.heard.said, told)))


def _unheeded(pick: Pick, aside: Sequence[SetAside]) -> str:
    said = next((one for one in aside if one.way.key == pick.way), None)
    way, why = (way_words(said.way), said.because) if said else (pick.way, "no source and no product gives it now")
    return f"the choice of {way} by {pick.by} is not followed: {why}"


def _left(pick: Pick | None, aside: Sequence[SetAside]) -> str:
    """Say of a line that is left that a person's choice is not followed; nothing where nobody chose."""
    return f". Also, {_unheeded(pick, aside)}" if pick else ""


def _weigh(one: OfKind, stand: Stand, ground: OnGround, setting: Setting, weigher: Weigher) -> Option | SetAside:
    advised = one.plant_gate
    pick = overruled(advised, one.way, stand, setting)
    if advised is None or pick is None:
        return _open(one, stand, ground, setting, weigher)
    found = _open(replace(one, plant_gate=None), stand, ground, setting, weigher)
    if isinstance(found, SetAside):
        return found
    whose = f"for the own reason of {pick.by}, {pick.on.isoformat()} ({pick.reason.rstrip('.')})"
    told = Verdict(Level.WARN, f"done against a source, {whose}: {advised.because}", about=stand.key)
    return replace(found, heard=heard_of((*found.heard.said, told)))


def _open(one: OfKind, stand: Stand, ground: OnGround, setting: Setting, weigher: Weigher) -> Option | SetAside:
    unit = setting.ground.units[stand.unit]
    way = spared(one.way, unit)
    if way is not one.way and one.plant_gate is None:
        one = weighed(way, None, stand, setting, weigher)
    gate = one.plant_gate or ground_gate(one.way, unit, setting.reference)
    if gate is not None:
        why, wins = plain(gate.because), plain(gate.would_win_if)
        return SetAside(one.way, why, wins, gate.asks, own_reason=gate.own_reason)
    if one.figures is None:
        return SetAside(one.way, plain(one.refused), plain(one.do))
    each = weigher.lines(one.templates, unit, stand.key)
    heard = each[0]
    if one.weak or len(each) > 1:
        heard = heard_of((*once(said for told in each for said in told.said), *one.weak))
    figures = on_its_ground(one.way, one.figures, stand, ground, setting)
    return Option(stand, one.way, figures, heard)


def _rank(option: Option) -> tuple[bool, int, str]:
    return _no_label(option), round(100 * option.per_stem.mean_cost_per_kill), option.way.key


def _no_label(option: Option) -> bool:
    recipe = option.way.visit.recipe
    return recipe is not None and recipe.product is None


def _can_replace(option: Option, first: Option) -> bool:
    here, there = option.way.visit, first.way.visit
    return here.method != there.method and option.level <= max(first.level, Level.WARN)


def _because(option: Option) -> tuple[Piece, ...]:
    figures = option.per_stem
    return (
        Piece("expected cost per stem killed, "),
        Piece(_dollars(figures.mean_cost_per_kill), "per_kill"),
        Piece("; "),
        *figures.kill_because,
        Piece("; "),
        Piece(_minutes(f"{best(figures.minutes):.2g}"), "minutes"),
        Piece(f" a stem, {figures.own_time or 'guess until own times'}"),
        *_beside(option),
    )


def _beside(option: Option) -> tuple[Piece, ...]:
    """Say what is hit beside a stem: never in the cost, so always beside it."""
    if option.way.visit.recipe is None:
        return ()
    words, doubt = side_words(option.per_stem.side_m2)
    return Piece("; beside each, "), Piece(words, "side"), Piece(f" hit{f' ({doubt})' if doubt else ''}")


def _behind(option: Option, first: Option, month: int) -> SetAside:
    mine, theirs = option.per_stem.mean_cost_per_kill, first.per_stem.mean_cost_per_kill
    cost, then = Piece(_dollars(mine), "per_kill"), (*_beside(option), *_not_in(option, month))
    if _no_label(option) and not _no_label(first):
        why = Piece("no label sheet of it is on the shelf; "), cost, Piece(" per stem killed"), *then
        return SetAside(option.way, why, plain("type its label"), open=True, level=option.level)
    if mine < theirs:
        why = Piece("the ranking has it first: "), cost, Piece(" per stem killed, and another way was chosen"), *then
        wins = plain("the choice is taken back")
    else:
        why = Piece("dearer: "), cost, Piece(" per stem killed"), *then
        wins = _wins(option, theirs)
    return SetAside(option.way, why, wins, per_kill=mine, open=True, level=option.level)


def _not_in(option: Option, month: int) -> tuple[Piece, ...]:
    """Say that a way is shut in the month of the day, and when it opens; nothing where it is open."""
    named = option.way.visit.months
    return () if month in named else plain(f"; not in {MONTHS[month - 1]}, but in {name_months(named)}")


def _wins(option: Option, theirs: float) -> tuple[Piece, ...]:
    """Return what would make a dearer way win. theirs: what the chosen one costs per stem killed [money]."""
    cost = option.per_stem.mean_cost
    needed = share_needed(cost, theirs) if theirs else 1.0
    if needed > 1:
        first, own = Piece(_dollars(theirs), "first"), Piece(_dollars(cost), "cost")
        return Piece("a visit cost "), first, Piece(" a stem or less (reckoned "), own, Piece(")")
    counted = share_needed(cost, option.per_stem.mean_cost_per_kill)
    share, own = Piece(f"{needed:.0%}", "needed"), Piece(f"{counted:.0%}", "counted")
    return Piece("it killed "), share, Piece(" of stems a visit (reckoned "), own, Piece(" with its doubt)")


def _stopped(option: Option) -> SetAside:
    stop = worst_first(option.verdicts)[0]
    return SetAside(option.way, plain(stop.because), plain(stop.clear), stop=stop)


def _nothing(aside: Sequence[SetAside]) -> str:
    """Why nothing is open: the rules' stops alone where there are any, for nothing else matters while they stand."""
    stops = dict.fromkeys(one.stop.because for one in aside if one.stop is not None)
    if stops:
        return f"no way is open while a rule stops it: {'; '.join(stops)}"
    by_reason: dict[str, list[str]] = {}
    for one in aside:
        by_reason.setdefault(one.because, []).append(way_words(one.way))
    reasons = "; ".join(f"{', '.join(dict.fromkeys(ways))}: {because}" for because, ways in by_reason.items())
    return f"no way is open, so it is left for now. {reasons}" if reasons else "no source names a way; it is left"


def _minutes(number: str) -> str:
    return f"{number} minute" if number == "1" else f"{number} minutes"


def _dollars(amount: float) -> str:
    return f"${amount:,.2f}"
