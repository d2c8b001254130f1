"""Figure sun: when it rises and sets at a place, and when the still hours of evening and morning are to be minded."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta, tzinfo

from rootcollar.jobs.figure import Answer
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.formula import use
from rootcollar.reference import Reference, named, numbers, spans
from rootcollar.timing import Day, Never, sun_day

__all__ = ["SunAsk", "sun"]

_MINUTE = timedelta(minutes=1)
_HOUR = timedelta(hours=1)
_DAY_H = 24.0  # by definition
_CAUTIONS = (
    "Hills and trees hide the sun earlier: the hour of the sky is not the hour under the trees.",
    "What sources say of still evenings is of most nights, not of this one: look at smoke, haze and dew, and measure.",
)


@dataclass(frozen=True, slots=True)
class SunAsk:
    """A day at a place. lat_deg, lon_deg: north and east positive [deg]. zone: of the clock. clock: its name."""

    given: Mapping[str, str]
    on: date
    lat_deg: float
    lon_deg: float
    zone: tzinfo
    clock: str


def sun(ask: SunAsk, reference: Reference) -> Outcome[Answer]:
    """Return sunrise, sunset and what hangs on them; a day without either is answered in words."""
    day = sun_day(ask.on, ask.lat_deg, ask.lon_deg)
    return Outcome(Answer(
        question="When does the sun rise and set?",
        given=ask.given,
        says=_says(day, ask),
        value=_light_h(day), unit="h",
        details=tuple(_details(day, ask, reference)),
        assumed=(f"clock: {ask.clock}", "level ground and open sky; the sun's upper rim, with the air's usual bending"),
        cautions=_CAUTIONS,
        note="within ten seconds of printed almanacs between 60 degrees north and south",
    ))  # fmt: skip


def _says(day: Day, ask: SunAsk) -> str:
    if isinstance(day.sunrise, Never) or isinstance(day.sunset, Never):
        return f"No sunrise and no sunset: {day.sunrise} the horizon all day"
    return f"Sunrise {_clock(day.sunrise, ask)}, sunset {_clock(day.sunset, ask)}"


def _light_h(day: Day) -> float:
    if isinstance(day.sunrise, Never) or isinstance(day.sunset, Never):
        return _DAY_H if day.sunrise is Never.ABOVE else 0.0
    return (day.sunset - day.sunrise) / _HOUR


def _details(day: Day, ask: SunAsk, reference: Reference) -> Iterator[str]:
    dawn, noon, dusk = (_said(one, ask) for one in (day.dawn, day.noon, day.dusk))
    yield f"Civil dawn {dawn}, noon by the sun {noon}, civil dusk {dusk}."
    if isinstance(day.sunrise, Never) or isinstance(day.sunset, Never):
        return
    rows = reference.weather["inversion"]
    evening = spans(named(rows, "evening_before_sunset_h"))[0]
    morning = numbers(named(rows, "morning_after_sunrise_h"))[0]
    low, high = use(evening).low or 0.0, use(evening).high or 0.0
    until = day.sunrise + use(morning) * _HOUR
    yield (
        f"Cold air lies under warmer on most nights from {_clock(day.sunset - high * _HOUR, ask)} to"
        f" {_clock(day.sunset - low * _HOUR, ask)} on, until about {_clock(until, ask)} ({evening.mark},"
        f" {evening.source}); some evenings it begins earlier."
    )


def _said(moment: datetime | Never, ask: SunAsk) -> str:
    return str(moment) if isinstance(moment, Never) else _clock(moment, ask)


def _clock(moment: datetime, ask: SunAsk) -> str:
    """The moment by the clock of the place, to the nearest minute; the day too where it is another one."""
    there = (moment + _MINUTE / 2).astimezone(ask.zone)
    return there.strftime("%H:%M") if there.date() == ask.on else there.strftime("%H:%M on %Y-%m-%d")
