"""The doctor: is the file whole, is it what map programs expect, is the journal as it was written?

It changes nothing; only a change that was cut off is taken back, as whenever a file is opened. A fault is something
lost, altered or unreadable; a note is something worth knowing. Where the last that a device said was cut off cleanly,
only the device itself or a backup can tell.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from rootcollar.kernel.errors import BadInput, Refusal
from rootcollar.store.base import Connection, holding, may_write, reading, told
from rootcollar.store.blob import SRS
from rootcollar.store.chain import broken, gaps, twice
from rootcollar.store.container import APPLICATION_ID, GEOPACKAGE_VERSION, box_of
from rootcollar.store.ground import read_layer
from rootcollar.store.journal import read_journal
from rootcollar.store.layers import KEPT_BY_US, LAYERS, Layer
from rootcollar.store.private import PRIVATE
from rootcollar.store.project_file import checked_words
from rootcollar.store.schema import SCHEMA, TRIGGERS

__all__ = ["Finding", "doctor", "sound"]

_MOST_TOLD = 20  # ours: faults of one kind that are told one by one


@dataclass(frozen=True, slots=True)
class Finding:
    """What the doctor found, as a sentence."""

    level: Literal["fault", "note"]
    says: str


def doctor(path: Path) -> tuple[Finding, ...]:
    """Return all that is found in a project file, faults first.

    Raises BadInput for a file that is none, Refusal when another program holds it.
    """
    with holding(path, write=path.is_file() and may_write(path)) as base:
        words = checked_words(path, base)
        if int(words["schema"]) > SCHEMA:
            raise Refusal(
                f"looking at {path}",
                limit=f"a newer version made it (form {words['schema']}; this one knows {SCHEMA})",
                do="Use that version.",
            )
        found = [*_whole(words)]
        try:
            with told(path), reading(base):
                found += _file(base)
                for layer in LAYERS.values():
                    found += _layer(base, layer)
                found += _journal(base, whole="left_out" not in words)
        except BadInput as wrong:  # too damaged to look further
            found.append(Finding("fault", str(wrong)))
    return tuple(sorted(found, key=lambda one: one.level))


def sound(findings: Iterable[Finding]) -> bool:
    """Return whether no fault is among the findings."""
    return all(one.level != "fault" for one in findings)


def _file(base: Connection) -> Iterator[Finding]:
    for line in base.execute(f"PRAGMA integrity_check({_MOST_TOLD})"):
        if line[0] != "ok":
            yield Finding("fault", f"the file is damaged: {line[0]}")
    for line in base.execute("PRAGMA foreign_key_check"):
        yield Finding("fault", f"table {line[0]} names something in {line[2]} that is not there")
    for word, wanted in (("application_id", APPLICATION_ID), ("user_version", GEOPACKAGE_VERSION)):
        found = base.execute(f"PRAGMA {word}").fetchone()[0]
        if found != wanted:
            yield Finding("note", f"the file's {word} is {found}, we wrote {wanted}: another program has changed it")
    there = dict(base.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'"))
    for name, text in TRIGGERS.items():
        if _plain(there.get(name, "")) != _plain(text):
            yield Finding("fault", f"the guard {name} is gone or altered")


def _plain(text: str) -> str:
    return " ".join(text.split())


def _whole(words: dict[str, str]) -> Iterator[Finding]:
    if words.get("left_out"):
        yield Finding("note", f"this copy leaves out: {words['left_out']}")


def _layer(base: Connection, layer: Layer) -> Iterator[Finding]:
    types = {name: kind for _, name, kind, *_ in base.execute(f'PRAGMA table_info("{layer.name}")')}
    wanted = {"id": "INTEGER", "geom": layer.shape}
    wanted |= {column.name: column.kind for column in (*KEPT_BY_US, *layer.columns)}
    wrong = [name for name, kind in wanted.items() if types.get(name, "").upper() != kind]
    for name in wrong:
        yield Finding("fault", f"layer {layer.name}: column {name} is {types.get(name, 'gone')}, not {wanted[name]}")
    for name in types.keys() - wanted.keys():
        yield Finding("note", f"layer {layer.name}: column {name} is not ours; it is left as it is, and not read")
    listed = base.execute(
        "SELECT geometry_type_name, g.srs_id, c.data_type, min_x, min_y, max_x, max_y FROM gpkg_geometry_columns g"
        " JOIN gpkg_contents c USING (table_name) WHERE table_name = ? AND column_name = 'geom'",
        (layer.name,),
    ).fetchone()
    if listed is None or listed[:3] != (layer.shape, SRS, "features"):
        yield Finding("fault", f"layer {layer.name}: not listed for map programs as what it is")
    if wrong:
        return
    yield from _rows(base, layer)
    if listed is not None and listed[3:] != box_of(base, layer.name):
        yield Finding("note", f"layer {layer.name}: the box around it is out of date until the next change is closed")


def _rows(base: Connection, layer: Layer) -> Iterator[Finding]:
    try:
        rows = read_layer(base, layer)
    except BadInput as wrong:
        yield from _few(("fault", str(fault)) for fault in wrong.faults)
        return
    yield from _few(
        (
            "note",
            f"layer {layer.name}, {row.key}: private says {row.values['private']!r}, which is left out of every copy",
        )
        for row in rows
        if row.values.get("private", next(iter(PRIVATE))) not in PRIVATE
    )
    kinds = ((row.key, row.shape.geom_type.upper()) for row in rows if row.shape is not None)
    yield from _few(
        ("fault", f"layer {layer.name}, {key}: a {kind}, not a {layer.shape}")
        for key, kind in kinds
        if layer.shape not in ("GEOMETRY", kind)
    )


def _journal(base: Connection, *, whole: bool) -> Iterator[Finding]:
    try:
        entries = read_journal(base)
    except BadInput as wrong:
        yield Finding("fault", str(wrong))
        return
    yield from _few(("fault", text) for text in broken(entries))
    empty = (f"entry {one.seq} of {one.device} has no words left" for one in entries if whole and one.body is None)
    yield from _few(("fault", text) for text in empty)
    yield from _few(("note", text) for text in twice(entries))
    yield from _few(("note", str(gap)) for gap in gaps(entries))


def _few(told: Iterable[tuple[Literal["fault", "note"], str]]) -> Iterator[Finding]:
    """Yield findings one by one, and how many more there are."""
    every = [Finding(*one) for one in told]
    yield from every[:_MOST_TOLD]
    if len(every) > _MOST_TOLD:
        yield Finding(every[-1].level, f"and {len(every) - _MOST_TOLD} more of this kind")
