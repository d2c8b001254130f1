"""Figure a strength: do percent, density and the pounds a gallon that were typed fit each other?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from rootcollar.jobs.figure import Answer
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.mix import acid_from_active, active_g_per_l, implied_density_g_per_ml, off_pct
from rootcollar.reference import Form, Formulation, Reference, Span, find_form, named, numbers, spans

__all__ = ["StrengthAsk", "strength"]

_AGAIN = "look at the label again"
_OILY = frozenset({"EC", "RTU"})
_CAUTIONS = (
    "What fits can still be typed from the wrong jug: read name, registration number and strength on the label.",
    "Rates of a label count in acid (ae) or active (ai), whichever it says; never mix the two.",
)


@dataclass(frozen=True, slots=True)
class StrengthAsk:
    """What a label says of one ingredient. percent: by weight, of the active or (percent_of "ae") of its acid [%].

    density_g_per_ml: of the product. said_g_per_l, said_of: what was typed, of ai or ae [g/L]. form: name of the salt
    or ester, which brings active to acid. None where not told; a density or a strength is always told.
    """

    given: Mapping[str, str]
    percent: float
    percent_of: str
    density_g_per_ml: float | None = None
    said_g_per_l: float | None = None
    said_of: str = ""
    form: str | None = None


def strength(ask: StrengthAsk, reference: Reference) -> Outcome[Answer]:
    """Return whether the figures fit, or the strength that percent and density make; a verdict asks where they do not.

    Raises NotFound for a form that is not known.
    """
    form = find_form(ask.form, reference) if ask.form else None
    if ask.density_g_per_ml is None:
        answer, doubt = _implied(ask, ask.said_g_per_l or 0.0, form, reference)
    else:
        answer, doubt = _reckoned(ask, ask.density_g_per_ml, form, reference)
    told = replace(
        answer, details=tuple(_details(ask, form, reference)), assumed=_assumed(ask, form), cautions=_CAUTIONS
    )
    return Outcome(told, (doubt,) if doubt else ())


def _reckoned(
    ask: StrengthAsk, density: float, form: Form | None, reference: Reference
) -> tuple[Answer, Verdict | None]:
    """Percent and density make a strength; what was typed is held against it."""
    made = active_g_per_l(density, ask.percent)
    acid = acid_from_active(made, use(form.ae_factor)) if form and ask.percent_of == "ai" else None
    of = ask.said_of or ask.percent_of
    reckoned = acid if acid is not None and of == "ae" else made
    makes = (
        f"{show(ask.percent, '%')} {ask.percent_of} of a product of {_weighs(density)} is {_lb(made, ask.percent_of)}"
    )
    makes += f", that is {_lb(acid, 'ae')}" if acid is not None else ""
    figures = {"reckoned_g_per_l": reckoned, "density_g_per_ml": density}
    doubt, typed = _odd(density, form, reference), ""
    if ask.said_g_per_l is not None:
        off = figures["off_pct"] = off_pct(ask.said_g_per_l, reckoned)
        typed = _lb(ask.said_g_per_l, ask.said_of).partition(" (")[0]
        if abs(off) > use(_differ(reference)):
            doubt = Verdict(Level.ASK, f"percent and density make {_lb(reckoned, of)}, not {typed}", _AGAIN)
            says = f"Does not fit by {show(abs(off), '%', 2)}: {makes}, but {typed} was typed: {_AGAIN}"
            return _answer(ask, says, (convert(reckoned, "g/L", "lb/gal"), f"lb {of}/gal"), figures), doubt
    says = f"Fits: {makes}, and {typed} was typed" if typed else makes
    says += f"; but that density is {doubt.because}: {_AGAIN}" if doubt else ""
    return _answer(ask, says, (convert(reckoned, "g/L", "lb/gal"), f"lb {of}/gal"), figures), doubt


def _implied(
    ask: StrengthAsk, said_g_per_l: float, form: Form | None, reference: Reference
) -> tuple[Answer, Verdict | None]:
    """Percent and strength imply a density; it has to be believable."""
    alike = ask.said_of == ask.percent_of or form is None
    pct = ask.percent if alike or form is None else acid_from_active(ask.percent, use(form.ae_factor))
    density = implied_density_g_per_ml(said_g_per_l, pct)
    doubt = _odd(density, form, reference) or _unlike(ask, said_g_per_l, form, reference)
    told = f"{show(ask.percent, '%')} {ask.percent_of} and {_lb(said_g_per_l, ask.said_of)}"
    if doubt:
        head = "Does not fit" if doubt.level is Level.ASK else "Hardly fits"
        says = f"{head}: {told} would be a product of {_weighs(density)}, {doubt.because}: {_AGAIN}"
    else:
        says = f"Fits, as far as that can be told without a density: {told} make a product of {_weighs(density)}"
    return _answer(ask, says, (density, "g/mL"), {"density_g_per_ml": density}), doubt


def _answer(ask: StrengthAsk, says: str, value: tuple[float, str], figures: Mapping[str, float]) -> Answer:
    question = "Do percent, density and strength of this product fit each other?"
    return Answer(question, ask.given, says, *value, figures=figures)


def _assumed(ask: StrengthAsk, form: Form | None) -> tuple[str, ...]:
    what = "active ingredient, as the ingredient list gives it" if ask.percent_of == "ai" else "acid"
    said = f"{show(ask.percent, '%')} by weight, of the {what}"
    if form is None or form.ae_factor.value == 1:
        return (said,)
    return said, f"{form.ingredient} {form.form}: {form.ae_factor.value:.4g} of it is acid ({form.ae_factor.mark})"


def _details(ask: StrengthAsk, form: Form | None, reference: Reference) -> Iterator[str]:
    """What else is known: the ranges a density is held against, and products of the trade of that form."""
    for row in dict.fromkeys((_narrow(form, reference), _range("believable_g_per_ml", reference))):
        low, high = row.value.low or 0.0, row.value.high or 0.0
        pounds = f"{convert(low, 'g/mL', 'lb/gal'):.3g} to {convert(high, 'g/mL', 'lb/gal'):.3g} lb/gal"
        whence = ", ".join(dict.fromkeys((row.source, row.mark)))
        yield f"Believable for {row.holds_for}: {low:g} to {high:g} g/mL ({pounds}) [{whence}]."
    for one in _sold(form, reference):
        if one.percent_ai and one.density_g_per_ml:
            density = one.density_g_per_ml
            yield f"Of the trade ({one.percent_ai.mark}): {one.words}, {_weighs(density.value)} ({density.mark})."


def _odd(density: float, form: Form | None, reference: Reference) -> Verdict | None:
    """Ask where no liquid product weighs so much or so little; warn outside the narrower range of its kind."""
    for row, level in ((_range("believable_g_per_ml", reference), Level.ASK), (_narrow(form, reference), Level.WARN)):
        if not row.value.holds(density):
            side = "lighter" if density < (row.value.low or 0.0) else "heavier"
            return Verdict(level, f"{side} than is believable for {row.holds_for}", _AGAIN)
    return None


def _unlike(ask: StrengthAsk, said_g_per_l: float, form: Form | None, reference: Reference) -> Verdict | None:
    """Warn where every product of the trade of that form and strength has another percent."""
    apart = _differ(reference).value
    percents = [
        one.percent_ai.value
        for one in _sold(form, reference)
        if one.percent_ai and (acid := one.ae_lb_per_gal or one.ai_lb_per_gal)
        and _near(said_g_per_l, convert(acid.value, "lb/gal", "g/L"), apart)
        and ask.said_of == ("ae" if one.ae_lb_per_gal else "ai") and ask.percent_of == "ai"
    ]  # fmt: skip
    if not percents or any(_near(ask.percent, one, apart) for one in percents):
        return None
    known = " or ".join(dict.fromkeys(show(one, "%") for one in percents))
    return Verdict(Level.WARN, f"and the trade sells that strength with {known}", _AGAIN)


def _near(one: float, other: float, apart_pct: float) -> bool:
    return abs(one - other) <= other * apart_pct / 100


def _narrow(form: Form | None, reference: Reference) -> Cited[Span]:
    """The range of the kinds that a form is sold as, where they agree; else that of any product."""
    kinds = {one.type for one in _sold(form, reference)}
    if kinds == {"SL"}:
        return _range("sl_g_per_ml", reference)
    return _range("ec_g_per_ml" if kinds and kinds <= _OILY else "believable_g_per_ml", reference)


def _sold(form: Form | None, reference: Reference) -> tuple[Formulation, ...]:
    if form is None:
        return ()
    every = reference.formulations.values()
    return tuple(one for one in every if (one.ingredient, one.form) == (form.ingredient, form.form))


def _range(name: str, reference: Reference) -> Cited[Span]:
    return spans(named(reference.mixing["strength"], name))[0]


def _differ(reference: Reference) -> Cited[float]:
    return numbers(named(reference.mixing["strength"], "differ_pct"))[0]


def _weighs(density_g_per_ml: float) -> str:
    return f"{show(convert(density_g_per_ml, 'g/mL', 'lb/gal'), 'lb/gal')} ({show(density_g_per_ml, 'g/mL')})"


def _lb(g_per_l: float, of: str) -> str:
    """Return a strength in both systems: `4 lb ai/gal (479 g ai/L)`."""
    return f"{show(convert(g_per_l, 'g/L', 'lb/gal'), f'lb {of}/gal')} ({show(g_per_l, f'g {of}/L')})"
