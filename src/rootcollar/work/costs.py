"""What each line of the plan costs: one visit, labour and mix apart."""

from __future__ import annotations

from collections.abc import Iterator

from rootcollar.choose import Choice, LineCost, line_cost, line_minutes, sum_worlds
from rootcollar.kernel.doubt import best
from rootcollar.work import text
from rootcollar.work.asked import PacketAsked
from rootcollar.work.day_sheet import letter_of
from rootcollar.work.packet import Part

__all__ = ["costs_part"]

_HEADS = ("Line", "Mix", "Stems", "Hours", "Product, oil", "Labour", "Together (10–90 %)")


def costs_part(asked: PacketAsked) -> Part:
    """Return the table: every cleared line in the plan's order, and all of them together."""
    lines = sorted(asked.cleared.lines, key=lambda one: asked.units.index(one.stand.unit))
    costs = [line_cost(one, asked.setting) for one in lines]
    rows = [_row(line, cost, asked) for line, cost in zip(lines, costs, strict=True)]
    labour, mix = (sum_worlds(parts) for parts in ([one.labour for one in costs], [one.mix for one in costs]))
    rows.append(("All lines", "", "", "", _dollars(best(mix)), _dollars(best(labour)), text.money(labour + mix)))
    return Part("Cost by line of the plan", "table", tuple(rows), _HEADS, _note(asked))


def _row(line: Choice, cost: LineCost, asked: PacketAsked) -> tuple[str, ...]:
    unit = asked.setting.ground.units[line.stand.unit].name
    plant = asked.setting.reference.species[line.stand.species].common_name
    hours = text.hours(line_minutes(line.stand.stems, line.per_stem.minutes)).partition(" ")[0]
    return (
        f"{unit}: {plant} {text.size(line.stand.band_cm)}",
        letter_of(line.recipe, asked.prescription) or "–",
        f"{best(line.stand.stems):,.0f}",
        hours,
        _dollars(best(cost.mix)) if line.recipe else "–",
        _dollars(best(cost.labour)),
        text.money(cost.total),
    )


def _dollars(amount: float) -> str:
    return f"${amount:,.0f}"


def _note(asked: PacketAsked) -> str:
    return ". ".join(_said(asked)) + "."


def _said(asked: PacketAsked) -> Iterator[str]:
    """What the figures rest on, so that nobody takes them for a quotation."""
    own, (lines, all_lines) = asked.setting.own, (asked.cleared.lines, asked.lines)
    yield "One visit, best figures; without mixing, walking, the way there and what is left over"
    guesses = ["minutes", *([] if own.wage_per_h else ["the wage"])]
    recipes = [one.recipe for one in lines if one.recipe]
    names = [tuple(key for key in (one.product, one.formulation) if key) for one in recipes]
    if any(own.price_per_l(*one) is None for one in names):
        guesses.append("prices of products")
    if any(one.carrier == "oil" for one in recipes) and own.price_per_l("basal oil") is None:
        guesses.append("the price of oil")
    yield f"Guesses (ours) until your own stand in own.toml: {', '.join(guesses)}"
    if len(lines) < len(all_lines):
        yield "Struck and held lines are not in it"
