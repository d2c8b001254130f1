"""The door: what it tells is as described, nothing else and nothing more, however it is asked."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click
import pytest
from click.testing import CliRunner
from hypothesis import HealthCheck, given, settings
from starlette.testclient import TestClient

if TYPE_CHECKING:
    import schemathesis

from rootcollar.cli.bench import ClickBench
from rootcollar.cli.figure_commands import FIGURES, figure
from rootcollar.cli.main import cli
from rootcollar.exchange import write_demo
from rootcollar.web import Desk, make_app
from rootcollar.web.door_models import Answer, Plan
from rootcollar.web.guard import COOKIE
from tests.web.conftest import HOST, KEY, TODAY

Client = Callable[[Path], TestClient]
IN = {"host": HOST, "cookie": f"{COOKIE}={KEY}"}
TOLD = ["/door/plan.json", "/door/questions.json", "/door/facts/rhca3.json", "/door/figure.json"]
TOO_STRONG = {
    "percent": "31", "total": "2.5 gal", "carrier": "oil", "sheet": "triclopyr-ester-4-ec", "method": "basal-bark"
}  # fmt: skip


@pytest.fixture(scope="session")
def described(tmp_path_factory: pytest.TempPathFactory) -> Iterator[schemathesis.BaseSchema]:
    """The door over the demo, as it describes itself."""
    folder = tmp_path_factory.mktemp("door") / "hobbin-wood"
    write_demo(folder, TODAY)
    app = make_app(Desk(folder, lambda: TODAY), ClickBench(), KEY, frozenset({HOST}))
    import schemathesis  # here, because loading it takes seconds and only this slow test wants it
    from schemathesis.config import SchemathesisConfig

    config = SchemathesisConfig.from_dict({"base-url": f"http://{HOST}"})
    yield schemathesis.openapi.from_asgi("/door/openapi.json", app, headers=IN, config=config)


@pytest.mark.slow
def test_every_answer_is_as_described_whatever_is_asked(described: schemathesis.BaseSchema) -> None:
    """No fault of ours, no status, type or shape that is not described; what is nonsense may be refused."""
    from schemathesis.specs.openapi.checks import positive_data_acceptance

    calm = settings(max_examples=20, derandomize=True, deadline=None, database=None, suppress_health_check=HealthCheck)

    met = set[int]()

    def asked(case: schemathesis.Case) -> None:
        met.add(case.call_and_validate(headers=IN, excluded_checks=[positive_data_acceptance]).status_code)

    operations = [one.ok() for one in described.get_all_operations()]
    assert len(operations) >= len(TOLD) + 1 + len(FIGURES)
    for one in operations:
        calm(given(case=one.as_strategy())(asked))()
    assert {200, 404, 422} <= met


@pytest.mark.parametrize("path", TOLD)
def test_it_only_tells(path: str, demo: TestClient) -> None:
    assert demo.get(path).status_code == 200
    for method in ("POST", "PUT", "PATCH", "DELETE"):
        assert demo.request(method, path).status_code == 405


def test_nothing_but_the_door_is_described_and_all_of_it_by_sentences(demo: TestClient) -> None:
    schema = demo.get("/door/openapi.json").json()
    assert all(path.startswith("/door/") for path in schema["paths"])
    assert {f"/door/figure/{name}.json" for name in FIGURES} <= set(schema["paths"])
    for path, told in schema["paths"].items():
        assert set(told) == {"get"}
        assert told["get"]["description"].endswith(".")
        assert {"200", "400", "403", "422"} <= set(told["get"]["responses"]), path
    assert all(one.get("description", "").endswith(".") for one in schema["components"]["schemas"].values())


def test_the_plan_is_that_of_the_pages(demo: TestClient) -> None:
    plan = Plan.model_validate(demo.get("/door/plan.json").json())
    listed = re.findall(r'href="/choose/([a-z-]+)">', demo.get("/choose").text)
    assert [one.key for one in plan.units] == [key for key in listed if key not in {"questions", "plans"}]
    letters = {one.letter for one in plan.mixes}
    for unit in plan.units:
        page = demo.get(f"/choose/{unit.key}").text
        for line in unit.lines:
            assert f'id="{line.key}"' in page
            assert (line.mix in letters) == bool(line.mix)
    assert plan.demo


def test_only_a_line_of_work_has_amounts(demo: TestClient) -> None:
    lines = [line for unit in demo.get("/door/plan.json").json()["units"] for line in unit["lines"]]
    levels = {"work": {"warn"}, "held": {"warn", "ask"}, "struck": {"warn", "ask", "stop"}, "left": {"stop"}}
    assert {"work", "held"} <= {line["state"] for line in lines}
    for line in lines:
        assert {one["level"] for one in line["verdicts"]} <= levels[line["state"]]
        assert (line["minutes"] is not None) == (line["state"] == "work")
        assert (line["mix_ml"] is not None) == (line["state"] == "work" and line["mix"] != "")
        for told in filter(None, (line["stems"], line["mix_ml"], line["minutes"])):
            assert 0 <= told["low"] <= told["high"]


def test_every_open_question_of_the_page_is_told(demo: TestClient) -> None:
    told = demo.get("/door/questions.json").json()["questions"]
    assert demo.get("/choose/questions").text.count('class="question"') == len(told) > 0


def test_facts_are_those_of_the_terminal(demo: TestClient) -> None:
    said = json.loads(CliRunner().invoke(cli, ["facts", "rhca3", "--json"]).stdout)["pages"][0]
    told = demo.get("/door/facts/rhca3.json").json()["pages"][0]
    for same in ("title", "opening", "sections", "sources"):
        assert told[same] == said[same]
    assert [one["words"] for one in told["facts"]] == [one["words"] for one in said["facts"]]
    assert [one["figure"]["mark"] for one in told["facts"]] == [one["mark"] for one in said["facts"]]


@pytest.mark.parametrize(("name", "near"), [("buckthron", "common buckthorn"), ("qqqq", "")])
def test_a_name_that_is_not_known_is_answered_with_near_ones(name: str, near: str, demo: TestClient) -> None:
    said = demo.get(f"/door/facts/{name}.json")
    assert said.status_code == 404
    assert said.json()["near"][:1] == ([near] if near else [])


def test_an_answer_is_that_of_the_terminal_with_its_working(demo: TestClient) -> None:
    said = json.loads(CliRunner().invoke(cli, ["figure", "mix", "--percent", "3", "--total", "3 gal", "--json"]).stdout)
    told = demo.get("/door/figure/mix.json", params={"percent": "3", "total": "3 gal"}).json()
    for same in ("says", "value", "unit", "details", "figures", "working", "sources", "note"):
        assert told[same] == said[same]


@pytest.mark.parametrize("name", FIGURES)
def test_the_example_of_every_question_is_answered_as_described(name: str, demo: TestClient) -> None:
    """The example that the terminal's help gives, with its options as fields."""
    command = figure.get_command(click.Context(figure), name)
    assert command is not None
    example = re.search(r"Example: rootcollar figure (.*)", command.help or "")
    assert example is not None
    context = command.make_context(name, shlex.split(example[1])[1:])
    typed = {field: said for field, said in context.params.items() if said not in (None, (), False)}
    said = demo.get(f"/door/figure/{name}.json", params=typed)
    assert said.status_code == 200, said.text
    assert Answer.model_validate(said.json()).says


