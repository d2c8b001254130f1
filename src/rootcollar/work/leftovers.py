"""Leftover mix, rinse water and empty jugs: where they lawfully go, with this day's volumes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from rootcollar.kernel.formula import note, use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, jug, read, show
from rootcollar.mix import rinsate_ml, rinse_water_ml
from rootcollar.reference import Reference, named, numbers
from rootcollar.shelf import NOT_READ, Sheet, sites
from rootcollar.work import text
from rootcollar.work.asked import PacketAsked
from rootcollar.work.mixes import DayMix, Product, day_mixes, day_products
from rootcollar.work.packet import Page, Part
from rootcollar.work.printed import ADVICE, NO_SHEET, SILENT_WORDS, figure, page_words, quoted
from rootcollar.work.worked import Worked, number

__all__ = ["leftovers_page"]

_RULE = "CFR15"  # 40 CFR 156.146 is the rule; older advice and a state's stand beside it in the reference
_VOLUMES = frozenset({"gal", "qt", "pt", "fl oz", "L", "mL"})  # a jug that is sold by weight has no volume to fill
_FIRST = (
    "Mix no more than the day needs: the last load is reckoned for that.",
    "What is left is used up as it was meant: on plants of the plan, on ground the label lists, within its rate.",
    "What cannot be used stays in its jug with its tag on, locked away, until the label's hours are over.",
    "After that it is waste: ask the county's or state's pesticide collection.",
)
_NEVER = (
    "Never into a drain, ditch, sink, toilet or water, nor on bare ground in one spot.",
    "Never into a food or drink container, nor into a jug with another label.",
    "No rinse water into an oil mix: water and oil make a slime that runs off bark.",
)


def leftovers_page(asked: PacketAsked) -> Page | None:
    """Return the page, or None on a day without mix."""
    mixes = day_mixes(asked)
    if not mixes:
        return None
    reference, products = asked.setting.reference, day_products(mixes)
    return Page(
        "Leftover, rinse water, empty jugs",
        "The label of each product decides; a line nobody has read is said as that.",
        (
            Part("Leftover mix", "steps", tuple((one,) for one in _FIRST), note=ADVICE),
            Part("Never", "text", tuple((one,) for one in _NEVER), note="Advice (ours; EXT-GEN, memory)."),
            Part("By mix", "table", tuple(_by_mix(mixes)), ("Mix", "Keeps for", "Goes on", "Its rinse water")),
            Part("Empty a jug, rinse it at once", "steps", tuple(_rinse_steps(reference)), (), _rinse_note(reference)),
            Part("Water for each jug", "table", tuple(_rinse_rows(products, reference)),
                 ("Product", "The jug", "Each rinse", "All rinses: off the tank's water")),
            Part("Flush the sprayer", "steps", tuple(_flush(asked)), note="Practice of the trade (EXT-GEN, memory)."),
            *(_jug_part(one) for one in products),
            Part("Your own bottles", "text", tuple(_bottles(reference))),
        ),
    )  # fmt: skip


def _by_mix(mixes: Sequence[DayMix]) -> Iterator[tuple[str, ...]]:
    """One row for the mixes of a product in one carrier: they keep and go alike."""
    alike: dict[tuple[str, ...], list[DayMix]] = {}
    for one in mixes:
        keeps = figure(one.sheet, "mixing.mixture_storage_hours")
        if keeps == SILENT_WORDS:
            keeps = f"{SILENT_WORDS}: use it the same day"
        product = one.words.partition(", ")[0] + f", {'undiluted' if one.undiluted else 'in ' + one.recipe.carrier}"
        alike.setdefault((product, keeps, _sites(one.sheet), _diluent(one)), []).append(one)
    for (product, *rest), ones in alike.items():
        yield (f"{', '.join(one.letter for one in ones)}  {product}", *rest)


def _sites(sheet: Sheet | None) -> str:
    """The places the label lists, in its words; and those where it forbids use."""
    if sheet is None or not sites(sheet):
        return NO_SHEET if sheet is None else NOT_READ
    good = [one.words or "" for one in sites(sheet) if one.allowed]
    bad = [one.words or "" for one in sites(sheet) if one.allowed is False]
    words = "; ".join(f"“{one}”" for one in good if one) or "no place listed"
    return words + ("; never on " + "; ".join(f"“{one}”" for one in bad if one) if bad else "")


def _diluent(mix: DayMix) -> str:
    """Whether water that rinsed a jug may be a part of the next load: only what the label lets it be mixed with."""
    if mix.sheet is None:
        return NO_SHEET
    if all("water" in (mix.sheet.says("carrier", one) or ()) for one in mix.methods) and mix.recipe.carrier == "water":
        return "is water of the next load of the same mix"
    watery = [one.replace("_", " ") for one in mix.sheet.methods if "water" in (mix.sheet.says("carrier", one) or ())]
    where = f", in a water mix of it (the label gives one for: {', '.join(watery)})" if watery else ""
    return f"not into this mix; onto a listed place, within the rate{where}"


def _figure(reference: Reference, topic: str, name: str) -> Cited[float]:
    """The rule's figure where the rule gives one, else the only one there is."""
    found = numbers(named(reference.mixing[topic], name))
    return next((one for one in found if one.source == _RULE), found[0])


