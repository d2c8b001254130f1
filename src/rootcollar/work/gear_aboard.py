"""What goes along: wash water and eye flush by head count, absorbent for the largest vessel, jugs in the vehicle."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.hazard import (
    Package,
    Wash,
    is_classed,
    liquid_kg,
    most_in_package_ml,
    most_in_vehicle_kg,
    packing_group,
    too_large,
    wash_needed,
)
from rootcollar.kernel.formula import note
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units import convert, read, show
from rootcollar.mix import sides
from rootcollar.reference import NamedFigure, Reference, named, numbers
from rootcollar.shelf import Lot, Sheet
from rootcollar.work import text
from rootcollar.work.asked import PacketAsked
from rootcollar.work.batches import tank_ml
from rootcollar.work.gear_wear import eyes_asked
from rootcollar.work.mixes import DayMix, Product
from rootcollar.work.packet import Part
from rootcollar.work.printed import page_words, quoted
from rootcollar.work.worked import Worked, number

__all__ = ["aboard_parts", "absorbent", "day_lots", "jug_of", "largest_jug", "water_part"]

_OIL = "basal oil"  # as the shed calls it
_VOLUMES = frozenset({"gal", "qt", "pt", "fl oz", "L", "mL"})
_ABOARD = (
    "Every jug closed, upright, tied; the box locked while nobody stands by it",
    "Sprayers empty or nearly, pressure let off, wand tied",
    "Nothing of it in the cab, none beside food, water or clothes",
    "Label and safety data sheet of every product aboard, dry, at hand while you work (CFR170-503, read)",
    "Each in its own jug or a tagged bottle; the driver knows what is aboard (CFR173-6, read)",
)


def water_part(products: Sequence[Product], asked: PacketAsked) -> Part:
    """Return the water to wash with and to flush eyes, as pairs; by head where no crew is written."""
    reference, crew = asked.setting.reference, asked.crew
    rows = reference.hazard["wash"]
    eyes = [eyes_asked(products, task, reference) for task in ("mixing", "applying")]
    handlers = crew.treaters or 0
    heads = handlers or 1
    others = len(crew.people) - handlers if handlers else 0

    def needed() -> Wash:
        return wash_needed(heads, heads, others, rows, mixing_eyes=eyes[0], applying_eyes=eyes[1])

    def water(part: str) -> str:
        return number(getattr(need, part), text.gallons, "mL", lambda: float(getattr(needed(), part)))

    need = needed()
    whose = f"for {heads} who mix, apply or clean" if handlers else "for each who mixes, applies or cleans"
    flask = show(numbers(named(rows, "flush_each_pt"))[0].value, "pt")
    pairs: list[tuple[str, str]] = [
        ("Wash water", Worked(water("handlers_ml"), f" {whose}; at the mixing site, within 1/4 mile of all"))
    ]
    if others:
        pairs.append(("And", Worked(water("workers_ml"), f" for the others of the crew ({others})")))
    if asked.setting.ground.state in (None, "WA"):
        one, more = (numbers(named(rows, name))[0] for name in ("one_gal_wa", "more_gal_wa"))
        pairs.append(
            (
                "In Washington",
                f"{one.value:g} gal for one, {more.value:g} gal for two or more ({one.source}, {one.mark})",
            )
        )
    if need.flush_ml:
        pairs.append(("Eye flush, mixing", Worked(water("flush_ml"), ", or 15 min of gentle running water")))
    if need.carried_ml:
        whose = f"{heads} flasks of {flask}, one on each who applies" if handlers else f"{flask} on each who applies"
        pairs.append(("Eye flush, carried", whose))
    if not any(eyes):
        pairs.append(("Eye flush", f"no label of the day asks for eyewear; {flask} each all the same (advice)"))
    pairs.append(("With it", "; ".join(need.with_it)))
    note = "Worker protection's figures (NJAC-7-30-12, read); where it does not hold, advice. A brook does not count."
    return Part("Water", "pairs", tuple(pairs), note=note)


def aboard_parts(mixes: Sequence[DayMix], products: Sequence[Product], asked: PacketAsked) -> Iterator[Part]:
    """Yield the vehicle's boxes, and what the vehicle may carry of each product."""
    reference = asked.setting.reference
    limit_kg = most_in_vehicle_kg(reference.hazard["transport"])
    aboard = (*_ABOARD, Worked("Spill kit in reach: ", absorbent(mixes, products, asked)))
    yield Part("Vehicle", "ticks", tuple((one,) for one in aboard), note="Advice, where no rule is named.")
    rows = tuple((one.name, _class(one.sheet), _package(one.sheet, reference), _weight(one.sheet)) for one in products)
    yield Part(
        "Transport class", "table", rows, ("Product", "Transport class", "Most in a package", "Its jug"),
        Worked(
            "Classed products together, jugs weighed with them: at most ",
            number(limit_kg, _pounds, "kg", lambda: _in_vehicle(reference)),
            " (CFR173-6, read). Section 14 of the safety sheet says whether one is classed.",
        ),
    )  # fmt: skip


