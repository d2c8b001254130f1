"""Our tables in the file, as of this version: seven layers, the journal, and what the file says of itself.

The version stands in `rootcollar_file`, one word a row. A later version adds tables and columns; it takes none away.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from rootcollar.store.base import Connection
from rootcollar.store.container import list_layer, list_table, make_container
from rootcollar.store.layers import KEPT_BY_US, LAYERS, Layer
from rootcollar.store.values import moment_text

__all__ = ["JOURNAL_COLUMNS", "SCHEMA", "TRIGGERS", "make_tables", "set_triggers"]

SCHEMA = 1

JOURNAL_COLUMNS = (
    "id", "kind", "about", "device", "seq", "said_at", "by", "body", "salt", "seal", "prev", "hash",
)  # fmt: skip

_FILE = """CREATE TABLE rootcollar_file (
    id INTEGER NOT NULL PRIMARY KEY, word TEXT NOT NULL UNIQUE, value TEXT NOT NULL)"""

# `n` is the order of arrival in this one file; a number is never given twice.
_JOURNAL = """CREATE TABLE journal (
    n INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, id TEXT NOT NULL, kind TEXT NOT NULL, about TEXT,
    device TEXT NOT NULL, seq INTEGER NOT NULL CHECK (seq >= 1), said_at DATETIME NOT NULL, "by" TEXT NOT NULL,
    body TEXT, salt TEXT, seal TEXT NOT NULL, prev TEXT NOT NULL, hash TEXT NOT NULL UNIQUE,
    CHECK ((body IS NULL) = (salt IS NULL)))"""

_BY_DEVICE = "CREATE INDEX journal_device ON journal (device, seq)"


def _layer_triggers(layer: str) -> Mapping[str, str]:
    """Return the triggers that keep key and version when a map program edits; our own changes set both themselves."""
    stamp = "changed_at = strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), changed_by = 'another program'"
    key = f"'{layer}-' || lower(hex(randomblob(8)))"
    return {
        f"{layer}_key": f'''CREATE TRIGGER "{layer}_key" AFTER INSERT ON "{layer}" WHEN NEW.key IS NULL
            BEGIN UPDATE "{layer}" SET key = {key}, version = 2, {stamp} WHERE id = NEW.id; END''',
        f"{layer}_version": f'''CREATE TRIGGER "{layer}_version" AFTER UPDATE ON "{layer}"
            WHEN NEW.version IS NULL OR NEW.version <= OLD.version
            BEGIN UPDATE "{layer}" SET version = OLD.version + 1, {stamp} WHERE id = NEW.id; END''',
    }


# The last one, because "insert or replace" would take a row away without asking the second.
TRIGGERS: Mapping[str, str] = {
    "journal_no_change": """CREATE TRIGGER journal_no_change BEFORE UPDATE ON journal
        BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END""",
    "journal_no_removal": """CREATE TRIGGER journal_no_removal BEFORE DELETE ON journal
        BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END""",
    "journal_no_replacing": """CREATE TRIGGER journal_no_replacing BEFORE INSERT ON journal
        WHEN EXISTS (SELECT 1 FROM journal WHERE hash = NEW.hash OR n = NEW.n)
        BEGIN SELECT RAISE(ABORT, 'the journal is only added to'); END""",
} | {name: text for layer in LAYERS for name, text in _layer_triggers(layer).items()}


def make_tables(base: Connection, about: Mapping[str, str], now: datetime) -> None:
    """Make everything in a new, empty file. about: words of the file beside its version, such as its name."""
    make_container(base)
    base.execute(_FILE)
    words = {"schema": str(SCHEMA), "made_at": moment_text(now), **about}
    base.executemany("INSERT INTO rootcollar_file (word, value) VALUES (?, ?)", words.items())
    base.execute(_JOURNAL)
    base.execute(_BY_DEVICE)
    list_table(base, "rootcollar_file", "what the file says of itself; leave it as it is", now)
    list_table(base, "journal", "what was said and done; it is only added to", now)
    for layer in LAYERS.values():
        base.execute(_layer_table(layer))
        list_layer(base, layer, now)
    set_triggers(base)


def set_triggers(base: Connection) -> None:
    """Set every trigger that is not set."""
    there = {name for (name,) in base.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'")}
    for name, text in TRIGGERS.items():
        if name not in there:
            base.execute(text)


def _layer_table(layer: Layer) -> str:
    more = {"key": "UNIQUE", "version": "NOT NULL DEFAULT 1"}
    columns = [
        "id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL",
        f"geom {layer.shape}",
        *(f'"{column.name}" {column.kind} {more.get(column.name, "")}'.strip() for column in KEPT_BY_US),
        *(f'"{column.name}" {column.kind}' for column in layer.columns),
    ]
    return f'CREATE TABLE "{layer.name}" ({", ".join(columns)})'
