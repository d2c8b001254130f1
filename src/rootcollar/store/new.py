"""A new project file, made beside its place and moved there when it is whole."""

from __future__ import annotations

import secrets
from datetime import datetime
from pathlib import Path

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.store.base import holding, writing
from rootcollar.store.entry import CHANCE_BYTES, Draft, sealed
from rootcollar.store.place import beside, new_place, place
from rootcollar.store.schema import make_tables
from rootcollar.store.values import plain_text

__all__ = ["new_file"]


def new_file(path: Path, name: str, now: datetime, chance: bytes = b"") -> Path:
    """Make an empty project file for a property and return its path. chance: CHANCE_BYTES, else drawn.

    Raises BadInput where something lies already, where nothing can be written, or for a name that is none.
    """
    if not name.strip() or not plain_text(name):
        raise BadInput(Fault(repr(name), "the name of a property", field="name"))
    new_place(path)
    # An id of a property is made as that of an entry is.
    mould = Draft("property/1", now, "nobody", "")
    about = {
        "property": sealed(mould, "none", 1, "", chance or secrets.token_bytes(CHANCE_BYTES)).id,
        "name": name.strip(),
    }
    with beside(path) as folder:
        made = folder / "new.gpkg"
        made.touch()
        with holding(made, write=True) as base, writing(base):
            make_tables(base, about, now)
        place(made, path)
    return path
