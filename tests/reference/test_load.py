"""A fault in a fact file is refused with the file, the table and the key named."""

from __future__ import annotations

import pytest

from rootcollar.reference import Reference, read


def spoilt(texts: dict[str, str], name: str, old: str, new: str) -> Reference:
    assert old in texts[name], "the text to spoil is not there"
    return read({**texts, name: texts[name].replace(old, new, 1)})


def test_the_package_files_pass(texts: dict[str, str]) -> None:
    facts = read(texts)
    assert all(facts.species[key].key == key for key in facts.species)
    assert all(facts.ingredients[key].key == key for key in facts.ingredients)


def test_a_misspelt_key_is_refused_with_file_and_key(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "species/rhca3.toml", 'growth_form = "shrub"', 'growth_form = "shrub"\ngrowht = "shrub"')
    with pytest.raises(ValueError, match=r"species/rhca3\.toml.*growht.*not a key"):
        facts.species["rhca3"]


def test_a_misspelt_key_in_a_row_names_the_row(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "species/rhca3.toml", "\nregion = ", "\nregoin = ")
    with pytest.raises(ValueError, match=r"species/rhca3\.toml \[methods 1\]: regoin"):
        facts.species["rhca3"]


def test_a_source_that_is_not_listed_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "species/rhca3.toml", 'source = "pergams2006"', 'source = "nobody1999"')
    with pytest.raises(ValueError, match=r"species/rhca3\.toml.*source: 'nobody1999' is not in sources\.toml"):
        facts.species["rhca3"]


def test_a_fact_without_a_source_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "species/rhca3.toml", '\nsource = "pergams2006"', "")
    with pytest.raises(ValueError, match=r"species/rhca3\.toml \[methods 1\]: source: missing"):
        facts.species["rhca3"]


def test_a_fact_without_a_mark_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "ingredients/glyphosate.toml", ', mark = "read"', "")
    with pytest.raises(ValueError, match=r"ingredients/glyphosate\.toml \[name\]: mark: missing"):
        facts.ingredients["glyphosate"]


def test_a_mark_that_is_no_mark_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "ingredients/glyphosate.toml", 'mark = "read"', 'mark = "heard"')
    with pytest.raises(ValueError, match=r"'heard' is not a mark"):
        facts.ingredients["glyphosate"]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('method = "cut_stump"', 'method = "cut_stmp"', "'cut_stmp' is not a known method"),
        ('ingredients = ["glyphosate"]', 'ingredients = ["glyphosat"]', "'glyphosat' is not a known ingredient"),
        ('"glyphosate-ipa-3-sl"', '"glyphosate-9-sl"', "'glyphosate-9-sl' is not a known formulation"),
        ('region = "midwest"', 'region = "midwset"', "'midwset' is not a known region"),
        ('value = "clump"', 'value = "clumb"', "'clumb' is not a known stem_form"),
        ('value = true, source = "vt_buckthorn"', 'value = 1, source = "vt_buckthorn"', "resprouts_from_stump"),
    ],
)
def test_an_unknown_word_is_refused(texts: dict[str, str], old: str, new: str, says: str) -> None:
    facts = spoilt(texts, "species/rhca3.toml", old, new)
    with pytest.raises(ValueError, match=says):
        facts.species["rhca3"]


@pytest.mark.parametrize("day", ["02-30", "13-01", "00-10", "6-1", "0601", "06-00"])
def test_a_window_that_is_no_day_is_refused(texts: dict[str, str], day: str) -> None:
    facts = spoilt(texts, "species/aial.toml", 'from = "07-01"', f'from = "{day}"')
    with pytest.raises(ValueError, match=r"species/aial\.toml.*from"):
        facts.species["aial"]


def test_a_span_the_wrong_way_round_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "species/rhca3.toml", "low = 1, high = 2", "low = 3, high = 2")
    with pytest.raises(ValueError, match="wanted in rising order"):
        facts.species["rhca3"]


def test_a_key_that_stands_twice_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "formulations.toml", 'key = "triclopyr-bee-4-ec-plant-oil"', 'key = "triclopyr-bee-4-ec"')
    with pytest.raises(ValueError, match="a key stands twice"):
        facts.formulations["triclopyr-bee-4-ec"]


def test_a_formulation_of_an_unknown_form_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "formulations.toml", 'form = "BEE"', 'form = "BEEE"')
    with pytest.raises(ValueError, match=r"'BEEE' of triclopyr is not in forms\.toml"):
        facts.formulations["triclopyr-bee-4-ec"]


def test_a_kill_beyond_all_is_refused(texts: dict[str, str]) -> None:
    facts = spoilt(texts, "kill.toml", "high = 0.97,", "high = 1.97,")
    with pytest.raises(ValueError, match=r"kill\.toml \[kill \d+\]: share"):
        assert facts.kill


def test_a_file_that_is_not_toml_names_itself(texts: dict[str, str]) -> None:
    facts = read({**texts, "species/rhca3.toml": "common name = buckthorn"})
    with pytest.raises(ValueError, match=r"species/rhca3\.toml: not TOML"):
        facts.species["rhca3"]


def test_one_plant_is_read_without_the_others(texts: dict[str, str]) -> None:
    facts = read({**texts, "species/aial.toml": "spoilt"})
    assert facts.species["rhca3"].common_name == "common buckthorn"
