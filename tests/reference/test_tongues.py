"""Every language of the day sheet says all that the others say: no key, brace, plant or look-alike is forgotten."""

import re
from collections import Counter
from importlib.resources import files
from pathlib import Path

import pytest

from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.tongue import PlantWords, Tongue
from rootcollar.reference import Reference, find_tongue, load, read

TONGUES = load().tongues
FURTHER = [code for code in TONGUES if code != "en"]


def braces(text: str) -> Counter[str]:
    """Return what is filled into a text, and how often."""
    return Counter(re.findall(r"\{(\w+)\}", text))


@pytest.mark.parametrize("code", FURTHER)
def test_each_language_has_the_same_keys_with_the_same_braces(code: str) -> None:
    first, other = TONGUES["en"].texts, TONGUES[code].texts
    assert set(first) == set(other)
    assert [key for key in first if braces(first[key]) != braces(other[key])] == []
    blanks = [key for key in first if first[key].count("_") != 0 and "_" not in other[key]]
    assert blanks == []  # a line to write on stays one


@pytest.mark.parametrize("code", FURTHER)
def test_a_translation_says_that_it_is_one(code: str) -> None:
    assert TONGUES[code].note
    assert not TONGUES["en"].note


@pytest.mark.parametrize("code", FURTHER)
def test_every_plant_has_its_name_and_as_many_look_alikes_in_the_same_order(code: str) -> None:
    plants = TONGUES[code].plants
    assert set(plants) == set(load().species)
    for key, species in load().species.items():
        told = plants[key]
        assert len(told.look_alikes) == len(species.look_alikes), key
        assert all(name and tell for name, tell in told.look_alikes), key
        thorns = [one.detail for one in species.hazards if one.kind == "thorns"]
        assert bool(told.thorns) == bool(thorns), key


@pytest.mark.parametrize("code", FURTHER)
def test_figures_in_a_tell_are_those_of_the_species(code: str) -> None:
    """A number that a translation loses or changes would send a crew to the wrong plant."""
    for key, species in load().species.items():
        told = TONGUES[code].plants[key]
        for here, there in (
            (species.leaf.holds_for, told.leaf),
            (species.stem.holds_for, told.stem),
            *zip((one.tell for one in species.look_alikes), (tell for _, tell in told.look_alikes), strict=True),
        ):
            plain = re.sub(r"\([^()]*(?:read|memory|p\. \d+)[^()]*\)|^p\. \d+$", "", here)
            assert re.findall(r"\d[\d.]*", plain) == re.findall(r"\d[\d.]*", there), f"{key}: {here} / {there}"
            assert bool(plain.strip()) == bool(there), f"{key}: {here} / {there}"


def test_no_two_plants_bear_one_name() -> None:
    for code in FURTHER:
        names = Counter(one.name for one in TONGUES[code].plants.values())
        assert [name for name, times in names.items() if times > 1] == []


def test_every_text_is_used_by_the_code() -> None:
    """By its whole key, or by its group where the last part is looked up (months, methods, roles)."""
    root = Path(str(files("rootcollar")))
    code = "".join(path.read_text(encoding="utf-8") for path in root.rglob("*.py"))
    unused = [
        key
        for key in TONGUES["en"].texts
        if f'"{key}"' not in code
        and f'f"{key.split(".")[0]}.{{' not in code
        and f'group("{key.split(".")[0]}")' not in code
    ]
    assert unused == []


@pytest.mark.parametrize("name", ["es", "ES", "es-MX", "Spanish", "español", " Español "])
def test_a_language_is_found_by_its_code_and_its_names(name: str) -> None:
    assert find_tongue(name).code == "es"


def test_a_language_we_do_not_have_is_told_with_those_we_have() -> None:
    with pytest.raises(NotFound, match=r"es \(spanish\)"):
        find_tongue("fr")


def with_text(text: str) -> Reference:
    """Return a library whose one language says one thing."""
    return read(
        {
            "sources.toml": "",
            "vocab.toml": "[other_ingredient]\n",
            "formulations.toml": "",
            "tongues/xx.toml": f'names = ["xx"]\n[box]\nwind = {text}\n',
        }
    )


def test_an_empty_text_is_a_fault_of_the_file() -> None:
    assert with_text('"wind"').tongues["xx"].say("box.wind") == "wind"
    with pytest.raises(ValueError, match=r"tongues/xx\.toml \[box\]: wind: empty"):
        _ = with_text('" "').tongues["xx"]


def test_a_key_or_a_value_that_is_missing_is_not_passed_over() -> None:
    tongue = Tongue("xx", (), {"box.not_in": "not in {time}"})
    with pytest.raises(KeyError, match="time"):
        tongue.say("box.not_in")
    with pytest.raises(KeyError, match=r"box\.rain"):
        tongue.say("box.rain")


def test_braces_in_what_is_filled_in_are_left_alone() -> None:
    assert Tongue("xx", (), {"head.title": "{unit}, day"}).say("head.title", unit="a {b}") == "a {b}, day"


def test_a_plant_is_read_as_written() -> None:
    assert TONGUES["es"].plants["elan"] == PlantWords(
        "olivo ruso",
        "hojas largas y angostas, escamas plateadas",
        "árbol pequeño con espinas, hasta 10 m",
        "ramitas con espinas",
        (
            ("Shepherdia plateada", "hojas opuestas, fruto rojo; nativa de los mismos ríos"),
            ("sauces", "sin espinas, sin escamas plateadas"),
        ),
    )
