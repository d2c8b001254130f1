"""What each line of the plan costs: one visit, labour and mix apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.choose import Choice, Setting, line_cost, minutes, replay_labour, replay_mix_cost, sum_worlds
from rootcollar.kernel.doubt import Worlds, best
from rootcollar.kernel.formula import add_up
from rootcollar.work import text
from rootcollar.work.again import minutes_again, stems_again
from rootcollar.work.asked import PacketAsked
from rootcollar.work.day_sheet import letter_of
from rootcollar.work.packet import Part
from rootcollar.work.worked import number

__all__ = ["costs_part"]

_HEADS = ("Line", "Mix", "Stems", "Hours", "Product, oil", "Labour", "Together (10–90 %)")


def costs_part(asked: PacketAsked) -> Part:
    """Return the table: every cleared line in the plan's order, and all of them together."""
    lines = sorted(asked.cleared.lines, key=lambda one: asked.units.index(one.stand.unit))
    rows = [_row(one, asked) for one in lines]
    rows.append(("All lines", "", "", "", *_money_of(lines, asked.setting)))
    return Part("Cost by line of the plan", "table", tuple(rows), _HEADS, _note(asked))


def _row(line: Choice, asked: PacketAsked) -> tuple[str, ...]:
    setting = asked.setting
    mix, labour, together = _money_of([line], setting)
    unit = asked.setting.ground.units[line.stand.unit].name
    plant = asked.setting.reference.species[line.stand.species].common_name
    return (
        f"{unit}: {plant} {text.size(line.stand.band_cm)}",
        letter_of(line.recipe, asked.prescription) or "–",
        number(line.stand.stems, _stems, "stems", lambda: stems_again([line], setting)),
        number(minutes([line]), _hours, "min", lambda: minutes_again([line], setting)),
        mix if line.recipe else "–",
        labour,
        together,
    )


def _money_of(lines: Sequence[Choice], setting: Setting) -> tuple[str, str, str]:
    """What the mix, the work and both of some lines cost, all lines together."""
    costs = [line_cost(one, setting) for one in lines]
    mix, labour = sum_worlds([one.mix for one in costs]), sum_worlds([one.labour for one in costs])

    def mix_again() -> Worlds:
        return add_up([replay_mix_cost(one, setting) for one in lines], "money", "mix, all lines")

    def labour_again() -> Worlds:
        return add_up([replay_labour(one, setting) for one in lines], "money", "labour, all lines")

    def both_again() -> Worlds:
        return add_up([labour_again(), mix_again()], "money", "labour and mix")

    return (
        number(mix, _dollars, "money", mix_again),
        number(labour, _dollars, "money", labour_again),
        number(labour + mix, text.money, "money", both_again),
    )


def _dollars(amount: Worlds) -> str:
    return f"${best(amount):,.0f}"


def _stems(stems: Worlds) -> str:
    return f"{best(stems):,.0f}"


def _hours(minutes: Worlds) -> str:
    return text.hours(minutes).partition(" ")[0]


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
