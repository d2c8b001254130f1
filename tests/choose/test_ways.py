"""Which ways there are: what the sources name, with what stands on the shelf, in the months they give."""

from dataclasses import replace

import pytest

from rootcollar.choose import not_planned_with, products, way_words, ways_for
from rootcollar.reference import find_species, load
from rootcollar.shelf import Active, Line, Sheet, actives
from tests.choose.hobbin import hobbin, retyped, ways

ESTER, AMINE = "triclopyr-ester-4-ec", "triclopyr-amine-3-sl"


def of(sheet: Sheet, **active: object) -> Sheet:
    """Return a sheet with another first active ingredient."""
    first = sheet.says("ingredient")[0]
    return retyped(sheet, ingredient=(replace(first, **active),))


# Months in which a source's window lies, and months in which it does not. (plant, method, within, without, source)
SEASONS = [
    # uwex_buckthorn (read): green after natives drop, 1 Oct to 15 Nov; sewisc2012 (read): 15 Aug to 31 Oct
    ("common buckthorn", "foliar", "glyphosate", {10, 11}, {1, 2, 3, 4, 5, 6, 7, 12}),
    # psu_qs5 (read): July to September, treated standing
    ("tree-of-heaven", "hack_squirt", "triclopyr", {7, 8, 9}, {1, 2, 3, 4, 5, 6, 11, 12}),
    # regehr1988 (read): just after hardwood leaf-fall
    ("Japanese honeysuckle", "foliar", "glyphosate", {10, 11, 12}, {3, 4, 5, 6, 7}),
    # enloe2018 (read): November better than April, both work
    ("Chinese privet", "cut_stump", "glyphosate", {4, 11}, {7}),
    # psu_pocu, pierce_pocu (read): late July to September, July to 10 October
    ("Japanese knotweed", "foliar", "glyphosate", {8, 9}, {3, 4, 5, 6, 11, 12}),
    # ward_dormant (read): September leaf spray and dormant basal bark
    ("Japanese barberry", "foliar", "glyphosate", {9}, {1, 2, 12}),
    ("Japanese barberry", "basal_bark", "triclopyr", {1, 2, 12}, {6, 7, 8}),
]


@pytest.mark.parametrize(("plant", "method", "ingredient", "within", "without"), SEASONS)
def test_the_months_are_those_of_the_sources(
    plant: str, method: str, ingredient: str, within: set[int], without: set[int]
) -> None:
    found = ways(plant, method, ingredient)
    assert found
    for way in found:
        assert within <= way.visit.months
        assert not without & way.visit.months


def test_read_windows_go_before_remembered_ones() -> None:
    """meaz is remembered only; loma6 leaf spray has read rows (June to November) beside remembered ones."""
    assert ways("Amur honeysuckle", "foliar", "glyphosate")[0].visit.months == frozenset(range(6, 12))


def test_every_way_rests_on_rows_of_the_species_or_is_work_by_hand_that_a_source_warns_of() -> None:
    for species in load().species.values():
        for way in ways_for(species, (), load()):
            assert set(way.rows) <= set(species.methods)
            warned = {row.method for row in species.fails}
            assert way.rows or way.visit.method == "cut" or (way.visit.recipe is None and way.visit.method in warned)


@pytest.mark.parametrize("key", sorted(load().species))
def test_cutting_alone_is_always_weighed(key: str) -> None:
    """A plan that never speaks of the thing most people do first would be asked why."""
    assert any(way.visit.method == "cut" for way in ways_for(load().species[key], (), load()))


def test_oil_carries_esters_and_water_salts_into_wood() -> None:
    for species in load().species.values():
        for way in ways_for(species, products(hobbin().shelf, load()), load()):
            recipe = way.visit.recipe
            if recipe is None or recipe.carrier == "none" or way.visit.method == "foliar":
                continue
            ester = "ester" in recipe.formulation or "-bee-" in recipe.formulation or "-ehe-" in recipe.formulation
            assert recipe.carrier == ("oil" if ester else "water"), way_words(way)


def test_no_two_ways_of_a_plant_are_the_same() -> None:
    for species in load().species.values():
        keys = [way.key for way in ways_for(species, products(hobbin().shelf, load()), load())]
        assert len(keys) == len(set(keys))


