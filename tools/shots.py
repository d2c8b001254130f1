"""Take a picture of every page of the app over the demo, wide, at phone width and in the dark, into shots/.

Run it as `.venv/bin/python tools/shots.py`, with words to take only the pages whose address holds one of them.
"""

import re
import shutil
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Browser, Page, ViewportSize, sync_playwright

from rootcollar.cli.bench import ClickBench
from rootcollar.exchange import write_demo
from rootcollar.web.serve import Served, start

__all__ = ["CHROMIUM", "FLAGS", "PAGES", "main", "serving"]

ROOT = Path(__file__).resolve().parent.parent
SHOTS = ROOT / "shots"
DAY = date(2026, 3, 2)
PAGES = (
    "/ground",
    "/ground/bench",
    "/count",
    "/choose",
    "/choose/questions",
    "/choose/bench",
    "/choose/brook-edge",
    "/choose/bench/working/cost",
    "/choose/month/10",
    "/choose/plans",
    "/prepare",
    "/prepare?units=all",
    "/prepare/working/mix-cards/0/1/0/0?unit=ridge",
    "/prepare?unit=bench&day=2026-10-09&language=es&paper=a4",
    "/prepare?unit=orchard-side&day=2026-10-09",
    "/shelf",
    "/shelf/triclopyr-ester-4-ec",
    "/shelf/glyphosate-3-sl",
    "/shelf/add",
    "/shelf/triclopyr-ester-4-ec/edit",
    "/shelf/glyphosate-3-sl/second",
    "/facts",
    "/facts?q=buckthorn",
    "/facts/rhca3",
    "/facts/acpl",
    "/facts/glyphosate",
    "/facts/gloves",
    "/facts/L26",
    "/facts/conflicts",
    "/figure",
    "/figure/mix",
    "/figure/mix?percent=3&total=3+gal&tank=4+gal",
    "/style",
)
LOOKS: dict[str, tuple[ViewportSize, str]] = {
    "wide": ({"width": 1360, "height": 1000}, "light"),
    "phone": ({"width": 390, "height": 844}, "light"),
    "dark": ({"width": 1360, "height": 1000}, "dark"),
}
CHROMIUM = next(
    (path for name in ("chromium", "chromium-browser", "google-chrome") if (path := shutil.which(name))), None
)
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--no-first-run",
]  # fmt: skip


@contextmanager
def serving(folder: Path, day: date) -> Iterator[Served]:
    """Serve a folder on a free port of this computer for as long as the block runs."""
    app = start(folder, lambda: day, ClickBench())
    thread = threading.Thread(target=app.run, daemon=True)
    thread.start()
    try:
        yield app
    finally:
        app.stop()
        thread.join(timeout=10)


def taken(page: Page, where: str, name: str) -> Path:
    """Take one page from top to bottom and return the picture's file."""
    page.goto(where)
    page.wait_for_load_state("load")
    file = SHOTS / f"{name}.png"
    page.screenshot(path=file, full_page=True)
    return file


def pictures(browser: Browser, app: Served, paths: list[str]) -> Iterator[Path]:
    """Take every page in every look."""
    for look, (size, scheme) in LOOKS.items():
        context = browser.new_context(viewport=size, color_scheme=scheme)  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(app.address)
        for path in paths:
            yield taken(page, f"{app.base}{path}", "-".join([*re.findall(r"\w+", path), look]))
        context.close()


def main() -> int:
    """Take the pictures asked for, print the folder; 1 where there is no browser or no such page."""
    paths = [path for path in PAGES if not sys.argv[1:] or any(word in path for word in sys.argv[1:])]
    if CHROMIUM is None or not paths:
        print(
            "no Chromium on this machine: install chromium" if CHROMIUM is None else "no page has that in its address"
        )
        return 1
    SHOTS.mkdir(exist_ok=True)
    with TemporaryDirectory() as scratch, sync_playwright() as player:
        demo, empty = Path(scratch) / "hobbin-wood", Path(scratch) / "new"
        write_demo(demo, DAY)
        empty.mkdir()
        browser = player.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        with serving(demo, DAY) as app:
            count = sum(1 for _ in pictures(browser, app, paths))
        if not sys.argv[1:]:
            with serving(empty, DAY) as app:
                count += sum(1 for _ in pictures(browser, app, ["/start"]))
        browser.close()
    print(f"{count} pictures in {SHOTS}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
