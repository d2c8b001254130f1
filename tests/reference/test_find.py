"""A name is found by any of its forms; one that is not known offers the near ones."""

from __future__ import annotations

import pytest

from rootcollar.kernel.errors import NotFound
from rootcollar.reference import Reference, find_formulation, find_ingredient, find_method, find_species


@pytest.mark.parametrize(
    "name", ["rhca3", "RHCA3", "common buckthorn", "Common Buckthorn", "European buckthorn", "rhamnus cathartica"]
)
def test_a_plant_is_found_by_every_name(name: str) -> None:
    assert find_species(name).key == "rhca3"


def test_every_name_of_every_plant_finds_a_plant(facts: Reference) -> None:
    for key, one in facts.species.items():
        for name in (key, one.common_name, one.scientific_name, one.plants_symbol.value):
            assert find_species(name).key == key


def test_a_misspelt_plant_offers_the_near_ones() -> None:
    with pytest.raises(NotFound) as caught:
        find_species("buckthron")
    assert caught.value.near[0] == "common buckthorn"
    assert "glossy buckthorn" in caught.value.near
    assert "buckthron" in str(caught.value)


def test_a_word_like_nothing_offers_nothing() -> None:
    with pytest.raises(NotFound) as caught:
        find_species("zzxqj")
    assert caught.value.near == ()


@pytest.mark.parametrize("name", ["2,4-D", "2-4-d", "2,4-d"])
def test_an_ingredient_is_found_by_every_spelling(name: str) -> None:
    assert find_ingredient(name).key == "2-4-d"


def test_a_misspelt_ingredient_offers_the_near_ones() -> None:
    with pytest.raises(NotFound) as caught:
        find_ingredient("triclopry")
    assert caught.value.near == ("triclopyr",)


@pytest.mark.parametrize("name", ["hack_squirt", "hack-and-squirt", "Hack and Squirt"])
def test_a_method_is_found_by_key_and_title(name: str) -> None:
    assert find_method(name).key == "hack_squirt"


def test_a_formulation_is_found_by_key_and_words(facts: Reference) -> None:
    for key, one in facts.formulations.items():
        assert find_formulation(key).key == key
        assert find_formulation(one.words.upper()).key == key
    with pytest.raises(NotFound, match="triclopyr-bee-4-ec"):
        find_formulation("triclopyr-bee-4-ce")
