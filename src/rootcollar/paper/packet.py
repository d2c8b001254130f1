"""Setting a packet in type: its texts go to the sheets as data, the sheets lay them out."""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import UTC, date, datetime, time
from functools import lru_cache
from pathlib import Path
from typing import Any

import typst

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import read
from rootcollar.paper.letters import FONTS, printable
from rootcollar.work.packet import Packet

__all__ = ["PAPERS", "render_packet", "render_picture"]

PAPERS = ("us-letter", "a4")
_SHEETS = Path(__file__).parent / "sheets"
_SCREEN_PPI = 110  # ours: a page reads on a screen, and is made in a moment
_TOO_FULL = "the day sheet does not fit one page"


def render_packet(packet: Packet, *, made_on: date, paper: str = "us-letter") -> bytes:
    """Return a packet as the bytes of a PDF/UA-1, equal for equal input.

    made_on: the day written into the file. paper: one of `PAPERS`.
    Raises Refusal when the paper is unknown, or when page one cannot hold the day sheet even shortened.
    """
    pdf: bytes = _set(packet, made_on, paper, pdf_standards=["ua-1"])
    return pdf


def render_picture(packet: Packet, *, made_on: date, paper: str = "us-letter") -> bytes:
    """Return page one of a packet alone as the bytes of a PNG, to be looked at on a screen.

    Raises Refusal as `render_packet` does.
    """
    pages: bytes | list[bytes] = _set(packet, made_on, paper, only="day", format="png", ppi=_SCREEN_PPI)
    return pages if isinstance(pages, bytes) else pages[0]


def _set(packet: Packet, made_on: date, paper: str, only: str = "", **how: Any) -> Any:
    """Return what typst makes of the sheets. only: "day" for the day sheet alone; how: what typst shall make."""
    if paper not in PAPERS:
        raise Refusal(
            f"paper {paper!r}", limit=f"sheets are laid out for {' and '.join(PAPERS)}", do="Choose one of them"
        )
    unit_m = read(f"1 {packet.day.sketch.measure}").amount
    data = {"packet": _printable(asdict(packet)), "unit_m": unit_m, "paper": paper}
    try:
        return typst.compile(
            _sheets(),
            sys_inputs={"data": json.dumps(data), "only": only},
            font_paths=[str(FONTS)],
            ignore_system_fonts=True,
            timestamp=int(datetime.combine(made_on, time(), tzinfo=UTC).timestamp()),
            **how,
        )
    except typst.TypstError as fault:
        if _TOO_FULL in str(fault):
            raise Refusal("day sheet", limit=_TOO_FULL, do="Plan fewer lines of work for one day") from fault
        raise


def _printable(value: Any) -> Any:
    """Return the fields of a packet with every text in letters our type has."""
    if isinstance(value, str):
        return printable(value)
    if isinstance(value, dict):
        return {name: _printable(one) for name, one in value.items()}
    if isinstance(value, list | tuple):
        return [_printable(one) for one in value]
    return value


@lru_cache(maxsize=1)
def _sheets() -> Any:
    """Return the sheets by file name, the packet's own as the main one (typst's own types do not know of this form)."""
    sheets = {path.name: path.read_bytes() for path in sorted(_SHEETS.glob("*.typ"))}
    return {"main": sheets.pop("packet.typ"), **sheets}
