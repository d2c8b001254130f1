"""A sheet is told in the label's order; what on it contradicts something else is told at its line."""

from dataclasses import replace

import pytest

from rootcollar.jobs.sheet import sheet_doubts, sheet_parts
from rootcollar.shelf import FIELDS, SILENT, Line, Sheet
from tests.shelf.sample import sample_sheet

ROUTES = ("oral", "dermal", "inhalation", "eye", "skin")


def labelled(word: str, *categories: str | None, **lines: object) -> Sheet:
    """Return a sheet with a signal word and categories, None for one not read."""
    says = {f"hazard.category.{one}": said for one, said in zip(ROUTES, categories, strict=False) if said}
    says |= {"hazard.signal_word": word, **{path.replace("__", "."): said for path, said in lines.items()}}
    return Sheet("jug", {path: Line(said) for path, said in says.items()})


@pytest.mark.parametrize(
    ("sheet", "at"),
    [
        (labelled("CAUTION", "III", "III", "IV", "III", "IV"), set()),
        (labelled("CAUTION", "IV", "IV", "IV", "IV", "IV"), set()),  # a word that category IV may have
        (labelled("DANGER", "III", "III", "IV", "I", "IV"), set()),
        (labelled("CAUTION", "III", None, None, "I"), {"hazard.category.eye"}),
        (labelled("none", "III"), {"hazard.category.oral"}),
        (labelled("WARNING", "III", "III", "IV", "III", "IV"), {"hazard.signal_word"}),
        (labelled("WARNING", "III"), set()),  # the worst may be one not read yet
        (labelled("CAUTION"), set()),
        (labelled("CAUTION", identity__epa_reg_no="00000-ZZ-0"), {"identity.epa_reg_no"}),
        (labelled("CAUTION", identity__epa_reg_no="12345-67"), set()),
        (labelled("CAUTION", identity__epa_reg_no="00000-ZZ-0", identity__registration="exempt_25b"), set()),
        (labelled("CAUTION", identity__epa_reg_no=SILENT), set()),
    ],
)
def test_what_contradicts_is_told_at_its_line(sheet: Sheet, at: set[str]) -> None:
    found = sheet_doubts(sheet)
    assert set(found) == at
    assert not any(words[0].islower() for words in found.values())


def test_figures_that_contradict_are_told_at_the_figure() -> None:
    sheet = sample_sheet()
    assert sheet_doubts(sheet) == {}
    denser = replace(sheet, lines={**sheet.lines, "formulation.density_lb_per_gal": Line(19.0)})
    assert set(sheet_doubts(denser)) == {"ingredient.1.ai_lb_per_gal", "ingredient.1.ae_lb_per_gal"}


def test_a_sheet_is_told_whole_and_in_order_with_what_is_unread() -> None:
    parts = sheet_parts(sample_sheet())
    assert [part.key for part in parts][:3] == ["front", "precautions", "first-aid"]
    lines = [line for part in parts for line in part.lines]
    assert {line.state for line in lines} == {"said", "silent", "unread"}
    assert all(line.says == "not read yet" for part in parts for line in part.unread)
    empty = sheet_parts(Sheet("jug", {}))
    assert {line.state for part in empty for line in part.lines} == {"unread"}
    said = {line.address for part in empty for line in part.lines}
    assert {path for path in FIELDS if not path.startswith(("ingredient", "site", "method."))} <= said
