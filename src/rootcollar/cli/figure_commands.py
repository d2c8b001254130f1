"""The commands `figure mix`, `dose` and `rate`: one question, one answer, with its working and sources."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import asdict
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import click

from rootcollar.cli.ask import amount, count, naming, one_of, share, size
from rootcollar.cli.show import heading, json_option, listed, print_json, steps, text

if TYPE_CHECKING:
    from rootcollar.jobs.figure import Answer, Worked
    from rootcollar.jobs.figure_mix import Strength
    from rootcollar.jobs.outcome import Outcome
    from rootcollar.kernel.errors import BadInput
    from rootcollar.kernel.units import Kind, Quantity
    from rootcollar.mix import Carrier
    from rootcollar.reference import Reference

__all__ = ["figure"]

A = TypeVar("A")

_METHODS = {
    "basal-bark": "basal_bark", "hack-squirt": "hack_squirt", "cut-stump": "cut_stump", "foliar": "foliar",
    "vine": "vine_cut",
}  # fmt: skip
_CARRIERS: Mapping[str | None, Carrier] = {"water": "water", "oil": "oil", "none": "none"}
_METRIC = ("mL", "L", "mm", "cm", "m")


@click.group()
def figure() -> None:
    """Work out a mix, a dose or a rate, with its working.

    Each answers one question and shows how, from which sources, and what it had to assume.

    \b
    Example: rootcollar figure rate --have "4.5 lb ae/gal" --want "4 lb ae/gal" --rate "32 fl oz/ac"
    """


@figure.command()
@click.option("--percent", metavar="PERCENT", help="Product as a share of the finished mix: 3, or 0.5%.")
@click.option("--ratio", metavar="1:N", help="One part product to N parts diluent: 1:4 is 20%.")
@click.option("--want-ae", metavar="STRENGTH", help="Acid wanted in the mix, such as '96 g ae/L'; needs --strength.")
@click.option("--strength", metavar="STRENGTH", help="Acid in the product as sold, such as '4 lb ae/gal'.")
@click.option("--total", metavar="VOLUME", help="Finished mix wanted, such as '3 gal'.")
@click.option("--add-to", metavar="VOLUME", help="Diluent that is there already and stays, such as '3 gal'.")
@click.option("--tank", metavar="VOLUME", help="What is filled each time, such as '4 gal': gives the loads.")
@click.option(
    "--carrier", type=click.Choice(["water", "oil"]), help="What the product is thinned with. [default: water]"
)
@json_option
def mix(as_json: bool, **told: str | None) -> None:
    """Work out how much product makes a mix.

    Percent means percent of the finished mix, as labels and tables mean it. No jug step is stronger than asked.

    \b
    Example: rootcollar figure mix --percent 3 --total "3 gal" --tank "4 gal"
    """
    from rootcollar.jobs.figure_mix import MixAsk
    from rootcollar.jobs.figure_mix import mix as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    strength, acid = _mix_strength(told, given)
    where = one_of(
        {"--total": told["total"], "--add-to": told["add_to"]},
        "one of them: --total for the finished mix, or --add-to for a diluent that is there already",
    )
    wanted = amount(where, told["total"] or told["add_to"] or "", Kind.VOLUME)
    given[where.strip("-")] = f"{wanted.text.strip()} = {wanted.amount:.6g} mL"
    tank = _optional("tank", told["tank"], Kind.VOLUME, given)
    _not_with(
        "--add-to", where == "--add-to" and tank is not None, "--tank", "loads are of a finished mix; give --total"
    )
    given |= {name: said for name in ("carrier",) if (said := told[name])}
    ask = MixAsk(
        given, strength, wanted.amount, where == "--add-to", _CARRIERS.get(told["carrier"], "water"),
        _to(tank, "mL"), _to(acid, "g/L"), _system(wanted),
    )  # fmt: skip
    _answer("figure-mix", job, ask, as_json)


@figure.command()
@click.argument("method", type=click.Choice(list(_METHODS)))
@click.option("--diameter", metavar="SIZE", help="Of the stem or stump: '2 in', or a class '1-2 in'.")
@click.option("--count", "stems", metavar="N", default="1", show_default=True, help="How many stems.")
@click.option("--strength", metavar="PERCENT", help="Product in the finished mix. [default: what the sources give]")
@click.option("--product", metavar="NAME", help="A formulation that rootcollar facts lists. [default: a plain one]")
@click.option("--carrier", type=click.Choice(["water", "oil", "none"]), help="What the product is thinned with.")
@click.option("--crown", metavar="WIDTH", help="Width of the leaves to be wetted, such as '4 ft' (foliar).")
@click.option("--band", metavar="HEIGHT", help="Height of the band on the bark, such as '12 in' (basal-bark).")
@click.option("--spacing", metavar="LENGTH", help="Stem diameter for each cut, such as '1 in' (hack-squirt).")
@click.option("--each", metavar="VOLUME", help="The label's most mix in one cut, such as '1 mL' (hack-squirt).")
@json_option
def dose(method: str, as_json: bool, **told: str | None) -> None:
    """Work out how much mix stems of a size take.

    The answer has a likely range and names the coverage it rests on; a proving batch of your own replaces it.

    \b
    Example: rootcollar figure dose basal-bark --diameter "2 in" --count 120
    """
    from rootcollar.jobs.figure_dose import DoseAsk
    from rootcollar.jobs.figure_dose import dose as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    stems = count("--count", told["stems"] or "")
    given["count"] = str(stems)
    ends = None if told["diameter"] is None else size("--diameter", told["diameter"])
    if told["diameter"] is not None:
        given["diameter"] = told["diameter"].strip()
    strength = None if told["strength"] is None else share("--strength", told["strength"])
    if strength is not None:
        given["strength"] = strength.text.strip()
    lengths = {option: _optional(option, told[option], Kind.LENGTH, given) for option in ("crown", "band", "spacing")}
    each = _optional("each", told["each"], Kind.VOLUME, given)
    given |= {name: said for name in ("product", "carrier") if (said := told[name])}
    ask = DoseAsk(
        given, _METHODS[method], stems, ends and (ends[0].to("cm"), ends[1].to("cm")),
        strength_pct=_to(strength, "%"), product=told["product"], carrier=_CARRIERS.get(told["carrier"]),
        crown_m=_to(lengths["crown"], "m"), band_cm=_to(lengths["band"], "cm"),
        spacing_cm=_to(lengths["spacing"], "cm"), each_ml=_to(each, "mL"),
        system=_system(*(ends or ()), *lengths.values()),
    )  # fmt: skip
    _answer("figure-dose", job, ask, as_json)


@figure.command()
@click.option("--have", metavar="STRENGTH", required=True, help="Acid in the product in hand, such as '4.5 lb ae/gal'.")
@click.option("--want", metavar="STRENGTH", help="Acid in the product the rate is printed for, such as '4 lb ae/gal'.")
@click.option(
    "--rate", "printed", metavar="RATE", required=True, help="'32 fl oz/ac', '2%' or, without --want, '1 lb ae/ac'."
)
@json_option
def rate(have: str, want: str | None, printed: str, as_json: bool) -> None:
    """Work out the rate of the product in hand for the same acid.

    Products of one ingredient come in several strengths; what works is the acid (ae), not the volume.

    \b
    Example: rootcollar figure rate --have "4.5 lb ae/gal" --want "4 lb ae/gal" --rate "32 fl oz/ac"
    """
    from rootcollar.jobs.figure_rate import RateAsk
    from rootcollar.jobs.figure_rate import rate as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    mine = _acid("--have", have, given)
    wanted = _rate(printed)
    given["rate"] = wanted.text.strip()
    by_acid = wanted.kind is Kind.MASS_RATE
    _not_with("--want", want is not None and by_acid, "a rate of acid", "acid is acid: leave --want out")
    if not by_acid and want is None:
        raise _bad("no --want", "the strength of the product the rate is printed for, such as 4 lb ae/gal")
    named = _acid("--want", want, given) if want is not None else None
    _same_form("--have", mine, "--want" if named else "--rate", named or wanted)
    as_typed = (wanted.amount, "%") if wanted.kind is Kind.SHARE else (wanted.to(wanted.unit), wanted.unit)
    ask = RateAsk(given, mine.amount, named.amount if named else None, *as_typed, mine.of)
    _answer("figure-rate", job, ask, as_json)


def _mix_strength(told: Mapping[str, str | None], given: dict[str, str]) -> tuple[Strength, Quantity | None]:
    """Return the strength that was asked for, and the acid in the product where it was told."""
    from rootcollar.jobs.figure_mix import Strength

    product = None if told["strength"] is None else _acid("--strength", told["strength"], given)
    options = {"--percent": told["percent"], "--ratio": told["ratio"], "--want-ae": told["want_ae"]}
    which = one_of(options, "one of them: --percent 20, --ratio 1:4, or --want-ae with --strength")
    said = options[which] or ""
    if which == "--percent":
        found = share(which, said)
        given["percent"] = said.strip()
        return Strength(pct=found.amount), product
    if which == "--ratio":
        given["ratio"] = said.strip()
        return Strength(parts_diluent=_parts(said)), product
    if product is None:
        raise _bad(
            "--want-ae without --strength", "both: the acid wanted in the mix and the acid in the product as sold"
        )
    wanted = _acid(which, said, given)
    _same_form("--strength", product, which, wanted)
    return Strength(acid_g_per_l=(wanted.amount, product.amount)), product


def _parts(said: str) -> float:
    """Return the parts of diluent to one part of product."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    with naming("--ratio"):
        if ":" not in said:
            raise UnitError(said, "parts of product to parts of diluent, such as 1:4")
        read(said, Kind.SHARE)
    product, _, diluent = said.partition(":")
    return float(diluent) / float(product)


