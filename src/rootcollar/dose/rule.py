"""How a dose is worked out for one method, strength and carrier: figures picked from the reference with reasons."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from rootcollar.dose.amount import coverage_from_batch
from rootcollar.kernel.doubt import Doubt, Worlds, drawn, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.kernel.units import show
from rootcollar.reference import Coverage, Figure, MethodFacts, NamedFigure, Span, best, middle, numbers, spans

__all__ = ["BY_CUTS", "Asked", "DoseRule", "proved", "rule_for", "shape_of"]

BY_CUTS = frozenset({"hack_squirt", "injection"})  # the dose is so much in each; the others wet a surface

_MARKS = tuple(Mark)


@dataclass(frozen=True, slots=True)
class Asked:
    """What a dose is wanted for. strength_pct: product in the mix [%]. species: key, where figures are bound to one.

    label_ml, label_per: the most mix in one place that the label gives [mL], and what that place is.
    cuts_per_inch: cuts for each inch of diameter that the label gives.
    """

    method: str
    ingredient: str
    carrier: str
    strength_pct: float
    species: str = ""
    label_ml: float | None = None
    label_per: str = ""
    cuts_per_inch: float | None = None


@dataclass(frozen=True, slots=True, eq=False)
class DoseRule:
    """The figures of a dose. Cuts: cm_per_cut, min_cuts, ml_per_cut. Surfaces: ml_per_cm2 on a band, ring or crown.

    height_cm: of the band or of a stump's side. ring_cm: width of the ring; None: the whole face. limit: stem sizes the
    method is for [cm]; None: not limited here. words: which coverage or dose it rests on.
    """

    asked: Asked
    words: str
    limit: Cited[Span] | None
    beyond: str
    ml_per_cut: Worlds | None = None
    cm_per_cut: float = 1.0
    min_cuts: int = 1
    ml_per_cm2: Worlds | None = None
    height_cm: float = 0.0
    ring_cm: float | None = None

    @property
    def dose_ml(self) -> float | None:
        """Mix in one cut [mL]; None where the dose is not by the cut."""
        return None if self.ml_per_cut is None else float(self.ml_per_cut[0])

    @property
    def dose_per(self) -> str:
        """What one dose is put into."""
        return "" if self.ml_per_cut is None else "cut"


def rule_for(
    asked: Asked,
    *,
    facts: MethodFacts,
    coverages: Iterable[Coverage],
    doubt: Doubt,
    own: float | None = None,
    whose: str = "",
) -> DoseRule:
    """Return the figures for a dose. facts: of the method. coverages: all known; one that fits is taken.

    own: what the crew measured at this strength and nozzle, in place of anything published: mL in a cut [mL], or the
    coverage of a proving batch [mL/cm2]. whose: its words. Raises Refusal for a method that pours nothing, and where no
    coverage was published, guessed or measured for the strength: a coverage never crosses over to another strength or
    nozzle.
    """
    shape = shape_of(asked, facts)
    if own is not None and not 0 < own < float("inf"):
        raise Refusal("own figure", limit="it is an amount above 0", do="measure again")
    if asked.method in BY_CUTS:
        return _cuts(shape, facts, own, whose)
    if own is not None:
        return replace(shape, ml_per_cm2=sure(own), words=whose or _PROVED)
    return _covered(shape, facts, coverages, doubt)


def shape_of(asked: Asked, facts: MethodFacts) -> DoseRule:
    """Return what a method wets or cuts, with the stems it is for, but no dose yet.

    Raises Refusal for a method that pours nothing.
    """
    rows = _bound(facts, "stem_limit_cm", asked)
    limits = spans([row.figure for row in [one for one in rows if asked.species in one.species] or rows])
    limit = best(limits, cautious="low") if limits else None
    base = DoseRule(asked, "", limit, facts.beyond_size)
    if asked.method in BY_CUTS:
        return base
    if not facts.uses_herbicide:
        raise Refusal(f"mix for {facts.title}", limit="nothing is poured", do="count hours instead")
    return _shape(base, facts)


def proved(rule: DoseRule, mix_used_ml: float, area_cm2: float) -> DoseRule:
    """Return the rule with the crew's own coverage in place of the published or guessed one.

    mix_used_ml: mix gone in a proving batch [mL]. area_cm2: surface of all stems treated with it [cm2].
    Raises Refusal for a dose by the cut, which is measured by the cut, and for a batch of nothing.
    """
    if rule.ml_per_cm2 is None:
        raise Refusal("proving batch", limit="this dose goes by the cut", do="measure what the syringe gives")
    if not (mix_used_ml > 0 and area_cm2 > 0):
        raise Refusal("proving batch", limit="nothing was used or nothing treated", do="treat 25 stems and measure")
    own = coverage_from_batch(mix_used_ml, area_cm2)
    return replace(rule, ml_per_cm2=sure(own), words=_PROVED)


def _cuts(base: DoseRule, facts: MethodFacts, own_ml: float | None, whose: str) -> DoseRule:
    asked = base.asked
    if asked.carrier == "oil":
        raise Refusal(f"{facts.title} with oil", limit="the doses of cuts are for water mixes", do="use a water mix")
    _strong_enough(facts, asked)
    if own_ml is None:
        each = _number(facts, "ml_per_cut", asked)
        ml, words = use(each), f"{each.value:g} mL a cut ({each.source}, {each.mark})"
    else:
        ml, words = own_ml, f"{own_ml:g} mL a cut, {whose or 'own figure'}"
    if asked.label_ml is not None and asked.label_per == "cut" and asked.label_ml < ml:
        ml, words = asked.label_ml, f"{asked.label_ml:g} mL a cut, the label's most"
    rule = replace(base, ml_per_cut=sure(ml))
    once = [one for one in _bound(facts, "cuts_per_stem", asked) if asked.ingredient in one.ingredients]
    if once and asked.cuts_per_inch is None:  # figures of schemes never mix: one cut, where the source has one cut
        whose = f"{once[0].figure.source}, {once[0].figure.mark}"
        return replace(rule, words=f"{words}; one cut a stem ({whose})", cm_per_cut=_WIDER_THAN_ANY_CM, min_cuts=1)
    if asked.cuts_per_inch is None:
        spacing = _number(facts, "cuts_per_inch", asked)
        per_inch, whose = use(spacing), f"{spacing.source}, {spacing.mark}"
    else:
        per_inch, whose = asked.cuts_per_inch, "as given"
    least = _number(facts, "min_cuts", asked)
    words += f"; one for each {show(1 / per_inch, 'in')} of diameter ({whose})"
    words += f", at least {use(least):g} ({least.source}, {least.mark})"
    return replace(rule, words=words, cm_per_cut=_CM_PER_INCH / per_inch, min_cuts=int(least.value))


def _strong_enough(facts: MethodFacts, asked: Asked) -> None:
    """Refuse a mix weaker than any that a source puts into cuts: a dose of so many mL goes with its strength."""
    rows = [one.figure for one in _bound(facts, "strength_pct", asked)]
    lows = [*(one.value for one in numbers(rows)), *(one.value.low for one in spans(rows) if one.value.low is not None)]
    if lows and asked.strength_pct < min(lows):
        raise Refusal(
            f"{facts.title} at {asked.strength_pct:g} %",
            limit=f"the doses of cuts are for mixes of {min(lows):g} % or more",
            do="use a stronger mix",
        )


_WIDER_THAN_ANY_CM = 1000.0  # no stem is wider, so one cut is enough (geometry)
_CM_PER_INCH = 2.54  # exact [definition]
_PROVED = "own proving batch"


def _shape(base: DoseRule, facts: MethodFacts) -> DoseRule:
    """The surface the method wets: a band of bark, a ring with or without the stump's side, a whole face, a crown."""
    asked = base.asked
    if asked.method == "basal_bark":
        return replace(base, height_cm=_band_cm(facts))
    if asked.method == "cut_stump":
        ring = _number(facts, "ring_width_cm", replace(asked, ingredient="", carrier=""))
        side = spans(facts.rows("side_height_cm", carrier=asked.carrier))
        return replace(
            base, ring_cm=use(ring), height_cm=use(middle(side[0])) if side and asked.carrier == "oil" else 0.0
        )
    return base


