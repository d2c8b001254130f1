"""The table of units: names as people write them, exact factors, and how two units make a rate.

Factors are exact by definition: inch 2.54 cm, pound 453.59237 g, US gallon 231 cubic inches, acre of the
international foot [NIST-HB44, NIST-SP811, memory].
"""

from __future__ import annotations

import difflib
import re
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from rootcollar.kernel.errors import Ambiguous, UnitError

__all__ = ["UNITS", "WANTED", "Form", "Kind", "Unit", "plain", "unit_of"]

Form = Literal["", "ae", "ai", "product"]


class Kind(StrEnum):
    """What is measured; the comment is the base unit every amount of the kind is held in."""

    COUNT = "count"  # each
    LENGTH = "length"  # m
    AREA = "area"  # m2
    VOLUME = "volume"  # mL
    MASS = "mass"  # g
    TIME = "time"  # s
    SHARE = "share"  # % of the finished mix, 0-100
    SPEED = "speed"  # m/s
    TEMPERATURE = "temperature"  # degrees C
    STRENGTH = "strength"  # g/L
    VOLUME_RATE = "volume rate"  # L/ha
    MASS_RATE = "mass rate"  # kg/ha
    FLOW = "flow"  # mL/s
    DOSE = "dose"  # mg/kg of body weight


