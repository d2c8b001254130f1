"""What holds whatever the label: a stricter line never lifts a stop, and what is unread or silent is no yes."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.kernel.verdict import Level
from rootcollar.label import RULES, Aboard, Handling, Jugs, Licence, Past, Person, Work, template_facts, weigh
from rootcollar.label.people import DUTIES, LICENCE_KINDS
from rootcollar.shelf import FIELDS, METHODS, SILENT, SITE_CLASSES, Active, Distance, Line, SiteLine
from rootcollar.site import FOR_WHOM, PURPOSES, SOILS, TAKEN, Mixing, Taken
from tests import draws
from tests.label.sample import ACRE_M2, DAY, PARTNER, PLANNED, RECIPE, WEAR, applied, said, total, whole

WORDS = ("aerial", "foliar", "basal bark", "broadcast foliar", "hack and squirt")
PLANTS = ("shrub example", "tree example", "shrub", "other shrub")
ITEMS = sorted(WEAR | {"coveralls", "chemical-resistant footwear"})
PARTNERS = ("otheramine", "someamine", "oil-carried products", "any other product")
METALS = ("galvanized", "unlined steel", "brass")
GLOVES = ("barrier laminate", "nitrile >= 14 mil", "latex")


def numbers(low: float, high: float) -> st.SearchStrategy[float]:
    """Return plain figures in a range, its ends among them."""
    return st.one_of(st.sampled_from([low, high]), st.floats(low, high, allow_nan=False))


def some(items: Any) -> st.SearchStrategy[tuple[Any, ...]]:
    """Return some of the items, none twice."""
    return st.lists(st.sampled_from(list(items)), unique=True).map(tuple)


flags = st.booleans()
site_words, site_classes = st.sampled_from(["forests", "lawns"]), st.sampled_from(SITE_CLASSES[:3])
site_lines = st.lists(st.builds(SiteLine, site_words, site_classes, flags), min_size=1, max_size=4).map(tuple)
features = st.sampled_from(["surface water", "well", "sinkhole"])
distances = st.lists(st.builds(Distance, features, numbers(0, 100), some(["foliar", "wipe"]))).map(tuple)

LABELS: dict[str, st.SearchStrategy[Any]] = {
    "sheet.proof.complete_booklet_read": flags,
    "sheet.identity.restricted_use": flags,
    "sheet.identity.classification": st.sampled_from(FIELDS["identity.classification"].among),
    "sheet.identity.states_ok": some(["WV", "OH", "NY"]),
    "sheet.site": site_lines,
    "sheet.pests.only_listed": flags,
    "sheet.pests.listed": some(PLANTS),
    "sheet.methods.only_listed": flags,
    "sheet.methods.prohibited": some(WORDS),
    "sheet.method.carrier": some(["none", "water", "oil"]),
    "sheet.method.concentration.low": numbers(0, 50),
    "sheet.method.concentration.high": numbers(0, 100),
    "sheet.method.less_than_low_forbidden": flags,
    "sheet.limits.dilution_set_by_label": flags,
    "sheet.limits.deviation_forbidden": some(FIELDS["limits.deviation_forbidden"].among),
    "sheet.method.dose.amount": numbers(0, 3),
    "sheet.method.dose.per": st.sampled_from(FIELDS["method.dose.per"].among),
    "sheet.method.stem_diameter_in.low": numbers(0, 4),
    "sheet.method.stem_diameter_in.high": numbers(0, 9),
    "sheet.method.max_target_height_ft": numbers(0, 20),
    "sheet.ppe.mixing": some(ITEMS),
    "sheet.ppe.applying": some(ITEMS),
    "sheet.ppe.cleaning": some(ITEMS),
    "sheet.ppe.glove_types": some(GLOVES),
    "sheet.water.direct_to_water": st.sampled_from(FIELDS["water.direct_to_water"].among),
    "sheet.water.buffers_ft": distances,
    "sheet.limits.basis": st.sampled_from(["ae", "ai"]),
    "sheet.limits.per_application.amount": numbers(0, 6),
    "sheet.limits.per_year.amount": numbers(0, 9),
    "sheet.limits.per_year.window": st.sampled_from(FIELDS["limits.per_year.window"].among),
    "sheet.limits.area_basis": st.sampled_from(FIELDS["limits.area_basis"].among),
    "sheet.limits.max_applications_per_year": st.integers(0, 4),
    "sheet.limits.min_days_between": st.integers(0, 90),
    "sheet.entry.wps_box": flags,
    "sheet.water.mixing_setback_ft": distances,
    "sheet.water.groundwater_advisory": flags,
    "sheet.soil.root_uptake": flags,
    "sheet.soil.keep_from_desirable_roots_ft": numbers(0, 60),
    "sheet.soil.sandy_or_shallow_groundwater_caution": flags,
    "sheet.food_and_stock.grazing_days.lactating": st.integers(0, 40),
    "sheet.food_and_stock.grazing_days.other": st.integers(0, 40),
    "sheet.food_and_stock.hay_cut_days": st.integers(0, 40),
    "sheet.food_and_stock.slaughter_days": st.integers(0, 40),
    "sheet.food_and_stock.pre_harvest_days": st.integers(0, 40),
    "sheet.identity.not_for_use_after": st.dates(DAY, DAY.replace(year=DAY.year + 4)),
    "sheet.method.spray_volume_gal_per_acre.low": numbers(0, 20),
    "sheet.mixing.tank_mix_forbidden": some(PARTNERS),
    "sheet.mixing.tank_mix_allowed_named": some(PARTNERS),
    "sheet.mixing.metal_forbidden": some(METALS),
    "sheet.mixing.mixture_storage_hours": numbers(0, 48),
}


@st.composite
def histories(draw: st.DrawFn) -> Past:
    """Return some earlier work on the unit."""
    days = draw(st.lists(st.integers(1, 500), max_size=3))
    rows = tuple(
        applied(DAY - timedelta(days=one), draw(numbers(0, 1500)), draw(numbers(100, ACRE_M2))) for one in days
    )
    return Past(rows, draw(st.sampled_from([True, False, None])), draw(st.sampled_from([DAY, DAY, None])))


@st.composite
def works(draw: st.DrawFn) -> Work:
    """Return some planned work on the unit, with its doubt."""
    product = draw(numbers(0.1, 8_000)) * np.array([1.0, *np.linspace(0.5, draw(numbers(1, 3)), 20)])
    treated = draw(st.sampled_from([None, ACRE_M2, ACRE_M2 / 4]))
    base = total(treated_m2=treated, passes=draw(st.integers(1, 2)))
    return Work(replace(base, product_ml=product, mix_ml=product * 50))


away = st.one_of(st.none(), numbers(0, 40))
days = st.one_of(st.none(), st.integers(-500, 500).map(lambda one: DAY + timedelta(days=one)))
cards = st.builds(
    Licence, st.just("1"), st.sampled_from(["", "Forest", "Public health", "12B"]), st.sampled_from(["", "WV", "OH"]),
    st.sampled_from(["", *LICENCE_KINDS]),
)  # fmt: skip
persons = st.builds(
    Person, st.sampled_from(["Ann", "Bo"]), some(DUTIES).map(frozenset), days, st.one_of(st.none(), cards), days,
    minor=flags, volunteer=flags, family=flags, respirator_until=days,
)  # fmt: skip
handlings = st.builds(
    Handling, st.lists(persons, max_size=2).map(tuple), st.sampled_from([DAY, None]), st.sampled_from(["WV", None]),
    st.sampled_from(["forest", "natural_area", None]), st.sampled_from([*FOR_WHOM, None]),
    st.sampled_from([*PURPOSES, None]), st.sampled_from([True, False, None]),
)  # fmt: skip
takings = st.one_of(st.none(), st.lists(st.builds(Taken, st.sampled_from(TAKEN), days, days), max_size=2).map(tuple))

PLANS: dict[str, st.SearchStrategy[Any]] = {
    "plan.species": some(PLANTS).filter(bool),
    "plan.strength_pct": numbers(0.1, 100),
    "plan.carrier": st.sampled_from(["none", "water", "oil"]),
    "plan.dose": st.tuples(numbers(0, 3), st.sampled_from(["cut", "stem", "stump"])),
    "plan.state": st.sampled_from(["WV", "NY"]),
    "people.wear": some([*ITEMS, "latex gloves", "nitrile >= 14 mil"]).map(frozenset),
    "people.beside": st.tuples(flags, st.sampled_from([None, 0, 1, 2])),
    "place.site_class": st.sampled_from(SITE_CLASSES[:4]),
    "place.water_m": numbers(0, 30),
    "place.distances": st.fixed_dictionaries(
        {"surface water": st.one_of(st.none(), numbers(0, 30)), "well": st.one_of(st.none(), numbers(0, 30))}
    ),
    "place.handling": handlings,
    "place.power_m": numbers(0, 40),
    "place.beneath": st.fixed_dictionaries({"trail": away, "boundary": away, "power": away}),
    "plan.stature": st.tuples(st.one_of(st.none(), numbers(0, 20)), numbers(0, 40)),
    "plan.leaks": st.tuples(st.just("imazapyr"), flags),
    "place.mixing": st.tuples(
        st.one_of(st.none(), st.builds(Mixing, st.just(""), away, away, away)), st.sampled_from(["ME", "CA", None])
    ),
    "place.taken": takings,
    "place.trees": st.tuples(away, away),
    "place.soil": st.tuples(st.sampled_from([*SOILS, None]), away),
    "plan.partner": st.sampled_from([PARTNER, replace(PARTNER, label_known=False)]),
    "people.aboard": st.tuples(
        st.builds(
            Aboard,
            metals=st.sampled_from([None, (), ("brass",), ("galvanized steel",)]),
            wash_ml=st.one_of(st.none(), numbers(0, 40_000)),
            flush_ml=st.one_of(st.none(), numbers(0, 40_000)),
            flasks=st.sampled_from([None, 0, 3]),
            soap=st.sampled_from([None, True, False]),
            labels=st.sampled_from([None, True, False]),
        ),
        st.sampled_from([None, 0, 3]),
    ),
    "shed.jugs": st.builds(Jugs, some(["2025-01", "2019-03"]), some(["twin"])),
    "day.load": st.tuples(st.just("4 gal"), numbers(0, 30)),
    "history.past": histories(),
    "total.work": works(),
}


def stricter(draw: st.DrawFn, path: str, says: Any) -> Any:
    """Return a stricter reading of a label's line, in the direction that its field gives."""
    row = FIELDS[path.removeprefix("sheet.")]
    step = draw(numbers(0, 1))
    match row.stricter:
        case "lower" if isinstance(says, date):
            return says - timedelta(days=draw(st.integers(0, 900)))
        case "lower":
            return int(says * step) if isinstance(says, int) else says * step
        case "higher" if isinstance(says, int):
            return says + draw(st.integers(0, 60))
        case "higher":
            return says + step * ((100 - says) if row.kind == "percent" else 10)
        case "true" | "false":
            return row.stricter == "true"
        case "first":
            return draw(st.sampled_from(row.among[: row.among.index(says) + 1]))
        case "fewer" if row.kind == "tables":
            return tuple(one for one in says if not one.allowed or draw(flags)) or (SiteLine("none", "wetland", False),)
        case "fewer":
            return tuple(one for one in says if draw(flags))
        case "more" if row.kind == "distances":
            return (*(Distance(one.from_, one.ft * (1 + step), one.methods) for one in says), *draw(distances))
        case "more":
            other = {"prohibited": WORDS, "tank_mix": PARTNERS, "metal": METALS}
            words = next((words for name, words in other.items() if name in path), ITEMS)
            more = draw(some(row.among or words))
            return says + tuple(one for one in more if one not in says)
    raise AssertionError(f"{path}: no change of it is stricter")


