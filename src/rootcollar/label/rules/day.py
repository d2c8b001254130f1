"""What is known only when a day is prepared: how long a load is worked with, and what rides in the vehicle."""

from __future__ import annotations

from rootcollar.hazard import Package, is_classed, most_in_vehicle_kg, packing_group, too_large
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import Basis, Seen, exceeds, rule, warn
from rootcollar.label.words import listing
from rootcollar.reference import NamedFigure

__all__ = ["used_while_good", "vehicle_within"]

_CLASS, _GROUP = "sheet.transport.dot_class", "sheet.transport.packing_group"


@rule(
    "L48",
    "No more is mixed than is used while the label lets a mix stand.",
    Basis("the label", Seen.LABEL),
    when_silent=Level.OK,
    hours="sheet.mixing.mixture_storage_hours",
    load="day.load",
)
def used_while_good(hours: float, load: tuple[str, float]) -> Verdict | None:
    """Warn where one person works longer with a load than the label lets the mix stand. load: words, hours of work."""
    words, needed = load
    if not exceeds(needed, hours):
        return None
    return warn(
        f"a load of {words} is about {show(needed, 'h', 2)} of work for one person; the label lets a mix stand "
        f"{show(hours, 'h')}",
        "mix smaller loads, or share each among several, so that it is used in time",
    )


@rule(
    "L51",
    "A vehicle carries no more of a classed product than the materials-of-trade limits.",
    Basis("49 CFR 173.6(a) to (d)", Seen.EDITION),
    silence={_CLASS: "none", _GROUP: ""},
    dot_class=_CLASS,
    group=_GROUP,
    jugs="day.jugs",
    rows="law.transport",
)
def vehicle_within(
    dot_class: str, group: str, jugs: tuple[tuple[Package, ...], float], rows: tuple[NamedFigure, ...]
) -> Verdict | None:
    """Warn where a jug holds more than one package may, or all classed products together weigh more than a vehicle may.

    jugs: those of the product, and the weight of all classed products that go along [kg].
    """
    if not is_classed(dot_class):
        return None
    packages, vehicle_kg = jugs
    over = [one.words for one in packages if too_large(one, packing_group(group), rows)]
    said = [f"{listing(over)} holds more than one package may (class {dot_class})"] if over else []
    most_kg = most_in_vehicle_kg(rows)
    if exceeds(vehicle_kg, most_kg):
        said.append(f"classed products of {_lb(vehicle_kg)} and more go along; a vehicle may carry {_lb(most_kg)}")
    return warn("; ".join(said), "take smaller jugs, or go twice; else the rules for full loads hold") if said else None


def _lb(weight_kg: float) -> str:
    return show(convert(weight_kg, "kg", "lb"), "lb")
