"""From a table as typed to a sheet, with every fault found in one pass."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.shelf.fields import FIELDS, METHODS, Field, fields_of
from rootcollar.shelf.sheet import SILENT, Active, Line, Sheet, SiteLine
from rootcollar.shelf.values import NotAllowed, near, read_value

__all__ = ["SCHEMA", "parse_sheet"]

SCHEMA = "label-sheet/1"


def parse_sheet(key: str, table: Mapping[str, Any], file: str = "") -> Sheet:
    """Return the sheet typed in a table (as read from TOML).

    key: the sheet's name on the shelf. file: where it was typed, for the faults. A block said to be "silent" makes
    all its lines silent; `page` in a block goes with its lines.
    Raises BadInput with all faults: unknown keys with the near ones, wrong kinds, percents above 100, days that do
    not exist, words not among the choices, a low above its high.
    """
    reading = _Reading(file)
    rest = {name: value for name, value in table.items() if name not in {"sheet", "ingredient", "site", "method"}}
    if table.get("sheet") != SCHEMA:
        reading.fault("sheet", table.get("sheet", "nothing"), f'sheet = "{SCHEMA}" as the first line')
    plain = {path: row for path, row in FIELDS.items() if not row.in_method and "." in path}
    reading.known = {path: row for path, row in plain.items() if path.split(".")[0] not in {"ingredient", "site"}}
    lines = dict(reading.block(rest))
    for name in ("ingredient", "site"):
        if name in table:
            lines[name] = reading.rows(name, table[name])
    methods = reading.methods(table["method"]) if "method" in table else {}
    reading.rising(lines)
    for kind, block in methods.items():
        reading.rising(block, f"method {kind} ")
    if reading.faults:
        raise BadInput(*reading.faults)
    return Sheet(key, lines, methods)


@dataclass(slots=True)
class _Reading:
    """One pass over a table. known: the lines the present block can hold, by path. faults: found so far."""

    file: str
    known: Mapping[str, Field] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)

    def fault(self, path: str, found: str, allowed: str) -> None:
        self.faults.append(Fault(str(found), allowed, file=self.file, field=path))

    def block(self, table: Mapping[str, Any], path: str = "", where: str = "", page: str = "") -> Iterator[_Read]:
        """Yield (path, line) for everything said in a block and the blocks inside it."""
        page = self._page(table, where + path) or page
        for name, raw in table.items():
            if name == "page":
                continue
            at = f"{path}.{name}" if path else name
            inside = [one for one in self.known if one.startswith(f"{at}.")]
            if at in self.known:
                yield from self._line(at, raw, where, page)
            elif inside and raw == "silent":
                yield from ((one, Line(SILENT, page)) for one in inside)
            elif inside and isinstance(raw, Mapping):
                yield from self.block(raw, at, where, page)
            elif inside:
                names = ", ".join(one.removeprefix(f"{at}.") for one in inside)
                self.fault(where + at, _shown(raw), f'a block of {names}, or "silent"')
            else:
                self.fault(where + at, f"the key {name}", near(at, _siblings(path, self.known)))

    def rows(self, name: str, raw: object) -> Line[Any]:
        """Return the line of a list of blocks: [[ingredient]] or [[site]]."""
        if raw == "silent":
            return Line(SILENT)
        if not isinstance(raw, list) or not raw or not all(isinstance(one, Mapping) for one in raw):
            self.fault(name, _shown(raw), f'blocks headed [[{name}]], or {name} = "silent"')
            return Line(())
        self.known = _within(name)
        says, pages = [], []
        for number, row in enumerate(raw, start=1):
            read = dict(self.block(row, where=f"{name} {number} "))
            said = {one: None if line.says is SILENT else line.says for one, line in read.items()}
            unread = frozenset(self.known.keys() - read.keys())
            make: Any = Active if name == "ingredient" else SiteLine
            says.append(make(**{_python(one): value for one, value in said.items()}, unread=unread))
            pages.append(self._page(row, name))
        return Line(tuple(says), ", ".join(dict.fromkeys(one for one in pages if one)))

    def methods(self, raw: object) -> dict[str, dict[str, Line[Any]]]:
        """Return the blocks of directions by method kind."""
        if not isinstance(raw, list) or not all(isinstance(one, Mapping) for one in raw):
            self.fault("method", _shown(raw), "blocks headed [[method]], one for each kind of method")
            return {}
        found: dict[str, dict[str, Line[Any]]] = {}
        for number, row in enumerate(raw, start=1):
            kind = row.get("kind")
            if kind not in METHODS:
                self.fault(f"method {number} kind", _shown(kind), ", ".join(METHODS))
                continue
            if kind in found:
                self.fault(f"method {number} kind", _shown(kind), "one block for each kind of method")
            self.known = {path: FIELDS[f"method.{path}"] for path in fields_of(kind)}
            rest = {name: value for name, value in row.items() if name != "kind"}
            found[kind] = dict(self.block(rest, where=f"method {kind} "))
        return found

    def rising(self, lines: Mapping[str, Line[Any]], where: str = "") -> None:
        """Find every low above its high."""
        for path, line in lines.items():
            high = lines.get(path.removesuffix(".low") + ".high") if path.endswith(".low") else None
            if high is None or line.says is SILENT or high.says is SILENT or line.says <= high.says:
                continue
            self.fault(where + path, f"{line.says:g}", f"at most the high of {high.says:g}")

    def _line(self, path: str, raw: object, where: str, page: str) -> Iterator[_Read]:
        if raw == "silent":
            yield path, Line(SILENT, page)
            return
        try:
            yield path, Line(read_value(self.known[path], raw), page)
        except NotAllowed as wrong:
            self.fault(where + path, _shown(raw), str(wrong))

    def _page(self, table: Mapping[str, Any], where: str) -> str:
        page = table.get("page", "")
        if isinstance(page, bool) or not isinstance(page, (int, str)):
            self.fault(f"{where} page".strip(), _shown(page), "a page number or a text in quotes")
            return ""
        return str(page)


_Read = tuple[str, Line[Any]]


def _within(name: str) -> dict[str, Field]:
    return {path.removeprefix(f"{name}."): row for path, row in FIELDS.items() if path.startswith(f"{name}.")}


def _siblings(path: str, known: Mapping[str, Field]) -> list[str]:
    """Return the paths of what can stand in a block: its lines and the blocks inside it."""
    start = f"{path}." if path else ""
    inside = (one.removeprefix(start).split(".")[0] for one in known if one.startswith(start))
    return [start + one for one in dict.fromkeys(inside)] + ([] if path else ["ingredient", "site", "method"])


def _python(name: str) -> str:
    return "class_" if name == "class" else name


def _shown(found: object) -> str:
    """Return a value near enough to how it stands in the file to be recognised."""
    return "nothing" if found is None else json.dumps(found, default=str, ensure_ascii=False)
