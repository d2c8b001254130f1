"""Reading the languages: one file of texts each, and beside it plants, rules and words of labels."""

from __future__ import annotations

from rootcollar.kernel.tongue import PlantWords, Tongue
from rootcollar.reference.table import Table

__all__ = ["read_tongue"]


def read_tongue(code: str, texts: Table, plants: Table | None, rules: Table | None, label: Table | None) -> Tongue:
    """Return a language. plants, rules, label: None where it is the language that these are written in anyway.

    Raises ValueError for an empty text, naming file and key.
    """
    names = texts.texts("names")
    note = _text(texts, "note") if texts.has("note") else ""
    groups = {group: _texts(texts.child(group)) for group in texts.left()}
    return Tongue(
        code,
        names,
        {f"{group}.{key}": text for group, said in groups.items() for key, text in said.items()},
        note,
        {key: _plant(plants.child(key)) for key in plants.left()} if plants else {},
        _texts(rules) if rules else {},
        _texts(label.child("words")) if label else {},
        _texts(label.child("fields")) if label else {},
    )


def _texts(table: Table) -> dict[str, str]:
    return {key: _text(table, key) for key in table.left()}


def _text(table: Table, key: str) -> str:
    said = table.text(key)
    if not said.strip():
        raise table.fault(key, "empty")
    return said


def _plant(table: Table) -> PlantWords:
    said = PlantWords(
        _text(table, "name"),
        table.text("leaf"),
        table.text("stem"),
        table.text("thorns"),
        tuple((name, tell) for name, tell in table.take("looks", list)),
    )
    table.close()
    return said
