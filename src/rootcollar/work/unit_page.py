"""One unit's page: what is known of the ground, and every line with its reasons and what the rules say of it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from rootcollar.choose import (
    Choice,
    Option,
    Prescription,
    Reach,
    SetAside,
    Setting,
    alike,
    instruction,
    line_minutes,
    line_mix_ml,
    line_side_m2,
    minutes_to_share,
    money_to_share,
    reaches,
    share_to_reach,
    shut_words,
    side_words,
    visits_of,
    way_words,
)
from rootcollar.kernel.days import name_months
from rootcollar.kernel.doubt import best
from rootcollar.kernel.units import show
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.label import Handling
from rootcollar.site import Unit
from rootcollar.work import text
from rootcollar.work.after_cut import after_cut
from rootcollar.work.day_sheet import letter_of
from rootcollar.work.months_words import months_words
from rootcollar.work.packet import Reason, Said, UnitLine, UnitPage
from rootcollar.work.reach_words import reach_words
from rootcollar.work.steps_words import steps_words
from rootcollar.work.thicket_words import thicket_words

__all__ = ["said", "unit_line", "unit_page"]


def unit_page(unit: Unit, prescription: Prescription, setting: Setting, day: date | None = None) -> UnitPage:
    """Return the content of a unit's page: every line, struck and held ones too, each marked as what it is.

    day: of work, where it is known; a way that is shut then says what is open instead.
    """
    lines = [one for one in prescription.choices if one.stand.unit == unit.key]
    reached = reaches(lines, setting)
    return UnitPage(
        name=unit.name,
        first_because=dict(prescription.order).get(unit.key, ""),
        facts=_facts(unit),
        lines=tuple(
            replace(
                unit_line(one, prescription, setting),
                most=_most(one, reached),
                months=_months(one, setting, day),
                after=after_cut(one.option, setting) if one.is_work and one.option else (),
            )
            for group in alike(lines)
            for one in group
        ),
        set_aside=_set_aside(lines, setting),
        thickets=tuple((one.title, one.level, one.lines) for one in thicket_words(prescription, setting, unit.key)),
    )


def _most(choice: Choice, reached: Mapping[str, Sequence[Reach]]) -> str:
    return reach_words(reached.get(choice.stand.key, ())) if choice.is_work else ""


def _months(choice: Choice, setting: Setting, day: date | None) -> tuple[str, ...]:
    if not choice.is_work:
        return ()
    shut = shut_words([choice], day.month) if day else ""
    return (*((shut,) if shut else ()), *months_words(choice, setting))


def unit_line(choice: Choice, prescription: Prescription, setting: Setting) -> UnitLine:
    """Return one stand's line."""
    species = setting.reference.species[choice.stand.species]
    stand, option = choice.stand, choice.option
    spoken = tuple(said(one) for one in worst_first(choice.verdicts) if one.level > Level.OK)
    mark = "stop" if option is None or choice.level is Level.STOP else "ask" if choice.level is Level.ASK else ""
    if option is None:
        size, stems = text.size(stand.band_cm), text.count(stand.stems)
        left = ("leave for now", "", "", "", "", choice.because)
        return UnitLine(species.common_name, size, stems, *left, set_aside=(), said=spoken, struck=mark)
    verb, rest = instruction(option.way)
    poured = line_mix_ml(stand.stems, option.per_stem.mix_ml)
    recipe = choice.recipe
    amount = f"{text.gallons(best(poured))}" + (f" ({text.span(poured)})" if text.span(poured) else "")
    return UnitLine(
        plant=species.common_name,
        size=text.size(stand.band_cm),
        stems=text.count(stand.stems),
        instruction=f"{verb}, {rest}",
        mix=letter_of(recipe, prescription),
        amount=amount if recipe else "no mix",
        time=text.hours(line_minutes(stand.stems, option.per_stem.minutes)),
        cost=text.money(stand.stems * option.per_stem.cost),
        because=". ".join(
            part for part in (choice.because, option.way.strength_because, option.per_stem.dose_because) if part
        ),
        set_aside=(),
        said=spoken,
        struck=mark,
        to_share=_to_share(choice, setting),
        steps=steps_words(choice, setting),
        side=_side(choice, option) if recipe else "",
    )


