"""The choice for one stand: every way weighed, the cheapest per stem killed taken, the rest set aside with reasons."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from rootcollar.choose.cost import expected
from rootcollar.choose.figures import per_stem
from rootcollar.choose.gates import in_season, shut, weaknesses
from rootcollar.choose.judge import line_verdicts
from rootcollar.choose.option import Choice, Fallback, Option, Pick, SetAside, Way
from rootcollar.choose.partner import with_partner
from rootcollar.choose.setting import Setting
from rootcollar.choose.ways import ways_for
from rootcollar.choose.words import trigger, way_words
from rootcollar.kernel.doubt import Worlds, best
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.reference import Species
from rootcollar.survey.stand import Stand

__all__ = ["decide"]


def decide(stand: Stand, setting: Setting) -> Choice:
    """Return the choice for a stand.

    Among the ways that no gate and no rule stops: those with a label before those without, then the least expected
    cost per stem killed in whole cents, then by name. A way that a question holds keeps its place: a worse way is no
    answer to a question. The fallback is the next of another method that is as clear. When nothing is open the stand
    is left, with the reasons. What a person has chosen goes before the ranking, but never past a gate or a stop.
    """
    species = setting.reference.species[stand.species]
    options: list[Option] = []
    aside: list[SetAside] = []
    for way in ways_for(species, setting.products, setting.reference):
        found = _weigh(in_season(way, species), species, stand, setting)
        if isinstance(found, SetAside):
            aside.append(found)
        else:
            options.append(found)
    ranked = sorted((one for one in options if one.level < Level.STOP), key=_rank)
    aside += [_stopped(one) for one in options if one.level is Level.STOP]
    if not ranked:
        return Choice(stand, None, _nothing(aside), None, tuple(aside))
    pick = setting.picked.get(stand.key)
    taken = next((one for one in ranked if pick and one.way.key == pick.way), None)
    first = taken or ranked[0]
    rest = [one for one in ranked if one is not first]
    fallback = next((one for one in rest if _can_replace(one, first)), None)
    aside = [_behind(one, first) for one in rest if one is not fallback] + aside
    if pick and taken is None:
        first = _not_followed(first, pick, aside)
    because = _chosen(pick, first, ranked[0]) if pick and taken else _because(first)
    back = Fallback(fallback, trigger(first.way)) if fallback else None
    return Choice(stand, first, because, back, tuple(aside))


def _chosen(pick: Pick, option: Option, cheapest: Option) -> str:
    """Say who chose, and what the ranking would have taken."""
    own = f"chosen by {pick.by}, {pick.on.isoformat()}: {pick.reason.rstrip('.')}"
    else_ = "" if cheapest is option else f"; the ranking has {way_words(cheapest.way)} first"
    return f"{own}{else_}; {_because(option).removeprefix('least ')}"


def _not_followed(first: Option, pick: Pick, aside: Sequence[SetAside]) -> Option:
    """Return the option with a warning that a person's choice was not followed, and why."""
    said = next((one for one in aside if one.way.key == pick.way), None)
    way, why = (way_words(said.way), said.because) if said else (pick.way, "no source and no product gives it now")
    told = Verdict(
        Level.WARN, f"the choice of {way} by {pick.by} is not followed: {why}", "choose again", about=first.stand.key
    )
    return replace(first, verdicts=(*first.verdicts, told))


def _weigh(way: Way, species: Species, stand: Stand, setting: Setting) -> Option | SetAside:
    try:
        way = with_partner(way, setting)
    except Refusal as refusal:
        return SetAside(way, refusal.limit, refusal.do)
    gate = shut(way, species, stand, setting)
    if gate is not None:
        return SetAside(way, gate.because, gate.would_win_if, gate.asks)
    try:
        figures = per_stem(way, species, stand, setting)
    except Refusal as refusal:
        return SetAside(way, refusal.limit, refusal.do)
    said = line_verdicts(way, species, stand, figures, setting)
    weak = tuple(Verdict(Level.WARN, words, rule="", about=stand.key) for words in weaknesses(way, species))
    return Option(stand, way, figures, (*said, *weak))


def _rank(option: Option) -> tuple[bool, int, str]:
    return _no_label(option), round(100 * expected(option.per_stem.cost_per_kill)), option.way.key


def _no_label(option: Option) -> bool:
    recipe = option.way.visit.recipe
    return recipe is not None and recipe.product is None


def _can_replace(option: Option, first: Option) -> bool:
    here, there = option.way.visit, first.way.visit
    return here.method != there.method and option.level <= max(first.level, Level.WARN)


def _because(option: Option) -> str:
    figures = option.per_stem
    return (
        f"least expected cost per stem killed, {_money(figures.cost_per_kill)}; {figures.kill_because}; "
        f"{best(figures.minutes):.2g} minutes a stem, guess until own times"
    )


def _behind(option: Option, first: Option) -> SetAside:
    if _no_label(option) and not _no_label(first):
        would = _money(option.per_stem.cost_per_kill)
        because = f"no label sheet of it is on the shelf; {would} per stem killed"
        return SetAside(option.way, because, "type its label", open=True)
    mine, theirs = expected(option.per_stem.cost_per_kill), expected(first.per_stem.cost_per_kill)
    if mine < theirs:
        because = f"cheaper, {_dollars(mine)} per stem killed, and another way was chosen"
        return SetAside(option.way, because, "the choice is taken back", per_kill=mine, open=True)
    needed = expected(option.per_stem.cost) / theirs if theirs else 1.0
    wins = (
        f"it killed {needed:.0%} of stems a visit (reckoned {_counted(option):.0%} with its doubt)"
        if needed <= 1
        else f"a visit cost {_dollars(theirs)} a stem or less (reckoned {_dollars(expected(option.per_stem.cost))})"
    )
    return SetAside(option.way, f"dearer: {_dollars(mine)} per stem killed", wins, per_kill=mine, open=True)


def _counted(option: Option) -> float:
    """Return the share dying of a visit that alone would cost as much per stem killed as the doubt around it does."""
    return expected(option.per_stem.cost) / expected(option.per_stem.cost_per_kill)


def _stopped(option: Option) -> SetAside:
    stop = worst_first(option.verdicts)[0]
    return SetAside(option.way, stop.because, stop.clear, stop=stop)


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


def _money(worlds: Worlds) -> str:
    return _dollars(expected(worlds))


def _dollars(amount: float) -> str:
    return f"${amount:,.2f}"