def _covered(shape: DoseRule, facts: MethodFacts, coverages: Iterable[Coverage], doubt: Doubt) -> DoseRule:
    asked = shape.asked
    kinds = [one for one in coverages if asked.method in one.methods and _carries(one.carrier, asked.carrier)]
    fits = [one for one in kinds if one.strength_pct.holds(asked.strength_pct)]
    if not fits:
        known = "; ".join(
            f"{one.strength_pct.low:g} to {one.strength_pct.high:g} % with a {one.nozzle}" for one in kinds
        )
        raise Refusal(
            f"{facts.title} at {asked.strength_pct:g} %",
            limit=f"no coverage is kept for this strength ({known or 'none at all'})",
            do="use a strength a coverage is kept for, or run a proving batch",
        )
    cover = fits[0]
    ml = cover.ml_per_cm2
    whose = "ours" if ml.source == "ours" else f"{ml.mark} ({ml.source})"
    words = f"{cover.nozzle}, coverage {whose}; a proving batch replaces it"
    return replace(shape, words=words, ml_per_cm2=_coverage(cover, doubt))


def _carries(have: str, want: str) -> bool:
    """Whether a coverage is for a carrier; undiluted salts flow like the water mixes."""
    return have == want or (want == "none" and have == "water")


def _coverage(cover: Coverage, doubt: Doubt) -> Worlds:
    span, best_ml = cover.ml_per_cm2.value, use(middle(replace(cover.ml_per_cm2, holds_for=cover.words)))
    if span.low is None or span.high is None:
        return sure(best_ml)
    return drawn(doubt, f"coverage/{cover.key}", span.low, best_ml, span.high)


