"""Gloves by mix, and what gets in each other's way: leather, oil, heat, fog, masks, ear muffs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.hazard import (
    Chart,
    Rating,
    chart_words,
    holding_times,
    material_of,
    material_words,
    read_chart,
    solvent_groups,
)
from rootcollar.label.words import flat
from rootcollar.reference import Reference, named
from rootcollar.work.asked import PacketAsked
from rootcollar.work.gear_wear import eyes_asked, label_items, product_floor
from rootcollar.work.mixes import DayMix, Product, work_lines
from rootcollar.work.printed import quoted

__all__ = ["GLOVE_HEADS", "clashes", "glove_rows"]

GLOVE_HEADS = ("Mix", "The label names", "From first contact, by the chart (EPA-CRC, memory)", "In the crew file")

_HOT = ("coveralls", "apron", "respirator", "headgear")


def glove_rows(mixes: Sequence[DayMix], asked: PacketAsked) -> tuple[tuple[str, ...], ...]:
    """Return a row for the mixes of one kind: letters, the label's gloves, what the chart says, what is at hand."""
    reference = asked.setting.reference
    chart = read_chart(reference.hazard["gloves_chart"])
    times = holding_times(reference.hazard["gloves_time"])
    alike: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for one in mixes:
        alike.setdefault((quoted(one.sheet, "ppe.glove_types"), _groups(one, reference)), []).append(one.letter)
    rows = []
    for (label, groups), letters in alike.items():
        kind = "water-based" if groups == ("A",) else "oil, or an EC in the jug"
        row = (f"{', '.join(letters)}: {kind}", label, chart_words(chart, groups, times), _mine(asked, chart, groups))
        rows.append(row)
    return tuple(rows)


def clashes(
    mixes: Sequence[DayMix], products: Sequence[Product], asked: PacketAsked, *, cutting: bool
) -> Iterator[str]:
    """Yield each thing that gets in another's way on this day, and what to do about it."""
    reference = asked.setting.reference
    if cutting and mixes:
        yield (
            "Leather or cotton work gloves drink herbicide: whoever cuts touches no treated stump, jug or bottle in "
            "them, and changes gloves before treating (CFR15, read)."
        )
    if _thorny(asked) and mixes:
        thorns = named(reference.hazard["gloves_time"], "thorns")[0]
        yield f"Thorns: {thorns.value} ({thorns.source}, {thorns.mark})."
    yield from _material_clashes(mixes, reference)
    items = _items(products, reference)
    if hot := [one for one in items if any(word in one.lower() for word in _HOT)]:
        yield f"Heat: {', '.join(hot)} keep it in. Mix in the cool of the morning, shorter turns, shade, water."
    if mixes:
        mixing, applying = (eyes_asked(products, task, reference) for task in ("mixing", "applying"))
        if mixing or applying:
            yield "Goggles fog: wipe them away from the mix with clean hands; never push them up while you pour."
    if cutting and mixes:
        yield "A mesh visor stops chips, not splash: goggles on before you treat."
    if any("respirator" in one.lower() for one in items):
        rule = named(reference.hazard["people"], "respirator")[0]
        yield f"Respirator: {rule.value} ({rule.source}, {rule.mark}). No beard beneath it."


def _groups(mix: DayMix, reference: Reference) -> tuple[str, ...]:
    """The groups of a mix: by the kind of product on its label, else of the formulation it stands for."""
    typed = mix.sheet.says("formulation.code") if mix.sheet else None
    kind = str(typed or reference.formulations[mix.recipe.formulation].type)
    return solvent_groups(kind, mix.recipe.carrier)


def _mine(asked: PacketAsked, chart: Chart, groups: Sequence[str]) -> str:
    """What the crew's own gloves are of, and how they hold."""
    if asked.crew.wear is None:
        return "nobody has looked"
    found = [(one, material_of(one, chart.materials)) for one in sorted(asked.crew.wear) if "glove" in one.lower()]
    times = holding_times(asked.setting.reference.hazard["gloves_time"])
    told = [f"{words}: {material_words(chart, kind, groups, times)}" for words, kind in found if kind]
    return "; ".join(told) or "no material named: look"


def _material_clashes(mixes: Sequence[DayMix], reference: Reference) -> Iterator[str]:
    """Where the label names nothing but what the chart calls weak, or two mixes want gloves of different kinds."""
    chart = read_chart(reference.hazard["gloves_chart"])
    named_by: dict[str, set[str]] = {}
    for one in mixes:
        types = (one.sheet.says("ppe.glove_types") if one.sheet else None) or ()
        kinds = {kind for kind in (material_of(words, chart.materials) for words in types) if kind}
        if not kinds:
            continue
        named_by[one.letter] = kinds
        groups = _groups(one, reference)
        hold = max(max(chart.ratings[group][kind] for group in groups) for kind in kinds)
        if hold <= Rating.SLIGHT:
            better = ", ".join(chart.rated(Rating.HIGH, groups))
            yield (
                f"Mix {one.letter}: the label names {', '.join(sorted(kinds))}, which the chart (EPA-CRC, memory) "
                f"calls weak against such a mix. Ask the maker before mixing. By the chart {better} would hold; the "
                "label's list still binds."
            )
    if named_by and not set.intersection(*named_by.values()):
        each = "; ".join(f"{letter}: {', '.join(sorted(kinds))}" for letter, kinds in named_by.items())
        yield f"No one glove is named by every label ({each}): change gloves between mixes."


def _items(products: Sequence[Product], reference: Reference) -> tuple[str, ...]:
    found: dict[str, str] = {}
    for product in products:
        for task in ("mixing", "applying", "cleaning"):
            listed = label_items(product.sheet, task) or ()
            floor = product_floor(product.sheet, task, reference).items
            found |= {flat(one): one for one in (*floor, *listed)}
    return tuple(found.values())


def _thorny(asked: PacketAsked) -> bool:
    species = asked.setting.reference.species
    return any(one.kind == "thorns" for line in work_lines(asked) for one in species[line.stand.species].hazards)
