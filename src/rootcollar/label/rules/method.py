"""May it be applied in this way, with this carrier, to stems and plants of this size?"""

from __future__ import annotations

import math

from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, stop
from rootcollar.label.words import METHOD_NAMES, flat, listing, mentions, method_words

__all__ = ["carrier_listed", "height_within", "method_listed", "stems_within"]

_PROHIBITED = "sheet.methods.prohibited"
_ONLY = "sheet.methods.only_listed"
_THIN = "sheet.method.stem_diameter_in.low"
_THICK = "sheet.method.stem_diameter_in.high"


@rule(
    "L07",
    "The label does not forbid this method.",
    Basis("FIFRA 2(ee)(3)"),
    silence={_PROHIBITED: (), _ONLY: False},
    prohibited=_PROHIBITED,
    only=_ONLY,
    listed="sheet.methods",
    method="plan.method",
)
def method_listed(prohibited: tuple[str, ...], only: bool, listed: frozenset[str], method: str) -> Verdict | None:
    """Stop on a forbidden method, or on an unlisted one where only listed ones are allowed; ask on other unlisted."""
    words = method_words(method)
    names = {flat(one) for one in (method, *METHOD_NAMES.get(method, ()))}
    if any(flat(one) in names for one in prohibited):
        return stop(f"the label forbids {words}; it forbids: {listing(prohibited)}", "another way, or another product")
    near = [one for one in prohibited if mentions(one, names)]
    if near:
        return ask(f"the label forbids {listing(near)}: is this work something else?", "read its words; yes if it is")
    if method in listed:
        return None
    given = listing(sorted(method_words(one) for one in listed))
    if only:
        return stop(f"the label allows only its own methods ({given}), and {words} is not among them", "another way")
    return ask(
        f"the label gives no directions for {words}; it gives them for {given}",
        "look whether the booklet says to use only its own methods; yes if it does not, and you take this as yours",
    )


@rule(
    "L10",
    "The label lets it be mixed with this carrier.",
    Basis("the label; FIFRA 2(ee)"),
    listed="sheet.method.carrier",
    carrier="plan.carrier",
)
def carrier_listed(listed: tuple[str, ...], carrier: str) -> Verdict | None:
    """Stop on oil where the label gives water, on water where it gives oil, on undiluted where it gives a dilution."""
    if carrier in listed:
        return None
    words = {"none": "undiluted use", "water": "mixing with water", "oil": "mixing with oil"}
    given = listing(words[one] for one in listed)
    return stop(f"for this method the label gives {given}, not {words[carrier]}", "one of these, or another product")


@rule(
    "L47a",
    "The stems are of the size this method is for.",
    Basis("the label", Seen.LABEL),
    silence={_THIN: 0.0, _THICK: math.inf},
    thin_in=_THIN,
    thick_in=_THICK,
    band_cm="plan.band_cm",
)
def stems_within(thin_in: float, thick_in: float, band_cm: tuple[float, float]) -> Verdict | None:
    """Ask where stems of the size class pass the label's sizes for the method."""
    thinnest, thickest = (convert(one, "cm", "in") for one in band_cm)
    if exceeds(thickest, thick_in):
        return ask(
            f"stems up to {show(thickest, 'in')} are planned; the label gives this method for stems to "
            f"{show(thick_in, 'in')}",
            "yes if its words leave thicker stems open; else another way for these",
        )
    if exceeds(thin_in, thinnest):
        return ask(
            f"stems from {show(thinnest, 'in')} are planned; the label gives this method for stems from "
            f"{show(thin_in, 'in')}",
            "yes if its words leave thinner stems open; else another way for these",
        )
    return None


@rule(
    "L47b",
    "The plants are low enough to be sprayed.",
    Basis("the label", Seen.LABEL),
    when_silent=Level.OK,
    tallest_ft="sheet.method.max_target_height_ft",
    height_m="plan.height_m",
)
def height_within(tallest_ft: float, height_m: float) -> Verdict | None:
    """Ask where plants stand above the height to which the label lets leaves be sprayed."""
    height_ft = convert(height_m, "m", "ft")
    if not exceeds(height_ft, tallest_ft):
        return None
    return ask(
        f"plants of {show(height_ft, 'ft')} are planned; the label gives leaf spray for plants to "
        f"{show(tallest_ft, 'ft')}",
        "cut them first and spray the regrowth; yes only if its words leave it open",
    )
