"""docs/rules.md is what the rules themselves say."""

from tools.rules import PAGE, page


def test_the_page_of_the_rules_is_made_from_the_rules() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(), "run tools/rules.py"
