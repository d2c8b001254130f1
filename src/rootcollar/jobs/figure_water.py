"""Figure water: how hard it is, and how much ammonium sulphate offsets that, where the label allows any."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System, bench_cautions
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, show
from rootcollar.mix import ams_for_ion, ams_in_tank_g, ams_lb_per_100_gal, hardness_ppm, ion_from_hardness_ppm
from rootcollar.reference import NamedFigure, Reference, Span, named, numbers, spans

__all__ = ["IONS", "WaterAsk", "water"]

IONS: Mapping[str, str] = {"potassium": "k", "sodium": "na", "calcium": "ca", "magnesium": "mg", "iron": "fe"}
_HARD = ("calcium", "magnesium")
_SAID_AS = "lb/100 gal"


@dataclass(frozen=True, slots=True)
class WaterAsk:
    """What a water report says. ions_ppm: by name [ppm]. hardness_ppm: as CaCO3, where it was told instead of calcium
    and magnesium [ppm]. tank_l: water of a tank [L].
    """

    given: Mapping[str, str]
    ions_ppm: Mapping[str, float]
    hardness_ppm: float | None = None
    tank_l: float | None = None
    system: System = "us"


@dataclass(frozen=True, slots=True)
class _Offset:
    """Ammonium sulphate for the water [lb/100 gal], and what was taken where calcium and magnesium are unknown."""

    lb_per_100_gal: float
    taken: str = ""


def water(ask: WaterAsk, reference: Reference) -> Outcome[Answer]:
    """Return hardness and ammonium sulphate for a water. Raises Refusal for figures that no fresh water has."""
    _check(ask, reference)
    hard = _hardness(ask, reference)
    offset = _offset(ask, reference)
    pounds = offset.lb_per_100_gal
    ams = f"{show(pounds, 'lb', 2)} of ammonium sulphate in 100 gal ({show(_g_per_l(pounds), 'g/L', 2)})"
    tank = "" if ask.tank_l is None else f", {_in_tank(pounds, ask)} in {_tank(ask)}"
    return Outcome(Answer(
        question="How hard is this water, and how much ammonium sulphate offsets it?",
        given=ask.given,
        says=f"{_hard_words(hard)}: {ams}{tank} offset it by the formula; only where the label allows it",
        value=pounds, unit=_SAID_AS,
        figures={"ams_lb_per_100_gal": pounds, "ams_g_per_l": _g_per_l(pounds)}
        | ({} if hard is None else {"hardness_ppm": hard}),
        details=tuple(_details(ask, hard, pounds, reference)),
        assumed=tuple(_assumed(ask, offset)),
        cautions=("The label decides whether ammonium sulphate may go in, and how much.", *bench_cautions(reference)),
    ))  # fmt: skip


def _check(ask: WaterAsk, reference: Reference) -> None:
    most = numbers(named(reference.mixing["water"], "most_believable_ppm"))[0]
    for name, ppm in {**ask.ions_ppm, "hardness": ask.hardness_ppm or 0.0}.items():
        if ppm > most.value:
            raise Refusal(
                f"{name} of {show(ppm, 'ppm')}",
                limit="that is more than sea water has",
                do="Read the figure and its unit again: most well water has less than 500 ppm of hardness.",
            )


def _hardness(ask: WaterAsk, reference: Reference) -> float | None:
    """The hardness [ppm as CaCO3]; None where neither it nor both of its ions were told."""
    if ask.hardness_ppm is not None or not set(_HARD) <= set(ask.ions_ppm):
        return ask.hardness_ppm
    per_calcium, per_magnesium = (use(_per_ion(name, reference)) for name in _HARD)
    return hardness_ppm(ask.ions_ppm["calcium"], ask.ions_ppm["magnesium"], per_calcium, per_magnesium)


def _per_ion(name: str, reference: Reference) -> Cited[float]:
    return numbers(named(reference.mixing["water"], f"hardness_per_{IONS[name]}_ppm"))[0]


def _offset(ask: WaterAsk, reference: Reference) -> _Offset:
    """Add up what the ions ask for; a bare hardness is taken as the ion that asks for more."""
    if ask.hardness_ppm is None:
        return _Offset(_ams(ask.ions_ppm, reference))
    found = {}
    for name in _HARD:
        alone = ion_from_hardness_ppm(ask.hardness_ppm, use(_per_ion(name, reference)))
        found[name] = _ams({**ask.ions_ppm, name: alone}, reference)
    more = max(found, key=lambda name: found[name])
    less = next(name for name in _HARD if name != more)
    taken = f"all hardness taken as {more}; all as {less} it is {show(found[less], 'lb', 2)} in 100 gal"
    return _Offset(found[more], taken)


def _ams(ions_ppm: Mapping[str, float], reference: Reference) -> float:
    """Return the ammonium sulphate for these ions [lb/100 gal]; an ion that was not told adds nothing."""
    rows = reference.mixing["ams"]
    parts = dict.fromkeys(IONS, 0.0)
    for name, ppm in ions_ppm.items():
        factor = use(numbers(named(rows, f"lb_per_100_gal_per_ppm_{IONS[name]}"))[0])
        parts[name] = ams_for_ion(ppm, factor)
    return ams_lb_per_100_gal(**parts)


def _details(ask: WaterAsk, hard: float | None, pounds: float, reference: Reference) -> Iterator[str]:
    ams = reference.mixing["ams"]
    usual, label = _range(ams, "usual_lb_per_100_gal"), _range(ams, "label_lb_per_100_gal")
    yield (
        f"Sources differ: the formula gives {show(pounds, 'lb', 2)} in 100 gal [NDSU15]; {_ends(usual)} lb overcome "
        f"most hard water [{usual.source}]; labels of glyphosate say {_ends(label)} lb [{label.source}]. Yours decides."
    )
    if ask.tank_l is not None:
        low, high = (_in_tank(end or 0.0, ask) for end in (label.value.low, label.value.high))
        yield f"As such labels say, in {_tank(ask)}: {low} to {high}."
    harm = _range(reference.mixing["water"], "hardness_harm_ppm")
    if hard is not None:
        side = "below" if hard < (harm.value.low or 0) else "within" if harm.value.holds(hard) else "above"
        yield f"Harm to glyphosate shows from about {_ends(harm)} ppm, by rate ({harm.mark}): this is {side} that."
    for topic, name in (("water", "who_cares"), ("ams", "soft_water"), ("water", "clear")):
        row = named(reference.mixing[topic], name)[0]
        yield f"{str(row.value)[0].upper()}{str(row.value)[1:]} ({row.mark}, {row.source})."
    for ph in spans(named(reference.mixing["water"], "ph")):
        yield f"pH {_ends(ph)}: {ph.holds_for} ({ph.mark})."
    order = named(reference.mixing["adding_order"], "glyphosate_with_ams")[0]
    yield f"Order: {order.value} ({order.mark}, {order.source})."


def _assumed(ask: WaterAsk, offset: _Offset) -> Iterator[str]:
    yield "a spray in water; in an oil mix there is nothing to offset"
    if offset.taken:
        yield offset.taken
    missing = [name for name in IONS if name not in ask.ions_ppm and (ask.hardness_ppm is None or name not in _HARD)]
    if missing:
        yield f"not told, and left out: {', '.join(missing)}; each can only add"


def _range(rows: Sequence[NamedFigure], name: str) -> Cited[Span]:
    return spans(named(rows, name))[0]


def _ends(row: Cited[Span]) -> str:
    return f"{row.value.low:g} to {row.value.high:g}"


def _hard_words(hard: float | None) -> str:
    if hard is None:
        return "Hardness not told in full"
    grains = f"{show(convert(hard, 'ppm', 'grain/gal'), 'ppm').partition(' ')[0]} grains/gal"
    return f"Hardness {show(hard, 'ppm')} as CaCO3 ({grains})"


def _g_per_l(lb_per_100_gal: float) -> float:
    return convert(lb_per_100_gal, _SAID_AS, "g/L")


def _in_tank(lb_per_100_gal: float, ask: WaterAsk) -> str:
    """The sulphate for the tank, by weight, because it is sold dry."""
    grams = ams_in_tank_g(_g_per_l(lb_per_100_gal), ask.tank_l or 0.0)
    pounds = convert(grams, "g", "lb")
    us = show(pounds, "lb", 2) if pounds >= 1 else show(convert(grams, "g", "oz wt"), "oz wt", 2)
    metric = show(grams / 1000, "kg", 2) if grams >= 1000 else show(grams, "g", 2)
    return f"{us} ({metric})" if ask.system == "us" else f"{metric} ({us})"


def _tank(ask: WaterAsk) -> str:
    litres = ask.tank_l or 0.0
    return show(convert(litres, "L", "gal"), "gal") if ask.system == "us" else show(litres, "L")
