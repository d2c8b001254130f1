"""A unit as its page shows it: one row a band of stems, the verdicts worst first, the cost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from rootcollar.choose import (
    Choice,
    Reach,
    Way,
    day_money,
    instruction,
    line_minutes,
    line_mix_ml,
    line_money,
    line_side_m2,
    minutes,
    minutes_to_share,
    mix_words,
    money_to_share,
    reaches,
    share_to_reach,
    shut_words,
    side_words,
    sum_worlds,
    unit_day_minutes,
    visits_of,
    wage_per_h,
    way_words,
)
from rootcollar.kernel.doubt import band
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.measured import area_run, distance_run
from rootcollar.web.views.months import Cell, strip_of
from rootcollar.web.views.reach import reach_runs
from rootcollar.web.views.reasons import lines_run, place_runs, runs_of
from rootcollar.web.views.standing import dead_trees
from rootcollar.web.views.working import Run, counted, money, visits, work_of
from rootcollar.work import text
from rootcollar.work.after_cut import after_cut
from rootcollar.work.dangers import minded
from rootcollar.work.packet import Said
from rootcollar.work.steps_words import steps_words
from rootcollar.work.thicket_words import ThicketWords, thicket_words
from rootcollar.work.unit_page import said as printed

__all__ = ["Card", "Row", "UnitView", "unit_cards", "unit_view"]


@dataclass(frozen=True, slots=True)
class Row:
    """One band of stems. struck: "", stop or ask. doubt: the 10-90 % band of the number above it, or nothing.

    ways: (key, words) of every way a person may choose, the chosen one first. picked: whether a person has chosen.
    not_now: that the way is shut in the month of the plan's day, and what is open.
    """

    key: str
    size: str
    verb: str
    stems: Run
    stems_doubt: str
    because: tuple[Run, ...]
    aside: tuple[tuple[str, tuple[Run, ...], tuple[Run, ...]], ...]
    struck: str
    rest: str = ""
    mix: str = ""
    months: tuple[Cell, ...] = ()
    months_words: str = ""
    best: Run | None = None
    amount: Run | None = None
    amount_doubt: str = ""
    hours: Run | None = None
    money: Run | None = None
    money_doubt: str = ""
    side: Run | None = None
    side_doubt: str = ""
    to_share: tuple[Run, ...] = ()
    steps: tuple[str, ...] = ()
    fallback: str = ""
    ways: tuple[tuple[str, str], ...] = ()
    picked: bool = False
    most: tuple[Run, ...] = ()
    after: tuple[str, ...] = ()
    not_now: str = ""


@dataclass(frozen=True, slots=True)
class UnitView:
    """A unit: about it in a sentence, its rows by plant, what the rules say, what it takes; standing: of dead trees."""

    key: str
    name: str
    about: tuple[Run, ...]
    plants: tuple[tuple[str, tuple[Row, ...]], ...]
    said: tuple[Said, ...]
    quiet: str
    cost: str
    cost_doubt: str
    hours: str
    share: str
    all_cost: str
    all_cost_doubt: str
    all_hours: str
    days: str
    minded: tuple[str, ...] = ()
    thickets: tuple[ThicketWords, ...] = ()
    standing: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Card:
    """A unit in the list: why it stands where it stands, and the worst that is said of it."""

    key: str
    name: str
    area: Run
    because: tuple[Run, ...]
    level: str
    lines: Run


@of_what_lies_open
def unit_cards(here: Open) -> tuple[Card, ...]:
    """Return every unit with stems, in the order to work them."""
    if here.plan is None:
        return ()
    return tuple(_card(here, key) for key, _ in here.plan.order)


def _card(here: Open, key: str) -> Card:
    unit = here.project.ground.units[key]
    worst = max((line.level for line in _lines(here, key)), default=Level.OK)
    return Card(key, unit.name, area_run(unit), place_runs(here, key), worst.word, lines_run(here, key))


@of_what_lies_open
def unit_view(here: Open, key: str) -> UnitView:
    """Return a unit's page."""
    lines = _lines(here, key)
    unit = here.project.ground.units[key]
    species, reached = here.setting.reference.species, reaches(lines, here.setting)
    names = dict.fromkeys(one.stand.species for one in lines)
    plants = tuple(
        (species[name].common_name, tuple(_row(one, here, reached) for one in lines if one.stand.species == name))
        for name in names
    )
    said = _once(one for line in lines for one in line.verdicts)
    weighed = {one.rule for line in lines for one in line.verdicts if one.rule}
    work = [one for one in work_of(here) if one.stand.unit == key]
    cost = sum_worlds([line_money(one.stand.stems, one.per_stem.cost) for one in work])
    return UnitView(
        key, unit.name, tuple(_about(here, key)), plants,
        tuple(printed(one) for one in said if one.level > Level.OK),
        f"{len(weighed)} rules weighed; those not named here did not object",
        *money(cost),
        text.hours(minutes(work)) if work else "",
        *_all_visits(work, here),
        minded=minded([one for one in lines if one.level < Level.STOP], here.on, here.setting.reference),
        thickets=thicket_words(here.plan, here.setting, key) if here.plan else (),
        standing=dead_trees(here, key),
    )  # fmt: skip