def _to_share(choice: Choice, setting: Setting) -> str:
    """Return what all visits take until enough stems are dead."""
    often, share = text.count(visits_of(choice, setting)), 100 * share_to_reach(setting)
    hours, cost = text.hours(minutes_to_share(choice, setting)), text.money(money_to_share(choice, setting))
    return f"To {share:.3g} % of the stems dead: visits {often}, {hours}, {cost}"


def _side(choice: Choice, option: Option) -> str:
    words, doubt = side_words(line_side_m2(choice.stand.stems, option.per_stem.side_m2))
    return f"{words} ({doubt})" if doubt else words


def said(verdict: Verdict) -> Said:
    """Return a verdict as printed."""
    return Said(verdict.level.word, verdict.because, verdict.clear, verdict.rule, verdict.page)


def _set_aside(lines: Sequence[Choice], setting: Setting) -> tuple[Reason, ...]:
    """Return every way that was set aside on the unit: way, plants and sizes, why, what if; alike reasons together."""
    found: dict[tuple[str, str], list[tuple[Choice, SetAside]]] = {}
    for line in lines:
        for one in line.set_aside:
            because = one.because if one.per_kill is None else "dearer"
            found.setdefault((way_words(one.way), because), []).append((line, one))
    return tuple(_reason(way, rows, setting) for (way, _), rows in found.items())


def _reason(way: str, rows: Sequence[tuple[Choice, SetAside]], setting: Setting) -> Reason:
    sizes: dict[str, list[tuple[float, float]]] = {}
    for line, _ in rows:
        sizes.setdefault(line.stand.species, []).append(line.stand.band_cm)
    names = setting.reference.species
    whose = "; ".join(f"{names[key].common_name} {text.size(text.joined(b))}" for key, b in sizes.items())
    costs = [one.per_kill for _, one in rows if one.per_kill is not None]
    because, would = rows[0][1].because, rows[0][1].would_win_if
    if len(costs) > 1:
        because = f"dearer: ${min(costs):,.2f} to ${max(costs):,.2f} per stem killed, by size"
        would = "it killed more of a visit, or a visit cost less"
    return Reason(f"{way}: {whose}", because, would)


def _worked_for(unit: Unit) -> str:
    """Return what the ground is worked for, and which box of a label that has both governs then."""
    if unit.purpose is None:
        return "not said"
    box = Handling.at(unit, (), None, None).box
    return f"{text.purpose(unit.purpose)}; {f'the {box} box governs' if box else 'which box governs is asked'}"


def _facts(unit: Unit) -> tuple[tuple[str, str], ...]:
    allowed = unit.permission
    beneath = {None: "not said", True: "yes", False: "no"}[unit.wanted_beneath]
    beneath += f"; bare in {name_months(unit.wanted_bare)}" if unit.wanted_beneath and unit.wanted_bare else ""
    return (
        ("Area", text.acres(unit.area_m2)),
        ("Ground worked, of it", "not said" if unit.worked_m2 is None else text.acres(unit.worked_m2)),
        ("Kind of place", (unit.site_class or "not said").replace("_", " ")),
        ("Permission", f"{allowed.by}, until {allowed.until.isoformat()}" if allowed else "none: a stop"),
        ("Water", text.distance(unit.water_m)),
        ("Well", text.distance(unit.well_m)),
        ("Trail", text.distance(unit.trail_m)),
        ("Road", text.distance(unit.road_m)),
        ("Building", text.distance(unit.building_m)),
        ("Where people park, sit or camp", text.distance(unit.parking_m)),
        ("Another's ground", text.distance(unit.boundary_m)),
        ("Tree or plant to keep", text.distance(unit.keep_m)),
        ("Wanted plants beneath", beneath),
        ("Wanted tree or shrub, mapped or not", text.distance(unit.wanted_roots_m)),
        ("Power line", text.distance(unit.power_m)),
        ("Worked for", _worked_for(unit)),
        ("Slope", "not known" if unit.slope_pct is None else show(unit.slope_pct, "%", 2)),
    )
