"""own.toml: proving batches, prices and the wage of the crew itself."""

import tomllib
from datetime import date

import pytest

from rootcollar.exchange.own_file import read_own
from rootcollar.kernel.errors import BadInput

BATCH = """
[[proving]]
method = "basal bark"
product = "ester-4"
strength = "20%"
carrier = "oil"
nozzle = "small cone"
mixed = "1 qt"
left = "6 fl oz"
stems = [{ diameter = "1 in", count = 12 }, { diameter = "2 in", count = 13 }]
on = 2026-10-02
by = "A. Steward"
"""
CUTS = """
[[proving]]
method = "hack_squirt"
product = "triclopyr-tea-3-sl"
strength = "50%"
carrier = "water"
each = "1.2 mL"
on = 2026-10-02
by = "A. Steward"
"""
PRICE = '[[price]]\nwhat = "Basal Oil"\nholds = "2.5 gal"\nprice = 48\non = 2026-09-01\n'


def _read(text: str):
    return read_own(tomllib.loads(text), "own.toml", ["ester-4"])


def test_a_batch_used_what_is_gone_from_its_bottle():
    (one,) = _read(BATCH).proving
    assert one.used_ml == pytest.approx(26 * 29.5735295625)  # 32 less 6 fl oz
    assert one.sizes == ((pytest.approx(2.54), 12), (pytest.approx(5.08), 13))
    assert (one.method, one.product, one.strength_pct, one.carrier) == ("basal_bark", "ester-4", 20, "oil")
    assert (one.on, one.by, one.words) == (
        date(2026, 10, 2), "A. Steward", "own proving batch of 2026-10-02, small cone",
    )  # fmt: skip


def test_used_may_be_told_instead():
    told = BATCH.replace('mixed = "1 qt"\nleft = "6 fl oz"', 'used = "26 fl oz"')
    assert _read(told).proving[0].used_ml == pytest.approx(_read(BATCH).proving[0].used_ml)


def test_a_bottle_that_ran_empty_used_it_all():
    assert _read(BATCH.replace('"6 fl oz"', '"none"')).proving[0].used_ml == pytest.approx(946.352946)


def test_cuts_go_by_what_went_into_one():
    (one,) = _read(CUTS).proving
    assert (one.ml_per_cut, one.sizes) == (1.2, ())


def test_prices_and_the_wage_are_own():
    own = _read(f"wage = 28\n{PRICE}")
    (one,) = own.prices
    assert (one.what, one.container.name, one.container.price, own.wage_per_h) == ("basal oil", "2.5 gal", 48, 28)


def test_a_size_may_be_known_without_its_price():
    assert _read(PRICE.replace("price = 48\n", "")).prices[0].container.price is None


@pytest.mark.parametrize(
    ("text", "row", "field", "word"),
    [
        (BATCH.replace("basal bark", "basel bark"), "[[proving]] 1", "method", "basal_bark"),
        (BATCH.replace('"ester-4"', '"estor-4"'), "[[proving]] 1", "product", "ester-4"),
        (BATCH.replace('"ester-4"', '"basal oil"'), "[[proving]] 1", "product", "the product in the mix"),
        (BATCH.replace('"20%"', '"120%"'), "[[proving]] 1", "strength", "at most 100"),
        (BATCH.replace('"20%"', "20"), "[[proving]] 1", "strength", "in quotes"),
        (BATCH.replace('"oil"', '"diesel"'), "[[proving]] 1", "carrier", '"oil"'),
        (BATCH.replace('"oil"', '"none"'), "[[proving]] 1", "carrier", "100%"),
        (BATCH.replace('"6 fl oz"', '"2 qt"'), "[[proving]] 1", "left", "less left than mixed"),
        (BATCH.replace('"6 fl oz"', '"6 oz"'), "[[proving]] 1", "left", "fl oz"),
        (BATCH.replace('left = "6 fl oz"\n', ""), "[[proving]] 1", "used", "used ="),
        (BATCH + 'used = "26 fl oz"\n', "[[proving]] 1", "used", "used ="),
        (BATCH + 'each = "1 mL"\n', "[[proving]] 1", "each", "hack_squirt"),
        (BATCH.replace('diameter = "1 in"', 'diameter = "1-2 in"'), "[[proving]] 1", "stems.1.diameter", "measured"),
        (BATCH.replace('diameter = "1 in"', 'crown = "1 ft"'), "[[proving]] 1", "stems", "diameter"),
        (BATCH.replace("count = 12", "count = 0"), "[[proving]] 1", "stems.1.count", "1 to"),
        (CUTS.replace('each = "1.2 mL"\n', ""), "[[proving]] 1", "each", "one cut"),
        (PRICE.replace("Basal Oil", "bassal oil"), "[[price]] 1", "what", "basal oil"),
        (PRICE.replace("48", '"$48"'), "[[price]] 1", "price", "without a sign"),
        (PRICE.replace("48", "-48"), "[[price]] 1", "price", "above 0"),
        (PRICE.replace("48", "true"), "[[price]] 1", "price", "above 0"),
        (PRICE.replace('"2.5 gal"', '"2.5 lb"'), "[[price]] 1", "holds", "a volume"),
        (PRICE + PRICE, "[[price]] 2", "holds", "[[price]] 1 has it too"),
        ("wage = 0", "", "wage", "above 0"),
        ("wages = 28", "", "wages", "wage"),
    ],
)
def test_what_cannot_be_used_is_refused_by_block_and_key(text, row, field, word):
    with pytest.raises(BadInput) as caught:
        _read(text)
    faults = caught.value.faults
    assert {(one.file, one.row, one.field) for one in faults} == {("own.toml", row, field)}
    assert any(word in one.allowed for one in faults)