def _all_visits(work: list[Choice], here: Open) -> tuple[str, str, str, str, str]:
    """Return the share to reach, what all visits cost and its doubt, their hours, and what is said of the days."""
    own, setting = here.setting.own, here.setting
    extra = unit_day_minutes(work, setting)
    cost = sum_worlds([*(money_to_share(one, setting) for one in work), day_money(extra, wage_per_h(setting))])
    work_min = sum_worlds([*(minutes_to_share(one, setting) for one in work), extra])
    told = "With" if own.set_up_min or own.travel_min else "Without"
    missing = [word for word, one in (("set_up", own.set_up_min), ("travel", own.travel_min)) if one is None]
    zero = f"; {' and '.join(missing)} not said in own.toml, so counted as 0" if missing else ""
    days = f"{told} setting up and travel of each day{zero}."
    return f"{100 * share_to_reach(setting):.3g} %", *money(cost), text.hours(work_min), days


def _lines(here: Open, key: str) -> list[Choice]:
    choices = here.plan.choices if here.plan else ()
    mine = [one for one in choices if one.stand.unit == key]
    return sorted(mine, key=lambda one: (one.stand.species, one.stand.band_cm))


def _about(here: Open, key: str) -> Iterator[Run]:
    unit = here.project.ground.units[key]
    kind = (unit.site_class or "kind of place not said").replace("_", " ")
    beneath = {
        None: "nobody has said what stands beneath",
        True: "wanted plants beneath",
        False: "nothing wanted beneath",
    }
    worked = "" if unit.worked_m2 is None else f" ({text.acres(unit.worked_m2)} of it worked)"
    yield from (area_run(unit), Run(f"{worked}, {kind}; water "), distance_run(unit, "water"))
    yield Run(f"; {beneath[unit.wanted_beneath]}.")


