"""Quick questions as jobs: pure, the same watched or not, every source named."""

from collections.abc import Callable
from typing import Any

import pytest

from rootcollar.jobs.figure import Answer, volume, work_out
from rootcollar.jobs.figure_dose import DoseAsk, dose
from rootcollar.jobs.figure_mix import MixAsk, Strength, mix
from rootcollar.jobs.figure_rate import RateAsk, rate
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import BadInput, Refusal
from rootcollar.kernel.formula import formula, use
from rootcollar.kernel.sources import Cited, Mark, Source
from rootcollar.reference import Reference, load

GALLON_ML = 3785.411784
QUESTIONS: list[tuple[Callable[..., Outcome[Answer]], Any]] = [
    (mix, MixAsk({}, Strength(pct=2), 80 * GALLON_ML, tank_ml=4 * GALLON_ML)),
    (mix, MixAsk({}, Strength(parts_diluent=4), 1000, on_top=True, system="metric")),
    (dose, DoseAsk({"diameter": "2 in"}, "basal_bark", 120, (5.08, 5.08))),
    (dose, DoseAsk({"crown": "4 ft"}, "foliar", 9, crown_m=1.2, strength_pct=2)),
    (rate, RateAsk({}, 539.2, 479.3, 32, "fl oz/ac", "ae")),
]


@pytest.mark.parametrize(("job", "ask"), QUESTIONS)
def test_a_question_gives_the_same_answer_watched_or_not(job: Callable[..., Outcome[Answer]], ask: Any) -> None:
    assert work_out(job, ask, load()).outcome.value == job(ask, load()).value == job(ask, load()).value


def test_the_tree_names_mark_and_source_of_every_figure() -> None:
    @formula("2 * x", gives="mL", source="UIUC06", x=(0, 1))
    def twice(x: float) -> float:
        return 2 * x

    def job(ask: float, reference: Reference) -> Outcome[Answer]:
        remembered = use(Cited(ask, "mL", "EXT-GEN", Mark.MEMORY, holds_for="water: cold"))
        return Outcome(Answer("how much?", {"x": "3 mL"}, "6 mL", twice(remembered), "mL"))

    worked = work_out(job, 3.0, load())
    figure, step = worked.working["steps"]
    assert worked.working["result"] == 6
    assert worked.working["inputs"] == {"x": "3 mL"}
    assert (figure["source"]["key"], figure["source"]["mark"], figure["result"]) == ("EXT-GEN", "memory", 3)
    assert (step["source"]["key"], step["source"]["mark"]) == ("UIUC06", "")
    assert "Univ. of Illinois" in step["source"]["cite"]
    assert [source.key for source in worked.sources] == ["EXT-GEN", "UIUC06"]
    assert all(isinstance(source, Source) for source in worked.sources)


def test_a_volume_is_told_in_both_systems_the_asked_one_first() -> None:
    assert volume(GALLON_ML / 2, "us") == "64 fl oz (1.89 L)"
    assert volume(GALLON_ML, "us") == "1 gal (3.79 L)"
    assert volume(200, "metric") == "200 mL (6.76 fl oz)"
    assert volume(1000, "metric") == "1 L (33.8 fl oz)"


def test_a_load_and_the_rest_get_a_card_each() -> None:
    answer = mix(MixAsk({}, Strength(pct=3), 37.5 * GALLON_ML, tank_ml=4 * GALLON_ML), load()).value
    assert any(line.startswith("9 loads of 4 gal") for line in answer.details)
    assert any(line.startswith("1 load of 1.5 gal") for line in answer.details)


def test_more_acid_than_the_jug_holds_is_refused() -> None:
    with pytest.raises(Refusal, match="the product itself holds"):
        mix(MixAsk({}, Strength(acid_g_per_l=(500, 480)), 1000), load())


def test_a_dose_takes_the_weaker_end_of_what_the_sources_give_and_says_so() -> None:
    answer = dose(DoseAsk({"diameter": "2 in"}, "basal_bark", 1, (5.08, 5.08)), load()).value
    assert answer.figures["strength_pct"] == 10  # PNW-BB: 10 to 20 %
    assert "PNW-BB (read) gives 10 to 20 %" in answer.assumed[0]


def test_a_dose_that_lacks_what_its_method_goes_by_asks_for_it() -> None:
    with pytest.raises(BadInput, match="--diameter"):
        dose(DoseAsk({}, "cut_stump", 1), load())
    with pytest.raises(BadInput, match="--crown"):
        dose(DoseAsk({}, "foliar", 1), load())


def test_a_rate_is_cut_and_never_rounded_up() -> None:
    answer = rate(RateAsk({}, 1000, 999.9, 32, "fl oz/ac", "ae"), load()).value
    assert answer.value == pytest.approx(31.9968)
    assert answer.says.startswith("31.9 fl oz/ac")
