"""The description of the door: each quick question by its own name, with its fields, as the bench has them."""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from typing import Any

from fastapi import FastAPI

from rootcollar.web.bench import Bench, Entry, Question
from rootcollar.web.door_errors import DOOR, FAULTS, GUARD, MISSING
from rootcollar.web.views.answer import without_dashes

__all__ = ["described"]

_FIGURE = f"{DOOR}figure/{{name}}.json"
_ABOUT = (
    "Plan, open questions, facts and quick questions of one property, for its user's own phone and programs on this "
    "computer. It only tells. The label in hand is the law; a line that is not in state `work` is no work."
)


def described(app: FastAPI, bench: Bench) -> Callable[[], dict[str, Any]]:
    """Return what makes the description of the door, once, when it is first asked for."""

    def made() -> dict[str, Any]:
        if app.openapi_schema is None:
            schema = FastAPI.openapi(app)
            schema["info"]["description"] = _ABOUT
            for operations in schema["paths"].values():
                _completed(operations["get"]["responses"])
            any_question = schema["paths"][_FIGURE]["get"]
            for one in bench.questions():
                path = _FIGURE.replace("{name}", one.name)
                schema["paths"][path] = {"get": _operation(any_question, one)}
        assert app.openapi_schema is not None
        return app.openapi_schema

    return made


def _completed(responses: dict[str, Any]) -> None:
    """Describe what the guard, a missing property and faults in its files lead to, where a page has not."""
    for status, told in {**GUARD, **MISSING, **FAULTS}.items():
        content = told.get("content")
        if content is None:
            schema = {"$ref": f"#/components/schemas/{told['model'].__name__}"}
            content = {"application/json": {"schema": schema}}
        responses.setdefault(str(status), {"description": told["description"], "content": content})


def _operation(any_question: dict[str, Any], one: Question) -> dict[str, Any]:
    operation = deepcopy(any_question)
    operation |= {
        "summary": one.words,
        "operationId": f"figure_{one.name.replace('-', '_')}",
        "parameters": [_parameter(entry) for entry in one.entries],
    }
    del operation["responses"]["404"]
    return operation


def _parameter(entry: Entry) -> dict[str, Any]:
    text: dict[str, Any] = {"type": "string"}
    schema = {"choice": {**text, "enum": list(entry.choices)}, "several": {"type": "array", "items": text}}.get(
        entry.kind, text
    )
    about = without_dashes(f"{entry.words}: {entry.hint}" if entry.hint else entry.words)
    return {"name": entry.name, "in": "query", "required": entry.needed, "description": about, "schema": schema}
