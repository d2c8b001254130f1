"""What a copy that is sent can leave out, and how: rows go, entries stay in the chain without their words."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from rootcollar.store.base import Connection
from rootcollar.store.layers import LAYERS
from rootcollar.store.schema import set_triggers

__all__ = ["PRIVATE", "Private", "leave_out"]


@dataclass(frozen=True, slots=True)
class Private:
    """One thing that can be left out. kinds: the kinds of entries that hold it, without version.

    rows: what must hold of a row, beside its own word in the column `private`, for it to be one of these.
    """

    says: str
    kinds: tuple[str, ...] = ()
    rows: str = "0"


# Whoever writes such a thing writes it as an entry of its own, of a kind named here, so that it can go without others.
PRIVATE: Mapping[str, Private] = {
    "rare_plants": Private("where rare plants stand", ("rare_plant",)),
    "licences": Private("numbers of licences and certificates", ("licence",)),
    "medical": Private("days of medical looks and of respirator fits", ("medical",)),
    "neighbours": Private("what lies beyond the line, and whose it is", ("neighbour",), "own = 0"),
}

_WITH_OWN = frozenset({"water", "way", "mark"})
_WITHHELD = "rootcollar_withheld"


def leave_out(base: Connection, words: Collection[str]) -> None:
    """Take out all that these words of PRIVATE name, and write in the file that it was, within one change.

    Entries about such a row or such an entry, amendments of it among them, lose their words too. A row whose `private`
    is none of the words, as somebody may have typed it in a map program, is taken out whatever is named.
    """
    base.execute(f"CREATE TEMP TABLE {_WITHHELD} (about TEXT NOT NULL PRIMARY KEY)")
    for word in words:
        for layer in LAYERS:
            _rows_out(base, layer, word)
        for kind in PRIVATE[word].kinds:
            base.execute(f"INSERT OR IGNORE INTO {_WITHHELD} SELECT id FROM journal WHERE kind GLOB ?", (f"{kind}/*",))
    _follow(base)
    base.execute("DROP TRIGGER journal_no_change")
    base.execute(f"UPDATE journal SET body = NULL, salt = NULL WHERE id IN (SELECT about FROM {_WITHHELD})")
    base.execute(f"DROP TABLE {_WITHHELD}")
    set_triggers(base)
    base.execute(
        "INSERT INTO rootcollar_file (word, value) VALUES ('left_out', ?)"
        " ON CONFLICT (word) DO UPDATE SET value = excluded.value",
        (" ".join(sorted(words)),),
    )


def _rows_out(base: Connection, layer: str, word: str) -> None:
    rows = PRIVATE[word].rows if layer in _WITH_OWN else "0"
    known = ", ".join(f"'{one}'" for one in PRIVATE)
    which = f'"{layer}" WHERE private = ? OR private NOT IN ({known}) OR {rows}'
    base.execute(f"INSERT OR IGNORE INTO {_WITHHELD} SELECT ? || '/' || key FROM {which}", (layer, word))
    base.execute(f"DELETE FROM {which}", (word,))


def _follow(base: Connection) -> None:
    """Add what is about something withheld, and what is about that, until nothing more is."""
    more = f"INSERT OR IGNORE INTO {_WITHHELD} SELECT id FROM journal WHERE about IN (SELECT about FROM {_WITHHELD})"
    while base.execute(more).rowcount > 0:
        pass
