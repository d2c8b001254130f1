"""The engine: it asks by itself, hears silence as each rule says, and cannot permit."""

from collections.abc import Iterator

import pytest

from rootcollar.kernel.verdict import Level, Stage, Verdict
from rootcollar.label import (
    NOT_CHECKED,
    PATHS,
    RULES,
    Basis,
    History,
    Rule,
    Seen,
    must_read,
    place_facts,
    template_facts,
    total_facts,
    weigh,
    weigh_day,
    weigh_place,
    weigh_template,
    weigh_totals,
)
from rootcollar.label.rule import exceeds, rule, stop
from rootcollar.shelf import FIELDS, SILENT, Line, Sheet
from tests.label.sample import (
    DAY,
    HISTORY,
    PEOPLE,
    PLANNED,
    UNIT,
    WEAR,
    applied,
    facts_of,
    lines,
    said,
    total,
    whole,
    without,
)
from tests.shelf.sample import sample_sheet

PAIRS = [(known, path) for known in RULES.values() for path in known.paths]


def ids(value: object) -> str:
    """Return a short name for a rule or a path."""
    return value.number if isinstance(value, Rule) else str(value)


@pytest.mark.parametrize("known", RULES.values(), ids=ids)
def test_every_fact_a_rule_reads_can_exist_and_its_words_are_plain(known: Rule) -> None:
    assert set(known.paths) <= set(PATHS)
    assert set(known.silence) <= set(known.paths)
    assert known.sentence.endswith(".") and known.basis.words and known.stage is Stage.PLAN


def test_a_path_of_the_sheet_is_a_line_of_the_sheet() -> None:
    derived = {"sheet.key", "sheet.methods", "sheet.second"}
    paths = {path.removeprefix("sheet.") for path in PATHS if path.startswith("sheet.") and path not in derived}
    assert paths == {path for path in FIELDS if not path.startswith(("ingredient.", "site."))}


@pytest.mark.parametrize(("known", "path"), PAIRS, ids=ids)
def test_a_fact_nobody_has_given_asks_by_itself_and_says_where_to_write_it(known: Rule, path: str) -> None:
    verdict = weigh(known, without(whole(), path), "a")
    assert verdict.level is Level.ASK
    assert PATHS[path].words in verdict.because and verdict.clear
    assert verdict.answerable == PATHS[path].by_hand
    if path.startswith("sheet.") and path != "sheet.methods":
        assert "shelf/sample.toml" in verdict.clear
        assert path.removeprefix("sheet.").removeprefix("method.") in verdict.clear


@pytest.mark.parametrize(
    ("known", "path"),
    [pair for pair in PAIRS if pair[1].startswith("sheet.") and pair[1] not in pair[0].silence],
    ids=ids,
)
def test_silence_is_never_ok_unless_the_rule_says_so(known: Rule, path: str) -> None:
    verdict = weigh(known, whole() | {path: Line(SILENT)}, "a")
    assert verdict.level is known.when_silent
    assert "says nothing of" in verdict.because or known.when_silent is Level.OK


def test_the_question_names_the_method_whose_block_is_meant() -> None:
    verdict = said(without(whole(), "sheet.method.concentration.high"))["L08"]
    assert verdict.clear == "read it on the label and type concentration.high of the foliar block in shelf/sample.toml"


def test_an_unread_line_asks_even_where_another_line_is_silent() -> None:
    facts = without(whole(), "sheet.limits.per_year.unit") | lines(sheet__limits__per_year__amount=SILENT)
    verdict = said(facts)["L13"]
    assert "not known yet" in verdict.because and not verdict.answerable


@pytest.fixture
def scratch() -> Iterator[None]:
    """Let a test enter rules and take them out again."""
    before = dict(RULES)
    yield
    RULES.clear()
    RULES.update(before)


@pytest.mark.usefixtures("scratch")
def test_a_rule_that_is_only_remembered_asks_at_most_and_a_person_may_answer() -> None:
    @rule("X1", "A remembered limit.", Basis("not seen", Seen.MEMORY), planned_pct="plan.strength_pct")
    def remembered(planned_pct: float) -> Verdict | None:
        return stop("too much", "less")

    verdict = weigh(RULES["X1"], whole(), "a")
    assert verdict.level is Level.ASK and verdict.answerable and verdict.because == "too much"


@pytest.mark.usefixtures("scratch")
def test_a_number_is_given_to_one_rule_only() -> None:
    with pytest.raises(ValueError, match="L08 is there already"):
        rule("L08", "Again.", Basis("none"), planned_pct="plan.strength_pct")(lambda planned_pct: None)


