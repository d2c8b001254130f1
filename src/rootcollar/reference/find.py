"""Finding a plant, ingredient, formulation, method or language by any of its names."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import SequenceMatcher
from functools import cache, lru_cache
from typing import TypeVar

from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.tongue import Tongue
from rootcollar.reference.load import Reference, load
from rootcollar.reference.plants import Species
from rootcollar.reference.products import Form, Formulation, Ingredient
from rootcollar.reference.ways import MethodFacts

__all__ = ["find_form", "find_formulation", "find_ingredient", "find_method", "find_species", "find_tongue"]

T = TypeVar("T")

_NEAR = 0.72  # ours: "buckthron" is alike to "buckthorn" by 0.89; names of different plants seldom pass 0.70
_SHOWN = 4
_LONG: Mapping[str, str] = {
    "IPA": "isopropylamine", "K": "potassium", "TEA": "triethylamine", "BEE": "butoxyethyl ester",
    "DMA": "dimethylamine", "MEA": "monoethanolamine", "DGA": "diglycolamine", "TIPA": "triisopropanolamine",
    "2-EHE": "2-ethylhexyl ester", "MHE": "methylheptyl ester",
}  # fmt: skip


def find_species(name: str, reference: Reference | None = None) -> Species:
    """Return the plant of that key, PLANTS symbol, common, other or scientific name, in any case.

    Raises NotFound with the common names that look alike.
    """
    shelf = reference or load()
    return _find("species", name, shelf.species, _species_names(shelf))


def find_ingredient(name: str, reference: Reference | None = None) -> Ingredient:
    """Return the active ingredient of that key or name ("2,4-D"), in any case. Raises NotFound with near names."""
    shelf = reference or load()
    return _find("ingredient", name, shelf.ingredients, _ingredient_names(shelf))


def find_formulation(name: str, reference: Reference | None = None) -> Formulation:
    """Return the generic formulation of that key or wording, in any case. Raises NotFound with near names."""
    shelf = reference or load()
    return _find("formulation", name, shelf.formulations, _formulation_names(shelf))


def find_form(name: str, reference: Reference | None = None) -> Form:
    """Return the salt, ester or acid of that name ("glyphosate-ipa", "triclopyr BEE") or of a formulation's key.

    Raises NotFound with the forms of the ingredient named, or with near names.
    """
    shelf = reference or load()
    names = _form_names(shelf)
    found = names.get(_folded(name))
    if found is not None:
        return shelf.forms[found]
    shown = {
        f"{ingredient}-{form.removesuffix(' salt')}".lower(): (ingredient, form) for ingredient, form in shelf.forms
    }
    same = [key for key, (ingredient, _) in shown.items() if _folded(name).startswith(_folded(ingredient))]
    raise NotFound("form", name, near=same or _near(name, {key: key for key in shown}))


def find_method(name: str, reference: Reference | None = None) -> MethodFacts:
    """Return the way of working of that key or title ("hack-and-squirt"), in any case.

    Raises NotFound with near names.
    """
    shelf = reference or load()
    return _find("method", name, shelf.methods, _method_names(shelf))


def find_tongue(name: str, reference: Reference | None = None) -> Tongue:
    """Return the language of that code ("es", "es-MX") or name ("Spanish"), in any case. Raises NotFound with all."""
    shelf = (reference or load()).tongues
    wanted = name.strip().casefold()
    for one in shelf.values():
        if wanted.partition("-")[0] == one.code or wanted in one.names:
            return one
    raise NotFound("language", name, near=[f"{one.code} ({one.names[0]})" for one in shelf.values()])


def _find(what: str, name: str, shelf: Mapping[str, T], names: Mapping[str, str]) -> T:
    if name in shelf:
        return shelf[name]
    keys = {_folded(one): key for one, key in names.items()}
    if _folded(name) in keys:
        return shelf[keys[_folded(name)]]
    raise NotFound(what, name, near=_near(name, names))


@lru_cache(maxsize=4096)
def _folded(name: str) -> str:
    return "".join(letter for letter in name.casefold() if letter.isalnum())


def _near(name: str, names: Mapping[str, str]) -> list[str]:
    """The first name of each thing one of whose names looks like the one given, likest first."""
    shown: dict[str, str] = {}
    score: dict[str, float] = {}
    for one, key in names.items():
        shown.setdefault(key, one)
        score[key] = max(score.get(key, 0.0), _alike(name.casefold(), one.casefold()))
    close = sorted((key for key in score if score[key] >= _NEAR), key=lambda key: (-score[key], shown[key]))
    return [shown[key] for key in close[:_SHOWN]]


def _alike(name: str, known: str) -> float:
    """Return how alike a name is to a known one or to a word of it; 0 below near.

    Most are ruled out by their lengths, or by the letters both have: neither bound needs the letters' order.
    """
    words = dict.fromkeys((known, *known.split()))
    pairs = (
        SequenceMatcher(None, name, one)
        for one in words
        if 2 * min(len(name), len(one)) >= _NEAR * (len(name) + len(one))
    )
    return max((one.ratio() for one in pairs if one.quick_ratio() >= _NEAR), default=0.0)


@cache
def _species_names(reference: Reference) -> Mapping[str, str]:
    names: dict[str, str] = {}
    for key, one in reference.species.items():
        told = (one.common_name, one.scientific_name, one.plants_symbol.value, *one.other_names, *one.synonyms)
        names.update(dict.fromkeys(told, key))
    return names


@cache
def _ingredient_names(reference: Reference) -> Mapping[str, str]:
    return {one: key for key, row in reference.ingredients.items() for one in (row.name.value, key)}


@cache
def _formulation_names(reference: Reference) -> Mapping[str, str]:
    return {one: key for key, row in reference.formulations.items() for one in (key, row.words)}


@cache
def _form_names(reference: Reference) -> Mapping[str, tuple[str, str]]:
    """Names of forms, folded: with and without "salt", short and long; a formulation's key stands for its form."""
    names: dict[str, tuple[str, str]] = {}
    for pair in reference.forms:
        ingredient, form = pair
        short = form.removesuffix(" salt")
        long = _LONG.get(short, short)
        names.update({_folded(f"{ingredient} {said}"): pair for said in (form, short, long, f"{long} salt")})
        if form == "as is":
            names[_folded(ingredient)] = pair
    for key, one in reference.formulations.items():
        names.setdefault(_folded(key), (one.ingredient, one.form))
    return names


@cache
def _method_names(reference: Reference) -> Mapping[str, str]:
    return {one: key for key, row in reference.methods.items() for one in (key, row.title)}
