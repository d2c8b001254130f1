"""Figure a dose: how much finished mix so many stems of a size take, what that rests on, and how sure it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from rootcollar.choose import line_mix_ml, not_planned_with, products
from rootcollar.choose.strength import Asked as StrengthFor
from rootcollar.choose.strength import choose_strength
from rootcollar.dose import Asked, DoseRule, per_stem_ml, rule_for
from rootcollar.jobs.figure import Answer, Poured, System, bench_cautions, volume
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.doubt import Band, Doubt, Worlds, band, sure
from rootcollar.kernel.errors import BadInput, Fault, Refusal
from rootcollar.kernel.units import convert, show
from rootcollar.mix import Carrier, product_in_ml
from rootcollar.reference import Formulation, Reference, find_formulation, numbers
from rootcollar.shelf import Sheet

__all__ = ["DoseAsk", "dose"]

# Where no product is named: the plainest salt in water, the plainest ester in oil (ours, said in the answer).
_PRODUCTS: Mapping[Carrier, str] = {
    "water": "glyphosate-ipa-3-sl", "none": "glyphosate-ipa-3-sl", "oil": "triclopyr-bee-4-ec",
}  # fmt: skip
_UNITS: Mapping[System, tuple[str, str]] = {"us": ("fl oz", "gal"), "metric": ("mL", "L")}
_PROVING = (
    "Proving batch: mix a quart, treat 25 stems you have measured, measure what is left. Your own figure then counts."
)
Bark = Literal["smooth", "rough", "thick"]
_BARKS = ("smooth bark", "thin bark", "thin-barked")
_SEED = 1  # any: the band is the same whoever asks


@dataclass(frozen=True, slots=True)
class DoseAsk:
    """Which stems, treated how. size_cm: both ends of the class, equal for one size [cm]; None for leaves.

    strength_pct, product, carrier: None where the usual one is wanted. crown_m: of plants whose leaves are sprayed.
    band_cm: height of the band on the bark. spacing_cm: stem diameter for each cut. each_ml: mix in one cut [mL].
    bark: smooth, rough or thick, where somebody looked. sheet: the label sheet whose product and strengths count.
    """

    given: Mapping[str, str]
    method: str
    count: int
    size_cm: tuple[float, float] | None = None
    strength_pct: float | None = None
    product: str | None = None
    carrier: Carrier | None = None
    crown_m: float | None = None
    band_cm: float | None = None
    spacing_cm: float | None = None
    each_ml: float | None = None
    bark: Bark | None = None
    sheet: Sheet | None = None
    system: System = "us"


def dose(ask: DoseAsk, reference: Reference) -> Outcome[Answer]:
    """Return the mix for all stems with its band, on one stem, in cuts, and the product in it.

    Raises Refusal outside the stems the method is for, and where no coverage is kept for the strength.
    """
    _check(ask)
    _bark(ask, reference)
    carrier: Carrier = ask.carrier or ("oil" if ask.method == "basal_bark" else "water")
    product = _product(ask, carrier, reference)
    strength_pct, because = _strength(ask, carrier, product, reference)
    if strength_pct >= 100:
        carrier = "none"
    rule = _rule(ask, Asked(ask.method, product.ingredient, carrier, strength_pct), reference)
    each = per_stem_ml(rule, ask.size_cm or (0.0, 0.0), ask.crown_m)
    total = line_mix_ml(sure(float(ask.count)), each)
    here = band(total)
    product_ml = product_in_ml(here.best, strength_pct)
    stems = f"{show(ask.count, 'plant' if ask.method == 'foliar' else 'stem')} of {_size_words(ask)}"
    unit = _UNITS[ask.system][1]
    return Outcome(Answer(
        question=f"How much mix do {stems} take, {ask.method.replace('_', ' ')}?",
        given=ask.given,
        says=f"{_amount(here, ask.system)} for {stems}, {ask.method.replace('_', ' ')}",
        value=convert(here.best, "mL", unit), unit=unit,
        low=convert(here.low, "mL", unit), high=convert(here.high, "mL", unit),
        figures={
            "per_stem_ml": band(each).best, "total_ml": here.best, "low_ml": here.low, "high_ml": here.high,
            "product_ml": product_ml, "strength_pct": strength_pct,
        },
        poured=_poured(ask, carrier, strength_pct, rule, each),
        details=(
            f"On one stem: {_each(band(each))}.",
            *_cuts(ask, rule, each),
            f"Product in it at {show(strength_pct, '%')}: {volume(product_ml, ask.system)}.",
            f"Rests on: {rule.words}{_for_mixes(rule, reference)}.",
            *((_PROVING,) if rule.ml_per_cm2 is not None else ()),
        ),
        assumed=_assumed(ask, rule, f"{show(strength_pct, '%')} of {product.words}, {_carried(carrier)}", because),
        cautions=bench_cautions(reference),
    ))  # fmt: skip


def _check(ask: DoseAsk) -> None:
    """Raise BadInput for what the method asks and was not told, and Refusal for what it has no use for."""
    leaves = ask.method == "foliar"
    if not leaves and ask.size_cm is None:
        raise BadInput(
            Fault(found="no size", allowed="the stem's diameter, such as 2 in or 1-2 in", field="--diameter")
        )
    if leaves and ask.crown_m is None:
        raise BadInput(
            Fault(found="no crown", allowed="the width of the leaves to be wetted, such as 4 ft", field="--crown")
        )
    of_no_use = {
        "--band": ask.band_cm is not None and ask.method != "basal_bark",
        "--spacing": ask.spacing_cm is not None and ask.method != "hack_squirt",
        "--each": ask.each_ml is not None and ask.method != "hack_squirt",
        "--bark": ask.bark is not None and ask.method != "basal_bark",
        "--crown": ask.crown_m is not None and not leaves,
        "--diameter": ask.size_cm is not None and leaves,
    }
    for option, useless in of_no_use.items():
        if useless:
            raise Refusal(
                f"{option} with {ask.method.replace('_', ' ')}",
                limit="this way does not go by it",
                do=f"Leave {option} out.",
            )


def _product(ask: DoseAsk, carrier: Carrier, reference: Reference) -> Formulation:
    """Return the formulation in hand: the sheet's, or the one that was named, or the plainest for the carrier."""
    if ask.sheet is None:
        return find_formulation(ask.product or _PRODUCTS[carrier], reference)
    shelf = {ask.sheet.key: ask.sheet}
    if ask.product is not None:
        raise BadInput(Fault("--product with --sheet", "one of them: the sheet says which product it is"))
    found = products(shelf, reference)
    if not found:
        raise BadInput(Fault("; ".join(not_planned_with(shelf, reference)), "a sheet of a product to be mixed"))
    return found[0].formulation


