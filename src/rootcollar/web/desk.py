"""What lies open on the desk: one property's folder, its plan worked out once for each state of its files."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import wraps
from pathlib import Path
from threading import RLock
from typing import Any, Concatenate, ParamSpec, TypeVar

from starlette.requests import Request

from rootcollar.choose import Choice, Prescription, Setting
from rootcollar.exchange import read_folder
from rootcollar.jobs.plan import prescribed, setting_of
from rootcollar.work import Project

__all__ = ["KEPT", "Desk", "Open", "desk_of", "of_the_last_few", "of_what_lies_open"]

KEPT = 8  # ours: packets, printed sheets and pictures that are kept of each kind; a thick one takes a megabyte

P = ParamSpec("P")
T = TypeVar("T")

_Stamp = tuple[tuple[str, int, int], ...]  # name, time and size of each file
_Seen = tuple[_Stamp, date]


@dataclass(frozen=True, slots=True, eq=False)
class Open:
    """A property as it was read, what choosing knows, and the plan; the plan is None while nothing is counted.

    views: what has been shown of it, so that a page is made once.
    """

    project: Project
    setting: Setting
    plan: Prescription | None
    on: date
    views: dict[object, Any] = field(default_factory=dict)


class Desk:
    """The folder of a property, read again when a file in it has changed. today: asked anew for each page."""

    def __init__(self, folder: Path, today: Callable[[], date]) -> None:
        """Keep the folder; nothing is read before the first page asks."""
        self.folder, self._today = folder, today
        self._lock = RLock()
        self._seen: _Seen | None = None
        self._open: Open | None = None

    @property
    def today(self) -> date:
        """The day on the clock of whoever started the app."""
        return self._today()

    @property
    def there(self) -> bool:
        """Whether the folder holds a property at all."""
        return (self.folder / "ground.toml").exists()

    def look(self) -> Open:
        """Return the property as its files stand now. Raises BadInput with every fault of every file."""
        with self._lock:
            stamp = self._stamp(), self.today
            if self._open is None or stamp != self._seen:
                self._open, self._seen = self._read(stamp), stamp
            return self._open

    def _read(self, stamp: _Seen) -> Open:
        project = read_folder(self.folder)
        setting = setting_of(project, self.today)
        plan = prescribed(project, setting, self._still(project, stamp)) if project.stands else None
        return Open(project, setting, plan, self.today)

    def _still(self, project: Project, stamp: _Seen) -> Mapping[str, Choice]:
        """Return the decisions that hold: where only choices.toml has changed, those of lines chosen as before."""
        if self._open is None or self._open.plan is None or self._seen is None:
            return {}
        changed = set(stamp[0]) ^ set(self._seen[0])
        if stamp[1] != self._seen[1] or any(Path(name).name != "choices.toml" for name, _, _ in changed):
            return {}
        before, now = self._open.project.picked, project.picked
        decided = self._open.plan.decided
        return {one.stand.key: one for one in decided if before.get(one.stand.key) == now.get(one.stand.key)}

    def _stamp(self) -> _Stamp:
        """Return name, time and size of every file that is read."""
        files = sorted((*self.folder.glob("*.toml"), *self.folder.glob("*.csv"), *self.folder.glob("shelf/*.toml")))
        return tuple((str(file), file.stat().st_mtime_ns, file.stat().st_size) for file in files)


def of_what_lies_open(view: Callable[Concatenate[Open, P], T]) -> Callable[Concatenate[Open, P], T]:
    """Let a view be made once for what lies open: an `Open` never changes, so neither does what is shown of it."""

    @wraps(view)
    def made(here: Open, /, *args: P.args, **kwargs: P.kwargs) -> T:
        key = (view.__module__, view.__name__, args)
        if key not in here.views:
            here.views[key] = view(here, *args, **kwargs)
        found: T = here.views[key]
        return found

    return made


def of_the_last_few(view: Callable[Concatenate[Open, P], T]) -> Callable[Concatenate[Open, P], T]:
    """As `of_what_lies_open`, for what an address may ask for in endless ways: only the last few are kept."""

    @wraps(view)
    def made(here: Open, /, *args: P.args, **kwargs: P.kwargs) -> T:
        mine = view.__module__, view.__name__
        kept: dict[object, Any] = here.views.setdefault(mine, {})
        found: T = kept.pop(args) if args in kept else view(here, *args, **kwargs)
        kept[args] = found  # the last used stands last
        while len(kept) > KEPT:
            kept.pop(next(iter(kept)), None)
        return found

    return made


def desk_of(request: Request) -> Desk:
    """Return the desk that the app was made for."""
    desk: Desk = request.app.state.desk
    return desk
