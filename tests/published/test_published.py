"""Every worked number agrees with somebody else's, and would be found out if it were a tenth wrong."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from rootcollar.reference import load
from tests.published import second_opinions
from tools.checks import OUTSIDE, PAGE, Check, cites, every_formula, page, read_checks

CHECKS = read_checks()
FROM_OUTSIDE = [check for check in CHECKS if check.outside]
OF_LIBRARIES = [check for check in CHECKS if check.kind == "library"]


def named(checks: list[Check]) -> pytest.MarkDecorator:
    return pytest.mark.parametrize("check", checks, ids=[f"{check.id} {check.formula}" for check in checks])


@named(CHECKS)
def test_the_formula_gives_what_the_source_says(check: Check) -> None:
    result = check.result()
    assert check.holds(result), f"{check.asks}: {result} is not {check.said} within {check.tolerance:g} {check.unit}"


@named(FROM_OUTSIDE)
@pytest.mark.parametrize("error", [0.9, 1.1])
def test_an_error_of_a_tenth_would_be_noticed(check: Check, error: float) -> None:
    assert not check.holds(check.result() * error)


@named(OF_LIBRARIES)
def test_the_library_says_so_too(check: Check) -> None:
    assert check.holds(getattr(second_opinions, check.by)(**check.values))


def test_every_formula_not_ours_has_a_check_from_outside() -> None:
    checked = {check.formula for check in FROM_OUTSIDE}
    bare = [name for name, source in every_formula().items() if source != "ours" and name not in checked]
    assert not bare, f"without a check from outside: {', '.join(bare)}"


def test_every_source_of_a_check_and_of_a_formula_is_known() -> None:
    known = cites()
    assert [check.id for check in CHECKS if check.source not in known] == []
    assert [name for name, source in every_formula().items() if source not in load().sources] == []


def test_a_check_asks_a_plain_sentence() -> None:
    assert [check.id for check in CHECKS if len(check.asks.split()) < 3] == []


def test_what_was_reckoned_or_remembered_does_not_count_as_outside() -> None:
    assert {check.kind for check in FROM_OUTSIDE} <= set(OUTSIDE)
    assert {check.kind for check in CHECKS if not check.outside} == {"reckoned", "memory"}


def test_a_wrong_row_is_refused(tmp_path: Path) -> None:
    row = (
        '[[check]]\nid = "Q1"\nasks = "a b c"\nformula = "mix.batch.product_in_ml"\ninputs = {}\nexpected = 1\n'
        'unit = "mL"\nkind = "published"\nsource = "UNL"\n'
    )
    file = tmp_path / "one.toml"
    for more, fault in (
        ("", "tolerance"),
        ("exact = true\ntolerance = 1\n", "tolerance"),
        ('exact = true\nby = "x"\n', "library"),
        ("exact = true\ncolour = 1\n", "want"),
        (f"exact = true\n{row}exact = true\n", "one id"),
    ):
        file.write_text(row + more, encoding="utf-8")
        with pytest.raises(ValueError, match=fault):
            read_checks(tmp_path)
    file.write_text(row.replace("published", "hearsay") + "exact = true\n", encoding="utf-8")
    with pytest.raises(ValueError, match="known kind"):
        read_checks(tmp_path)


def test_the_page_of_checks_is_up_to_date() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(CHECKS), "run: python tools/checks.py"


def test_a_change_of_a_check_changes_the_page() -> None:
    assert page([replace(CHECKS[0], said="7 mL"), *CHECKS[1:]]) != page(CHECKS)