@pytest.mark.parametrize(
    ("told", "field", "allowed"),
    [
        ({"percent": "3", "total": "3 oz"}, "total", "fl oz, a volume"),
        ({"percent": "3", "totl": "3 gal"}, "totl", "one of the fields"),
        ({**TOO_STRONG, "sheet": "../../ground"}, "sheet", "one of the sheets"),
        ({"percent": "2", "total": "4 gal", "tank": "-1 gal"}, "tank", "0 or more"),
    ],
)
def test_what_cannot_be_used_is_told_with_its_field(
    told: dict[str, str], field: str, allowed: str, demo: TestClient
) -> None:
    said = demo.get("/door/figure/mix.json", params=told)
    assert said.status_code == 422
    fault = said.json()["faults"][0]
    assert fault["field"] == field
    assert allowed in fault["allowed"]


def test_what_the_label_forbids_gives_no_amount(demo: TestClient) -> None:
    said = demo.get("/door/figure/mix.json", params=TOO_STRONG)
    assert said.status_code == 409
    assert "31% is above the label" in said.json()["stops"][0]
    assert set(said.json()) == {"stops"}


def test_a_fault_in_a_file_is_told_with_its_row(woods: Path, client_of: Client) -> None:
    tally = woods / "tally.csv"
    tally.write_text(tally.read_text("utf-8").replace("bench,common buckthorn", "bench,oak", 1), "utf-8")
    said = client_of(woods).get("/door/plan.json")
    assert said.status_code == 422
    assert [one["file"].endswith("tally.csv") and bool(one["row"]) for one in said.json()["faults"]] == [True]


def test_without_a_property_there_is_no_plan(tmp_path: Path, client_of: Client) -> None:
    client = client_of(tmp_path / "none")
    assert client.get("/door/plan.json").status_code == 404
    assert client.get("/door/facts/rhca3.json").status_code == 200


def test_what_the_door_does_not_have_is_said_as_json(demo: TestClient) -> None:
    said = demo.get("/door/nothing")
    assert said.status_code == 404
    assert said.json() == {"what": "There is no such page.", "near": []}