_DOSE, _DEVIATION = "sheet.method.dose.amount", "sheet.limits.deviation_forbidden"


@dataclass(frozen=True, slots=True, repr=False)
class Tightened:
    """The facts of a plan, the path of one line, and the facts with that line stricter."""

    facts: dict[str, Line[Any]]
    path: str
    strict: dict[str, Line[Any]]

    def __repr__(self) -> str:
        """Show the line alone: the whole plan would fill pages."""
        return f"{self.path}: {self.facts[self.path].says} -> {self.strict[self.path].says}"


@st.composite
def cases(draw: st.DrawFn) -> Tightened:
    """Return a plan with one line of its label stricter.

    Where a label forbids a lower dose its dose is the one dose there is, and no change of it is stricter.
    """
    drawn = draw(st.fixed_dictionaries({}, optional=LABELS | PLANS))
    facts = whole() | {path: Line(says) for path, says in drawn.items()}
    weighed = sorted({path for known in RULES.values() for path in known.paths} & {
        f"sheet.{path}" for path, row in FIELDS.items() if row.stricter != "none"
    })  # fmt: skip
    if "lower_dose" in facts[_DEVIATION].says:
        weighed.remove(_DOSE)
    path = draw(st.sampled_from(weighed))
    return Tightened(facts, path, facts | {path: Line(stricter(draw, path, facts[path].says))})


