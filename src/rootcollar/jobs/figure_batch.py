"""Figure what a plant or a stem took: mix for each plant, and a proving batch in place of a guessed coverage."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from rootcollar.dose import Asked, DoseRule, per_stem_ml, rule_for, surface_cm2
from rootcollar.dose.amount import coverage_from_batch
from rootcollar.dose.rule import shape_of
from rootcollar.jobs.figure import NOT_CHECKED, Answer, System, bench_cautions, volume
from rootcollar.jobs.figure_jugs import cut
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.doubt import Band, Doubt, band, best, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert, show
from rootcollar.mix import Carrier, on_plants_ml, per_plant_ml, product_in_ml, treated_cm2
from rootcollar.reference import Reference, find_formulation

__all__ = ["BatchAsk", "PlantsAsk", "per_plant", "proving"]

_SEED = 1  # any: the band is the same whoever asks
_FEW = 25  # stems of a proving batch; fewer are told apart from luck badly (ours)
_MEASURED = "from your own measure"


@dataclass(frozen=True, slots=True)
class PlantsAsk:
    """What was used on so many plants [mL]; how many plants there are; strength of the mix [%]; tank [mL]."""

    given: Mapping[str, str]
    used_ml: float
    plants: int
    count: int | None = None
    strength_pct: float | None = None
    tank_ml: float | None = None
    system: System = "us"


@dataclass(frozen=True, slots=True)
class BatchAsk:
    """A proving batch: what is gone [mL], on how many stems of which mean diameter [cm], put on how, how strong [%]."""

    given: Mapping[str, str]
    used_ml: float
    count: int
    stem_cm: float
    method: str
    strength_pct: float
    product: str | None = None
    carrier: Carrier | None = None
    system: System = "us"


def per_plant(ask: PlantsAsk, reference: Reference) -> Outcome[Answer]:
    """Return the mix on one plant, and on all there are, with loads and product where they were asked for."""
    each = per_plant_ml(ask.used_ml, ask.plants)
    whole = None if ask.count is None else on_plants_ml(each, ask.count)
    product = None if ask.strength_pct is None else product_in_ml(each if whole is None else whole, ask.strength_pct)
    unit = "fl oz" if ask.system == "us" else "mL"
    says = f"{volume(each, ask.system)} a plant"
    if whole is not None and ask.count is not None:
        says += f"; {volume(whole, ask.system)} for {show(ask.count, 'plant')}"
    figures: dict[str, float] = {"per_plant_ml": each}
    figures |= {} if whole is None else {"total_ml": whole}
    figures |= {} if product is None else {"product_ml": product}
    return Outcome(Answer(
        question="How much mix does a plant take?",
        given=ask.given,
        says=says,
        value=convert(each, "mL", unit), unit=unit,
        figures=figures,
        details=(*_plant_product(ask, product), *_plant_loads(ask, each, whole)),
        assumed=(
            *(() if ask.strength_pct is None else (f"strength {show(ask.strength_pct, '%')} of the finished mix",)),
            "plants alike in size to those that were sprayed",
        ),
        cautions=("Spray water on plants to measure it, by the person who will do the work.", *(
            () if product is None else bench_cautions(reference))),
        note=_MEASURED if product is None else NOT_CHECKED,
    ))  # fmt: skip


def _plant_product(ask: PlantsAsk, product_ml: float | None) -> tuple[str, ...]:
    if product_ml is None or ask.strength_pct is None:
        return ()
    on = "on a plant" if ask.count is None else "in all of it"
    return (f"Product {on} at {show(ask.strength_pct, '%')}: {volume(product_ml, ask.system)}.",)


def _plant_loads(ask: PlantsAsk, each: float, whole: float | None) -> tuple[str, ...]:
    if ask.tank_ml is None:
        return ()
    tank = volume(ask.tank_ml, ask.system)
    if each > ask.tank_ml:
        return (f"One plant takes more than a tank of {tank}.",)
    does = f"A tank of {tank} does {show(ask.tank_ml // each, 'plant')}"
    if whole is None:
        return (f"{does}.",)
    loads = show(len(cut(whole, ask.tank_ml, ask.system)), "load")
    return (f"{does}: {loads}. rootcollar figure loads has the jug marks.",)


def proving(ask: BatchAsk, reference: Reference) -> Outcome[Answer]:
    """Return a crew's own coverage from a proving batch, beside the guess it replaces, and the lines that keep it.

    Raises Refusal for stems the method is not for.
    """
    asked, facts = _asked(ask, reference), reference.methods[ask.method]
    shape, stem = shape_of(asked, facts), (ask.stem_cm, ask.stem_cm)
    guess = _guess(asked, stem, reference)
    treated = treated_cm2(float(surface_cm2(shape, sure(ask.stem_cm))[0]), ask.count)
    cover = coverage_from_batch(ask.used_ml, treated)
    each = best(per_stem_ml(replace(shape, ml_per_cm2=sure(cover)), stem))  # refuses stems the method is not for
    stems = f"{show(ask.count, 'stem')} of {ask.given['stems']}"
    return Outcome(Answer(
        question=f"What coverage does a proving batch on {stems} give?",
        given=ask.given,
        says=f"{_coverage(cover, ask.system)}, {volume(each, ask.system)} a stem of {ask.given['stems']}",
        value=cover, unit="mL/cm2",
        figures={"ml_per_cm2": cover, "per_stem_ml": each, "strength_pct": ask.strength_pct},
        details=(_beside(guess, each, ask.system), *_own_lines(ask, asked.carrier, reference)),
        assumed=_assumed(ask, shape),
        cautions=(
            *((f"{show(ask.count, 'stem')} are few: {_FEW} or more even out luck.",) if ask.count < _FEW else ()),
            f"It holds for {show(ask.strength_pct, '%')} and the nozzle or bottle it was measured with, for no other.",
            *bench_cautions(reference),
        ),
    ))  # fmt: skip


def _asked(ask: BatchAsk, reference: Reference) -> Asked:
    ingredient = find_formulation(ask.product, reference).ingredient if ask.product else ""
    carrier = "none" if ask.strength_pct >= 100 else ask.carrier or _carrier(ask.method)
    if carrier == "none" and ask.strength_pct < 100:
        raise Refusal(
            f"{show(ask.strength_pct, '%')} and nothing to thin it with",
            limit="undiluted is 100 %",
            do="Name the carrier, water or oil, or leave --carrier out.",
        )
    return Asked(ask.method, ingredient, carrier, ask.strength_pct)


def _guess(asked: Asked, stem_cm: tuple[float, float], reference: Reference) -> Band | None:
    """Return what a stem would take by the kept coverage [mL]; None where none is kept for the strength."""
    facts, coverages = reference.methods[asked.method], reference.coverage.values()
    try:
        rule = rule_for(asked, facts=facts, coverages=coverages, doubt=Doubt(_SEED))
    except Refusal:  # to fill such a gap is what a proving batch is for
        return None
    return band(per_stem_ml(rule, stem_cm))


def _carrier(method: str) -> Carrier:
    return "oil" if method == "basal_bark" else "water"


def _beside(guess: Band | None, each_ml: float, system: System) -> str:
    if guess is None:
        return "No coverage is kept for this strength: yours is the only figure there is."
    times = f"{each_ml / guess.best:.2g}"
    if guess.low == guess.high:
        return f"It takes the place of the kept {volume(guess.best, system)} a stem: yours is {times} times that."
    low, high = (volume(one, system) for one in (guess.low, guess.high))
    within = "within" if guess.low <= each_ml <= guess.high else "outside"
    kept = f"It takes the place of the kept guess, {volume(guess.best, system)} a stem, likely {low} to {high}"
    return f"{kept}: yours is {times} times that, {within} its likely range."


def _own_lines(ask: BatchAsk, carrier: str, reference: Reference) -> tuple[str, ...]:
    """Return the block that keeps the batch; what was not told is left for its writer, so that it cannot be skipped."""
    product = find_formulation(ask.product, reference).key if ask.product else "KEY OF ITS LABEL SHEET"
    return (
        "Write it into own.toml:",
        "[[proving]]", f'method = "{ask.method}"', f'product = "{product}"', f'strength = "{ask.strength_pct:g}%"',
        f'carrier = "{carrier}"', 'nozzle = "WHAT IT WAS PUT ON WITH"', f'used = "{ask.given["used"]}"',
        f'stems = [{{ diameter = "{ask.given["stems"]}", count = {ask.count} }}]', "on = THE DAY, SUCH AS 2026-10-02",
        'by = "WHO MEASURED"',
    )  # fmt: skip


def _assumed(ask: BatchAsk, shape: DoseRule) -> tuple[str, ...]:
    carried = {"oil": "in oil", "water": "in water"}.get(shape.asked.carrier, "undiluted")
    product = f" of {ask.product}" if ask.product else ""
    high = show(convert(shape.height_cm, "cm", "in"), "in")
    wetted = f"a band of {high} on the bark"
    if ask.method == "cut_stump":
        wide = "" if shape.ring_cm is None else show(convert(shape.ring_cm, "cm", "in"), "in")
        wetted = (f"a ring {wide} wide" if wide else "the whole face") + (
            f", {high} of bark" if shape.height_cm else ""
        )
    return (
        f"strength {show(ask.strength_pct, '%')}{product}, {carried}",
        f"each stem wetted on {wetted}",
        f"{ask.given['stems']} is the mean diameter of all stems of the batch, where the mix went",
    )


def _coverage(ml_per_cm2: float, system: System) -> str:
    us, metric = (show(convert(ml_per_cm2, "mL/cm2", unit), unit) for unit in ("fl oz/sq ft", "mL/cm2"))
    return f"{us} ({metric})" if system == "us" else f"{metric} ({us})"