def _poured(ask: DoseAsk, carrier: Carrier, pct: float, rule: DoseRule, each: Worlds) -> Poured:
    dose_ml, place = (rule.dose_ml, rule.dose_per) if rule.dose_ml is not None else (band(each).high, "stem")
    return Poured(pct, carrier, ask.method, dose_ml, place, ask.size_cm)


def _bark(ask: DoseAsk, reference: Reference) -> None:
    """Refuse to coat thick bark: no source gives the way for it, because the oil must reach the living wood."""
    if ask.bark != "thick":
        return
    facts = reference.methods[ask.method]
    said = [
        one.figure
        for one in facts.figures
        if any(word in f"{one.figure.holds_for} {one.figure.value}" for word in _BARKS)
    ]
    whose = ", ".join(dict.fromkeys(f"{one.source}, {one.mark}" for one in said))
    raise Refusal(
        f"basal bark on thick bark, {_size_words(ask)}",
        limit=f"the sources give it for thin or smooth bark ({whose}); through thick bark oil does not reach the wood",
        do=f"Next: {facts.beyond_size}.",
    )


def _strength(ask: DoseAsk, carrier: Carrier, product: Formulation, reference: Reference) -> tuple[float, str]:
    """Return the strength [%] and how it was come by: as asked, or the weakest that the best source gives."""
    acid = product.ae_lb_per_gal or product.ai_lb_per_gal
    if acid is None:
        raise Refusal(f"percent of {product.words}", limit="it is no liquid", do="Name a liquid product.")
    asked = ask.strength_pct
    if (product.ready_to_use or carrier == "none") and asked not in (None, 100.0):
        raise Refusal(
            f"{show(asked or 0, '%')} of {product.words}, {_carried(carrier)}",
            limit="it is put on as sold, never thinned",
            do="Leave --strength out, or take another product and carrier.",
        )
    if product.ready_to_use or carrier == "none":
        return 100.0, "as sold"
    if asked is not None:
        return asked, ""
    wanted = StrengthFor(ask.method, carrier, product.ingredient, convert(acid.value, "lb/gal", "g/L"))
    if ask.bark == "rough" and ask.sheet is None:
        return _for_rough_bark(ask, reference)
    found = choose_strength(wanted, ask.sheet, (), reference)
    if found is None:
        raise BadInput(
            Fault(found="no strength", allowed="one, such as 20%: no source gives a usual one", field="--strength")
        )
    return found.pct, f"{found.because}; the weaker end"


