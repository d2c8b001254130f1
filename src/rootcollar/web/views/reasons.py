"""The working of a choice: the numbers in its reason and in what was set aside, and why a unit comes when it comes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from urllib.parse import quote

from rootcollar.choose import (
    Choice,
    Counted,
    Piece,
    Place,
    Way,
    dead_and_alive,
    expected,
    kill_pool,
    kill_share,
    minutes_per_stem,
    place_of,
    replay_per_kill,
    replay_stem_cost,
    share_needed,
    side_area,
    side_words,
    thickness,
    way_words,
)
from rootcollar.kernel.doubt import Worlds, band, best
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Level
from rootcollar.reference import KillRow
from rootcollar.web.desk import Open
from rootcollar.web.views.measured import measured_drawer
from rootcollar.web.views.most import MOSTS, most_drawer
from rootcollar.web.views.working import (
    Drawer,
    Run,
    Step,
    before,
    counted,
    drawer_of,
    line_of,
    mean_step,
    spread,
    stems_drawer,
)
from rootcollar.work import text

__all__ = [
    "REASONS",
    "lines_drawer",
    "lines_run",
    "lines_words",
    "order_drawer",
    "place_runs",
    "reason_drawer",
    "runs_of",
]

REASONS = ("kill", "minutes", "per_kill", "cost", "counted", "needed", "first", "side", *MOSTS)
_ABOUT = {
    "kill": "share dying of a visit", "minutes": "minutes a stem", "per_kill": "cost of a stem killed",
    "cost": "cost of a visit to one stem", "counted": "share that counts with its doubt",
    "needed": "share it would need", "first": "cost of a stem killed by the chosen way",
    "side": "ground hit beside a stem", **MOSTS,
}  # fmt: skip
_AGAIN = "the same plants were looked at again in a later season"
_DIFFER = "by more than their own spread, and both are kept"


def runs_of(pieces: Sequence[Piece], line: str, way: Way) -> tuple[Run, ...]:
    """Return a reason whose numbers open. line: of which it is a reason; way: whose numbers they are."""
    asked, of = f"{line}?way={quote(way.key, safe='')}", way_words(way)
    return tuple(
        Run(one.words, f"/choose/reason/{one.figure}/{asked}", f"{_ABOUT[one.figure]}, {of}") if one.figure
        else Run(one.words)
        for one in pieces
    )  # fmt: skip


def reason_drawer(here: Open, what: str, line: str, key: str) -> Drawer:
    """Return how a number in a reason was worked out. what: one of REASONS; key: of a way weighed for the line.

    Raises NotFound for another number, line or way.
    """
    if what not in REASONS:
        raise NotFound("number of a reason", what, list(REASONS))
    choice = line_of(here, line, "a way")
    weighed = [*(one.way for one in choice.options), *(one.way for one in choice.set_aside if one.open)]
    way = next((one for one in weighed if one.key == key), None)
    if way is None:
        raise NotFound("way that was weighed for this line", key, [one.key for one in weighed])
    if what == "kill":
        return _kill(here, choice, way)
    if what == "minutes":
        with watch() as steps:
            found = minutes_per_stem(way, choice.stand, here.setting)
        low, high = (f"{one:.2g}" for one in (band(found).low, band(found).high))
        return drawer_of(
            f"{best(found):.2g} minutes a stem", spread(low, high, found), steps, here.setting.reference.sources
        )
    if what in MOSTS:
        return most_drawer(here, what, choice, way)
    return _side(here, way) if what == "side" else _money(here, what, choice, way)


def _side(here: Open, way: Way) -> Drawer:
    with watch() as steps:
        found = side_area(way, here.setting)
    words, doubt = side_words(found)
    drawer = drawer_of(f"{words} hit beside a stem", doubt, steps, here.setting.reference.sources)
    feet = convert(best(found), "m2", "sq ft")
    shown = f"{best(found):.6g} m2 / {convert(1, 'sq ft', 'm2'):.6g} = {feet:.6g} sq ft"
    return replace(drawer, steps=(*drawer.steps, Step("as shown", shown)))


def _kill(here: Open, choice: Choice, way: Way) -> Drawer:
    """Return each row with what it brings to the pool, their sum, the mean, and how wide it is for another crew."""
    reference = here.setting.reference
    pool = kill_pool(way, reference.species[choice.stand.species], reference)
    with watch() as steps:
        share = kill_share(pool, here.setting.doubt)
    told = band(share)
    doubt = spread(f"{told.low:.0%}", f"{told.high:.0%}", share)
    drawer = drawer_of(f"{told.best:.0%} of stems die of a visit", doubt, steps, reference.sources)
    rows = [step for one in pool.rows for step in _brings(here, one)]
    after = [Step("row passed by", f"{one.share.best or 0:.1%}, {_AGAIN}: {_trial(here, one)}") for one in pool.earlier]
    if pool.differ:
        high, low = pool.differ
        after.append(
            Step("differ", f"{high.share:.0%} [{high.row.source}] and {low.share:.0%} [{low.row.source}]; {_DIFFER}")
        )
    if doubt:
        after.append(Step("doubt", f"{doubt}, the middle 80 % of the Beta curve of so many plants with that mean"))
    after.append(Step("used", f"{best(share):.6g} = {100 * best(share):.6g} %"))
    return replace(drawer, steps=tuple(dict.fromkeys((*rows, *drawer.steps, *after))))


def _brings(here: Open, one: Counted) -> Iterator[Step]:
    with watch() as steps:
        dead_and_alive(one)
    yield Step("row", _trial(here, one.row))
    yield from drawer_of("", "", steps, here.setting.reference.sources).steps


def _trial(here: Open, row: KillRow) -> str:
    """Return what a row of kill is of, in words: plant, method, mix, outcome, how many, what was noted, whose."""
    names = here.setting.reference.species
    plant = names[row.species].common_name if row.species else (row.growth_form or "any plant")
    mix = " or ".join(row.ingredients) or ("any labelled herbicide" if row.herbicide else "no herbicide")
    told = (
        plant, row.method.replace("_", " "), mix, row.carrier and f"in {row.carrier}", row.outcome.replace("_", " "),
        f"{row.n} plants" if row.n else "", row.note, f"{row.mark} [{row.source}]",
    )  # fmt: skip
    return ", ".join(filter(None, told))


def _money(here: Open, what: str, choice: Choice, way: Way) -> Drawer:
    """Return the working of a cost, or of a share that costs decide, with what is expected over the doubt."""
    stand, setting = choice.stand, here.setting
    again = replay_stem_cost if what == "cost" else replay_per_kill
    with watch() as steps:
        found = again(choice.way if what == "first" else way, stand, setting)
        other = replay_per_kill(choice.way, stand, setting) if what == "needed" else found
        cost = expected(replay_stem_cost(way, stand, setting)) if what in ("needed", "counted") else 0.0
        share = share_needed(cost, expected(other)) if what in ("needed", "counted") else None
    drawer = drawer_of(_says(what, found, share), "", steps, setting.reference.sources)
    if share is not None:
        of = [Step("share as shown", f"{share:.6g} = {100 * share:.6g} %")]
        means = mean_step("this way, a visit", replay_stem_cost(way, stand, setting)), mean_step("a stem killed", other)
        return replace(drawer, steps=(*drawer.steps[:-1], *means, drawer.steps[-1], *of))
    return replace(drawer, steps=(*drawer.steps, mean_step("expected", found)))


def _says(what: str, found: Worlds, share: float | None) -> str:
    if share is not None:
        return f"{share:.0%} of stems a visit" + (", as its doubt counts" if what == "counted" else ", to win")
    return f"${expected(found):,.2f}, expected for a " + ("visit to one stem" if what == "cost" else "stem killed")


def place_runs(here: Open, key: str) -> tuple[Run, ...]:
    """Return why a unit stands where it stands in the order to work them; its number opens."""
    found = _place(here, key)
    opens = Run(found.per_acre, f"/choose/{key}/working/order", "stems an acre, which set the order")
    return tuple(one for one in (Run(found.before), opens, Run(found.after)) if one.words)


def order_drawer(here: Open, key: str) -> Drawer:
    """Return how a unit's place in the order was worked out. Raises NotFound for a unit whose thickness set none."""
    units = here.project.ground.units
    order = [one for one, _ in here.plan.order] if here.plan else []
    if key not in order or not _place(here, key).per_acre:
        raise NotFound("unit with a place by its stems an acre", key, order[:3])
    lines = _lines(here, key)
    with watch() as steps:
        found = thickness(lines, units[key])
    assert found is not None
    says, doubt = counted(found)
    drawer = drawer_of(f"{says} stems an acre", doubt, steps, here.setting.reference.sources)
    told = "; ".join(_told(here, one) for one in order)
    rule = "work before none, then the fewest stems an acre first, for small outlying groups grow fastest (ours)"
    first = Drawer("", "", (Step("order", f"{rule}: {told}"),), ())
    every = stems_drawer(here, [one.stand for one in lines])
    return before(drawer, first, every, measured_drawer(here, key, "area"))


