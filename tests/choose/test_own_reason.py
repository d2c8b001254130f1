"""What a source advises against, a person may do with a reason of their own; nothing else is overruled by one."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.choose import Choice, Pick, SetAside, Setting
from rootcollar.choose.gates import plant_gate
from rootcollar.kernel.verdict import Level
from rootcollar.reference import find_species, load
from rootcollar.survey import Stand
from tests.choose.hobbin import chosen, hobbin, plain_setting, retyped, stand, ways

WHY, WHO, WHEN = "the saplings feed the goats until fall.", "Ottoline Fernwick", date(2026, 9, 1)


def picking(one: Stand, way: str, setting: Setting | None = None) -> Setting:
    """Return the setting with a person's choice for a stand."""
    return replace(setting or plain_setting(hobbin().shelf.values()), picked={one.key: Pick(way, WHY, WHO, WHEN)})


def with_pick(one: Stand, way: str, setting: Setting | None = None) -> Choice:
    return chosen(one, picking(one, way, setting))


def aside_of(choice: Choice, way: str) -> SetAside:
    return next(one for one in choice.set_aside if one.way.key == way)


@pytest.mark.parametrize(
    ("plant", "inches", "way", "word"),
    [
        ("tree-of-heaven", (1, 2), "cut/-", "sprouts"),
        ("tree-of-heaven", (1, 2), "girdle/-", "roots sucker"),
        ("Chinese privet", (1, 2), "cut/-", "sprouts"),
        ("Japanese knotweed", (0.5, 1), "cut/-", "stronger"),
        ("common buckthorn", (0.5, 1), "foliar/triclopyr-amine-3-sl/water", "came back"),
    ],
)
def test_a_sources_advice_is_overruled_by_a_reason_and_all_of_it_is_shown(
    plant: str, inches: tuple[float, float], way: str, word: str
) -> None:
    one = stand(plant, *inches)
    setting = plain_setting(hobbin().shelf.values())
    before = aside_of(chosen(one, setting), way)
    assert before.own_reason and not before.open
    assert word in before.because and "your own reason" in before.would_win_if
    choice = with_pick(one, way)
    assert choice.way.key == way
    assert all(words in choice.because for words in (WHO, WHEN.isoformat(), WHY.rstrip("."), "the ranking has"))
    (said,) = [one.because for one in choice.verdicts if "done against a source" in one.because]
    assert all(words in said for words in (WHO, WHEN.isoformat(), WHY.rstrip("."), word))
    assert choice.level >= Level.WARN


def test_a_reason_of_ones_own_never_opens_what_the_size_shuts_too() -> None:
    big = stand("tree-of-heaven", 10, 16, tall_ft=50)
    found = aside_of(with_pick(big, "mow/-"), "mow/-")
    assert not found.own_reason
    assert "provokes suckers" in found.because and "at most 1 in" in found.because
    assert any("is not followed" in one.because for one in with_pick(big, "mow/-").verdicts)


def test_a_reason_of_ones_own_is_no_crown_in_the_tally() -> None:
    one = stand("common buckthorn", 0.5, 1, crown_ft=None)
    found = aside_of(with_pick(one, "foliar/triclopyr-amine-3-sl/water"), "foliar/triclopyr-amine-3-sl/water")
    assert "crown and height" in found.would_win_if and not found.own_reason


def test_a_reason_of_ones_own_never_opens_what_the_ground_shuts() -> None:
    one, way = stand("common buckthorn", 0.5, 1), "foliar/triclopyr-amine-3-sl/water"
    over = plain_setting(hobbin().shelf.values(), wanted_beneath=True)
    choice = with_pick(one, way, over)
    assert choice.way.key != way
    assert "wanted plants stand beneath" in aside_of(choice, way).because
    unheeded = [one.because for one in choice.verdicts if "is not followed" in one.because]
    assert len(unheeded) == 1 and WHO in unheeded[0]


@pytest.mark.parametrize(
    ("way", "product", "method"),
    [
        ("basal_bark/triclopyr-ester-4-ec/oil", "triclopyr-ester-4-ec", "basal bark"),
        ("foliar/triclopyr-amine-3-sl/water", "triclopyr-amine-3-sl", "foliar"),
    ],
    ids=["open otherwise", "against a source too"],
)
def test_a_labels_no_is_never_overruled(way: str, product: str, method: str) -> None:
    """The same choice, once more after the label forbids it: the reason is heard, and not followed."""
    one = stand("common buckthorn", 0.5, 1)
    assert with_pick(one, way).way.key == way
    shelf = dict(hobbin().shelf)
    shelf[product] = retyped(shelf[product], methods__prohibited=("aerial", method))
    choice = with_pick(one, way, plain_setting(shelf.values()))
    found = aside_of(choice, way)
    assert choice.way.key != way
    assert found.stop is not None and f"forbids {method}" in found.because
    assert not found.open and not found.own_reason
    assert any("is not followed" in said.because for said in choice.verdicts)


def test_who_chose_for_one_line_has_not_chosen_for_the_next() -> None:
    """Two stands of a kind: the reason is written for one of them."""
    one = stand("tree-of-heaven", 1, 2)
    other = replace(one, key="plain/aial/again")
    setting = picking(one, "cut/-")
    assert chosen(one, setting).way.key == "cut/-"
    assert chosen(other, setting).way.key != "cut/-"
    assert aside_of(chosen(other, setting), "cut/-").own_reason


def test_without_a_written_reason_nothing_is_overruled() -> None:
    one = stand("tree-of-heaven", 1, 2)
    bare = replace(plain_setting(hobbin().shelf.values()), picked={one.key: Pick("cut/-", " ", WHO, WHEN)})
    assert chosen(one, bare).way.key != "cut/-"


@pytest.mark.parametrize(("effect", "may"), [("multiplies_stems", True), ("too_slow", True), ("unsafe", False)])
def test_what_a_source_calls_unsafe_no_reason_opens(effect: str, may: bool) -> None:
    species = find_species("tree-of-heaven")
    (way, *_) = ways("tree-of-heaven", "girdle")
    row = next(one for one in species.fails if one.method == "girdle")
    gate = plant_gate(way, replace(species, fails=(replace(row, effect=effect),)), stand("aial", 4, 6), load())
    assert gate is not None and gate.own_reason == may