@settings(max_examples=draws.of(300))
@given(cases())
def test_a_stricter_line_never_lifts_a_stop(case: Tightened) -> None:
    before, after = said(case.facts), said(case.strict)
    lifted = [one for one, verdict in before.items() if verdict.level is Level.STOP and after[one].level < Level.STOP]
    assert not lifted, (case, [(before[one].because, after[one]) for one in lifted])


def test_the_law_draws_every_line_that_has_a_direction_and_is_weighed() -> None:
    weighed = {path for known in RULES.values() for path in known.paths if path.startswith("sheet.")}
    rows = {path: FIELDS.get(path.removeprefix("sheet.")) for path in weighed}
    directed = {path for path, row in rows.items() if row and row.stricter != "none"}
    assert directed <= set(LABELS)


@settings(max_examples=draws.of(150))
@given(st.fixed_dictionaries({}, optional=LABELS | PLANS), st.sampled_from(sorted(RULES)), st.data())
def test_an_unread_fact_is_never_ok_unless_the_label_sets_no_limit(
    drawn: dict[str, Any], number: str, data: st.DataObject
) -> None:
    facts = whole() | {path: Line(says) for path, says in drawn.items()}
    del facts[data.draw(st.sampled_from(RULES[number].paths))]
    assert said(facts)[number].level is Level.ASK


