"""own.toml: what the crew has measured and paid itself, which replaces our guesses."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from rootcollar.choose import Mixed, Own, Price
from rootcollar.dose import BY_CUTS, Proving
from rootcollar.exchange.entry import Day, Entry, Text, Volume, check, refuse
from rootcollar.exchange.own_times import TimeEntry, read_times, time_faults
from rootcollar.exchange.stock_file import read_what
from rootcollar.kernel.errors import BadInput, Fault, UnitError
from rootcollar.kernel.units import Kind, read
from rootcollar.mix import Container
from rootcollar.reference import load

__all__ = ["read_own"]

_METHODS = ("basal_bark", "cut_stump", "foliar", "hack_squirt", "injection", "vine_cut")
_CM_IN_M = 100
_MOST_MIN = 6000  # ours: beyond it, it is not of one day
_WIDEST_CM, _MOST_STEMS = 1000, 10_000  # ours: beyond these it is a slip of the unit, or no small batch


@dataclass(frozen=True, slots=True)
class _Size:
    """The size of a container as typed, and what it is [mL]."""

    text: str
    ml: float


def _method(raw: object) -> object:
    said = raw.strip().casefold().replace("-", "_").replace(" ", "_") if isinstance(raw, str) else raw
    if said not in _METHODS:
        refuse(raw, ", ".join(_METHODS))
    return said


def _percent(raw: object) -> float:
    if not isinstance(raw, str):
        refuse(raw, 'a percent of the finished mix in quotes, such as "20%"')
    try:
        share = read(raw, Kind.SHARE).amount
    except UnitError as wrong:
        refuse(raw, wrong.faults[0].allowed)
    if not share > 0:
        refuse(raw, "more than 0%")
    return share


def _size_cm(raw: object) -> float:
    if not isinstance(raw, str):
        refuse(raw, 'a size and its unit in quotes, such as "1.5 in"')
    try:
        size = read(raw, Kind.LENGTH).amount * _CM_IN_M
    except UnitError:
        refuse(raw, 'one measured size, such as "1.5 in": stems of a proving batch are measured, not classed')
    if not 0 < size <= _WIDEST_CM:
        refuse(raw, f"a size above 0, at most {_WIDEST_CM} cm")
    return size


def _money(raw: object) -> object:
    if isinstance(raw, bool) or not isinstance(raw, (int, float)) or not 0 < raw < float("inf"):
        refuse(raw, "a plain number above 0 without a sign of money, such as 240 or 28.50")
    return float(raw)


def _left_ml(raw: object) -> float:
    if isinstance(raw, str) and raw.strip().casefold() in {"none", "nothing"}:
        return 0.0
    return _volume_ml(raw, "6 fl oz")


def _holds(raw: object) -> _Size:
    volume_ml = _volume_ml(raw, "2.5 gal")
    if not volume_ml:
        refuse(raw, 'more than 0, such as "2.5 gal"')
    return _Size(str(raw).strip(), volume_ml)


def _volume_ml(raw: object, example: str) -> float:
    if not isinstance(raw, str):
        refuse(raw, f'a number and its unit in quotes, such as "{example}"')
    try:
        return read(raw, Kind.VOLUME).amount
    except UnitError as wrong:
        refuse(raw, wrong.faults[0].allowed)


def _count(raw: object) -> object:
    if isinstance(raw, bool) or not isinstance(raw, int) or not 0 < raw <= _MOST_STEMS:
        refuse(raw, f"a whole number of stems without quotes, 1 to {_MOST_STEMS:,}")
    return raw


def _target(raw: object) -> float:
    share = _percent(raw) / 100
    if not share < 1:
        refuse(raw, 'less than 100%, such as "95%": the last stem is never promised')
    return share


def _plain(raw: object) -> float:
    if isinstance(raw, bool) or not isinstance(raw, (int, float)) or not 0 < raw <= _MOST_MIN:
        refuse(raw, f"a plain number without quotes, above 0, at most {_MOST_MIN:,}")
    return float(raw)


Target = Annotated[float, BeforeValidator(_target)]
OfDay = Annotated[float, BeforeValidator(_plain)]
Money = Annotated[float, BeforeValidator(_money)]
Length = Annotated[float, BeforeValidator(_size_cm)]


Left = Annotated[float, BeforeValidator(_left_ml)]
Holds = Annotated[_Size, BeforeValidator(_holds)]


class _Stems(Entry):
    count: Annotated[int, BeforeValidator(_count)] = Field(description="how many of this size, such as count = 12")
    diameter: Length | None = Field(None, description='where they were treated, such as diameter = "1.5 in"')
    crown: Length | None = Field(None, description='for leaves: the width of the plant, such as crown = "4 ft"')


class _Proving(Entry):
    method: Annotated[str, BeforeValidator(_method)] = Field(description=f"in quotes, one of {', '.join(_METHODS)}")
    product: Text = Field(description="the key of a label sheet or a formulation, in quotes")
    strength: Annotated[float, BeforeValidator(_percent)] = Field(
        description='product in the finished mix, such as strength = "20%"'
    )
    carrier: Literal["oil", "water", "none"] = Field(description='"oil", "water", or "none" for undiluted')
    on: Day = Field(description="the day without quotes, such as on = 2026-10-02")
    by: Text = Field(description="who measured, in quotes")
    nozzle: str = Field("", description="what it was put on with, in quotes")
    mixed: Volume | None = Field(None, description='what was in the bottle, such as mixed = "1 qt"')
    left: Left | None = Field(None, description='what was left in it, such as left = "6 fl oz"')
    used: Volume | None = Field(None, description='instead of mixed and left, such as used = "26 fl oz"')
    stems: list[_Stems] = Field([], description='a list such as [{ diameter = "1 in", count = 25 }]')
    each: Volume | None = Field(None, description='for cuts: what went into one, such as each = "1 mL"')


class _Price(Entry):
    what: Text = Field(description="the key of a label sheet or a formulation, or an additive, in quotes")
    holds: Holds = Field(description='the size of the container, such as holds = "2.5 gal"')
    price: Money | None = Field(None, description="what one costs, such as price = 240")
    on: Day | None = Field(None, description="the day it was seen without quotes, such as on = 2026-09-01")


class _Partner(Entry):
    product: Text = Field(description="the key of the label sheet or formulation it is mixed with, in quotes")
    partner: Text = Field(
        description="the key of the second product's label sheet, in quotes; of a fertiliser, its name", alias="with"
    )
    percent: Annotated[float, BeforeValidator(_percent)] = Field(
        description='of it in the finished mix, such as percent = "2%"'
    )
    fertiliser: bool = Field(False, description="true where the partner is a fertiliser, which has no sheet")


class _Own(Entry):
    proving: list[_Proving] = Field([], description="a block [[proving]] for each proving batch")
    price: list[_Price] = Field([], description="a block [[price]] for each size on sale")
    partner: list[_Partner] = Field([], description="a block [[partner]] for each second product of a mix")
    time: list[TimeEntry] = Field([], description="a block [[time]] for each time that was measured")
    target: Target | None = Field(None, description='of the stems, dead when all is done, such as target = "95%"')
    set_up: OfDay | None = Field(None, description="minutes of a day, all people together, such as set_up = 40")
    travel: OfDay | None = Field(None, description="minutes of a day, all people together, such as travel = 60")
    day: OfDay | None = Field(None, description="hours on stems in a day, all people together, such as day = 12")
    wage: Money | None = Field(None, description="what an hour of one person costs, such as wage = 28")
    extra_mix: Money | None = Field(None, description="what each mix after the first costs, such as extra_mix = 60")


def read_own(table: dict[str, Any], file: str, sheets: Collection[str], units: Mapping[str, str] | None = None) -> Own:
    """Return the crew's own figures. sheets: keys of the label sheets on the shelf. units: names by key, if known.

    Raises BadInput with all faults of the file: of its form first, then of what its blocks say together.
    """
    entry = check(_Own, table, file)
    product, what = _readers(sheets)
    faults: list[Fault] = []
    for number, one in enumerate(entry.proving, start=1):
        place = f"[[proving]] {number}"
        faults += [replace(fault, file=file, row=place) for fault in _proving_faults(one)]
        faults += _unknown(product, one.product, file, place, "product")
    for number, price in enumerate(entry.price, start=1):
        faults += _unknown(what, price.what, file, f"[[price]] {number}", "what")
    for number, other in enumerate(entry.partner, start=1):
        place = f"[[partner]] {number}"
        faults += [
            replace(fault, file=file, row=place) for fault in _partner_faults(other, entry.partner[: number - 1])
        ]
        faults += _unknown(product, other.product, file, place, "product")
        faults += [] if other.fertiliser else _unknown(product, other.partner, file, place, "with")
    for number, taken in enumerate(entry.time, start=1):
        faults += [replace(fault, file=file, row=f"[[time]] {number}") for fault in time_faults(taken, units)]
    faults = faults or [replace(fault, file=file) for fault in _twice(entry.price)]
    if faults:
        raise BadInput(*faults)
    return Own(
        tuple(_batch(one, product(one.product)) for one in entry.proving),
        tuple(Price(what(one.what), Container(one.holds.text, one.holds.ml, one.price), one.on) for one in entry.price),
        entry.wage,
        tuple(
            Mixed(product(one.product), one.partner if one.fertiliser else product(one.partner), one.percent,
                  one.fertiliser)
            for one in entry.partner
        ),
        entry.target, entry.set_up, entry.travel, entry.day, read_times(entry.time, units), entry.extra_mix,
    )  # fmt: skip


def _readers(sheets: Collection[str]) -> tuple[Callable[[str], str], Callable[[str], str]]:
    """Return the parsers of a product's key, and of a product's key or an additive."""
    keys = (*sheets, *load().formulations)
    what = read_what(keys, "shelf/*.toml or of a generic formulation")

    def product(said: str) -> str:
        found = what(said)
        if found not in keys:
            raise BadInput(Fault(repr(said), "the product in the mix, not what goes in beside it"))
        return found

    return product, what


def _unknown(parse: Callable[[str], str], said: str, file: str, row: str, field: str) -> list[Fault]:
    try:
        parse(said)
    except BadInput as wrong:
        return [replace(fault, file=file, row=row, field=field) for fault in wrong.faults]
    return []


def _partner_faults(one: _Partner, before: Sequence[_Partner]) -> Iterator[Fault]:
    """Yield what cannot be a partner: the product itself, or a second one in the same mix."""
    if one.partner.casefold() == one.product.casefold():
        yield Fault(f"{one.partner} with itself", "another product, or a higher strength", field="with")
    if any(one.product.casefold() == other.product.casefold() for other in before):
        yield Fault(f"a second partner of {one.product}", "one: mixes of three are not reckoned", field="product")


def _proving_faults(one: _Proving) -> Iterator[Fault]:
    """Yield what a block says that does not go together."""
    if one.carrier == "none" and one.strength < 100:
        yield Fault(
            f"{one.strength:g}% undiluted", 'strength = "100%", or the carrier it was thinned with', field="carrier"
        )
    if one.method in BY_CUTS:
        if one.each is None:
            yield Fault("no each", 'what went into one cut, such as each = "1 mL"', field="each")
        return
    if one.each is not None:
        yield Fault("each", f"only for {' and '.join(sorted(BY_CUTS))}: else mixed, left and stems", field="each")
    if (one.used is None) == (one.mixed is None or one.left is None) or (one.used and (one.mixed or one.left)):
        yield Fault("no amount used, or two", 'mixed = "1 qt" and left = "6 fl oz", or used = "26 fl oz"', field="used")
    elif one.mixed is not None and one.left is not None and one.left >= one.mixed:
        yield Fault("as much left as was mixed", "less left than mixed", field="left")
    wanted = "crown" if one.method == "foliar" else "diameter"
    if not one.stems or any((row.crown if wanted == "crown" else row.diameter) is None for row in one.stems):
        yield Fault(f"no {wanted} of its stems", _STEMS[wanted], field="stems")


_STEMS: Mapping[str, str] = {
    "crown": 'stems = [{ crown = "4 ft", count = 12 }], the width of each plant whose leaves were wetted',
    "diameter": 'stems = [{ diameter = "1.5 in", count = 25 }], measured where they were treated',
}


def _twice(prices: Sequence[_Price]) -> Iterator[Fault]:
    seen: dict[tuple[str, float], int] = {}
    for number, one in enumerate(prices, start=1):
        first = seen.setdefault((one.what.casefold(), one.holds.ml), number)
        if first != number:
            yield Fault(f"a second price for {one.holds.text} of {one.what}", f"one; [[price]] {first} has it too",
                        row=f"[[price]] {number}", field="holds")  # fmt: skip


def _batch(one: _Proving, product: str) -> Proving:
    used = one.used if one.used is not None else (one.mixed or 0.0) - (one.left or 0.0)
    sizes = ((row.crown if one.method == "foliar" else row.diameter, row.count) for row in one.stems)
    return Proving(
        one.method, product, one.strength, one.carrier, one.on, one.by, used,
        tuple((size, count) for size, count in sizes if size is not None), one.each, one.nozzle.strip(),
    )  # fmt: skip
