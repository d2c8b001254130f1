"""What a folder says of stock and own figures reaches the plan and its packet."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.choose import Own
from rootcollar.dose import Proving
from rootcollar.jobs.plan import choose, prepare
from rootcollar.kernel.doubt import band, sure
from rootcollar.shelf import Lot, Stock
from rootcollar.work import Project
from tests.choose.hobbin import DAY, hobbin, only

BATCH = Proving(
    "basal_bark", "triclopyr-ester-4-ec", 20, "oil", date(2026, 9, 1), "A. Steward", 600, ((3, 12), (4, 13))
)


@pytest.fixture(scope="module")
def ridge() -> Project:
    """Return the ridge, counted for sure, with a batch, a wage and a lot that is past its date."""
    project = only(hobbin(), "ridge")
    return replace(
        project,
        stands=tuple(replace(one, stems=sure(float(one.stems[0]))) for one in project.stands),
        own=Own((BATCH,), wage_per_h=31),
        stock=Stock((Lot("basal oil", 500, "OLD", not_after=date(2026, 9, 1)),)),
    )


def test_the_plan_rests_on_the_crews_own_figures(ridge: Project) -> None:
    lines = [one for one in choose(ridge, DAY).value.choices if one.option and one.way.visit.method == "basal_bark"]
    assert lines
    for one in lines:
        assert one.per_stem.dose_because.startswith("own proving batch of 2026-09-01")
        assert band(one.per_stem.mix_ml).low == band(one.per_stem.mix_ml).high


def test_the_packet_comes_with_its_shopping_list(ridge: Project) -> None:
    made = prepare(ridge, DAY).value
    assert [one.lot for one in made.shopping.past] == ["OLD"]
    assert made.shopping.first == "ridge" and made.shopping.looked
    page = next(one for one in made.packet.pages if one.title == "Shopping")
    assert any("OLD" in row[0] for part in page.parts for row in part.rows)
    assert any("EXT-GEN" in key for key, _ in made.packet.sources)