def _band_cm(facts: MethodFacts) -> float:
    """The trade's band: the published coverage was measured on it, and sources differ from 6 to 24 inches."""
    rows = [row for row in spans(facts.rows("band_height_cm")) if row.mark is Mark.PRACTICE]
    return use(middle(rows[0]))


def _number(facts: MethodFacts, name: str, asked: Asked) -> Cited[float]:
    """The best figure of a name: best mark, then bound to the ingredient, then the larger (not to run dry)."""
    rows = [(row, one) for row in _bound(facts, name, asked) for one in _plain(row.figure)]
    if not rows:
        raise Refusal(f"{facts.title}: {name.replace('_', ' ')}", limit="no source gives one", do="read the label")
    mark = min((one.mark for _, one in rows), key=_MARKS.index)
    good = [(row, one) for row, one in rows if one.mark is mark]
    own = [one for row, one in good if asked.ingredient in row.ingredients]
    return best(own or [one for _, one in good], cautious="high")


def _plain(figure: Figure) -> Sequence[Cited[float]]:
    """A figure as one number, a span by its best; nothing where it is neither."""
    return [*numbers([figure]), *(middle(one) for one in spans([figure]) if one.value.best is not None)]


def _bound(facts: MethodFacts, name: str, asked: Asked) -> Sequence[NamedFigure]:
    """Rows bound to no species or to this one, to no ingredient or to this one, to no carrier or to this one."""
    return [
        row
        for row in facts.figures
        if row.name == name
        and (not row.species or asked.species in row.species)
        and (not row.ingredients or not asked.ingredient or asked.ingredient in row.ingredients)
        and (not row.carrier or not asked.carrier or _carries(row.carrier, asked.carrier))
    ]