def _rinse_steps(reference: Reference) -> Iterator[tuple[str]]:
    drain, share, shake, times = (
        _figure(reference, "rinse", name) for name in ("drain_s", "rinse_fill_share", "shake_s", "rinse_times")
    )
    yield (f"Empty it into the tank or mix; when it begins to drip, hold it {show(drain.value, drain.unit)} more.",)
    yield (
        f"Fill it to {share.value:.0%} with water, close it, shake it {show(shake.value, shake.unit)}.".replace(
            "%", " %"
        ),
    )
    yield (f"Pour that into a water mix of it, or into a tagged jug; let it drip {show(drain.value, drain.unit)}.",)
    yield (f"Do this {times.value:.0f} times in all. Then puncture it, so that nobody uses it again.",)


def _rinse_note(reference: Reference) -> str:
    share = _figure(reference, "rinse", "rinse_fill_share")
    return (
        f"For liquids in a jug that can be shaken, if the label lets you rinse with water ({share.source}, "
        f"{share.mark}, 40 CFR {share.locator}). Puncturing is advice."
    )


def _rinse_rows(products: Sequence[Product], reference: Reference) -> Iterator[tuple[str, ...]]:
    for one in products:
        amount, unit = (
            one.sheet.says(f"identity.net_contents.{part}") if one.sheet else None for part in ("amount", "unit")
        )
        if not amount or unit not in _VOLUMES:
            yield one.name, NO_SHEET if one.sheet is None else "volume not on the sheet", "–", "–"
            continue
        each = partial(_each_rinse, one, f"{amount} {unit}", reference)
        whole = partial(_all_rinses, one, f"{amount} {unit}", reference)
        yield one.name, show(amount, unit), number(each(), _jug, "mL", each), number(whole(), _jug, "mL", whole)


def _each_rinse(one: Product, contents: str, reference: Reference) -> float:
    """The water of one rinse of a product's jug [mL]."""
    line = one.sheet.line("identity.net_contents.amount") if one.sheet else None
    holds_ml = note("the jug", f"the label, {contents}{page_words(line)}", read(contents).amount, "mL")
    return rinse_water_ml(holds_ml, use(_figure(reference, "rinse", "rinse_fill_share")))


def _all_rinses(one: Product, contents: str, reference: Reference) -> float:
    each_ml = _each_rinse(one, contents, reference)
    return rinsate_ml(int(use(_figure(reference, "rinse", "rinse_times"))), each_ml)


def _jug(volume_ml: float) -> str:
    return jug(volume_ml).text


def _flush(asked: PacketAsked) -> Iterator[tuple[str]]:
    reference, tank_l = asked.setting.reference, asked.crew.tank_l
    times, share = (_figure(reference, "flush", name).value for name in ("times", "fill_share"))
    each: str = f"about {share:.0%} of the tank".replace("%", " %")
    if tank_l is not None:
        again = partial(_each_flush, tank_l, reference)
        each = Worked(number(again(), text.gallons, "mL", again), f" ({each})")
    yield (Worked("Water mixes: clear water, ", each, f", pumped through hose and nozzle; {times:.0f} times."),)
    yield ("Each flush goes onto a listed place, spread out, within the rate; or into the next load of the same mix.",)
    yield ("Oil mixes: keep a sprayer for oil alone, and dry; flush it with the oil of the next load.",)


def _each_flush(tank_l: float, reference: Reference) -> float:
    """The water of one flush [mL]."""
    holds_ml = note("the tank", f"crew.toml, {tank_l:.6g} L", convert(tank_l, "L", "mL"), "mL")
    return rinse_water_ml(holds_ml, use(_figure(reference, "flush", "fill_share")))


def _jug_part(one: Product) -> Part:
    low, high = (figure(one.sheet, f"storage.temp_f.{end}") for end in ("low", "high"))
    rows = (
        ("Container", quoted(one.sheet, "storage.container_kind")),
        ("Rinse it", quoted(one.sheet, "storage.rinse")),
        ("Get rid of it", _disposal(one.sheet)),
        ("Not colder than", low),
        ("Not hotter than", high),
        ("Away from", quoted(one.sheet, "storage.away_from")),
    )
    return Part(f"The label on its jug: {one.name}", "pairs", rows, note=f"Mix {one.letters}.")


def _disposal(sheet: Sheet | None) -> str:
    page = sheet.says("storage.disposal_text_page") if sheet else None
    return quoted(sheet, "storage.disposal_text_page") if page is None else f"read label page {page} before you do"


def _bottles(reference: Reference) -> Iterator[tuple[str]]:
    (tag,) = named(reference.emergency["bottle_tag"], "says")
    items = ", ".join(tag.value) if isinstance(tag.value, tuple) else str(tag.value)
    yield (f"A tag stays on as long as anything is in it: {items} ({tag.source}, {tag.mark}: ask your state).",)