def largest_jug(products: Sequence[Product], reference: Reference, lots: Sequence[Lot] = ()) -> tuple[float, str]:
    """Return the largest jug that goes along [mL], and whose word that is: the shed's, a label's, or the trade's.

    lots: what stands in the shed and may go along. A product of which neither a lot nor a label says what its jug
    holds counts as the largest jug that is sold and one package may still hold.
    """
    known = [(one.holds_ml or one.left_ml, f"the jug of {one.what} in the shed") for one in lots]
    kept = {one.what for one in lots if one.holds_ml}
    for one in products:
        if (ml := _jug_ml(one.sheet)) is not None:
            known.append((ml, f"the jug of {one.name}, by its label"))
        elif not kept & {mix.recipe.product for mix in one.mixes}:
            words = "the largest jug that is sold (EXT-GEN, memory), because a label's contents are not typed"
            known.append((_sold_ml(reference), words))
    return max(known, default=(0.0, "nothing"), key=lambda one: one[0])


def _sold_ml(reference: Reference) -> float:
    most = most_in_package_ml("III", reference.hazard["transport"])
    sold = numbers([row.figure for row in reference.mixing["container"] if row.name == "liquid"])
    sizes = [convert(one.value, one.unit, "mL") for one in sold]
    return max(one for one in sizes if one <= most)


def day_lots(mixes: Sequence[DayMix], asked: PacketAsked) -> list[Lot]:
    """The lots of the shed that go along: of the day's products, and the oil where something is mixed with it."""
    keys = {side.product for one in mixes for side in sides(one.recipe) if side.product}
    keys |= {_OIL} if any(one.recipe.carrier == "oil" for one in mixes) else set()
    on = asked.day or asked.setting.on
    return [lot for key in sorted(keys) for lot in (asked.stock.at_hand(key, on) if asked.stock else ())]


def absorbent(mixes: Sequence[DayMix], products: Sequence[Product], asked: PacketAsked) -> str:
    """Return how much the spill kit must take up: the largest jug, or the fullest sprayer where that is larger."""
    lots = day_lots(mixes, asked)
    most_ml, whose = largest_jug(products, asked.setting.reference, lots)
    fullest = max(mixes, key=lambda one: tank_ml(one.recipe, asked.crew, asked.setting)[0])
    sprayer_ml = tank_ml(fullest.recipe, asked.crew, asked.setting)[0]
    jug_ml = most_ml
    if sprayer_ml > most_ml:
        most_ml, whose = sprayer_ml, "the fullest sprayer; no jug is larger"
    oily = any(one.recipe.carrier == "oil" for one in mixes) and not any(lot.what == _OIL for lot in lots)
    oil = "; more for a larger oil jug" if oily else ""
    vessel = f"the larger of {jug_ml:.6g} and {sprayer_ml:.6g}: {whose}"

    def again() -> float:
        tank_ml(fullest.recipe, asked.crew, asked.setting)
        return note(
            "in half gallons, up",
            "what takes up no less",
            _half_gallons(note("vessel", vessel, most_ml, "mL")),
            "gal",
            "ours",
        )

    up = number(_half_gallons(most_ml), _gallons, "gal", again)
    return Worked("absorbent for ", up, f" ({whose}{oil})")


