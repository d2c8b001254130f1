"""Reading options: an amount has its unit, and a fault names the option it was found behind."""

import pytest

from rootcollar.cli.ask import amount, count, ground, naming, one_of, seconds, share, sides, size, with_unit
from rootcollar.kernel.errors import Ambiguous, BadInput, Fault, UnitError
from rootcollar.kernel.units import Kind


@pytest.mark.parametrize(
    ("text", "pct"), [("3", 3), ("3%", 3), ("0.5 %", 0.5), ("20% v/v", 20), ("1:4", 20), (".5", 0.5)]
)
def test_a_share_may_be_a_bare_number(text: str, pct: float) -> None:
    assert share("--percent", text).amount == pytest.approx(pct)


@pytest.mark.parametrize(
    "text", ["101", "120%", "0", "0%", "-3", "3 gal", "3 oz", "twenty", "", "3,5", "20% w/w", "20-30%"]
)
def test_what_is_no_share_is_refused_by_the_name_of_the_option(text: str) -> None:
    with pytest.raises(BadInput, match=r"^--percent: found .+; allowed: .+"):
        share("--percent", text)


def test_an_ounce_is_asked_about_and_stays_a_question() -> None:
    with pytest.raises(Ambiguous) as asked:
        amount("--total", "32 oz", Kind.VOLUME)
    assert asked.value.faults[0].field == "--total"
    assert "fl oz" in str(asked.value)


@pytest.mark.parametrize("text", ["0 gal", "-1 gal", "3", "3 lb", "gal", "3 gl"])
def test_an_amount_needs_a_unit_of_its_kind_and_something_to_measure(text: str) -> None:
    with pytest.raises(UnitError, match="^--total: "):
        amount("--total", text, Kind.VOLUME)


@pytest.mark.parametrize(
    ("text", "low", "high"), [("2 in", 2, 2), ("1-2 in", 1, 2), ("1-1/2 in", 1.5, 1.5), ("1 to 2 in", 1, 2)]
)
def test_a_size_is_one_or_a_class(text: str, low: float, high: float) -> None:
    ends = size("--diameter", text)
    assert [end.to("in") for end in ends] == pytest.approx([low, high])


@pytest.mark.parametrize("text", ["2", "2-1 in", "2 gal", "-2 in", "0 in", "1-2", "1 in-2 cm"])
def test_what_is_no_size_is_refused_by_the_name_of_the_option(text: str) -> None:
    with pytest.raises(BadInput, match="^--diameter: "):
        size("--diameter", text)


@pytest.mark.parametrize("text", ["1.5", "0", "-2", "3 in", "few"])
def test_stems_are_counted_in_whole_ones(text: str) -> None:
    with pytest.raises(UnitError, match="^--count: "):
        count("--count", text)
    assert count("--count", "120 stems") == count("--count", "120") == 120


def test_exactly_one_of_several_options_is_wanted() -> None:
    assert one_of({"--percent": None, "--ratio": "1:4"}, "one") == "--ratio"
    with pytest.raises(BadInput, match="--percent and --ratio; allowed: just one"):
        one_of({"--percent": "3", "--ratio": "1:4"}, "just one")
    with pytest.raises(BadInput, match="neither --percent nor --ratio"):
        one_of({"--percent": None, "--ratio": None}, "just one")


def test_every_fault_in_a_block_gets_the_name() -> None:
    with pytest.raises(BadInput) as found, naming("--x"):
        raise BadInput(Fault("a", "b"), Fault("c", "d"))
    assert [fault.field for fault in found.value.faults] == ["--x", "--x"]
    assert str(found.value).count("--x: ") == 2


@pytest.mark.parametrize(
    ("text", "feet"),
    [
        ("18.5 ft x 18.5 ft", (18.5, 18.5)),
        ("18.5 x 18.5 ft", (18.5, 18.5)),
        ("18.5ft by 20 ft", (18.5, 20)),
        ("18.5' \u00d7 20'", (18.5, 20)),
        ("18 1/2 X 20 feet", (18.5, 20)),
        ("18\u00bd x 20 ft", (18.5, 20)),
        ("1,000 * 20 ft", (1000, 20)),
        ("20 ft x 5", (20, 5)),
        ("5 ft 6 in x 3 yd", (5.5, 9)),
    ],
)
def test_two_sides_are_read_as_people_write_them(text: str, feet: tuple[float, float]) -> None:
    assert [side.to("ft") for side in sides("--plot", text)] == pytest.approx(feet)


@pytest.mark.parametrize(
    "text", ["18.5 ft", "18.5 x 18.5", "3 x 4 x 5 ft", "x 5 ft", "5 ft x", "0 x 5 ft", "-2 x 5 ft", "5 ft 6 in x 4", ""]
)
def test_what_are_no_two_sides_is_refused_by_the_name_of_the_option(text: str) -> None:
    with pytest.raises(BadInput, match="^--plot: "):
        sides("--plot", text)


def test_ground_is_an_area_or_two_sides() -> None:
    assert [one.to("sq ft") for one in ground("--area", "1/128 ac")] == pytest.approx([340.3125])
    assert [one.to("ft") for one in ground("--area", "100 x 60 ft")] == pytest.approx([100, 60])
    for text in ("100 ft", "100", "2 gal", "0 ac", "an acre of it"):
        with pytest.raises(BadInput, match="^--area: "):
            ground("--area", text)


@pytest.mark.parametrize(
    ("text", "after"),
    [("75", 75), ("75 s", 75), ("75sec", 75), ("1:15", 75), ("1:15 min", 75), ("0:45", 45), ("1 min 15 s", 75),
     ("1 1/4 min", 75), ("7.5", 7.5), ("1/2", 0.5)],
)  # fmt: skip
def test_a_time_is_read_off_a_watch(text: str, after: float) -> None:
    assert seconds("--seconds", text) == pytest.approx(after)


@pytest.mark.parametrize("text", ["0", "0:00", "-5", "1:75", "1:5", "1:15:00", "1:15 h", "75 ft", "soon", ""])
def test_what_is_no_time_is_refused_by_the_name_of_the_option(text: str) -> None:
    with pytest.raises(BadInput, match="^--seconds: "):
        seconds("--seconds", text)


def test_a_bare_number_gets_the_unit_that_the_option_names() -> None:
    assert with_unit(" 100 ", "ft") == "100 ft"
    assert with_unit("30 m", "ft") == "30 m"