def lines_words(lines: Sequence[Choice]) -> str:
    """Return how many lines are work."""
    return f"{sum(one.is_work for one in lines)} of {len(lines)} lines are work"


def lines_run(here: Open, key: str) -> Run:
    """Return how many lines of a unit are work, which opens."""
    return Run(lines_words(_lines(here, key)), f"/choose/{key}/working/lines", "lines of this unit")


def lines_drawer(here: Open, key: str) -> Drawer:
    """Return which lines of a unit are work, and what holds or strikes the others. Raises NotFound for no lines."""
    lines = _lines(here, key)
    if not lines:
        raise NotFound("unit with lines", key, list(here.project.ground.units)[:3])
    return Drawer(lines_words(lines), "", tuple(_states(here, lines)), ())


def _states(here: Open, lines: Sequence[Choice]) -> Iterator[Step]:
    names = here.setting.reference.species
    for one in lines:
        what = f"{names[one.stand.species].common_name}, {text.size(one.stand.band_cm)}"
        if one.is_work:
            yield Step(what, "work")
            continue
        word = "struck out" if one.level is Level.STOP else "held"
        said = dict.fromkeys(each.because for each in one.verdicts if each.level is one.level)
        yield Step(what, f"{word}: {'; '.join(said) or one.because}")
    works = sum(one.is_work for one in lines)
    yield Step("work", f"{' + '.join('1' if one.is_work else '0' for one in lines)} = {works} of {len(lines)}")


def _told(here: Open, key: str) -> str:
    place = _place(here, key)
    return f"{here.project.ground.units[key].name} {place.per_acre or 'without'}"


def _place(here: Open, key: str) -> Place:
    at = [one for one, _ in here.plan.order].index(key) if here.plan else 0
    return place_of(_lines(here, key), here.project.ground.units[key], at)


def _lines(here: Open, key: str) -> list[Choice]:
    mine = [one for one in (here.plan.choices if here.plan else ()) if one.stand.unit == key]
    return sorted(mine, key=lambda one: (one.stand.species, one.stand.band_cm))
