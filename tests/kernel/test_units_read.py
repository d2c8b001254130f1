"""What people write is read as they mean it, or refused in a sentence that helps."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from rootcollar.kernel.errors import Ambiguous, BadInput, UnitError
from rootcollar.kernel.units import Kind, Quantity, read, read_range

WRITTEN = [
    # text, kind, in this unit, this much, of
    ("2.5 gal/ac", Kind.VOLUME_RATE, "gal/ac", 2.5, ""),
    ("2 qt/acre", Kind.VOLUME_RATE, "gal/ac", 0.5, ""),
    ("32 fl oz/ac", Kind.VOLUME_RATE, "qt/ac", 1, ""),
    ("10 gpa", Kind.VOLUME_RATE, "gal/ac", 10, ""),
    ("2 qt product/ac", Kind.VOLUME_RATE, "qt/ac", 2, "product"),
    ("3 fl oz per 1,000 sq. ft.", Kind.VOLUME_RATE, "fl oz/ac", 3 * 43.56, ""),
    ("1.5 lb ae/ac", Kind.MASS_RATE, "lb ae/ac", 1.5, "ae"),
    ("3 lb ae/gal", Kind.STRENGTH, "lb ae/gal", 3, "ae"),
    ("3 lb a.e./gal", Kind.STRENGTH, "lb/gal", 3, "ae"),
    ("3 lb/gal ae", Kind.STRENGTH, "lb/gal", 3, "ae"),
    ("4.5 lb ae per gallon", Kind.STRENGTH, "lb/gal", 4.5, "ae"),
    ("2 lb active ingredient per gallon", Kind.STRENGTH, "lb ai/gal", 2, "ai"),
    ("3 lb acid equivalent/gal", Kind.STRENGTH, "lb ae/gal", 3, "ae"),
    ("4 lb/gal", Kind.STRENGTH, "lb/gal", 4, ""),
    ("480 g/L", Kind.STRENGTH, "g/L", 480, ""),
    ("360 g ae/L", Kind.STRENGTH, "g ae/L", 360, "ae"),
    ("17 lb/100 gal", Kind.STRENGTH, "lb/gal", 0.17, ""),
    ("1 1/2 in", Kind.LENGTH, "in", 1.5, ""),
    ("1½ in", Kind.LENGTH, "in", 1.5, ""),
    ("1-1/2 in", Kind.LENGTH, "in", 1.5, ""),
    ("1⁄2 in", Kind.LENGTH, "in", 0.5, ""),
    ("12 inches", Kind.LENGTH, "ft", 1, ""),
    ('6"', Kind.LENGTH, "in", 6, ""),
    ("5'6\"", Kind.LENGTH, "in", 66, ""),
    ("5 ft 6 1/2 in", Kind.LENGTH, "in", 66.5, ""),
    ("18.5 ft", Kind.LENGTH, "ft", 18.5, ""),
    ("0.25 acre", Kind.AREA, "ac", 0.25, ""),
    ("8,000 sq ft", Kind.AREA, "sq ft", 8000, ""),
    ("8,000.5 square feet", Kind.AREA, "sq ft", 8000.5, ""),
    ("50 ft²", Kind.AREA, "sq ft", 50, ""),
    ("50 m^2", Kind.AREA, "m2", 50, ""),
    ("4 fl oz", Kind.VOLUME, "fl oz", 4, ""),
    ("4 fl. oz.", Kind.VOLUME, "fl oz", 4, ""),
    ("3 GAL", Kind.VOLUME, "gal", 3, ""),
    ("2 quarts", Kind.VOLUME, "qt", 2, ""),
    ("1 pt", Kind.VOLUME, "fl oz", 16, ""),
    ("5 ML", Kind.VOLUME, "mL", 5, ""),
    (".5 L", Kind.VOLUME, "mL", 500, ""),
    ("1 mL/stem", Kind.VOLUME, "mL", 1, ""),
    ("0.5 ml per cut", Kind.VOLUME, "mL", 0.5, ""),
    ("3 gal 1 qt 4 fl oz", Kind.VOLUME, "fl oz", 420, ""),
    ("2 LBS", Kind.MASS, "lb", 2, ""),
    ("8 oz wt", Kind.MASS, "lb", 0.5, ""),
    ("20%", Kind.SHARE, "%", 20, ""),
    ("20 % v/v", Kind.SHARE, "%", 20, ""),
    ("20%v/v", Kind.SHARE, "%", 20, ""),
    ("1:4", Kind.SHARE, "%", 20, ""),
    ("1:1", Kind.SHARE, "%", 50, ""),
    ("1 qt per 100 gal", Kind.SHARE, "%", 0.25, ""),
    ("1 qt/100 gal", Kind.SHARE, "%", 0.25, ""),
    ("3 mph", Kind.SPEED, "ft/min", 264, ""),
    ("100 ft/min", Kind.SPEED, "ft/min", 100, ""),
    ("75 °F", Kind.TEMPERATURE, "F", 75, ""),
    ("-5 C", Kind.TEMPERATURE, "C", -5, ""),
    ("−40 F", Kind.TEMPERATURE, "C", -40, ""),
    ("20 minutes", Kind.TIME, "min", 20, ""),
    ("0.5 gal/min", Kind.FLOW, "gal/min", 0.5, ""),
    ("12 stems", Kind.COUNT, "stem", 12, ""),
    ("2.5-gal", Kind.VOLUME, "gal", 2.5, ""),
    ("6-inch", Kind.LENGTH, "in", 6, ""),
    ("half a gallon", Kind.VOLUME, "gal", 0.5, ""),
    ("A quart", Kind.VOLUME, "qt", 1, ""),
    ("a quarter acre", Kind.AREA, "ac", 0.25, ""),
    ("two gallons", Kind.VOLUME, "gal", 2, ""),
    ("3 U.S. gallons", Kind.VOLUME, "gal", 3, ""),
]


@pytest.mark.parametrize(("text", "kind", "unit", "amount", "of"), WRITTEN)
def test_what_people_write_is_read_as_they_mean_it(text: str, kind: Kind, unit: str, amount: float, of: str) -> None:
    got = read(text)
    assert (got.kind, got.of, got.text) == (kind, of, text)
    assert got.to(unit) == pytest.approx(amount, rel=1e-12)
    assert read(text, kind) == got


@pytest.mark.parametrize(
    ("text", "unit", "amount"),
    [
        ("2.5 gal/ac", "L/ha", 2.5 * 3.785411784 / 0.40468564224),
        ("3 lb ae/gal", "g/L", 3 * 453.59237 / 3.785411784),
        ("4 fl oz", "mL", 4 * 29.5735295625),
        ("1 1/2 in", "cm", 3.81),
        ("20% v/v", "%", 20),
    ],
)
def test_what_a_general_units_library_misreads_is_read_rightly(text: str, unit: str, amount: float) -> None:
    assert read(text).to(unit) == pytest.approx(amount, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "base"),
    [
        ("1 m", 1), ("1 m2", 1), ("1 mL", 1), ("1 g", 1), ("1 s", 1), ("1 %", 1), ("1 m/s", 1), ("1 C", 1),
        ("1 g/L", 1), ("1 L/ha", 1), ("1 kg/ha", 1), ("1 mL/s", 1), ("1 stem", 1), ("1", 1),
    ],
)  # fmt: skip
def test_the_base_units_are_the_ones_said(text: str, base: float) -> None:
    assert read(text).amount == pytest.approx(base, rel=1e-15)


TWO_READINGS = [
    ("4 oz", "fl oz"), ("5 oz/gal", "fl oz"), ("5 oz ae/ac", "oz wt"), ("2 lb 4 oz", "oz wt"), ("1 T", "Tbsp"),
    ("1 t", "tsp"), ("1 a", "ac"), ("1 A", "ac"), ("2 c", "cup"), ("75 f", "F for degrees"), ("3 M", "m, min"),
    ("2 tons", "lb or kg"), ("5 G", "gal or g"), ("2,5 l", "2.5"), ("0,250 L", "2.5"), ("8,00 sq ft", "8,000"),
    ("12,3456 gal", "8,000"), ("11/2 in", "1 1/2"), ("1 3/2 in", "1 1/2"), ("0/2 in", "3/4"), ("1/0 in", "3/4"),
    ("4:1", "1:4"), ("0:4", "1:4"), ("20% w/w", "v/v"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "helps"), TWO_READINGS)
def test_two_readings_are_asked_about_and_never_guessed(text: str, helps: str) -> None:
    with pytest.raises(Ambiguous) as told:
        read(text)
    assert helps in str(told.value)


UNREADABLE = [
    ("", "a number and its unit"), ("   ", "a number and its unit"), ("gal", "a number and its unit"),
    ("nan gal", "a number"), ("inf gal", "a number"), ("-inf C", "a number"), ("٣ gal", "a number"),
    ("about 3 gal", "a number"), ("3 gall", "gal"), ("3 flurbs", "a known unit"), ("1e3 gal", "a known unit"),
    ("gal/ac/ac", "a number"), ("1 gal/ac/ac", "gal/ac"), ("1 gal/ac per year", "gal/ac"), ("5 /gal", "before the per"),
    ("1 per gal", "gal/ac"), ("3 gal/mph", "not used here"), ("1 000 m2", "one number"), ("1.5.2 gal", "one number"),
    ("5. gal", "one number"), ("0.5½ in", "one number"), ("5² m", "a known unit"), ("3-10 mph", "not a range"),
    ("3 to 10 mph", "not a range"), ("3 mph to 10 mph", "not a range"), ("1−2 in", "not a range"),
    ("-3 gal", "0 or more"), ("-1 in", "0 or more"), ("-20%", "0 or more"), ("-2 lb ae/gal", "0 or more"),
    ("120%", "at most 100"), ("100.5%", "at most 100"), ("4 gal/gal", "at most 100"), ("3 gal ae", "ae with a weight"),
    ("3 ft product", "product with a volume"), ("2 lb ae/gal ai", "said once"), ("1 qt 5 qt", "5 ft 6 in"),
    ("1 qt 5 ft", "5 ft 6 in"), ("1 gal " + "x" * 99, "a number and its unit"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "helps"), UNREADABLE)
def test_what_cannot_be_read_is_refused_with_help(text: str, helps: str) -> None:
    with pytest.raises(UnitError) as told:
        read(text)
    assert not isinstance(told.value, Ambiguous)
    assert helps in str(told.value)
    assert "\n" not in str(told.value)


@pytest.mark.parametrize("kind", [kind for kind in Kind if kind is not Kind.COUNT])
def test_a_bare_number_is_refused_with_an_example_that_can_be_read(kind: Kind) -> None:
    with pytest.raises(UnitError, match="has no unit") as told:
        read("5", kind)
    example_ = str(told.value).split("such as ")[1].split(";")[0].split(" or ")[0]
    assert read(example_, kind).kind is kind


def test_the_wrong_kind_is_told_in_words() -> None:
    with pytest.raises(UnitError, match="a volume, such as 2 gal or 500 mL; '3 lb' is a weight"):
        read("3 lb", Kind.VOLUME)


def test_a_weight_of_ingredient_is_not_taken_for_acid_equivalent() -> None:
    for text in ("3 lb ai/gal", "3 lb/gal"):
        with pytest.raises(UnitError, match="asks for ae"):
            read(text).to("lb ae/gal")
    with pytest.raises(UnitError, match="a length"):
        read("3 gal").to("in")


RANGES = [
    ("3-10 mph", "mph", 3, 10), ("1-2 in", "in", 1, 2), ("1–2 in", "in", 1, 2), ("1 to 2 in", "in", 1, 2),
    ("0.5 - 1.5 in", "in", 0.5, 1.5), ("1 1/2-3 in", "in", 1.5, 3), ("1-1/2-3 in", "in", 1.5, 3),
    ("1/2-1-1/2 in", "in", 0.5, 1.5), ("½–1½ in", "in", 0.5, 1.5), ("1 in - 3 in", "in", 1, 3), ('6"-12"', "in", 6, 12),
    ("10 m2 - 20 m2", "m2", 10, 20), ("8,000-9,000 sq ft", "sq ft", 8000, 9000), ("-5 to 10 C", "C", -5, 10),
    ("50–85 °F", "F", 50, 85), ("2 to 4 lb ae/gal", "lb ae/gal", 2, 4),
    ("1 qt/100 gal to 2 qt/100 gal", "%", 0.25, 0.5), ("-5 to -2 C", "C", -5, -2),
]  # fmt: skip


@pytest.mark.parametrize(("text", "unit", "low", "high"), RANGES)
def test_a_range_is_read_as_its_two_ends(text: str, unit: str, low: float, high: float) -> None:
    got = read_range(text)
    assert [end.to(unit) for end in got] == pytest.approx([low, high])


NO_RANGES = [
    ("2-1 in", "smaller end first"), ("2-2 in", "smaller end first"), ("1-1/2 in", "smaller end first"),
    ("6+ in", "both ends"), ("> 6 in", "both ends"), ("6 in", "both ends"), ("1-", "both ends"), ("", "both ends"),
    ("1,5-3 in", "both ends"), ("1 in - 3", "unit at the end"), ("1 in - 3 cm", "one unit"),
    ("3 lb ae/gal - 4 lb ai/gal", "one unit"), ("1-2 oz", "fl oz"), ("-2 to -1 in", "0 or more"),
    ("1-2-3 in", "both ends"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "helps"), NO_RANGES)
def test_half_a_range_is_refused_with_help(text: str, helps: str) -> None:
    with pytest.raises(UnitError) as told:
        read_range(text)
    assert helps in str(told.value)


def test_a_range_of_another_kind_is_refused() -> None:
    assert read_range("3-10", Kind.COUNT)[1].amount == 10
    with pytest.raises(UnitError, match="a length"):
        read_range("3-10 mph", Kind.LENGTH)


PIECES = ["1", "1/2", "2,5", "8,000", "½", "-", " ", "to", "per", "/", ".", "gal", "ft", "in", "'", '"', "oz", "lb",
          "ae", "ac", "%", "C", ":", "²", "100", "v/v", "m", "2"]  # fmt: skip


@given(st.one_of(st.text(max_size=30), st.lists(st.sampled_from(PIECES), max_size=8).map("".join),
                 st.lists(st.sampled_from(PIECES), max_size=8).map(" ".join)))  # fmt: skip
@example("1/2/3 in")
@example("1 / 2 in")
def test_no_text_at_all_escapes_as_anything_but_a_quantity_or_a_refusal(text: str) -> None:
    for reader in (read, read_range):
        try:
            got = reader(text)
        except BadInput:
            continue
        ends = (got,) if isinstance(got, Quantity) else got
        assert all(end.amount >= 0 or end.kind is Kind.TEMPERATURE for end in ends)


@given(st.integers(0, 99), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_every_way_to_write_a_mixed_fraction_is_the_same_length(whole: int, top: int, bottom: int) -> None:
    top = top % bottom or 1
    ways = (f"{whole} {top}/{bottom} in", f"{whole}-{top}/{bottom} in", f"{whole + top / bottom!r} in")
    assert len({read(way).amount for way in ways}) == 1


@given(st.integers(0, 10**9))
def test_thousands_may_have_their_commas(whole: int) -> None:
    assert read(f"{whole:,} sq ft").amount == read(f"{whole} sq ft").amount
