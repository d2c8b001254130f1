"""What the door answers when it cannot tell: the statuses there are, described, and our errors turned into them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from fastapi.responses import JSONResponse, Response
from pydantic import BaseModel

from rootcollar.kernel.errors import BadInput, NotCleared, NotFound, Refusal, RootcollarError
from rootcollar.web.door_models import Fault, Faults, Missing, Stops
from rootcollar.web.views.answer import without_dashes

__all__ = ["DOOR", "FAULTS", "GUARD", "MISSING", "STOPS", "Statuses", "error_told"]

Statuses = dict[int | str, dict[str, Any]]

DOOR = "/door/"
_PLAIN: Mapping[str, Any] = {"text/plain": {"schema": {"type": "string"}}}
GUARD: Statuses = {
    400: {"description": "The request names another host than this computer.", "content": _PLAIN},
    403: {"description": "The key of this start is missing: open the printed address once.", "content": _PLAIN},
}
MISSING: Statuses = {404: {"model": Missing, "description": "There is nothing of that name, or no property."}}
FAULTS: Statuses = {422: {"model": Faults, "description": "It cannot be used: every fault, with its field."}}
STOPS: Statuses = {409: {"model": Stops, "description": "The label named forbids it: no amount is given."}}


def error_told(error: RootcollarError) -> Response:
    """Return the described answer of an error; what is no fault of the asker goes on as ours."""
    if isinstance(error, NotFound):
        return _json(Missing(what=error.faults[0].found, near=list(error.near)), 404)
    if isinstance(error, NotCleared):
        return _json(Stops(stops=list(error.standing)), 409)
    if isinstance(error, Refusal):
        words = without_dashes(f"{error.limit}. {error.do}")
        return _json(Faults(faults=[Fault(field="", found=error.what, allowed=words)]), 422)
    if isinstance(error, BadInput):
        return _json(Faults(faults=[Fault.model_validate(one) for one in error.faults]), 422)
    raise error


def _json(body: BaseModel, status: int) -> Response:
    return JSONResponse(body.model_dump(mode="json"), status)
