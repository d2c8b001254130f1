"""The second product of a mix: put into the ways that a person planned it for, and named as labels may call it."""

from __future__ import annotations

from dataclasses import replace

from rootcollar.choose.option import Way
from rootcollar.choose.own import Mixed
from rootcollar.choose.setting import Setting
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert, show
from rootcollar.label import Partnered
from rootcollar.mix.recipe import Part, Recipe

__all__ = ["partnered", "with_partner"]


def with_partner(way: Way, setting: Setting) -> Way:
    """Return a way with the partner that was planned for its product; as it was where none was, or it is undiluted.

    Raises Refusal where the products and what goes in beside them are more than the mix.
    """
    recipe = way.visit.recipe
    if recipe is None or recipe.carrier == "none":
        return way
    planned = next((one for one in setting.own.mixed if one.product in {recipe.product, recipe.formulation}), None)
    if planned is None or planned.partner in {recipe.product, recipe.formulation}:
        return way
    mixed = replace(recipe, partner=_part(planned, setting))
    together = mixed.products_pct + mixed.surfactant_pct + mixed.dye_pct
    if together > 100:
        raise Refusal(
            f"{planned.product} with {show(planned.pct, '%')} of {planned.partner}",
            limit=f"what goes into the mix comes to {show(together, '%')}",
            do="write a lower percent in [[partner]] of own.toml",
        )
    return replace(way, treatment=(*way.treatment[:-1], replace(way.visit, recipe=mixed)))


def _part(planned: Mixed, setting: Setting) -> Part:
    """The partner with what its label sheet or generic formulation says of it."""
    if planned.fertiliser:
        return Part(planned.partner, "", "", 0.0, planned.pct, fertiliser=True)
    for one in setting.products:
        if one.sheet and one.sheet.key == planned.partner:
            return Part(planned.partner, one.formulation.key, one.formulation.ingredient, one.ae_g_per_l, planned.pct)
    known = setting.reference.formulations.get(planned.partner)
    if known is None:  # a sheet that nothing can be planned with: its name stands, and its label counts as not known
        return Part(None, planned.partner, "", 0.0, planned.pct)
    cited = known.ae_lb_per_gal or known.ai_lb_per_gal
    return Part(None, known.key, known.ingredient, convert(cited.value, "lb/gal", "g/L") if cited else 0.0, planned.pct)


def partnered(recipe: Recipe | None, setting: Setting) -> Partnered | None:
    """Return the partner of a mix as the label of its first product may call it; None where there is none."""
    part = recipe.partner if recipe else None
    if part is None:
        return None
    sheet, known = setting.sheet(part.product), setting.reference.formulations.get(part.formulation)
    names = (sheet.product if sheet else "", known.words if known else "", part.key, part.ingredient)
    said = tuple(dict.fromkeys(one for one in names if one))
    return Partnered(said, label_known=sheet is not None, fertiliser=part.fertiliser)
