"""prepare --json tells the shopping list as plain values."""

import json
from pathlib import Path

import pytest

from rootcollar.exchange import write_demo
from rootcollar.exchange.start import DEMO_DAY
from tests.cli.test_plan_commands import DAY, ridge_rows, rootcollar


@pytest.mark.slow
def test_the_list_covers_each_need_from_shed_and_shop(tmp_path: Path) -> None:
    write_demo(tmp_path / "wood", DEMO_DAY)
    (tmp_path / "wood/tally.csv").write_text(ridge_rows(), encoding="utf-8")
    body = json.loads(rootcollar("prepare", tmp_path / "wood", "--on", DAY, "--json").stdout)
    assert body["schema"] == "rootcollar/prepare/1"
    found = body["shopping"]
    assert (found["first_unit"], found["stock_known"]) == ("ridge", True)
    assert [one["lot"] for one in found["past_its_date"]] == ["HW-04 (invented)"]
    assert found["now"]
    for one in found["now"]:
        from_shed = sum(lot["taken_ml"] for lot in one["at_hand"])
        bought = bool(one["to_buy"])
        assert from_shed <= one["need_ml"]["best"] + 1e-6
        assert bought or from_shed == pytest.approx(one["need_ml"]["best"])
        assert all(lot["not_after"] is None or lot["not_after"] >= DAY for lot in one["at_hand"])
