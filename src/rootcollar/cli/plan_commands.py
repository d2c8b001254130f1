"""demo, new, choose, prepare: the commands that read and write a property's folder."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path
from typing import Any

import click

from rootcollar.cli.show import emit
from rootcollar.kernel.verdict import Level

__all__ = ["choose", "demo", "new", "prepare"]

_FOLDER = click.argument("folder", type=click.Path(path_type=Path))
_JSON = click.option("--json", "as_json", is_flag=True, help="Print one JSON object instead of text.")
_ON = click.option("--on", "on", metavar="YYYY-MM-DD", help="Weigh the plan for this day instead of today.")


@click.command()
@_FOLDER
@_JSON
def new(folder: Path, as_json: bool) -> None:
    """Write commented templates for a property into a new FOLDER.

    \b
    Example: rootcollar new my-woods
    """
    from rootcollar.exchange import new_folder

    new_folder(folder)
    files = sorted(str(one.relative_to(folder)) for one in folder.rglob("*") if one.is_file())
    lines = [
        f"Wrote {len(files)} files into {folder}:",
        *(f"   {one}" for one in files),
        "Fill in ground.toml and tally.csv first, then a label sheet for each jug; each file says how.",
        f"Then: rootcollar choose {folder}",
    ]
    emit("new", {"folder": str(folder), "files": files}, lines, as_json)


@click.command()
@_FOLDER
@click.option("--month", type=click.IntRange(1, 12), help="Say what can be done in this month, 1 to 12, and why.")
@click.option("--plans", "side_by_side", is_flag=True, help="Set plans for the whole property side by side.")
@_ON
@_JSON
def choose(folder: Path, month: int | None, side_by_side: bool, on: str | None, as_json: bool) -> None:
    """Say what to treat first, how, when and with how much, from the files in FOLDER.

    \b
    Example: rootcollar choose my-woods
    Example: rootcollar choose my-woods --month 10
    Example: rootcollar choose my-woods --plans
    """
    from rootcollar.cli import month_text, plan_text, plans_text, steps_text, thicket_text, years_text
    from rootcollar.exchange import read_folder
    from rootcollar.jobs.plan import choose as job
    from rootcollar.jobs.plan import setting_of
    from rootcollar.jobs.plans import side_by_side as plans_job

    if month is not None and side_by_side:
        raise click.UsageError("--month and --plans are two questions: ask one of them")
    project = read_folder(folder)
    outcome, setting = job(project, _day(on)), setting_of(project, _day(on))
    if side_by_side:
        found = plans_job(project, setting, outcome.value)
        emit("plans", plans_text.as_json(project, found, setting), plans_text.summary(project, found, setting), as_json)
        return
    if month is not None:
        told = month_text.as_json(outcome.value, month, setting)
        emit("month", told, month_text.summary(project, outcome.value, month, setting), as_json)
        return
    body = plan_text.as_json(project, outcome.value, setting) | years_text.as_json(outcome.value, setting)
    lines = (
        *plan_text.summary(project, outcome.value, setting.on),
        *steps_text.summary(outcome.value, setting),
        *thicket_text.summary(outcome.value, setting),
        "",
        *years_text.summary(outcome.value, setting),
    )
    emit("choose", body, lines, as_json)
    _leave(outcome.level)


@click.command()
@_FOLDER
@click.option("--unit", "units", multiple=True, metavar="KEY", help="Only this unit; may be given again.")
@click.option("--day", metavar="YYYY-MM-DD", help="The day of work, printed on the day sheet.")
@click.option(
    "--language",
    "languages",
    multiple=True,
    metavar="CODE",
    help="Day sheet in this language too (es); may be given again.",
)
@click.option("--to", type=click.Path(path_type=Path), help="Where to write the PDF.")
@_ON
@_JSON
def prepare(folder: Path, on: str | None, as_json: bool, **asked: Any) -> None:
    """Make the work packet for FOLDER: day sheet, unit pages, mix cards, record sheet, rules weighed.

    \b
    Example: rootcollar prepare my-woods --unit north-bench --day 2026-10-09 --language es
    """
    from rootcollar.cli import shopping_json
    from rootcollar.exchange import read_folder
    from rootcollar.jobs.plan import prepare as job

    project = read_folder(folder)
    day = _day(asked["day"]) if asked["day"] else None
    outcome = job(project, _day(on), asked["units"], day, asked["languages"])
    pdf = _write_packet(folder, asked["to"], outcome.value.packet, _day(on))
    lines = [f"Packet: {pdf}"]
    body = {"packet": str(pdf), "level": outcome.level.word, "shopping": shopping_json.as_json(outcome.value.shopping)}
    emit("prepare", body, lines, as_json)
    _leave(outcome.level)


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path("hobbin-wood"))
@click.option("--no-open", is_flag=True, help="End when done; do not start the app.")
@_JSON
def demo(folder: Path, no_open: bool, as_json: bool) -> None:
    """Write the invented property Hobbin Wood into FOLDER, plan it, and open it in the app.

    Everything in it is invented, its labels too. A folder that is already there is used as it is. Its packet is made
    too. Without a terminal, or with --no-open, it ends by itself when that is done.

    \b
    Example: rootcollar demo
    """
    from rootcollar.cli import plan_text
    from rootcollar.exchange import read_folder, write_demo
    from rootcollar.jobs.plan import prepare as job
    from rootcollar.jobs.plan import setting_of

    today = date.today()
    if not folder.exists():
        write_demo(folder, today)
    project = read_folder(folder)
    outcome = job(project, today)
    plan = outcome.value.prescription
    pdf = _write_packet(folder, None, outcome.value.packet, today)
    body = plan_text.as_json(project, plan, setting_of(project, today))
    lines = [
        *plan_text.summary(project, plan, today, short=True),
        "",
        outcome.value.packet.banner,
        f"The folder: {folder}",
        f"The packet: {pdf}",
    ]
    emit("demo", {"folder": str(folder), "packet": str(pdf), **body}, lines, as_json)
    if not (no_open or as_json) and sys.stdout.isatty():
        from rootcollar.cli.open_command import run_app

        run_app(folder, open_browser=True)


def _write_packet(folder: Path, to: Path | None, packet: object, made_on: date) -> Path:
    from rootcollar.exchange import write_whole
    from rootcollar.paper import render_packet

    path = to or folder / "packets" / f"packet-{made_on.isoformat()}.pdf"
    return write_whole(path, render_packet(packet, made_on=made_on))  # type: ignore[arg-type]


def _day(text: str | None) -> date:
    from rootcollar.kernel.days import read_date

    return read_date(text) if text else date.today()


def _leave(level: Level) -> None:
    """Leave with 1 where a stop or an open question stands, so that scripts notice."""
    if level >= Level.ASK:
        raise click.exceptions.Exit(1)
