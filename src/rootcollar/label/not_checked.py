"""The rules we know of and do not weigh: printed, so that nobody takes silence for a yes."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.verdict import Stage

__all__ = ["NOT_CHECKED", "NotChecked"]


@dataclass(frozen=True, slots=True)
class NotChecked:
    """A rule that people must see to themselves: its number, what it asks, and when it comes up."""

    number: str
    sentence: str
    stage: Stage = Stage.PLAN


NOT_CHECKED: tuple[NotChecked, ...] = (
    NotChecked("L38", "The state's own distances from water are kept."),
    NotChecked("L40", "Work at the water's edge or in wetland may need a permit."),
    NotChecked("L41", "The endangered-species bulletin was fetched for the place and the month of work."),
    NotChecked("L42", "The limits of that bulletin are kept."),
    NotChecked("L54", "Notices that the state asks for were given in time."),
    NotChecked("P04", "It is none of the times of year the label leaves out.", Stage.HOURS),
    NotChecked("P05", "Cut stumps are treated within the minutes the label gives.", Stage.HOURS),
    NotChecked("L27", "Nobody but the crew is inside the application exclusion zone.", Stage.HOURS),
    NotChecked("L28", "Trails, dwellings and roads inside that zone are guarded.", Stage.HOURS),
    NotChecked("L29", "Nobody enters before the restricted entry is over.", Stage.HOURS),
    NotChecked("L30", "People are told and signs posted where the label or its hours ask for it.", Stage.HOURS),
    NotChecked("L31", "Droplets are no finer than the label allows.", Stage.HOURS),
    NotChecked("L32", "The wind is inside the label's range.", Stage.HOURS),
    NotChecked("L33", "There is no temperature inversion.", Stage.HOURS),
    NotChecked("L34", "The air is inside the label's range of temperature.", Stage.HOURS),
    NotChecked("L35", "No rain is forecast inside the label's hours.", Stage.HOURS),
    NotChecked("L36", "The ground is in no state the label forbids.", Stage.HOURS),
    NotChecked("L55", "The record holds every field that product and state ask for.", Stage.CLOSE),
    NotChecked("L56", "The record is closed in time.", Stage.CLOSE),
    NotChecked("L57", "A customer gets a copy in time.", Stage.CLOSE),
    NotChecked("L58", "An incident is reported in time.", Stage.CLOSE),
    NotChecked("L59", "Empty containers are rinsed and rinsings used or stored lawfully.", Stage.CLOSE),
)
