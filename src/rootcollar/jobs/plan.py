"""Choose and prepare: from a project to a prescription, and on to the content of a packet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from types import MappingProxyType

from rootcollar.choose import Choice, Prescription, Setting, prescribe, products
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.doubt import Doubt
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.reference import find_tongue, load
from rootcollar.work import Packet, PacketAsked, Project, Shopping, clear, day_verdicts, packet, shopping

__all__ = ["Prepared", "choose", "prepare", "prescribed", "setting_of"]

_ROW = "brook-edge, common buckthorn, 1-2 in, 120"


@dataclass(frozen=True, slots=True, eq=False)
class Prepared:
    """A packet's content, the prescription it was made from, and what to buy for it."""

    packet: Packet
    prescription: Prescription
    shopping: Shopping


def choose(project: Project, on: date) -> Outcome[Prescription]:
    """Return the prescription for a property, weighed for a day.

    Raises BadInput when nothing has been counted yet.
    """
    prescription = prescribed(project, setting_of(project, on))
    return Outcome(prescription, verdicts=_said(prescription.choices))


def prepare(
    project: Project,
    on: date,
    units: Sequence[str] = (),
    day: date | None = None,
    languages: Sequence[str] = (),
    plan: Prescription | None = None,
) -> Outcome[Prepared]:
    """Return the packet for the named units (none named: all, in the plan's order), weighed for a day.

    day: the day of work, where it is known; it is printed, and permission and labels are weighed for it. on: today.
    languages: in which the day sheet is printed too, besides those that people of the crew read: code or name.
    plan: the prescription weighed for that very day, where it is at hand.
    Struck and held lines are printed as such, never as work: what is printed as work is weighed once more.
    Raises NotFound for a unit that is not on the ground, with the near ones, and for a language we do not have.
    """
    setting = setting_of(project, day or on)
    spoken = tuple(find_tongue(one, setting.reference).code for one in languages)
    prescription = plan or prescribed(project, setting)
    known = [key for key, _ in prescription.order]
    for key in units:
        if key not in known:
            raise NotFound("unit with stems", key, known)
    wanted = [key for key in known if not units or key in units]
    lines = tuple(one for one in prescription.choices if one.stand.unit in wanted)
    asked = PacketAsked(
        clear(lines, setting), lines, tuple(wanted), prescription, setting, project.crew, day, on, project.stock, spoken
    )
    said = (*_said(lines), *day_verdicts(asked))
    return Outcome(Prepared(packet(asked), prescription, shopping(asked)), verdicts=said)


def prescribed(
    project: Project, setting: Setting, decided: Mapping[str, Choice] = MappingProxyType({})
) -> Prescription:
    """Return the prescription for a property. decided: choices by line that still hold, to be weighed with the rest.

    Raises BadInput when nothing has been counted yet.
    """
    if not project.stands:
        raise BadInput(Fault("no stems counted", f"at least one row, such as  {_ROW}", file="tally.csv"))
    return prescribe(project.stands, setting, decided)


def _said(lines: Sequence[Choice]) -> tuple[Verdict, ...]:
    """Return what is said of the lines; a line that is left because no way is open counts as stopped."""
    left = (Verdict(Level.STOP, line.because, about=line.stand.key) for line in lines if line.option is None)
    return (*left, *(one for line in lines for one in line.verdicts))


def setting_of(project: Project, on: date) -> Setting:
    """Return what choosing knows of a property on a day."""
    reference = load()
    return Setting(
        reference,
        project.ground,
        project.shelf,
        products(project.shelf, reference),
        project.crew.wear,
        project.answers,
        project.history,
        Doubt(project.ground.seed),
        on,
        picked=project.picked,
        own=project.own,
        people=project.crew.people,
        aboard=replace(project.crew.aboard, files=project.label_files),
        stock=project.stock,
    )