def _acid(option: str, said: str, given: dict[str, str]) -> Quantity:
    """Return a strength that says whether it is acid or active ingredient."""
    from rootcollar.kernel.errors import Ambiguous
    from rootcollar.kernel.units import Kind

    found = amount(option, said, Kind.STRENGTH)
    with naming(option):
        if found.of not in ("ae", "ai"):
            raise Ambiguous(
                said, "lb ae/gal for acid equivalent, or lb ai/gal for active ingredient: the label says which"
            )
    given[option.strip("-")] = f"{said.strip()} = {found.amount:.6g} g {found.of}/L"
    return found


def _rate(said: str) -> Quantity:
    """Return a rate: a volume per area, a share of the mix, or acid per area."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    with naming("--rate"):
        found = read(said)
        if found.kind not in (Kind.VOLUME_RATE, Kind.SHARE, Kind.MASS_RATE):
            raise UnitError(said, "a rate, such as 32 fl oz/ac, 2% or 1 lb ae/ac")
    return amount("--rate", said, found.kind)


def _same_form(option: str, one: Quantity, other_option: str, other: Quantity) -> None:
    """Ask when one amount is of acid and the other of active ingredient."""
    from rootcollar.kernel.errors import Ambiguous
    from rootcollar.kernel.units import Kind

    if one.of != other.of and other.kind in (Kind.STRENGTH, Kind.MASS_RATE):
        with naming(other_option):
            raise Ambiguous(
                other.text, f"{one.of}, as {option} is, because acid (ae) and active ingredient (ai) weigh differently"
            )


def _optional(option: str, said: str | None, kind: Kind, given: dict[str, str]) -> Quantity | None:
    if said is None:
        return None
    given[option] = said.strip()
    return amount(f"--{option}", said, kind)


def _to(found: Quantity | None, unit: str) -> float | None:
    return None if found is None else found.to(unit)


def _system(*found: Quantity | None) -> Literal["us", "metric"]:
    return "metric" if any(one is not None and one.unit in _METRIC for one in found) else "us"


def _not_with(option: str, wrong: bool, other: str, allowed: str) -> None:
    if wrong:
        raise _bad(f"{option} with {other}", allowed)


def _bad(found: str, allowed: str) -> BadInput:
    from rootcollar.kernel.errors import BadInput, Fault

    return BadInput(Fault(found=found, allowed=allowed))


def _answer(command: str, job: Callable[[A, Reference], Outcome[Answer]], ask: A, as_json: bool) -> None:
    """Run a job watched and print its answer: the answer first, then how, whence and what to mind."""
    from rootcollar.jobs.figure import work_out
    from rootcollar.reference import load

    worked = work_out(job, ask, load())
    if as_json:
        print_json(command, _body(worked))
    else:
        _show(worked)


def _body(worked: Worked) -> Mapping[str, Any]:
    answer = worked.outcome.value
    return {**asdict(answer), "working": worked.working, "sources": [asdict(one) for one in worked.sources]}


def _show(worked: Worked) -> None:
    answer = worked.outcome.value
    text(f"{answer.says} ({answer.note}).", bold=True)
    if answer.details:
        click.echo()
        listed(answer.details, indent=0)
    heading("How")
    for name, said in answer.given.items():
        text(f"{name}: {said}", indent=2)
    steps(worked.working["steps"])
    if answer.assumed:
        heading("Assumed")
        listed(answer.assumed)
    heading("Sources")
    listed([f"{one.key}: {one.cite}" + (f" {one.url}" if one.url else "") for one in worked.sources])
    heading("Mind")
    listed(answer.cautions)
