"""Two products in one mix: both labels are weighed, and what is poured, carried and recorded holds both."""

from dataclasses import replace

import pytest

from rootcollar.choose import Choice, Mixed, Own, Setting, decide, line_departures, prescribe, unit_totals
from rootcollar.kernel.doubt import best
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label import RULES
from rootcollar.mix import parts_of
from rootcollar.shelf import SILENT, Active, Sheet
from tests.choose.hobbin import hobbin, plain_setting, retyped, stand

ACTIVE = Active("triclopyr", "amine salt", 44.4, 31.8, 4.18, 3.0, "4")
FIRST, SECOND = "glyphosate-3-sl", "other"


def first(**says: object) -> Sheet:
    """Return the label of the first product, which names the second."""
    named = {"mixing__tank_mix_forbidden": (), "mixing__tank_mix_allowed_named": ("triclopyr",)}
    return retyped(hobbin().shelf[FIRST], **{**named, **says})


def second(**says: object) -> Sheet:
    """Return the label of the second product, which names the first: the demo's other, with another ingredient."""
    given = {
        "mixing__tank_mix_forbidden": (),
        "mixing__tank_mix_allowed_named": ("glyphosate",),
        "ingredient": (ACTIVE,),
        "identity__epa_reg_no": "00000-00099",
        "identity__product_name": "OTHER (INVENTED)",
        "formulation__other_ingredients_percent": 55.6,
        "formulation__density_lb_per_gal": 9.42,
    }
    return replace(retyped(hobbin().shelf["glyphosate-4-sl-aquatic"], **{**given, **says}), key=SECOND)


def setting(one: Sheet, other: Sheet | None, pct: float = 1.0, **changes: object) -> Setting:
    """Return the plain setting with both labels and the second product planned in the mixes of the first."""
    shelf = (one, other) if other else (one,)
    mixed = Own(mixed=(Mixed(FIRST, SECOND if other else "triclopyr-tea-3-sl", pct),))
    return replace(plain_setting(shelf), own=mixed, **changes)  # type: ignore[arg-type]


def of_first(one: Sheet, other: Sheet | None, pct: float = 1.0) -> tuple[Verdict, ...]:
    """Return what is said of leaf spray with the first product, chosen or set aside."""
    choice = decide(stand("common buckthorn", 0.1, 0.5), setting(one, other, pct))
    said = [*choice.verdicts] if choice.recipe and choice.recipe.partner else []
    said += [aside.stop for aside in choice.set_aside if aside.stop]
    return tuple(said)


def chosen() -> Choice:
    """Return a line whose mix has a partner."""
    choice = decide(stand("common buckthorn", 0.1, 0.5), setting(first(), second()))
    assert choice.recipe is not None and choice.recipe.partner is not None
    return choice


def levels(said: tuple[Verdict, ...], rule: str) -> set[Level]:
    """Return the words of a rule."""
    return {one.level for one in said if one.rule == rule}


def test_a_mix_that_both_labels_name_has_both_products_and_no_objection_to_the_mix() -> None:
    choice = chosen()
    assert choice.recipe is not None
    assert {FIRST, SECOND} <= set(dict(parts_of(choice.recipe)))
    assert levels(choice.verdicts, "L46") == {Level.OK}
    assert {one.rule for one in choice.verdicts if one.rule} <= set(RULES)


@pytest.mark.parametrize(
    ("one", "other", "word"),
    [
        (first(mixing__tank_mix_forbidden=("triclopyr",)), second(), Level.STOP),
        (first(), second(mixing__tank_mix_forbidden=("glyphosate products",)), Level.STOP),
        (first(mixing__tank_mix_allowed_named=SILENT), second(), Level.ASK),
        (first(), second(mixing__tank_mix_allowed_named=SILENT), Level.ASK),
        (first(), None, Level.ASK),
    ],
)
def test_either_label_can_forbid_the_mix_and_silence_or_no_label_asks(
    one: Sheet, other: Sheet | None, word: Level
) -> None:
    assert max(levels(of_first(one, other), "L46")) is word


def test_a_place_that_the_partner_does_not_name_stops_the_mix() -> None:
    lawn = next(one for one in second().says("site") if one.allowed)
    said = of_first(first(), second(site=(replace(lawn, class_="residential", words="lawns"),)))
    assert levels(said, "L05") == {Level.STOP}


def test_a_method_that_the_partner_forbids_stops_the_mix() -> None:
    assert Level.STOP in levels(of_first(first(), second(methods__prohibited=("foliar",))), "L07")


def test_the_partner_is_held_to_its_own_strongest() -> None:
    high = second().says("concentration.high", "foliar")
    assert Level.STOP not in levels(of_first(first(), second(), high), "L08")
    assert levels(of_first(first(), second(), high + 1), "L08") == {Level.STOP}


def test_each_ingredient_has_its_own_sum_on_a_unit() -> None:
    choice = chosen()
    one, other = unit_totals([choice], setting(first(), second()))
    assert (one.ingredient, other.ingredient) == ("glyphosate", "triclopyr")
    assert best(one.mix_ml) == best(other.mix_ml)
    assert best(other.product_ml) == pytest.approx(best(other.mix_ml) / 100)


def test_the_rate_of_the_partner_is_weighed_by_its_own_label() -> None:
    here = setting(first(), second(limits__per_application__amount=0.000001))
    plan = prescribe([stand("common buckthorn", 0.1, 0.5)], here)
    (line,) = plan.choices
    assert line.recipe is not None and line.recipe.partner is not None
    assert levels(line.verdicts, "L12") == {Level.STOP}
    mild = prescribe([stand("common buckthorn", 0.1, 0.5)], setting(first(), second())).choices[0]
    assert Level.STOP not in levels(mild.verdicts, "L12")


def test_the_mix_costs_what_both_products_cost() -> None:
    alone = decide(stand("common buckthorn", 0.1, 0.5), replace(setting(first(), second()), own=Own()))
    assert best(chosen().per_stem.cost) > best(alone.per_stem.cost)


def test_more_than_a_mix_holds_is_set_aside_with_the_way_out() -> None:
    choice = decide(stand("common buckthorn", 0.1, 0.5), setting(first(), second(), 99.8))
    assert any("own.toml" in one.would_win_if for one in choice.set_aside)
    assert choice.recipe is None or choice.recipe.partner is None


def test_without_a_partner_nothing_changes() -> None:
    alone = decide(stand("common buckthorn", 0.1, 0.5), replace(setting(first(), second()), own=Own()))
    assert alone.recipe is not None and alone.recipe.partner is None
    assert levels(alone.verdicts, "L46") == {Level.OK}


def test_the_departures_of_both_labels_are_gathered_for_the_record() -> None:
    here = setting(first(pests__listed=("another plant",), pests__only_listed=False), second())
    choice = decide(stand("common buckthorn", 0.1, 0.5), here)
    made = [one.name for one, _ in line_departures(choice, here)]
    assert "unlisted_plant" in made and len(made) == len(set(made))
