"""Figure a rinse: the water for each rinse of a jug or sprayer, where it goes, and what stays behind."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from rootcollar.jobs.figure import Answer, System, bench_cautions
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, jug, show
from rootcollar.mix import residue_ml, rinsate_ml, rinse_water_ml
from rootcollar.reference import Reference, Span, named, numbers, spans

__all__ = ["Kind", "RinseAsk", "rinse"]

Kind = Literal["shake", "large", "pressure", "sprayer"]

_RULE, _STATE = "CFR15", "MT-ARM"
_MOST_TIMES = 20  # ours: more rinses of one container are a slip of the finger
_LEFT_KNOWN_ML = convert(1, "gal", "mL")  # ours: what stays in a jug was told of jugs, not of bottles


@dataclass(frozen=True, slots=True)
class RinseAsk:
    """What is rinsed. container_ml: what the jug or the sprayer's tank holds [mL]. kind: None for a jug by its size.

    times: None for the usual. left_ml: liquid that stays in when it is drained [mL]. tank_ml: water that the mix in
    the spray tank takes [mL].
    """

    given: Mapping[str, str]
    container_ml: float
    kind: Kind | None = None
    times: int | None = None
    left_ml: float | None = None
    tank_ml: float | None = None
    system: System = "us"


@dataclass(frozen=True, slots=True)
class _Plan:
    """How often, how much water each time [mL], what stays in when drained [mL], how often the rule has it."""

    kind: Kind
    times: int
    each_ml: float
    left_ml: float | None
    ruled: int


def rinse(ask: RinseAsk, reference: Reference) -> Outcome[Answer]:
    """Return water, rinsate and residue. Raises Refusal for more left in than the container takes in a rinse."""
    plan = _plan(ask, reference)
    total_ml = rinsate_ml(plan.times, plan.each_ml)
    unit = "gal" if ask.system == "us" else "L"
    residue = _residue(plan)
    figures: dict[str, float | tuple[float, ...]] = {
        "times": float(plan.times), "each_ml": plan.each_ml, "rinsate_ml": total_ml
    }  # fmt: skip
    if residue is not None:
        figures["residue_ml"] = residue
    return Outcome(Answer(
        question=f"How is {_what(ask, plan)} rinsed?",
        given=ask.given,
        says=_says(ask, plan, total_ml),
        value=convert(total_ml, "mL", unit), unit=unit, figures=figures,
        details=(*_steps(plan, ask, reference), *_more(ask, plan, total_ml, residue, reference)),
        assumed=tuple(_assumed(ask, plan, reference)),
        cautions=(*_cautions(plan, reference), *bench_cautions(reference)),
    ))  # fmt: skip


def _plan(ask: RinseAsk, reference: Reference) -> _Plan:
    kind = ask.kind or ("large" if ask.container_ml > _tested_ml(reference) else "shake")
    if kind == "sprayer":
        rows = reference.mixing["flush"]
        usual, share = (numbers(named(rows, name))[0] for name in ("times", "fill_share"))
    else:
        usual = _by(_RULE, "rinse_times", reference)
        share = _by(_STATE, "pressure_fill_share", reference) if kind == "pressure" else _fill(_RULE, reference)
    ruled = 1 if kind == "pressure" else int(use(usual))
    times = ask.times or ruled
    if times > _MOST_TIMES:
        raise Refusal(f"{times} rinses", limit="one container is rinsed a few times", do=f"Give {ruled} or a few more.")
    each_ml = rinse_water_ml(ask.container_ml, use(share))
    left_ml = _left_ml(ask, kind, reference)
    if left_ml is not None and left_ml >= each_ml:
        raise Refusal(
            f"{_volume(left_ml, ask.system)} left in {_volume(ask.container_ml, ask.system)}",
            limit="that is no empty container",
            do="Pour it out and drain it first, or give what the drained container holds as --left.",
        )
    return _Plan(kind, times, each_ml, left_ml, ruled)


def _left_ml(ask: RinseAsk, kind: Kind, reference: Reference) -> float | None:
    """What stays in [mL]: as told; for a jug the most that a source says; for a sprayer or a bottle nobody says."""
    if ask.left_ml is not None or kind in ("sprayer", "pressure") or ask.container_ml < _LEFT_KNOWN_ML:
        return ask.left_ml
    left = _left_row(reference)
    most = Cited(left.value.high or 0.0, left.unit, left.source, left.mark, left.holds_for)
    return convert(use(most), most.unit, "mL")


def _left_row(reference: Reference) -> Cited[Span]:
    return spans(named(reference.mixing["rinse"], "left_in_jug_fl_oz"))[0]


def _residue(plan: _Plan) -> float | None:
    if plan.left_ml is None or plan.kind == "pressure":
        return None
    return residue_ml(plan.left_ml, plan.each_ml, plan.times)


def _says(ask: RinseAsk, plan: _Plan, total_ml: float) -> str:
    total = _volume(total_ml, ask.system)
    if plan.kind == "pressure":
        half = f"where a state asks for half the jug, as Montana does, {total} of water"
        return f"Pressure rinse: time and pressure count; {half}"
    each = _volume(plan.each_ml, ask.system)
    if plan.kind == "sprayer":
        return f"{plan.times} flushes of {each} each, {total} in all, sprayed out onto a labelled site"
    few = f"; too few, the rule has {plan.ruled}" if plan.times < plan.ruled else ""
    return f"{plan.times} rinses of {each} each: {total} of rinsate, which comes off the water of the tank{few}"


def _what(ask: RinseAsk, plan: _Plan) -> str:
    size = _volume(ask.container_ml, ask.system).partition(" (")[0]
    return f"a sprayer of {size}" if plan.kind == "sprayer" else f"a jug of {size}"


def _steps(plan: _Plan, ask: RinseAsk, reference: Reference) -> Iterator[str]:
    """The steps of the rule, or of the trade for a sprayer, numbered in the order they are done."""
    steps, whence = {"sprayer": _flush, "pressure": _press, "large": _roll, "shake": _shake}[plan.kind](
        plan, ask, reference
    )
    yield from (f"{number}. {step}" for number, step in enumerate(steps, start=1))
    yield whence


_Steps = tuple[tuple[str, ...], str]


def _shake(plan: _Plan, ask: RinseAsk, reference: Reference) -> _Steps:
    drained, shaken = _drained(reference), _seconds("shake_s", reference)
    return (
        f"Promptly: empty it into the tank; {drained}.",
        f"Fill it a quarter with water: {_poured(plan, ask)}. Cap it and shake {shaken}.",
        f"Pour the rinse into the tank, or keep it for later use; {drained}.",
        f"{_times(plan)}.",
    ), "The rule: 40 CFR 156.146(b)(1), read."


def _roll(plan: _Plan, ask: RinseAsk, reference: Reference) -> _Steps:
    return (
        "Promptly: empty it into the tank.",
        f"Fill it a quarter with water: {_poured(plan, ask)}. Close it.",
        f"Lay it down and roll it to and fro {_seconds('roll_s', reference)}, a full turn at least.",
        "Stand it on one end and tip it several times, then on the other. Empty it into the tank.",
        f"{_times(plan)}.",
    ), "The rule: 40 CFR 156.146(b)(3), read."


def _press(plan: _Plan, ask: RinseAsk, reference: Reference) -> _Steps:
    drained, psi = _drained(reference), _by(_RULE, "pressure_psi", reference).value
    return (
        f"Empty it into the tank; {drained}.",
        "Hold it upside down over the tank, the nozzle through its side.",
        f"About {psi:g} psi for at least {_seconds('pressure_s', reference)}; {drained}.",
    ), "The rule: 40 CFR 156.146(c), read."


def _flush(plan: _Plan, ask: RinseAsk, reference: Reference) -> _Steps:
    row = numbers(named(reference.mixing["flush"], "times"))[0]
    return (
        "Spray the mix out on a site the label names.",
        f"Put in {_poured(plan, ask)} of clean water, close it, shake.",
        "Spray that out there too, through hose and nozzle, within the rate.",
        f"{_times(plan)}.",
    ), f"The habit of the trade ({row.mark}, {row.source}); the label may ask for more."


def _drained(reference: Reference) -> str:
    return f"once it only drips, drain it {_seconds('drain_s', reference)}"


def _seconds(name: str, reference: Reference) -> str:
    return show(_by(_RULE, name, reference).value, "s")


def _times(plan: _Plan) -> str:
    if plan.times == 1:
        return "That once"
    return "Twice more" if plan.times == 3 else f"So on, {plan.times} times in all"


def _more(ask: RinseAsk, plan: _Plan, total_ml: float, residue: float | None, reference: Reference) -> Iterator[str]:
    if ask.tank_ml is not None:
        yield _still(ask, ask.tank_ml - total_ml)
    if residue is not None and plan.left_ml is not None:
        thin, left = f"{plan.left_ml / residue:,.0f}", _volume(plan.left_ml, ask.system)
        yield f"Still in it: about {show(residue, 'mL', 2)} of product, one part in {thin} of the {left} that stayed."
    if plan.kind == "sprayer":
        return
    use_of = named(reference.mixing["rinse"], "rinsate_use")[0]
    yield f"Rinsate is {use_of.value} ({use_of.mark}, {use_of.source})."
    yield _state(reference)


def _still(ask: RinseAsk, still_ml: float) -> str:
    if still_ml < 0:
        over = _volume(-still_ml, ask.system)
        return f"The tank takes less: keep {over} of rinsate in a labelled container for the next mix of the same."
    return f"Water still to add to the tank: {_volume(still_ml, ask.system)}."


def _state(reference: Reference) -> str:
    """What one state asks beyond the federal rule."""
    rows = [row for row in numbers(named(reference.mixing["rinse"], "rinse_fill_share")) if row.source == _STATE]
    shares = "; ".join(f"{100 * row.value:.0f}% of the jug {row.holds_for.removesuffix(', Montana')}" for row in rows)
    drain, within = (_by(_STATE, one, reference).value for one in ("drain_s", "rinse_within_h"))
    return (
        f"States differ. Montana: within {show(within, 'h')} of emptying, {shares}, drained {show(drain, 's')} "
        f"({rows[0].mark}, {_STATE}). Ask your own."
    )


def _assumed(ask: RinseAsk, plan: _Plan, reference: Reference) -> Iterator[str]:
    if plan.kind in ("shake", "large") and ask.kind is None:
        tested = show(convert(_tested_ml(reference), "mL", "gal"), "gal")
        can = "small enough to shake" if plan.kind == "shake" else "too large to shake"
        yield f"a jug {can}; the rule names no size, {tested} is taken (--kind shake or large says otherwise)"
    if plan.left_ml is not None and ask.left_ml is None:
        row = _left_row(reference)
        left = _volume(plan.left_ml, ask.system)
        yield f"{left} stay in it each time it is drained, the most that a source says ({row.source}, {row.mark})"
    if plan.kind != "sprayer":
        yield "a stiff jug of a product that is thinned; a ready-to-use jug goes by its own label"
    yield "rinsed with water"


def _cautions(plan: _Plan, reference: Reference) -> Iterator[str]:
    other = named(reference.mixing["rinse"], "other_diluent")[0]
    yield f"Oil or anything but water: {other.value} ({other.mark}, {other.source})."
    if plan.kind == "pressure":
        yield "Pressure rinse only where the label offers it."
    yield "The label's own words on rinsing and disposal come first."


def _by(source: str, name: str, reference: Reference) -> Cited[float]:
    return next(row for row in numbers(named(reference.mixing["rinse"], name)) if row.source == source)


def _fill(source: str, reference: Reference) -> Cited[float]:
    return _by(source, "rinse_fill_share", reference)


def _tested_ml(reference: Reference) -> float:
    return convert(_by(_RULE, "tested_gal", reference).value, "gal", "mL")


def _poured(plan: _Plan, ask: RinseAsk) -> str:
    return jug(plan.each_ml, ask.system).text


def _volume(ml: float, system: System) -> str:
    """Return a volume in both systems; four figures, so that a quarter of a jug reads as one."""
    large = ml >= convert(1 / 2, "gal", "mL")
    us = show(convert(ml, "mL", "gal"), "gal", 4) if large else show(convert(ml, "mL", "fl oz"), "fl oz")
    metric = show(ml / 1000, "L") if ml >= 1000 else show(ml, "mL")
    return f"{us} ({metric})" if system == "us" else f"{metric} ({us})"
