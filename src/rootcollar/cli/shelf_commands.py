"""The group `shelf`: typing a label, showing what it says, and reading it a second time."""

from __future__ import annotations

from collections.abc import Mapping

import click

from rootcollar.cli.main import LazyGroup, Listed

__all__ = ["SHELF", "shelf"]

SHELF: Mapping[str, Listed] = {
    "add": Listed("rootcollar.cli.shelf_add:add", "Type what the label of a jug says, line by line in its own order."),
    "show": Listed("rootcollar.cli.shelf_show:show", "Show what the labels on the shelf say and what is not read yet."),
    "second": Listed(
        "rootcollar.cli.shelf_second:second", "Type the lines on which most hangs a second time, by another person."
    ),
}


@click.group(cls=LazyGroup, listed=SHELF)
def shelf() -> None:
    """Type the label of a jug, show it, read it a second time.

    A sheet holds what the label on your own jug says. What nobody has read yet is asked about; it is never assumed.

    \b
    Example: rootcollar shelf add my-woods
    """
