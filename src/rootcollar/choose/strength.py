"""How strong to mix: what the sources give, inside what the label allows. Label beats source beats habit."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from rootcollar.kernel.formula import formula
from rootcollar.kernel.sources import Mark
from rootcollar.kernel.units import convert
from rootcollar.mix.recipe import Carrier
from rootcollar.reference import MethodRow, Reference, Span
from rootcollar.shelf import Sheet

__all__ = ["Asked", "Strength", "choose_strength", "same_acid_pct"]

_BEST_FIRST = tuple(Mark)


@dataclass(frozen=True, slots=True)
class Asked:
    """What a strength is wanted for. ae_g_per_l: acid in the product in hand [g/L]."""

    method: str
    carrier: Carrier
    ingredient: str
    ae_g_per_l: float


@dataclass(frozen=True, slots=True)
class Strength:
    """The strength to mix [% of finished mix] and how it was come by."""

    pct: float
    because: str


@formula(
    "minimum(pct * ae_named_g_per_l / ae_have_g_per_l, 100)",
    gives="%",
    source="arithmetic",
    pct=(0.25, 100),
    ae_named_g_per_l=(90, 600),
    ae_have_g_per_l=(90, 600),
)
def same_acid_pct(pct: float, ae_named_g_per_l: float, ae_have_g_per_l: float) -> float:
    """Return the share of the product in hand that brings as much acid as pct of the product a source names [%].

    pct: strength the source gives [% v/v]. ae_named_g_per_l, ae_have_g_per_l: acid in the named product and in the
    one in hand [g/L]. Never above 100: undiluted is all there is.
    """
    return min(pct * ae_named_g_per_l / ae_have_g_per_l, 100.0)


@dataclass(frozen=True, slots=True)
class _Given:
    low: float
    high: float
    words: str


def choose_strength(
    asked: Asked, sheet: Sheet | None, rows: tuple[MethodRow, ...], reference: Reference
) -> Strength | None:
    """Return the weakest strength that the best source gives and the label allows; None when neither names one.

    rows: the species' rows that speak of it. Where source and label do not meet, the label's nearer end is taken. A
    source's figure goes to a hundredth of a percent, so that equal mixes are one mix.
    """
    given = _from_rows(rows, asked, reference) or _from_method(asked, reference)
    low = sheet.says("concentration.low", asked.method) if sheet else None
    high = sheet.says("concentration.high", asked.method) if sheet else None
    if low is None and high is None:
        return Strength(round(given.low, 2), f"{given.words}; no strength read on a label yet") if given else None
    floor, ceiling = (0.0 if low is None else float(low)), (100.0 if high is None else float(high))
    allows = f"the label allows {floor:g} to {ceiling:g} %"
    if given is None:
        return Strength(floor or ceiling, f"{allows}; no source gives a strength, so its weakest")
    return Strength(min(max(round(given.low, 2), floor), ceiling), f"{given.words}; {allows}")


def _from_rows(rows: Iterable[MethodRow], asked: Asked, reference: Reference) -> _Given | None:
    for mark in _BEST_FIRST:
        for row in rows:
            if row.mark is not mark or row.strength is None or row.strength.low is None:
                continue
            low, high = row.strength.low, row.strength.high or row.strength.low
            if row.strength_unit == "g_ae_L":
                low, high = (100 * one / asked.ae_g_per_l for one in (low, high))
            elif row.strength_unit != "pct_vv":
                continue
            else:
                named = _named_ae(row, asked.ingredient, reference)
                if named:
                    low, high = (same_acid_pct(one, named, asked.ae_g_per_l) for one in (low, high))
            return _Given(low, high, f"{row.source} ({mark}) gives {_span(low, high)} %")
    return None


def _from_method(asked: Asked, reference: Reference) -> _Given | None:
    facts = reference.methods[asked.method].rows("strength_pct", asked.ingredient, asked.carrier)
    for mark in _BEST_FIRST:
        for cited in facts:
            if cited.mark is not mark:
                continue
            if isinstance(cited.value, Span) and cited.value.low is not None:
                low, high = cited.value.low, cited.value.high or cited.value.low
            elif isinstance(cited.value, (int, float)):
                low = high = float(cited.value)
            else:
                continue
            return _Given(low, high, f"{cited.source} ({mark}) gives {_span(low, high)} % for this method")
    return None


def _named_ae(row: MethodRow, ingredient: str, reference: Reference) -> float | None:
    for key in row.formulations:
        one = reference.formulations.get(key)
        if one and one.ingredient == ingredient:
            cited = one.ae_lb_per_gal or one.ai_lb_per_gal
            if cited:
                return convert(cited.value, "lb/gal", "g/L")
    return None


def _span(low: float, high: float) -> str:
    return f"{low:.3g}" if low == high else f"{low:.3g} to {high:.3g}"
