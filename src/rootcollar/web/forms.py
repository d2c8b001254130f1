"""Reading a form: every field as it was typed, and what is wrong with each, so that nothing typed is lost."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Annotated

from fastapi import Depends
from starlette.requests import Request

from rootcollar.kernel.errors import BadInput

__all__ = ["Form", "Typed", "faults_told"]

_MOST_FIELDS = 50_000  # ours: a tally of some thousand rows; the door bounds the bytes


@dataclass(slots=True)
class Form:
    """What was typed, by field, and the faults found in it, by field."""

    typed: Mapping[str, str] = field(default_factory=dict)
    faults: dict[str, str] = field(default_factory=dict)

    def said(self, name: str) -> str:
        """Return what was typed in a field; nothing where it was left out."""
        return self.typed.get(name, "")

    def needed(self, name: str, allowed: str) -> str:
        """Return what was typed in a field; keep a fault where it is empty. allowed: what is wanted, in words."""
        said = self.said(name).strip()
        if not said:
            self.faults[name] = f"Wanted: {allowed}."
        return said


def faults_told(wrong: BadInput) -> dict[str, str]:
    """Return faults in words, by field; "" for what is about no one field."""
    return {one.field: f"Found {one.found}; wanted: {one.allowed}." for one in wrong.faults}


async def _typed(request: Request) -> Form:
    """Return the texts of a form, so that a page itself need not wait for it; files are no texts and are left out."""
    data = await request.form(max_fields=_MOST_FIELDS)
    return Form({name: value for name, value in data.items() if isinstance(value, str)})


Typed = Annotated[Form, Depends(_typed)]
