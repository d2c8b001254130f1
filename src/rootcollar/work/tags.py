"""Tags for every sprayer, jug and bottle: what is in it, who mixed it and when, and its letter as a pattern of tape."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import groupby, islice, product

from rootcollar.shelf import NOT_READ, Sheet
from rootcollar.work.asked import PacketAsked
from rootcollar.work.mixes import DayMix, Product, day_mixes, day_products
from rootcollar.work.packet import Tag
from rootcollar.work.printed import NO_SHEET, active_words, figure, registration

__all__ = ["NOT_MIXED", "bars", "tags", "tape_words"]

_NARROW, _WIDE = 1, 2
_WIDTHS = {_NARROW: "narrow", _WIDE: "wide"}
_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")
NOT_MIXED = (_WIDE, _WIDE, _WIDE, _WIDE)  # kept for product that is not mixed yet

_KEEP = "Keep out of reach of children."


@lru_cache(maxsize=1000)
def bars(place: int) -> tuple[int, ...]:
    """Return the tape of the plan's mix at a place (0 for the first): widths of bars, 1 narrow, 2 wide.

    Few bars first. No two places share a pattern from whichever end it is felt, and none has that of undiluted product.
    """
    return next(islice(_patterns(), place, None))


def _patterns() -> Iterator[tuple[int, ...]]:
    """Every pattern once, a pattern and its mirror image being one."""
    length = 0
    while True:
        length += 1
        for found in product((_NARROW, _WIDE), repeat=length):
            if found <= found[::-1] and found != NOT_MIXED:
                yield found


def tape_words(pattern: tuple[int, ...]) -> str:
    """Return a pattern in words: "one wide", "two narrow, one wide"."""
    runs = [(width, len(list(run))) for width, run in groupby(pattern)]
    return ", ".join(f"{_COUNTS[count] if count < len(_COUNTS) else count} {_WIDTHS[width]}" for width, count in runs)


def tags(asked: PacketAsked) -> tuple[Tag, ...]:
    """Return two tags for each mix of the day (what it is sprayed from, what it is kept in), and one a product."""
    mixes = day_mixes(asked)
    of_mixes = (_mix_tag(one, vessel) for one in mixes for vessel in _vessels(one))
    poured = (one for one in day_products(mixes) if any(not mix.undiluted for mix in one.mixes))
    return (*of_mixes, *(_product_tag(one) for one in poured))


def _vessels(mix: DayMix) -> tuple[str, str]:
    return ("Squirt bottle", "Bottle to refill from") if mix.undiluted else ("Sprayer or squirt bottle", "Jug of mix")


def _mix_tag(mix: DayMix, vessel: str) -> Tag:
    recipe = mix.recipe
    strength = "undiluted" if mix.undiluted else f"{recipe.strength_pct:.3g} % product in {recipe.carrier}"
    tape = bars(mix.place)
    return Tag(
        mix.letter,
        vessel,
        tape_words(tape),
        tape,
        (
            *_product_lines(mix),
            *([] if recipe.partner else [("Strength", strength)]),
            ("Mixed on, at", ""),
            ("Mixed by", ""),
            ("Keeps for", _keeps(mix.strictest)),
            ("So until", ""),
            ("Answers for it", ""),
        ),
        _foot(mix.strictest),
    )


def _product_lines(mix: DayMix) -> Iterator[tuple[str, str]]:
    """The product and what its label says of it; of two in one mix each with its own strength."""
    for one in mix.each:
        yield "Product", one.sheet.product if one.sheet else one.words.partition(", ")[0]
        yield from _label_lines(one.sheet, one.recipe.ingredient)
        if mix.recipe.partner:
            yield "Strength", f"{one.recipe.strength_pct:.3g} % of it in {one.recipe.carrier}"
    other = mix.recipe.partner
    if other and other.fertiliser:
        yield "And", f"{other.strength_pct:.3g} % of {other.key}, a fertiliser"


def _product_tag(one: Product) -> Tag:
    return Tag(
        "",
        "Product, not mixed",
        f"{tape_words(NOT_MIXED)}: not mixed",
        NOT_MIXED,
        (
            ("Product", one.name),
            *_label_lines(one.sheet, one.ingredient),
            ("For mix", one.letters),
            ("Poured on, by", ""),
            ("Answers for it", ""),
        ),
        _foot(one.sheet),
    )


def _label_lines(sheet: Sheet | None, ingredient: str) -> tuple[tuple[str, str], ...]:
    word = sheet.says("hazard.signal_word") if sheet else None
    read = sheet is not None and sheet.line("hazard.signal_word") is not None
    unread = NOT_READ if sheet else ""
    return (
        ("EPA Reg. No.", registration(sheet)),
        ("Active", active_words(sheet, ingredient)),
        ("Signal word", str(word) if word else "none on the label" if read else unread),
    )


def _keeps(sheet: Sheet | None) -> str:
    """The label's hours; else the habit of the trade, said as that."""
    if sheet is not None and sheet.says("mixing.mixture_storage_hours") is not None:
        return figure(sheet, "mixing.mixture_storage_hours")
    return f"the same day ({figure(sheet, 'mixing.mixture_storage_hours')}; EXT-GEN, memory)"


def _foot(sheet: Sheet | None) -> str:
    return f"{NO_SHEET}. {_KEEP}" if sheet is None else _KEEP