@settings(max_examples=draws.of(150))
@given(st.fixed_dictionaries({}, optional=PLANS), st.sets(st.sampled_from(sorted(LABELS)), min_size=1))
def test_silence_is_never_ok_where_the_rule_asks(drawn: dict[str, Any], silent: set[str]) -> None:
    facts = whole() | {path: Line(says) for path, says in drawn.items()} | dict.fromkeys(silent, Line(SILENT))
    for number, verdict in said(facts).items():
        known = RULES[number]
        if known.when_silent > Level.OK and (silent & set(known.paths)) - set(known.silence):
            assert verdict.level >= Level.ASK


def test_more_product_never_lowers_the_word_on_a_rate() -> None:
    for number in ("L12", "L13"):
        levels = []
        for product_ml in range(100, 9_000, 400):
            facts = whole() | {"total.work": Line(Work(total(float(product_ml))))}
            levels.append(said(facts)[number].level)
        assert levels == sorted(levels) and levels[0] is Level.OK and levels[-1] is Level.STOP


def test_a_stronger_product_never_lowers_the_word_on_a_rate() -> None:
    levels = []
    for pounds in (1.0, 2.0, 3.0, 4.0, 6.0):
        active = Active("exemplamine", "amine salt", 43.2, 31.0, 4.18, pounds)
        work = Work(total(2_500.0))
        facts = whole() | {"sheet.ingredient": Line((active,)), "total.work": Line(work)}
        levels.append(said(facts)["L12"].level)
    assert levels == sorted(levels) and levels[0] is Level.OK and levels[-1] is Level.STOP


def test_only_a_cut_that_is_to_be_treated_needs_somebody_who_may_treat() -> None:
    for method in METHODS:
        for recipe in (RECIPE, None):
            planned = replace(PLANNED, method=method, recipe=recipe)
            beside = template_facts(
                planned, None, state=None, demo=True, wear=None, people=(Person("Di", frozenset({"saw"})),)
            )
            verdict = weigh(RULES["P06"], beside, "a")
            cut = method in ("cut_stump", "vine_cut") and recipe is not None
            assert verdict.level is (Level.STOP if cut else Level.OK)