WANTED: dict[Kind, tuple[str, str]] = {
    Kind.COUNT: ("a count", "12 stems"),
    Kind.LENGTH: ("a length", "6 in or 15 cm"),
    Kind.AREA: ("an area", "0.5 ac or 200 m2"),
    Kind.VOLUME: ("a volume", "2 gal or 500 mL"),
    Kind.MASS: ("a weight", "2 lb or 500 g"),
    Kind.TIME: ("a time", "20 min"),
    Kind.SHARE: ("a percent", "20%"),
    Kind.SPEED: ("a speed", "3 mph or 2 m/s"),
    Kind.TEMPERATURE: ("a temperature", "75 F or 24 C"),
    Kind.STRENGTH: ("a weight per volume", "4 lb ae/gal or 480 g ae/L"),
    Kind.VOLUME_RATE: ("a volume per area", "2 qt/ac or 5 L/ha"),
    Kind.MASS_RATE: ("a weight per area", "2 lb ae/ac or 2 kg ae/ha"),
    Kind.FLOW: ("a volume per time", "0.5 gal/min or 2 L/min"),
    Kind.DOSE: ("a weight per weight", "500 mg/kg"),
}


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: base amount = (amount + shift) * factor. of: what the weight or volume is of."""

    symbol: str
    kind: Kind
    factor: Fraction
    shift: int = 0
    of: Form = ""

    @property
    def label(self) -> str:
        """The symbol as printed, with its form: `lb ae/gal`."""
        top, slash, bottom = self.symbol.partition("/")
        return f"{top} {self.of}{slash}{bottom}" if self.of else self.symbol


_IN, _FT = Fraction("0.0254"), Fraction("0.3048")
_ACRE = 43560 * _FT**2
_GAL = 231 * (100 * _IN) ** 3
_LB = Fraction("453.59237")

_ROWS: tuple[tuple[str, Kind, Fraction | int, str], ...] = (
    ("mm", Kind.LENGTH, Fraction(1, 1000), "mm millimeter(s) millimetre(s)"),
    ("cm", Kind.LENGTH, Fraction(1, 100), "cm centimeter(s) centimetre(s)"),
    ("m", Kind.LENGTH, 1, "m meter(s) metre(s)"),
    ("km", Kind.LENGTH, 1000, "km kilometer(s) kilometre(s)"),
    ("in", Kind.LENGTH, _IN, "in inch(es) \" ''"),
    ("ft", Kind.LENGTH, _FT, "ft foot feet '"),
    ("yd", Kind.LENGTH, 3 * _FT, "yd(s) yard(s)"),
    ("mi", Kind.LENGTH, 5280 * _FT, "mi mile(s)"),
    ("cm2", Kind.AREA, Fraction(1, 10000), "cm2 cm^2 sq_cm"),
    ("m2", Kind.AREA, 1, "m2 m^2 sq_m square_meter(s) square_metre(s)"),
    ("ha", Kind.AREA, 10000, "ha hectare(s)"),
    ("sq in", Kind.AREA, _IN**2, "sq_in in2 in^2 square_inch(es)"),
    ("sq ft", Kind.AREA, _FT**2, "sq_ft sqft ft2 ft^2 square_foot square_feet"),
    ("sq yd", Kind.AREA, 9 * _FT**2, "sq_yd yd2 yd^2 square_yard(s)"),
    ("ac", Kind.AREA, _ACRE, "ac acre(s)"),
    ("mL", Kind.VOLUME, 1, "ml milliliter(s) millilitre(s) cc"),
    ("L", Kind.VOLUME, 1000, "L l liter(s) litre(s)"),
    ("gal", Kind.VOLUME, _GAL, "gal(s) gallon(s) us_gal us_gallon(s) u_s_gal u_s_gallon(s)"),
    ("qt", Kind.VOLUME, _GAL / 4, "qt(s) quart(s)"),
    ("pt", Kind.VOLUME, _GAL / 8, "pt(s) pint(s)"),
    ("cup", Kind.VOLUME, _GAL / 16, "cup(s)"),
    ("fl oz", Kind.VOLUME, _GAL / 128, "fl_oz floz fl_ounce(s) fluid_oz fluid_ounce(s)"),
    ("Tbsp", Kind.VOLUME, _GAL / 256, "tbsp(s) tablespoon(s)"),
    ("tsp", Kind.VOLUME, _GAL / 768, "tsp(s) teaspoon(s)"),
    ("ug", Kind.MASS, Fraction(1, 1000000), "ug µg μg mcg microgram(s)"),
    ("mg", Kind.MASS, Fraction(1, 1000), "mg milligram(s)"),
    ("grain", Kind.MASS, _LB / 7000, "grain(s)"),
    ("g", Kind.MASS, 1, "g gram(s)"),
    ("kg", Kind.MASS, 1000, "kg kilo(s) kilogram(s)"),
    ("lb", Kind.MASS, _LB, "lb(s) pound(s)"),
    ("oz wt", Kind.MASS, _LB / 16, "oz_wt wt_oz dry_oz oz_dry ounce(s)_wt ounce(s)_by_weight oz_by_weight"),
    ("s", Kind.TIME, 1, "s sec(s) second(s)"),
    ("min", Kind.TIME, 60, "min(s) minute(s)"),
    ("h", Kind.TIME, 3600, "h hr(s) hour(s)"),
    ("day", Kind.TIME, 86400, "d day(s)"),
    ("%", Kind.SHARE, 1, "% percent pct"),
    ("% v/v", Kind.SHARE, 1, "%_v/v %v/v percent_v/v pct_v/v %_vol %_by_volume percent_by_volume"),
    ("m/s", Kind.SPEED, 1, "mps"),
    ("km/h", Kind.SPEED, Fraction(1000, 3600), "kph kmh"),
    ("mph", Kind.SPEED, 5280 * _FT / 3600, "mph"),
    ("ft/min", Kind.SPEED, _FT / 60, "fpm"),
    ("°C", Kind.TEMPERATURE, 1, "C deg_c degree(s)_c celsius degree(s)_celsius"),
    ("°F", Kind.TEMPERATURE, Fraction(5, 9), "F deg_f degree(s)_f fahrenheit degree(s)_fahrenheit"),
    ("gal/ac", Kind.VOLUME_RATE, _GAL / _ACRE * 10, "gpa"),
    ("gal/min", Kind.FLOW, _GAL / 60, "gpm"),
    ("ppm", Kind.STRENGTH, Fraction(1, 1000), "ppm part(s)_per_million"),
    ("grain/gal", Kind.STRENGTH, _LB / 7000 / _GAL * 1000, "gpg"),
)

_NOUNS = "stem stump tree plant shrub sprout clump cut frill hole injection load"
_SHIFT = {"°F": -32}

# Two readings, one of them a wrong dose: asked, never guessed.
_ASK: dict[str, str] = {
    **dict.fromkeys(
        ("oz", "ozs", "ounce", "ounces"),
        "fl oz, a volume, or oz wt, a weight? A liquid goes by fl oz, a dry product by oz wt",
    ),
    **dict.fromkeys(("a", "A"), "ac for acres, or m2?"),
    **dict.fromkeys(("c", "cf"), "cup, or C for degrees?"),
    **dict.fromkeys(("t", "T", "tb", "ts"), "tsp or Tbsp?"),
    **dict.fromkeys(("ton", "tons", "tonne", "tonnes"), "lb or kg (a ton has several sizes)"),
    **dict.fromkeys(("f",), "ft, or F for degrees?"),
    **dict.fromkeys(("M", "S", "H", "D"), "the unit written out: m, min, mi, s, h, day"),
    **dict.fromkeys(("G",), "gal or g?"),
    **dict.fromkeys(("gr", "grs"), "g for grams, or grain?"),
    **dict.fromkeys(
        ("% w/w", "% w/v", "% wt", "% by weight", "% ae", "% ai"),
        "a percent by volume, such as 20% v/v; give a strength by weight as lb ae/gal or g ae/L",
    ),
}

_FORMS: dict[str, Form] = {
    "ae": "ae", "a e": "ae", "acid equivalent": "ae", "ai": "ai", "a i": "ai", "active ingredient": "ai",
    "product": "product",
}  # fmt: skip
_WEIGHED = (Kind.MASS, Kind.STRENGTH, Kind.MASS_RATE)
_POURED = (Kind.VOLUME, Kind.VOLUME_RATE, *_WEIGHED)

# Kind over kind: the rate they make and what brings base over base to the rate's own base unit.
_PER: dict[tuple[Kind, Kind], tuple[Kind, int]] = {
    (Kind.MASS, Kind.VOLUME): (Kind.STRENGTH, 1000),
    (Kind.VOLUME, Kind.AREA): (Kind.VOLUME_RATE, 10),
    (Kind.MASS, Kind.AREA): (Kind.MASS_RATE, 10),
    (Kind.VOLUME, Kind.VOLUME): (Kind.SHARE, 100),
    (Kind.VOLUME, Kind.TIME): (Kind.FLOW, 1),
    (Kind.LENGTH, Kind.TIME): (Kind.SPEED, 1),
    (Kind.MASS, Kind.MASS): (Kind.DOSE, 1000000),
    **{(kind, Kind.COUNT): (kind, 1) for kind in (Kind.VOLUME, Kind.MASS, Kind.TIME, Kind.COUNT)},
}

_DOTS = re.compile(r"\.\s*|\s+")
_SLASH = re.compile(r"\s*/\s*|(?:^|\s+)per\s+", re.I)
_FORM = re.compile(r"\s+(?:of\s+)?(a ?e|a ?i|acid equivalent|active ingredient|product)$", re.I)
_MANY = re.compile(r"([1-9][0-9]{0,2}(?:,[0-9]{3})+|[1-9][0-9]*)\s+(.+)$")
_UNICODE = str.maketrans({
    "²": "^2", "°": " deg ", "′": "'", "’": "'", "″": '"', "”": '"', "⁄": "/", "∕": "/", "−": "-", "–": "-", "—": "-",
    "‑": "-", "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8",
    "⅞": " 7/8",
})  # fmt: skip


def plain(text: str) -> str:
    """Return the text in plain characters: fractions as `1/2`, typographic marks as typed ones."""
    return text.strip() if text.isascii() else text.translate(_UNICODE).strip()


def _named() -> dict[str, Unit]:
    names = {name: Unit(noun, Kind.COUNT, Fraction(1)) for noun in _NOUNS.split() for name in (noun, noun + "s")}
    for symbol, kind, factor, written in _ROWS:
        unit = Unit(symbol, kind, Fraction(factor), _SHIFT.get(symbol, 0))
        for name in (one.replace("_", " ") for one in written.split()):
            names[re.sub(r"\(.+?\)", "", name)] = names[re.sub(r"[()]", "", name)] = unit
    return names


_NAMES = _named()
UNITS = tuple(dict.fromkeys(_NAMES.values()))


@lru_cache(maxsize=1024)
def unit_of(text: str) -> Unit:
    """Return the unit written: one name, or one over another (`gal/ac`, `lb ae per gallon`, `qt/100 gal`).

    Raises Ambiguous for a name with two readings and UnitError for one not known, not a rate, or with two pers.
    """
    name = " ".join(_DOTS.sub(" ", plain(text)).split())
    if not name:
        raise UnitError(text, "a unit, such as gal, in or lb")
    whole = _look_up(name)
    if whole is not None:
        return whole
    top, *below = _SLASH.split(name)
    if len(below) > 1 or not top:
        raise UnitError(text, "one unit per one other, such as gal/ac")
    over, form = _formed(top)
    if not below:
        return _of(_known(over), form, text)
    under, form_below = _formed(below[0])
    if form and form_below:
        raise UnitError(text, "ae, ai or product said once, such as lb ae/gal")
    return _of(_over(_known(over), under, text), form or form_below, text)


def _look_up(name: str) -> Unit | None:
    key = name if len(name) == 1 else name.lower()  # one letter means two things in two cases
    if key in _ASK:
        raise Ambiguous(name, _ASK[key])
    return _NAMES.get(key)


def _known(name: str) -> Unit:
    unit = _look_up(name)
    if unit is None:
        near = dict.fromkeys(_NAMES[one].symbol for one in difflib.get_close_matches(name.lower(), _NAMES, n=3))
        raise UnitError(name, f"a known unit, such as {', '.join(near) or 'gal, fl oz, mL, lb, in, ft, ac, %, mph'}")
    return unit


def _formed(name: str) -> tuple[str, Form]:
    said = _FORM.search(name)
    return (name[: said.start()], _FORMS[said[1].lower()]) if said else (name, "")


def _over(top: Unit, under: str, text: str) -> Unit:
    many = _MANY.match(under)
    bottom = _known(many[2] if many else under)
    made = _PER.get((top.kind, bottom.kind))
    if made is None:
        raise UnitError(text, f"{WANTED[top.kind][0]} per {WANTED[bottom.kind][0].split(' ', 1)[1]} is not used here")
    count = int(many[1].replace(",", "")) if many else 1
    per = f"{count:,} {bottom.symbol}" if count > 1 else bottom.symbol
    return Unit(f"{top.symbol}/{per}", made[0], top.factor * made[1] / (bottom.factor * count))


def _of(unit: Unit, form: Form, text: str) -> Unit:
    if form and unit.kind not in (_POURED if form == "product" else _WEIGHED):
        goes = "a volume or a weight, such as qt" if form == "product" else "a weight, such as lb"
        raise UnitError(text, f"{form} with {goes} {form}/ac")
    return replace(unit, of=form) if form else unit
