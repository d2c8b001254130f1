"""What shuts a way before the label is even opened: the plant, the stem, the ground, the crew.

A gate can only shut. Each names what would open it; where a fact is missing, the gate asks for it. What a source
advises against, a person may still do with a reason of their own; size, ground and missing facts no reason opens.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from rootcollar.choose.option import Gate, Pick, Way
from rootcollar.choose.setting import Setting
from rootcollar.choose.steps import first_alone, harm_of_first, never_met, only_prepares, regrown
from rootcollar.choose.ways import shuts
from rootcollar.kernel.days import MONTHS, months, name_months
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, show
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import FailRow, Reference, Span, Species, best, numbers, spans
from rootcollar.site import Unit
from rootcollar.survey.stand import Stand

__all__ = [
    "at_home", "ground_gate", "leaves_by_roots", "months_of", "overruled", "plant_gate", "shut", "spared", "speaks",
    "unbegun", "weaknesses",
]  # fmt: skip

_GIVE = 0.98  # ours: 6 in is 15.24 cm, often printed as 15
_WOODY = frozenset({"tree", "shrub", "vine"})
_DONE: Mapping[str, str] = {"cut": "cut", "mow": "mown"}  # of the methods that may be a first step
_BARE_CUT = frozenset({"cut", "vine_cut", "girdle", "mow"})
_UNSAFE = "unsafe"  # the effect that no reason of anybody's opens
_OWN_REASON = "choose it yourself, with your own reason"


def shut(way: Way, species: Species, stand: Stand, setting: Setting) -> Gate | None:
    """Return why plant, stem or ground shuts this way for the stand; None when nothing known does, or a person does it
    against a source's advice.
    """
    unit = setting.ground.units[stand.unit]
    gate = plant_gate(way, species, stand, setting.reference)
    if gate is not None and overruled(gate, way, stand, setting) is None:
        return gate
    return ground_gate(way, unit, setting.reference)


def overruled(gate: Gate | None, way: Way, stand: Stand, setting: Setting) -> Pick | None:
    """Return the choice of a person, with its written reason, that overrules a gate; None where none does or may."""
    pick = setting.picked.get(stand.key)
    return pick if gate and gate.own_reason and pick and pick.reason.strip() and pick.way == way.key else None


def plant_gate(way: Way, species: Species, stand: Stand, reference: Reference) -> Gate | None:
    """Return why the plant or the stem shuts this way for the stand; None when nothing known does.

    No own reason opens a way that the size of the stems shuts too, or one of two steps.
    """
    advice = _fails(way, species) or _steps(way, species, reference)
    size = _first_size(way, species, stand, reference) or _size(way, species, stand, reference)
    size = size or _leaves(way, species, regrown(stand, way), reference)
    found = advice or size
    if advice is not None and size is not None and advice.own_reason:
        would = f"{size.would_win_if}; then {advice.would_win_if}" if size.asks else size.would_win_if
        found = Gate(f"{advice.because}; {size.because}", would)
    if found is None:
        return None
    return replace(found, because=unbegun(way, found.because), own_reason=found.own_reason and way.step is None)


def unbegun(way: Way, because: str) -> str:
    """Return why a way is shut; of two steps, that the first is not done without the second."""
    return f"nothing is {_DONE[way.step.first]} that cannot then be killed: {because}" if way.step else because


def _steps(way: Way, species: Species, reference: Reference) -> Gate | None:
    """Shut a first step that stands alone, and two steps that no wait joins."""
    if words := never_met(way):
        return Gate(words, "another product or another season's plan, in whose months both steps can be")
    row = only_prepares(way, species, reference)
    if row is None:
        return None
    because = f"it only prepares for the step that kills: {row.kills} ({row.source}, {row.mark})"
    return Gate(because, "the second step is planned with it, where nothing stops that")


def _first_size(way: Way, species: Species, stand: Stand, reference: Reference) -> Gate | None:
    first = first_alone(way)
    return _size(first, species, stand, reference) if first else None


def ground_gate(way: Way, unit: Unit, reference: Reference) -> Gate | None:
    """Return why the ground shuts this way on the unit; None when nothing known does."""
    if way.visit.method == "foliar" and unit.wanted_beneath is not False:
        if unit.wanted_beneath is None:
            return Gate(
                "nobody has said whether anything wanted stands beneath the leaves to be sprayed",
                f"say wanted_beneath = true or false for {unit.key} in ground.toml",
                asks=True,
            )
        if unit.wanted_bare is None:
            return Gate(
                "wanted plants stand beneath; spray would reach them",
                f"say wanted_bare of {unit.key} in ground.toml, the months in which they have no leaves; or by stem",
            )
        if not way.visit.months <= unit.wanted_bare:
            return Gate("wanted plants stand beneath, in leaf when this way is done", "another way, by stem")
    recipe = way.visit.recipe
    if recipe is None or not leaves_by_roots(recipe, reference):
        return None
    reach = _root_reach_m(way.visit.method, recipe.ingredient, reference)
    # Whether a wanted tree stands near is asked by the rules (L44), once a unit; here only what is known shuts.
    nearest = min((one for one in (unit.keep_m, unit.wanted_roots_m) if one is not None), default=math.inf)
    if reach is not None and nearest < reach.value:
        return Gate(
            f"{recipe.ingredient} reached trees {_feet(reach.value)} away through roots ({reach.source}); "
            f"one that is wanted stands at {_feet(nearest)}",
            "another ingredient, or work beyond that distance",
        )
    return None


def spared(way: Way, unit: Unit) -> Way:
    """Return a way of wetting leaves in those of its months in which nothing wanted has any; else as it was."""
    bare = unit.wanted_bare if unit.wanted_beneath and way.visit.method == "foliar" else None
    left = way.visit.months & bare if bare else way.visit.months
    if not left or left == way.visit.months:
        return way
    return replace(way, treatment=(*way.treatment[:-1], replace(way.visit, months=left)))


def leaves_by_roots(recipe: Recipe | None, reference: Reference) -> bool:
    """Return whether a source finds the risk high that a mix hurts other plants through their roots."""
    return recipe is not None and str(reference.ingredients[recipe.ingredient].root_risk.value) == "high"


def weaknesses(way: Way, species: Species) -> tuple[str, ...]:
    """Return the warnings of sources that found this way weak here, or its first step harmful, without shutting it."""
    weak = [
        f"{row.why} ({f'{name_months(months_of(row))}; ' if row.windows else ''}{row.source}, {row.mark})"
        for row in species.fails
        if speaks(row, way) and not shuts(row) and months_of(row) & way.visit.months
    ]
    first = [f"the first step: {row.why} ({row.source}, {row.mark})" for row in harm_of_first(species, way)]
    return tuple(dict.fromkeys([*weak, *first]))


def at_home(species: Species, state: str | None) -> tuple[str, ...]:
    """Return a warning where the plant is native in the state of the ground; nothing where it is not, or not known."""
    native = species.native_range
    if native is None or state not in native.value:
        return ()
    where = f": {native.holds_for}" if native.holds_for else ""
    return (f"native in {state}{where} ({native.source}, {native.mark}): be sure that it is to go here",)


def _fails(way: Way, species: Species) -> Gate | None:
    rows = [
        row
        for row in species.fails
        if speaks(row, way) and shuts(row, bool(way.rows)) and way.visit.months <= months_of(row)
    ]
    if rows:
        said = "; ".join(dict.fromkeys(f"{row.why} ({row.source}, {row.mark})" for row in rows))
        if any(row.effect == _UNSAFE for row in rows):
            return Gate(said, "another way")
        return Gate(said, _OWN_REASON, own_reason=True)
    if way.visit.method == "cut" and species.resprouts_from_stump.value:
        cited = species.resprouts_from_stump
        what = "cut stumps sprout again" if species.growth_form in _WOODY else "cut, it sprouts again from the root"
        return Gate(
            f"{what} ({cited.source}, {cited.mark})", f"treat the stump at once, or {_OWN_REASON}", own_reason=True
        )
    return None


def months_of(row: FailRow) -> frozenset[int]:
    """Return the months of which a failure speaks; all where it names none."""
    named = frozenset[int]().union(*(months(window) for window in row.windows))
    return named or frozenset(range(1, len(MONTHS) + 1))


def speaks(row: FailRow, way: Way) -> bool:
    """Whether a failure row speaks of this way: a row without ingredients speaks of bare cutting, or of any mix."""
    recipe = way.visit.recipe
    if row.method != way.visit.method:
        return False
    if row.ingredients:
        return recipe is not None and recipe.ingredient in row.ingredients
    if row.method in _BARE_CUT:
        return recipe is None
    return True


def _size(way: Way, species: Species, stand: Stand, reference: Reference) -> Gate | None:
    """The species' own rows come first: one that names this size admits it; then the method's general limit."""
    sized = [row for row in way.rows if row.diameter_cm is not None]
    if any(row.diameter_cm is not None and _within(stand.band_cm, row.diameter_cm) for row in sized):
        return None
    if sized and len(sized) == len(way.rows):
        row = sized[0]
        return _outside(way, stand, Cited(row.diameter_cm or Span(), "cm", row.source, row.mark), reference)
    carrier = way.visit.recipe.carrier if way.visit.recipe else ""
    facts = reference.methods[way.visit.method]
    own = [row.figure for row in facts.figures if row.name == "stem_limit_cm" and species.key in row.species]
    limits = spans(own) or spans(facts.rows("stem_limit_cm", "", carrier, species.key))
    if not limits:
        return None
    limit = best(limits, cautious="low")
    return None if _within(stand.band_cm, limit.value) else _outside(way, stand, limit, reference)


def _within(band_cm: tuple[float, float], limit: Span) -> bool:
    """Whether a size band lies in a limit, give or take what rounding inches to centimetres costs."""
    low, high = band_cm
    return (limit.low is None or low >= limit.low * _GIVE) and (limit.high is None or high <= limit.high / _GIVE)


def _outside(way: Way, stand: Stand, limit: Cited[Span], reference: Reference) -> Gate:
    low, high = stand.band_cm
    span = " to ".join(_inches(one) for one in (limit.value.low, limit.value.high) if one is not None)
    which = "at least " if limit.value.high is None else "at most " if limit.value.low is None else ""
    beyond = reference.methods[way.visit.method].beyond_size or "another method"
    return Gate(
        f"this way is for stems of {which}{span} ({_cited(limit)}), these are {_inches(low)} to {_inches(high)}",
        f"stems of that size; for these {beyond}",
    )


def _cited(figure: Cited[Span] | Cited[float]) -> str:
    """Return whose figure it is; ours, and what is practice, are told in words, for they have no source to name."""
    bare = {"ours": "our own figure", "practice": "practice of the trade"}
    return bare.get(figure.source, f"{figure.source}, {figure.mark}")


def _leaves(way: Way, species: Species, stand: Stand, reference: Reference) -> Gate | None:
    if way.visit.method != "foliar":
        return None
    if stand.crown_m is None or stand.height_m is None:
        return Gate(
            "leaf spray is reckoned from the plant's width and height, and they are not in the tally",
            "add crown and height columns to the tally",
            asks=True,
        )
    limit = best(numbers(reference.methods["foliar"].rows("height_limit_m", species=species.key)), cautious="low")
    if stand.height_m <= limit.value / _GIVE:
        return None
    return Gate(
        f"plants of {_feet(stand.height_m)} stand above the {_feet(limit.value)} to which leaves are sprayed "
        f"({_cited(limit)})",
        "cut first and spray the regrowth, or treat by stem",
    )


def _root_reach_m(method: str, ingredient: str, reference: Reference) -> Cited[float] | None:
    """Return the published reach through roots; that of another way where none was published for this one."""
    rows = reference.methods[method].rows("root_reach_m", ingredient) or tuple(
        row for one in reference.methods.values() for row in one.rows("root_reach_m", ingredient)
    )
    return best(numbers(rows), cautious="high") if rows else None


def _inches(length_cm: float) -> str:
    return show(convert(length_cm, "cm", "in"), "in", 2)


def _feet(length_m: float) -> str:
    return show(convert(length_m, "m", "ft"), "ft", 2)
