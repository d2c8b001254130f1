"""Which ways there are for a species: what the sources name, with what stands on the shelf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from rootcollar.choose.option import Way
from rootcollar.choose.steps import stepped
from rootcollar.choose.strength import Asked, Strength, choose_strength
from rootcollar.kernel.days import MONTHS, months
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.sources import Mark
from rootcollar.kernel.units import Kind, convert, read
from rootcollar.mix.recipe import Carrier, Recipe, Visit
from rootcollar.reference import FailRow, Formulation, MethodRow, Reference, Species, best, find_ingredient, spans
from rootcollar.shelf import Sheet, actives, ae_g_per_l

__all__ = ["Product", "not_planned_with", "products", "shuts", "ways_for"]

BY_HAND = ("pull", "cut", "girdle", "mow")
WITH_HERBICIDE = ("hack_squirt", "cut_stump", "basal_bark", "foliar", "vine_cut")

_SHUTS = frozenset({"multiplies_stems", "no_kill", "spreads", "too_slow", "unsafe"})
_MARKS = tuple(Mark)  # best first

# Oil carries esters through bark; salts go with water into fresh cuts; leaves are sprayed from water.
_CARRIERS: Mapping[tuple[str, bool], tuple[Carrier, ...]] = {
    ("basal_bark", True): ("oil",),
    ("cut_stump", True): ("oil",),
    ("cut_stump", False): ("water",),
    ("hack_squirt", False): ("water",),
    ("vine_cut", True): ("oil",),
    ("vine_cut", False): ("water",),
    ("foliar", True): ("water",),
    ("foliar", False): ("water",),
}


@dataclass(frozen=True, slots=True)
class Product:
    """A product as choosing sees it: from a label sheet, or a generic formulation with no label yet.

    ae_g_per_l: acid equivalent (or active, where the trade goes by it) as sold [g/L].
    """

    formulation: Formulation
    ae_g_per_l: float
    sheet: Sheet | None = None

    @property
    def is_ester(self) -> bool:
        """Whether the active is an ester (goes in oil), rather than a salt."""
        return is_ester(self.formulation.form)

    def listed(self, method: str) -> bool:
        """Whether the sheet gives directions for the method; True where nothing of them has been read yet."""
        return self.sheet is None or not self.sheet.methods or method in self.sheet.methods


def is_ester(form: str) -> bool:
    """Return whether a form name means an ester."""
    return "ester" in form.lower() or form in {"BEE", "2-EHE", "MHE"}


def products(shelf: Mapping[str, Sheet], reference: Reference) -> tuple[Product, ...]:
    """Return the shelf's products with the generic formulation each comes nearest to.

    A sheet that cannot be planned with is left out: see `not_planned_with`.
    """
    found = (_product(shelf[key], reference) for key in sorted(shelf))
    return tuple(one for one in found if isinstance(one, Product))


def not_planned_with(shelf: Mapping[str, Sheet], reference: Reference) -> tuple[str, ...]:
    """Return a sentence for each sheet that nothing can be planned with, and why, so that none is passed over."""
    found = ((key, _product(shelf[key], reference)) for key in sorted(shelf))
    return tuple(f"shelf/{key}.toml is not planned with: {why}" for key, why in found if isinstance(why, str))


def _product(sheet: Sheet, reference: Reference) -> Product | str:
    """Return the product of a sheet, or why it is none."""
    if len(actives(sheet)) > 1:  # limits go by ingredient: planning by one of two would leave the other uncounted
        return "products of more than one active ingredient are not reckoned yet"
    active = next(iter(actives(sheet)), None)
    strength = ae_g_per_l(active) if active else None
    if active is None or active.common_name is None or strength is None:
        return "its ingredient or how much of it is in a gallon is not typed"
    try:
        ingredient = find_ingredient(active.common_name, reference).key
    except NotFound:
        return f"no source here speaks of its ingredient, {active.common_name}"
    near = [
        one
        for one in reference.formulations.values()
        if one.ingredient == ingredient and is_ester(one.form) == is_ester(active.form or "")
    ]
    if not near:
        return f"no source here speaks of {active.common_name} in this form, {active.form or 'which is not typed'}"
    nearest = min(near, key=lambda one: abs(_ae(one) - strength))
    if nearest.ready_to_use:
        return "mixes sold ready to use are not reckoned yet"
    return Product(nearest, strength, sheet)


def ways_for(species: Species, shelf: tuple[Product, ...], reference: Reference) -> Iterator[Way]:
    """Yield every way the sources name for the species, of one visit, then of two: see `_of_one_visit`, `stepped`."""
    found = tuple(_of_one_visit(species, shelf, reference))
    yield from found
    yield from stepped(species, found, reference)


def _of_one_visit(species: Species, shelf: tuple[Product, ...], reference: Reference) -> Iterator[Way]:
    """Yield every way of one visit, with each product that could serve it.

    A generic formulation stands in ("no label yet") only where the shelf has nothing for the method. Work by hand that
    a source warns of is a way too, to be set aside with the source's reason.
    """
    for method in BY_HAND:
        rows = tuple(row for row in species.methods if row.method == method)
        if rows or method == "cut" or _warned_off(method, species):
            yield Way((Visit(method, None, open_months(rows)),), rows)
    for method in WITH_HERBICIDE:
        rows = tuple(row for row in species.methods if row.method == method)
        if not rows:
            continue
        named = {one for row in rows for one in row.ingredients} or {
            one for row in species.methods for one in row.ingredients
        }
        usable = [one for one in shelf if one.formulation.ingredient in named and one.listed(method)]
        served = [way for product in usable for way in _with(method, product, rows, reference)]
        yield from served or (
            way for product in _generic(rows, named, reference) for way in _with(method, product, rows, reference)
        )


def _warned_off(method: str, species: Species) -> bool:
    """Whether a source says that work by hand fails here all year: no source gives it, yet people do it first."""
    return any(row.method == method and shuts(row, given=False) and not row.windows for row in species.fails)


def shuts(row: FailRow, given: bool = True) -> bool:
    """Return whether a failure shuts the way. given: whether a source gives it as a way.

    Plants that a source pulls, and that ripen seed where they lie, are bagged, not left standing.
    """
    return row.effect in _SHUTS and not (given and row.effect == "spreads" and row.method == "pull")


def _with(method: str, product: Product, rows: tuple[MethodRow, ...], reference: Reference) -> Iterator[Way]:
    ingredient = product.formulation.ingredient
    fits = tuple(row for row in rows if _fits(row, product, reference))
    if not fits:
        return
    for carrier in _CARRIERS.get((method, product.is_ester), ()):
        if product.formulation.ready_to_use:
            continue
        suited = tuple(
            sorted(
                (row for row in fits if row.carrier in {"", "none", carrier}), key=lambda row: _MARKS.index(row.mark)
            )
        )
        if not suited:
            continue
        strength = choose_strength(
            Asked(method, carrier, ingredient, product.ae_g_per_l), product.sheet, suited, reference
        )
        if strength is None:
            continue
        yield Way(
            (Visit(method, _recipe(product, carrier, strength, reference), open_months(suited)),),
            suited,
            strength.because,
        )


def _recipe(product: Product, carrier: Carrier, strength: Strength, reference: Reference) -> Recipe:
    base = Recipe(
        product=product.sheet.key if product.sheet else None,
        formulation=product.formulation.key,
        ingredient=product.formulation.ingredient,
        ae_g_per_l=product.ae_g_per_l,
        strength_pct=min(strength.pct, 100.0),
        carrier=carrier,
    )
    if strength.pct >= 100:
        return replace(base, carrier="none")
    water = carrier == "water"
    return replace(
        base,
        surfactant_pct=_surfactant(product.sheet) if water else 0.0,
        dye_pct=_dye(product.sheet, carrier, reference),
    )


def _surfactant(sheet: Sheet | None) -> float:
    """Return what the label demands of surfactant [% of finished mix]; nothing where it demands none."""
    if sheet is None or not sheet.says("mixing.surfactant.needed"):
        return 0.0
    return float(sheet.says("mixing.surfactant.percent") or 0.0)


def _dye(sheet: Sheet | None, carrier: Carrier, reference: Reference) -> float:
    """Return the least marking dye a source gives for the carrier [% of finished mix], where the label allows any."""
    if sheet is None or not sheet.says("mixing.dye_allowed"):
        return 0.0
    rows = spans([row.figure for row in reference.mixing["dye"] if row.carrier == carrier])
    if not rows:
        return 0.0
    row = best(rows, cautious="low")
    low = row.value.low or 0.0
    return low if row.unit.startswith("%") else read(f"{low:g} {row.unit}", Kind.SHARE).amount


def _fits(row: MethodRow, product: Product, reference: Reference) -> bool:
    """Whether a source row speaks of this product: same ingredient, and same kind (ester or salt) where it says."""
    if row.ingredients and product.formulation.ingredient not in row.ingredients:
        return False
    kinds = [
        is_ester(one.form)
        for one in (reference.formulations[key] for key in row.formulations if key in reference.formulations)
        if one.ingredient == product.formulation.ingredient
    ]
    return not kinds or product.is_ester in kinds


def _generic(rows: tuple[MethodRow, ...], named: set[str], reference: Reference) -> list[Product]:
    """Return the formulations the rows name, or failing that the plainest of each ingredient they name."""
    keys = [key for row in rows for key in row.formulations if key in reference.formulations]
    for ingredient in sorted(named):
        keys += [one.key for one in reference.formulations.values() if one.ingredient == ingredient]
    seen: set[tuple[str, bool]] = set()
    out = []
    for formulation in (reference.formulations[key] for key in keys):
        kind = (formulation.ingredient, is_ester(formulation.form))
        if kind in seen or formulation.ready_to_use or not _ae(formulation):
            continue
        seen.add(kind)
        out.append(Product(formulation, _ae(formulation), None))
    return out


def _ae(formulation: Formulation) -> float:
    """Return acid equivalent (or active, where the trade goes by it) of a liquid formulation [g/L]; 0 for dry ones."""
    cited = formulation.ae_lb_per_gal or formulation.ai_lb_per_gal
    return convert(cited.value, "lb/gal", "g/L") if cited else 0.0


def open_months(rows: tuple[MethodRow, ...]) -> frozenset[int]:
    """Return the months in which any day lies in a window of the rows: read windows if there are any, else all.

    No window in any row: every month; the method's own seasons to avoid are printed beside it.
    """
    for mark in _MARKS:
        windows = [window for row in rows if row.mark == mark for window in row.windows]
        if windows:
            return frozenset[int]().union(*(months(window) for window in windows))
    return frozenset(range(1, len(MONTHS) + 1))