def _row(line: Choice, here: Open, reached: Mapping[str, tuple[Reach, ...]]) -> Row:
    stand, option, size = line.stand, line.option, text.size(line.stand.band_cm)
    aside = tuple(
        (way_words(one.way), runs_of(one.why, stand.key, one.way), runs_of(one.wins, stand.key, one.way))
        for one in line.set_aside
    )
    if option is None:
        return Row(
            stand.key, size, "Leave for now", *_stems(line, size), (Run(line.because),), aside, "stop", ways=_ways(line)
        )
    verb, rest = instruction(option.way)
    poured = line_mix_ml(stand.stems, option.per_stem.mix_ml)
    side, side_doubt = side_words(line_side_m2(stand.stems, option.per_stem.side_m2))
    cost, cost_doubt = money(line_money(stand.stems, option.per_stem.cost))
    cells, months_words, best_run = strip_of(line, here.setting)
    return Row(
        stand.key, size, verb, *_stems(line, size), runs_of(line.why, stand.key, option.way), aside,
        {Level.STOP: "stop", Level.ASK: "ask"}.get(line.level, ""),
        rest=rest,
        mix=_mix(line, here),
        months=cells,
        months_words=months_words,
        best=best_run,
        amount=_number(line, "mix", text.gallons(band(poured).best), f"mix for {size}") if line.recipe else None,
        amount_doubt=text.span(poured) if line.recipe else "",
        hours=_number(line, "hours", text.hours(line_minutes(stand.stems, option.per_stem.minutes)), f"work on {size}"),
        money=_number(line, "cost", cost, f"cost of {size}"),
        money_doubt=cost_doubt,
        side=_number(line, "side", side, f"ground hit beside {size}") if line.recipe else None,
        side_doubt=side_doubt,
        to_share=tuple(_to_share(line, here, size)),
        steps=steps_words(line, here.setting),
        fallback=f"{line.fallback.trigger}: {way_words(line.fallback.option.way)}" if line.fallback else "",
        ways=_ways(line),
        picked=stand.key in here.project.picked,
        most=reach_runs(line, reached.get(stand.key, ())) if line.is_work else (),
        after=after_cut(option, here.setting) if line.is_work else (),
        not_now=shut_words([line], here.on.month) if line.level < Level.STOP else "",
    )  # fmt: skip


def _number(line: Choice, what: str, words: str, about: str) -> Run:
    return Run(words, f"/choose/working/{what}/{line.stand.key}", about)


def _to_share(line: Choice, here: Open, size: str) -> Iterator[Run]:
    """Yield what all visits to a line take until the share is dead, whose numbers open."""
    often, doubt = visits(visits_of(line, here.setting))
    cost, cost_doubt = money(money_to_share(line, here.setting))
    yield Run(f"To {100 * share_to_reach(here.setting):.3g} % of the stems dead: ")
    yield _number(line, "visits", often, f"visits to {size}")
    yield Run(f" ({doubt}), " if doubt else ", ")
    yield _number(line, "all-hours", text.hours(minutes_to_share(line, here.setting)), f"work of all visits to {size}")
    yield Run("; ")
    yield _number(line, "all-cost", cost, f"cost of all visits to {size}")
    yield Run(f" ({cost_doubt})" if cost_doubt else "")


def _stems(line: Choice, size: str) -> tuple[Run, str]:
    words, doubt = counted(line.stand.stems)
    return _number(line, "stems", words, f"stems of {size}"), doubt


def _mix(line: Choice, here: Open) -> str:
    """Return a line's mix by its letter; nothing where it has none."""
    recipe = line.recipe
    if recipe is None:
        return ""
    letters = here.plan.letters if here.plan else {}
    letter = next((name for name, one in letters.items() if one == recipe), "")
    return f"Mix {letter}: {mix_words(recipe, here.setting.reference.formulations[recipe.formulation].words)}"


def _ways(line: Choice) -> tuple[tuple[str, str], ...]:
    """Return what a person may choose for a line: what is chosen, its fallback, what was set aside but open.

    Then what only a source advises against. Two products alike in words are told apart by their names.
    """
    found = [*(one.way for one in line.options), *(one.way for one in line.set_aside if one.open)]
    against = [one.way for one in line.set_aside if one.own_reason]
    words = {way.key: way_words(way) for way in found}
    often = Counter(words.values())
    told = {way.key: words[way.key] + (_product(way) if often[words[way.key]] > 1 else "") for way in found}
    told |= {way.key: f"{way_words(way)}: a source advises against it" for way in against}
    left = (("ranking", "leave it for now"),) if line.option is None and told else ()
    return (*left, *told.items())


def _product(way: Way) -> str:
    recipe = way.visit.recipe
    return f" ({recipe.product or recipe.formulation})" if recipe else ""


def _once(said: Iterable[Verdict]) -> list[Verdict]:
    """Return verdicts worst first, alike ones once."""
    found = {(one.level, one.rule, one.because): one for one in said}
    return list(worst_first(found.values()))