PARTNER = '[[partner]]\nproduct = "ester-4"\nwith = "Triclopyr-TEA-3-SL"\npercent = "2%"\n'


def test_a_partner_is_read_by_the_keys_of_both():
    (one,) = _read(PARTNER).mixed
    assert (one.product, one.partner, one.pct, one.fertiliser) == ("ester-4", "triclopyr-tea-3-sl", 2.0, False)


def test_a_fertiliser_goes_by_its_name():
    (one,) = _read(PARTNER.replace("Triclopyr-TEA-3-SL", "ammonium sulfate") + "fertiliser = true\n").mixed
    assert (one.partner, one.fertiliser) == ("ammonium sulfate", True)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (PARTNER.replace("Triclopyr-TEA-3-SL", "nothing"), "own.toml, [[partner]] 1, with: found 'nothing'; allowed:"),
        (PARTNER.replace('"ester-4"', '"nothing"'), "own.toml, [[partner]] 1, product: found 'nothing'; allowed:"),
        (PARTNER.replace("Triclopyr-TEA-3-SL", "ester-4"), "with: found ester-4 with itself; allowed: another product"),
        (
            PARTNER.replace("Triclopyr-TEA-3-SL", "basal oil"),
            "with: found 'basal oil'; allowed: the product in the mix",
        ),
        (PARTNER + PARTNER, "[[partner]] 2, product: found a second partner of ester-4; allowed: one"),
        (PARTNER.replace('"2%"', "2"), "percent: found 2; allowed: a percent of the finished mix in quotes"),
        (PARTNER.replace('with = "Triclopyr-TEA-3-SL"\n', ""), "with: found nothing; allowed: the key of the second"),
        (PARTNER + "wth = 1\n", "found the key wth; allowed: with"),
    ],
)
def test_a_slip_in_a_partner_is_told_with_what_is_allowed(text, says):
    with pytest.raises(BadInput) as caught:
        _read(text)
    assert any(says in str(fault) for fault in caught.value.faults), caught.value.faults


def test_the_share_to_reach_and_what_a_day_takes_are_read_and_slips_are_told() -> None:
    own = read_own({"target": "90%", "set_up": 40, "travel": 60, "day": 12}, "own.toml", ())
    assert (own.target_share, own.set_up_min, own.travel_min, own.day_h) == (0.9, 40, 60, 12)
    for wrong in ({"target": "100%"}, {"target": 0.9}, {"set_up": "40 min"}, {"travel": -1}, {"day": True}):
        with pytest.raises(BadInput):
            read_own(wrong, "own.toml", ())


def test_the_price_of_one_mix_more_is_read_and_slips_are_told() -> None:
    assert read_own({"extra_mix": 45}, "own.toml", ()).extra_mix == 45
    assert read_own({}, "own.toml", ()).extra_mix is None
    for wrong in ({"extra_mix": "$45"}, {"extra_mix": 0}, {"extra_mix": True}):
        with pytest.raises(BadInput):
            read_own(wrong, "own.toml", ())
