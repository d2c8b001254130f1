"""What holds for every test: Hypothesis repeats itself, and a skip is told, or forbidden by --no-skips."""

from collections.abc import Generator
from typing import Any

import pytest
from hypothesis import settings

settings.register_profile("ci", derandomize=True, deadline=None)
settings.register_profile("quick", settings.get_profile("ci"), max_examples=20)  # a fifth, see tests/draws.py
settings.load_profile("ci")

Report = pytest.TestReport | pytest.CollectReport


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option that `run.py test --all` gives."""
    parser.addoption("--no-skips", action="store_true", help="a test that cannot run here is a failure")


def reason(report: Report) -> str:
    """Return why a test was skipped."""
    why = report.longrepr[2] if isinstance(report.longrepr, tuple) else report.longrepr
    return str(why).removeprefix("Skipped: ")


def held_to(report: Report, config: pytest.Config) -> Report:
    """Return the report, turned into a failure if it is a skip and skips are forbidden."""
    if config.getoption("--no-skips") and report.skipped and not hasattr(report, "wasxfail"):
        report.longrepr = f"{reason(report)}, but with --no-skips nothing may be skipped"
        report.outcome = "failed"
    return report


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, pytest.TestReport, Any]:
    """Hold a test to --no-skips."""
    return held_to((yield), item.config)


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_make_collect_report(collector: pytest.Collector) -> Generator[None, pytest.CollectReport, Any]:
    """Hold a whole file of tests to --no-skips."""
    return held_to((yield), collector.config)


def pytest_terminal_summary(terminalreporter: Any) -> None:
    """List once each why tests could not run on this machine."""
    skipped = [reason(report) for report in terminalreporter.stats.get("skipped", [])]
    for why in sorted(set(skipped)):
        terminalreporter.write_line(f"not run here: {why} ({skipped.count(why)})")