def test_each_rule_speaks_once_in_its_group() -> None:
    facts = facts_of()
    groups = [weigh_template(facts, "a"), weigh_place(facts, "a"), weigh_totals(facts, "a"), weigh_day(facts, "a")]
    numbers = [verdict.rule for group in groups for verdict in group]
    assert sorted(numbers) == sorted(RULES)
    assert [{RULES[one.rule].group for one in group} for group in groups] == [
        {"template"},
        {"place"},
        {"totals"},
        {"day"},
    ]


def test_a_rule_is_either_weighed_or_listed_as_not_checked() -> None:
    weighed = {number.rstrip("ab") for number in RULES}
    listed = [one.number for one in NOT_CHECKED]
    assert len(set(listed)) == len(listed) and not weighed & set(listed)
    assert {f"L{number:02}" for number in range(1, 61)} <= weighed | set(listed)
    assert {one.stage for one in NOT_CHECKED} == set(Stage)


def test_without_a_label_sheet_one_question_stands_for_all_its_rules() -> None:
    template = template_facts(PLANNED, None, state="WV", demo=False, wear=WEAR, people=PEOPLE)
    place = place_facts(template, UNIT, on=None)
    asked, *crew = weigh_template(template, "a")
    assert [(one.rule, one.level) for one in crew] == [("P06", Level.OK), ("P08", Level.OK)]
    assert asked.level is Level.ASK and asked.rule == "L01" and not asked.answerable
    assert [one.rule for one in weigh_place(place, "a")] == ["P01", "P02", "P07", "P10"]
    assert weigh_totals(total_facts(place, total(), HISTORY, on=None), "a") == ()


def test_where_nothing_is_applied_only_the_ground_and_the_crew_have_a_word() -> None:
    pulling = type(PLANNED)("pull", PLANNED.species, None, PLANNED.band_cm)
    template = template_facts(pulling, None, state=None, demo=False, wear=None)
    assert [(one.rule, one.level) for one in weigh_template(template, "a")] == [
        ("P06", Level.OK), ("P08", Level.OK),
    ]  # fmt: skip
    assert {one.rule for one in weigh_place(place_facts(template, UNIT, on=None), "a")} == {"P01", "P02", "P07", "P10"}


def test_directions_for_other_methods_only_count_as_silence_on_this_one() -> None:
    basal = type(PLANNED)("basal_bark", PLANNED.species, PLANNED.recipe, PLANNED.band_cm)
    verdicts = said(facts_of(basal))
    assert "says nothing of" in verdicts["L08"].because and "says nothing of" in verdicts["L10"].because
    assert verdicts["L07"].level is Level.ASK and verdicts["L07"].answerable


def test_a_sheet_without_any_directions_asks_to_read_them() -> None:
    sheet = Sheet("jug", sample_sheet().lines)
    verdicts = said(facts_of(sheet=sheet))
    assert "not known yet" in verdicts["L08"].because and "[[method]]" in verdicts["L07"].clear


def test_history_of_other_units_and_ingredients_does_not_count() -> None:
    rows = (applied(DAY, unit="other"), applied(DAY, ingredient="other"), applied(DAY))
    facts = total_facts(facts_of(), total(), History(rows, True), on=DAY, also=(total(unit="other"), total()))
    assert facts["history.past"].says.rows == (rows[2],)
    assert len(facts["total.work"].says.also) == 1


def test_what_must_be_read_is_what_some_rule_needs() -> None:
    assert must_read(sample_sheet(), "foliar") == ("method.stem_diameter_in.low", "method.stem_diameter_in.high")
    wanted = must_read(Sheet("jug", {}), "foliar")
    assert "limits.basis" in wanted and "site" in wanted and "storage.rinse" not in wanted


def test_noise_of_floating_point_passes_no_limit() -> None:
    assert not exceeds(0.1 + 0.2, 0.3) and exceeds(0.3000001, 0.3)
    assert exceeds(float("inf"), 0.0) and not exceeds(0.0, float("inf")) and not exceeds(0.0, 0.0)


def test_a_rule_of_label_crew_and_shed_alone_is_asked_once_for_the_whole_property() -> None:
    assert all(
        RULES[number].of_the_whole
        for number in ("L18", "L19b", "L20", "L22", "L26", "L39", "L49", "L52", "L53", "L60", "P06")
    )
    assert not any(RULES[number].of_the_whole for number in ("L05", "L08", "L16", "L46", "L48", "L50", "P01"))
