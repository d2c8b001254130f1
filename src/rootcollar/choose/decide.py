"""The choice for one stand: every way weighed, the cheapest per stem killed taken, the rest set aside with reasons."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType

from rootcollar.choose.behind import Behind, no_label
from rootcollar.choose.figures import Grounded, per_kill_on
from rootcollar.choose.gates import ground_gate, overruled, spared, unbegun
from rootcollar.choose.judge import once
from rootcollar.choose.kinds import Kind, OfKind, kind_of, of_way, ways_of_kind
from rootcollar.choose.option import Choice, Fallback, Option, PerStem, Pick, Piece, SetAside, plain
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import OnGround, on_ground
from rootcollar.choose.words import trigger, way_words
from rootcollar.kernel.doubt import best
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.label import Heard, Weigher, heard_of
from rootcollar.survey.stand import Stand

__all__ = ["decide", "open_ways", "weighed"]

_KEPT = 1024  # ours: what is heard, kept; a property has a few hundred ways, and stands of a kind hear the same


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
    found, shut = weighed(stand, setting, known, weigher or Weigher(setting.answers, setting.on, setting.shelf))
    ranked = list(found)
    pick = setting.picked.get(stand.key)
    if not ranked:
        return Choice(stand, None, plain(_nothing(shut) + _left(pick, shut)), None, tuple(shut))
    taken = next((one for one in ranked if pick and one.way.key == pick.way), None)
    first = taken or ranked[0]
    rest = [one for one in ranked if one is not first]
    fallback = next((one for one in rest if _can_replace(one, first)), None)
    ways = [(one, found[one]) for one in (first, *rest)]
    aside = Behind(ways, fallback, shut, setting)
    if pick and taken is None:
        first = _not_followed(first, pick, aside)
    # What is done against a source's advice is in no ranking.
    cheapest = next((one for one in ranked if not one.way.despite), None)
    because = _chosen(pick, first, cheapest) if pick and taken else (Piece("least "), *_because(first))
    back = Fallback(fallback, trigger(first.way)) if fallback else None
    return Choice(stand, first, because, back, aside)


def open_ways(
    stand: Stand, setting: Setting, known: Mapping[Kind, tuple[OfKind, ...]], weigher: Weigher
) -> tuple[Option, ...]:
    """Return every way for a stand that no gate shuts and no rule stops, best first. known, weigher: as in `decide`."""
    return tuple(weighed(stand, setting, known, weigher)[0])


def weighed(
    stand: Stand, setting: Setting, known: Mapping[Kind, tuple[OfKind, ...]], weigher: Weigher
) -> tuple[dict[Option, PerStem], list[SetAside]]:
    """Return every way for a stand that nothing stops, best first, and the rest with why they are shut or stopped.

    Of each way its figures before the ground of the stand was looked at. known, weigher: as `decide` has them.
    """
    options: dict[Option, PerStem] = {}
    aside: list[SetAside] = []
    ground = on_ground(stand, setting)
    for each in known.get(kind_of(stand)) or ways_of_kind(stand, setting, weigher):
        one = _spared(each, stand, setting, weigher)
        found = _weigh(one, stand, ground, setting, weigher)
        if isinstance(found, SetAside):
            aside.append(found)
        elif one.figures is not None:
            options[found] = one.figures
    aside += [_stopped(one) for one in options if one.level is Level.STOP]
    ranked = sorted((one for one in options if one.level < Level.STOP), key=_rank)
    return {one: options[one] for one in ranked}, aside


def _spared(one: OfKind, stand: Stand, setting: Setting, weigher: Weigher) -> OfKind:
    """Return a way as it is on the stand's unit: leaves only in months in which nothing wanted beneath has any."""
    way = spared(one.way, setting.ground.units[stand.unit])
    return one if way is one.way or one.plant_gate else of_way(way, None, stand, setting, weigher)


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
    if one.plant_gate is not None or one.figures is None:
        return _shut(one)
    gate = ground_gate(one.way, unit, setting.reference)
    if gate is not None:
        why = plain(unbegun(one.way, gate.because))
        return SetAside(one.way, why, plain(gate.would_win_if), gate.asks, own_reason=gate.own_reason)
    each = weigher.lines(one.templates, unit, stand.key)
    heard = _together(one, *each) if one.weak or len(each) > 1 else each[0]
    of = (one.way, one.figures, stand, ground, setting)
    return Option(stand, one.way, Grounded(*of), per_kill_on(*of), heard)


@lru_cache(maxsize=_KEPT)
def _shut(one: OfKind) -> SetAside:
    """Return a way as shut by the plant, or as what cannot be reckoned, the same for every stand of its kind."""
    gate = one.plant_gate
    if gate is None:
        return SetAside(one.way, plain(unbegun(one.way, one.refused)), plain(one.do))
    return SetAside(one.way, plain(gate.because), plain(gate.would_win_if), gate.asks, own_reason=gate.own_reason)


@lru_cache(maxsize=_KEPT)
def _together(one: OfKind, *each: Heard) -> Heard:
    """Return what the labels of a mix and the sources say together."""
    return heard_of((*once(said for told in each for said in told.said), *one.weak))


def _rank(option: Option) -> tuple[bool, int, str]:
    """Return what options of a stand are put in order by: with a label first, then cost per stem killed, then key."""
    return no_label(option.way), round(100 * option.per_kill), option.way.key


def _can_replace(option: Option, first: Option) -> bool:
    if option.way.step is not None:  # two visits, months apart, are no answer to what goes wrong on the spot
        return False
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
        *figures.side_because,
    )


def _stopped(option: Option) -> SetAside:
    stop = worst_first(option.verdicts)[0]
    return SetAside(option.way, plain(unbegun(option.way, stop.because)), plain(stop.clear), stop=stop)


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