def test_a_product_on_the_shelf_takes_the_place_of_the_generic_one() -> None:
    shelf = {ESTER: hobbin().shelf[ESTER]}
    found = list(ways_for(find_species("common buckthorn"), products(shelf, load()), load()))
    basal = [way.visit.recipe for way in found if way.visit.method == "basal_bark"]
    assert [one.product for one in basal if one] == [ESTER]


def test_a_shelf_whose_products_cannot_serve_a_method_does_not_hide_it() -> None:
    """An ester alone, of whose directions nothing has been read: nothing goes into cuts in water."""
    unread = replace(hobbin().shelf[ESTER], methods={})
    found = list(ways_for(find_species("tree-of-heaven"), products({ESTER: unread}, load()), load()))
    cuts = [way.visit.recipe for way in found if way.visit.method == "hack_squirt"]
    assert cuts
    assert all(one is not None and one.product is None for one in cuts)


def test_the_strength_lies_within_the_label_and_no_lower_than_it_forbids() -> None:
    for species in load().species.values():
        for way in ways_for(species, products(hobbin().shelf, load()), load()):
            recipe = way.visit.recipe
            if recipe is None or recipe.product is None:
                continue
            sheet = hobbin().shelf[recipe.product]
            low, high = (sheet.says(f"concentration.{end}", way.visit.method) for end in ("low", "high"))
            assert low <= recipe.strength_pct <= high


def test_a_surfactant_is_planned_only_where_the_label_demands_one() -> None:
    found = list(ways_for(find_species("common buckthorn"), products(hobbin().shelf, load()), load()))
    recipes = [way.visit.recipe for way in found if way.visit.recipe and way.visit.recipe.carrier == "water"]
    assert {one.surfactant_pct for one in recipes if one.product == "glyphosate-4-sl-aquatic"} == {0.5}
    assert {one.surfactant_pct for one in recipes if one.product == "glyphosate-3-sl"} == {0.0}


@pytest.mark.parametrize(
    ("active", "words"),
    [
        ({"common_name": None}, "not typed"),
        ({"ae_lb_per_gal": None, "ai_lb_per_gal": None}, "not typed"),
        ({"common_name": "mulchacid"}, "no source here speaks of its ingredient, mulchacid"),
    ],
)
def test_a_sheet_that_cannot_be_planned_with_is_named_and_stops_nobody(active: dict[str, object], words: str) -> None:
    shelf = {AMINE: of(hobbin().shelf[AMINE], **active), ESTER: hobbin().shelf[ESTER]}
    assert [one.sheet.key for one in products(shelf, load()) if one.sheet] == [ESTER]
    (told,) = not_planned_with(shelf, load())
    assert AMINE in told
    assert words in told


def test_a_sheet_with_nothing_typed_is_named_too() -> None:
    assert len(not_planned_with({"empty": Sheet("empty", {})}, load())) == 1
    assert not not_planned_with(hobbin().shelf, load())


def test_an_ester_sheet_is_planned_as_an_ester_and_a_salt_as_a_salt() -> None:
    kinds = {one.sheet.key: one.is_ester for one in products(hobbin().shelf, load()) if one.sheet}
    assert kinds == {
        "glyphosate-3-sl": False, "glyphosate-4-sl-aquatic": False, AMINE: False, ESTER: True,
    }  # fmt: skip


def test_a_line_read_as_an_active_is_used_as_typed() -> None:
    stronger = of(hobbin().shelf[ESTER], ae_lb_per_gal=4.5)
    assert isinstance(stronger.lines["ingredient"], Line)
    assert isinstance(stronger.says("ingredient")[0], Active)
    (product,) = products({ESTER: stronger}, load())
    assert product.ae_g_per_l == pytest.approx(539.2, abs=0.1)  # 4.5 lb/gal, 1 lb/gal = 119.826 g/L


def test_a_product_of_two_actives_is_not_planned_by_one_of_them() -> None:
    sheet = hobbin().shelf["triclopyr-ester-4-ec"]
    (active,) = actives(sheet)
    two = Sheet(sheet.key, {**sheet.lines, "ingredient": Line((active, active))}, sheet.methods)
    assert not products({sheet.key: two}, load())
    assert "more than one active" in not_planned_with({sheet.key: two}, load())[0]