def _for_rough_bark(ask: DoseAsk, reference: Reference) -> tuple[float, str]:
    """Return the strength that a source gives for rough bark, which takes more than smooth bark does."""
    rows = numbers([one for one in reference.methods[ask.method].rows("strength_pct") if "rough bark" in one.holds_for])
    return rows[0].value, f"{rows[0].source} ({rows[0].mark}) gives it for rough bark"


def _rule(ask: DoseAsk, asked: Asked, reference: Reference) -> DoseRule:
    if ask.spacing_cm is not None:
        asked = replace(asked, cuts_per_inch=convert(1, "in", "cm") / ask.spacing_cm)
    facts, coverages = reference.methods[ask.method], reference.coverage.values()
    rule = rule_for(asked, facts=facts, coverages=coverages, doubt=Doubt(_SEED), own=ask.each_ml)
    return rule if ask.band_cm is None else replace(rule, height_cm=ask.band_cm)


def _assumed(ask: DoseAsk, rule: DoseRule, strength: str, because: str) -> tuple[str, ...]:
    band_in = show(convert(rule.height_cm, "cm", "in"), "in")
    return (
        f"strength {strength}" + (f" ({because})" if because else ""),
        *((f"a band of {band_in} on the bark",) if ask.method == "basal_bark" and ask.band_cm is None else ()),
        *(("sizes even within the class",) if ask.size_cm and ask.size_cm[0] < ask.size_cm[1] else ()),
    )


def _for_mixes(rule: DoseRule, reference: Reference) -> str:
    """Return the strengths that the coverage behind a rule holds for; nothing for a dose by the cut."""
    if rule.ml_per_cm2 is None:
        return ""
    asked = rule.asked
    for one in reference.coverage.values():
        if asked.method in one.methods and one.nozzle in rule.words and one.strength_pct.holds(asked.strength_pct):
            return f"; for mixes of {one.strength_pct.low:g} to {one.strength_pct.high:g} % only"
    return ""


def _carried(carrier: Carrier) -> str:
    return "undiluted" if carrier == "none" else f"in {carrier}"


def _cuts(ask: DoseAsk, rule: DoseRule, each: Worlds) -> tuple[str, ...]:
    if rule.dose_ml is None:
        return ()
    cuts = band(each).best / rule.dose_ml
    in_all = show(cuts * ask.count, "cut")
    return (f"Cuts: {show(cuts, 'cut')} a stem, {in_all} in all, {show(rule.dose_ml, 'mL')} in each.",)


def _size_words(ask: DoseAsk) -> str:
    return ask.given.get("diameter") or f"{ask.given.get('crown')} across"


def _amount(here: Band, system: System) -> str:
    """Return a total with its band, all in the unit that suits the upper end."""
    (best, low, high), (other, _, _) = _shown(here, system), _shown(here, "metric" if system == "us" else "us")
    said = f"{best} ({other}) of finished mix"
    return said if here.low == here.high else f"{said}, likely {low} to {high},"


def _shown(here: Band, system: System) -> tuple[str, str, str]:
    small, large = _UNITS[system]
    unit = large if here.high >= convert(1, large, "mL") else small
    best, low, high = (show(convert(one, "mL", unit), unit, 2) for one in (here.best, here.low, here.high))
    return best, low, high


def _each(here: Band) -> str:
    best, low, high = (show(one, "mL", 2) for one in (here.best, here.low, here.high))
    return best if here.low == here.high else f"{best}, likely {low} to {high}"
