"""Spill and first aid: what to do in order, the label's own first aid, whom to call, what must be told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.kernel.formula import note
from rootcollar.kernel.units import convert, show
from rootcollar.reference import NamedFigure, Reference, named
from rootcollar.site import Unit
from rootcollar.work import text
from rootcollar.work.asked import PacketAsked
from rootcollar.work.gear_aboard import absorbent
from rootcollar.work.mixes import DayMix, Product, day_mixes, day_products
from rootcollar.work.packet import Page, Part
from rootcollar.work.printed import ADVICE, came, figure, quoted, registration
from rootcollar.work.worked import Worked, number, strung

__all__ = ["spill_page"]

_STEPS = (
    "People first. Everybody upwind and away; whoever is splashed goes to the water, clothing off, and washes.",
    "Gloves, goggles and boots on before you touch anything. Nobody smokes, nobody eats.",
    "Stop it: stand the jug up, close the valve, put the leaking vessel into a bucket.",
    "Ring it: a bank of absorbent or soil around it, the downhill side and any ditch or drain first.",
    "Soak it up: absorbent from the edge to the middle, until nothing is wet.",
    "Bag it: absorbent, stained soil and gloves into doubled bags; tag them with product, mix letter and date.",
    "Tell the lead and the owner, and call the numbers here that fit. Write it into the record.",
)
_NEVER = (
    "Never into a drain, ditch, sink, toilet or water.",
    "Never hose it down: water carries it further.",
    "Never back into the jug, and never into the household rubbish.",
    "Never leave it alone until it is bagged.",
)
_ROUTES = {
    "swallowed": "Swallowed", "skin": "On the skin", "eyes": "In the eyes", "inhaled": "Breathed in",
    "emergency_phone": "Label's number",
}  # fmt: skip


def spill_page(asked: PacketAsked) -> Page | None:
    """Return the page, or None on a day without mix."""
    mixes = day_mixes(asked)
    if not mixes:
        return None
    reference, products = asked.setting.reference, day_products(mixes)
    return Page(
        "Spill and first aid",
        "Position and meeting point stand on page one. The label goes along to the doctor.",
        (
            Part("A spill, in this order", "steps", tuple((one,) for one in _STEPS), (), f"{ADVICE} (EXT-GEN, memory)"),
            Part("Never", "text", tuple((one,) for one in _NEVER), note="Advice (ours)."),
            Part("Near water", "text", tuple(_near_water(asked))),
            Part("Spill kit aboard", "ticks", tuple(_kit(mixes, asked)), note="Practice (EXT-GEN, memory)."),
            *_first_aid(products),
            Part("Call", "table", tuple(_numbers(asked)), ("Who", "Number", "When", "Source"),
                 "A number with the mark memory: look it up beforehand, and write it here."),
            Part("What must be reported", "table", tuple(_reported(products, reference)),
                 ("Spill of", "The sheet says", "The federal list says (40 CFR 302.4)")),
        ),
    )  # fmt: skip


def _first_aid(products: Sequence[Product]) -> Iterator[Part]:
    """The labels' own words by route, products whose labels say the same together."""
    alike: dict[tuple[tuple[str, str], ...], list[Product]] = {}
    for one in products:
        rows = tuple((words, quoted(one.sheet, f"hazard.first_aid.{route}")) for route, words in _ROUTES.items())
        alike.setdefault(rows, []).append(one)
    for rows, ones in alike.items():
        letters = ", ".join(sorted({mix.letter for one in ones for mix in one.mixes}))
        names = "; ".join(f"{one.name}, EPA Reg. No. {registration(one.sheet) or '____'}" for one in ones)
        yield Part(f"First aid as the label prints it: mix {letters}", "pairs", rows, note=names)


def _numbers(asked: PacketAsked) -> Iterator[tuple[str, ...]]:
    """The ground's own numbers first, to write in where nobody has; then those that hold everywhere."""
    known = asked.setting.ground.emergency or {}
    to_write = "______________"
    yield "Hospital", known.get("hospital") or to_write, "", "ground.toml" if known.get("hospital") else ""
    if known.get("poison line"):
        yield "Poison line", known["poison line"], "", "ground.toml"
    for row in asked.setting.reference.emergency["phone"]:
        yield row.name, str(row.figure.value), row.figure.holds_for, came(row.figure)
    yield "State spill line", to_write, "what the state wants told", ""
    yield "Owner of the ground", to_write, "any spill", ""


def _near_water(asked: PacketAsked) -> Iterator[tuple[str]]:
    """The rule of one state as an example, and the units of the packet that lie that near."""
    (rule,) = named(asked.setting.reference.emergency["near_water"], "distance_ft")
    near = float(rule.value) if isinstance(rule.value, int | float) else 0.0
    yield (f"Within {show(near, rule.unit)} of water: {rule.holds_for} ({came(rule)}). Ask your own state.",)
    units = [asked.setting.ground.units[key] for key in asked.units]
    close = [_where(one) for one in units if one.water_m is None or one.water_m <= convert(near, rule.unit, "m")]
    if close:
        yield (Worked("Here: ", strung("; ", close), "."),)


def _where(unit: Unit) -> str:
    if unit.water_m is None:
        return f"{unit.name}, water not looked for"
    away_m, how = unit.water_m, "ground.toml, as it is written there or else measured on the map"
    away = number(away_m, text.distance, "m", lambda: note(f"{unit.name}, to water", how, away_m, "m"))
    return Worked(f"{unit.name}, ", away, " from water")


def _reported(products: Sequence[Product], reference: Reference) -> Iterator[tuple[str, ...]]:
    for one in products:
        listed = [_listed(row) for row in reference.emergency["reportable"] if one.ingredient in row.ingredients]
        said = figure(one.sheet, "transport.reportable_quantity_lb")
        yield f"{one.name} (mix {one.letters})", said, "; ".join(listed) or "not looked up"
    yield "Anything into water", "–", "call at once, whatever the amount (EXT-GEN, memory)"


def _listed(row: NamedFigure) -> str:
    cited = row.figure
    amount = show(cited.value, cited.unit) if isinstance(cited.value, float) else str(cited.value)
    of = f" of {cited.holds_for}" if cited.holds_for else ""
    return f"{amount}{of} ({came(cited)}: ask)"


def _kit(mixes: Sequence[DayMix], asked: PacketAsked) -> Iterator[tuple[str]]:
    """The kit, its absorbent as the gear page has it."""
    (kit,) = named(asked.setting.reference.mixing["spill"], "kit")
    for item in kit.value if isinstance(kit.value, tuple) else ():
        yield (absorbent(mixes, day_products(mixes), asked) if "largest" in item else item,)
