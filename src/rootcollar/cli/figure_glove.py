"""The command `figure glove`: which gloves hold against a mix."""

from __future__ import annotations

import re
from collections.abc import Mapping

import click

from rootcollar.cli.figure_shared import answer, bad
from rootcollar.cli.show import json_option

__all__ = ["glove"]

# What people call what is in a mix; the kind of product and carrier, or the letter of the chart, it stands for.
_WATER, _OIL = ("SL", "water"), ("EC", "oil")
_OIL_WORDS = frozenset(
    {"oil", "oils", "basal", "kerosene", "diesel", "ec", "ester", "esters", "emulsifiable", "petroleum"}
)
_WATER_WORDS = frozenset({"water", "waterbased", "sl", "amine", "salt", "dry", "wg", "powder"})
_SOLVENTS: Mapping[str, str] = {
    "xylene": "G", "aromatic": "G", "aromatics": "G", "alcohol": "C", "ethanol": "C", "methanol": "C",
    "isopropanol": "C", "acetone": "D", "ketone": "D", "acetate": "B",
}  # fmt: skip
_SEED = re.compile(r"seed|vegetable|soy|canola|\bmso\b|crop", re.I)
_LETTER = re.compile(r"^(?:chemical[\s-]*resistan\w*\s+)?(?:cat(?:egory)?\.?|group)?\s*([A-H])$", re.I)
_ONLY_SALTS = "a water-based product (SL, such as an amine salt); an ester or EC in water counts as oil: --mix EC"
_WHAT = "what is in it: water, oil, EC, xylene, alcohol, or the letter A to H that the label prints"


@click.command()
@click.option(
    "--mix", "mixed", metavar="WORD", help="What is in it: water, oil, diesel, EC, or the label's letter A-H."
)
@click.option(
    "--product", metavar="KIND", help="A kind of product, such as triclopyr-bee-4-ec: see `rootcollar facts`."
)
@click.option("--carrier", type=click.Choice(["water", "oil", "none"]), help="What it is thinned with.")
@click.option("--material", metavar="MATERIAL", help="A glove you have, such as nitrile or butyl.")
@json_option
def glove(as_json: bool, **told: str | None) -> None:
    """Work out which gloves hold against a mix.

    The label comes first. What is told here is a remembered chart, for a mix whose label names no glove.

    \b
    Example: rootcollar figure glove --mix oil --material nitrile
    """
    from rootcollar.jobs.figure_glove import GloveAsk
    from rootcollar.jobs.figure_glove import glove as job

    given = {name.replace("mixed", "mix"): said.strip() for name, said in told.items() if said is not None}
    if not given:
        raise bad("no mix and no glove", "--mix oil, --product with --carrier, or --material nitrile")
    if told["mixed"] is not None and (told["product"] or told["carrier"]):
        raise bad("--mix with --product or --carrier", "one of the two ways to say what is in it")
    groups, words, assumed = _mix(told)
    material = _material(told["material"]) if told["material"] is not None else ""
    answer("figure-glove", job, GloveAsk(given, groups, words, material, assumed), as_json)


def _mix(told: Mapping[str, str | None]) -> tuple[tuple[str, ...], str, tuple[str, ...]]:
    """Return the groups of the chart, the mix in words, and what was assumed."""
    from rootcollar.hazard import solvent_groups
    from rootcollar.reference import find_formulation

    carrier = told["carrier"] or "water"
    thinned = {"water": "in water", "oil": "in oil", "none": "undiluted"}[carrier]
    if told["mixed"] is not None:
        return _named(told["mixed"])
    if told["product"] is not None:
        kind = find_formulation(told["product"])
        if told["carrier"] is not None and carrier not in kind.carriers:
            raise bad(f"--carrier {carrier}", f"what {kind.words} can be: {', '.join(kind.carriers)}")
        said = () if told["carrier"] else ("thinned with water, or as sold; --carrier oil for oil",)
        return solvent_groups(kind.type, carrier), f"{kind.words} {thinned}", said
    if told["carrier"] is None:
        return (), "", ()
    if carrier == "none":
        raise bad(
            "--carrier none without --product", "the product too, because undiluted it is only what it is sold as"
        )
    if carrier == "oil":
        return solvent_groups("EC", "oil"), "a mix in oil", ()
    return solvent_groups("SL", "water"), "a mix in water", (_ONLY_SALTS,)


def _named(said: str) -> tuple[tuple[str, ...], str, tuple[str, ...]]:
    from rootcollar.hazard import solvent_groups
    from rootcollar.kernel.errors import BadInput, Fault

    if letter := _LETTER.match(said.strip()):
        return (letter[1].upper(),), f"category {letter[1].upper()}", ()
    if _SEED.search(said):
        allowed = "the letter that the label prints (A to H): the chart has no group for oils from seeds"
        raise BadInput(Fault(repr(said), allowed, field="--mix"))
    words = re.sub(r"[^a-z]+", " ", said.lower()).split()
    if solvent := next((_SOLVENTS[one] for one in words if one in _SOLVENTS), ""):
        return (solvent,), f"a mix with {' '.join(words)}", ()
    if _OIL_WORDS & set(words):
        return solvent_groups(*_OIL), "a mix with oil or an EC in it", ()
    if _WATER_WORDS & set(words):
        return solvent_groups(*_WATER), "a mix in water", (_ONLY_SALTS,)
    raise BadInput(Fault(repr(said), _WHAT, field="--mix"))


def _material(said: str) -> str:
    from rootcollar.hazard import material_of, read_chart
    from rootcollar.jobs.figure_glove import NEVER
    from rootcollar.kernel.errors import BadInput, Fault
    from rootcollar.reference import load

    materials = read_chart(load().hazard["gloves_chart"]).materials
    never = next((one for one in NEVER if one in said.lower()), "")
    found = never or material_of(said, materials)
    if not found:
        raise BadInput(Fault(repr(said), f"a material: {', '.join((*materials, *NEVER))}", field="--material"))
    return found