def _half_gallons(volume_ml: float) -> float:
    return to_step(convert(volume_ml, "mL", "gal"), 1 / 2, "up")


def _gallons(amount_gal: float) -> str:
    return show(amount_gal, "gal")


def _pounds(weight_kg: float) -> str:
    return show(convert(weight_kg, "kg", "lb"), "lb")


def _class(sheet: Sheet | None) -> str:
    return quoted(sheet, "transport.dot_class")


def _package(sheet: Sheet | None, reference: Reference) -> str:
    """The most that one package may hold, and whether the product's own jug keeps to it."""
    says = sheet.says("transport.dot_class") if sheet else None
    if says is not None and not is_classed(says):
        return "no limit of this rule"
    if sheet is None or says is None:
        return "ask the safety sheet"
    group = packing_group(str(sheet.says("transport.packing_group") or ""))
    most = most_in_package_ml(group, _rows(reference))
    jug = jug_of(sheet)
    more = "; THE JUG HOLDS MORE" if jug is not None and too_large(jug, group, _rows(reference)) else ""
    amount = number(most, text.gallons, "mL", lambda: _in_package(group, reference))
    return Worked(amount, f" (packing group {group or 'not known: as for I'}){more}")


def _in_vehicle(reference: Reference) -> float:
    limit_kg = most_in_vehicle_kg(_rows(reference))
    return note("the same", _pounds(limit_kg), limit_kg, "kg")


def _in_package(group: str, reference: Reference) -> float:
    most_ml = most_in_package_ml(group, _rows(reference))
    return note("the same", text.gallons(most_ml), most_ml, "mL")


def _rows(reference: Reference) -> Sequence[NamedFigure]:
    return reference.hazard["transport"]


def jug_of(sheet: Sheet, lot: Lot | None = None) -> Package | None:
    """Return a product's jug as a package of the vehicle: the one in the shed, else by its label; None: not known."""
    volume_ml = (lot.holds_ml or lot.left_ml) if lot else _jug_ml(sheet)
    if volume_ml is None:
        return None
    density = sheet.says("formulation.density_lb_per_gal")
    weight = None if density is None else liquid_kg(volume_ml, convert(density, "lb/gal", "g/mL"))
    return Package(f"the jug of {sheet.product}, {text.gallons(volume_ml)},", volume_ml, weight)


def _weight(sheet: Sheet | None) -> str:
    jug_ml = _jug_ml(sheet)
    if sheet is None or jug_ml is None:
        return "contents not typed"
    density = sheet.says("formulation.density_lb_per_gal")
    if density is None:
        return text.gallons(jug_ml)
    g_per_ml = convert(density, "lb/gal", "g/mL")

    def again() -> float:
        line = sheet.line("formulation.density_lb_per_gal")
        note("density", f"the sheet, {show(density, 'lb/gal')}{page_words(line)}", g_per_ml, "g/mL")
        return liquid_kg(jug_ml, g_per_ml)

    weight = number(liquid_kg(jug_ml, g_per_ml), _pounds, "kg", again)
    return Worked(f"{text.gallons(jug_ml)}: ", weight, " of liquid")


def _jug_ml(sheet: Sheet | None) -> float | None:
    amount, unit = (sheet.says(f"identity.net_contents.{one}") if sheet else None for one in ("amount", "unit"))
    return read(f"{amount} {unit}").amount if amount and unit in _VOLUMES else None
