"""Work: the day. What a crew carries on paper, from lines that have been cleared.

Question: who does what, where, with which mix, in what gear, under which of the label's limits?
Inputs: a prescription with its setting, the crew, the day.
Outputs: `Project` (the snapshot everything starts from), `Cleared` lines, the content of a `Packet`.
Sources: the label sheets' own words; habits of the trade are marked as such.
Refuses: to clear a line on which a stop or an open question stands (`NotCleared`); to print one as work.
"""

from rootcollar.work.asked import PacketAsked
from rootcollar.work.build import packet
from rootcollar.work.clear import Cleared, clear, still_standing
from rootcollar.work.crew import Crew, Person
from rootcollar.work.day_rules import day_verdicts
from rootcollar.work.packet import Packet
from rootcollar.work.project import Project
from rootcollar.work.readers import readers
from rootcollar.work.shopping import Shopping, shopping

__all__ = [
    "Cleared", "Crew", "Packet", "PacketAsked", "Person", "Project", "Shopping", "clear", "day_verdicts", "packet",
    "readers",
    "shopping", "still_standing",
]  # fmt: skip
