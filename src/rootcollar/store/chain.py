"""What the numbers and hashes of a journal tell: gaps, links that do not hold, numbers given twice."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from rootcollar.store.entry import Entry, entry_faults

__all__ = ["Gap", "broken", "gaps", "twice"]


@dataclass(frozen=True, slots=True)
class Gap:
    """Numbers of a device that are not there, first to last: not yet come, or lost."""

    device: str
    first: int
    last: int

    def __str__(self) -> str:
        which = f"number {self.first}" if self.first == self.last else f"numbers {self.first} to {self.last}"
        return f"{which} of {self.device} not here: not come yet, or lost"


def gaps(entries: Iterable[Entry]) -> tuple[Gap, ...]:
    """Return every run of numbers below a device's highest that is not there, by device and number.

    What a device said last of all leaves no gap when it is lost; only the device itself can tell.
    """
    numbers = defaultdict(set)
    for entry in entries:
        numbers[entry.device].add(entry.seq)
    return tuple(gap for device in sorted(numbers) for gap in _device_gaps(device, numbers[device]))


def broken(entries: Sequence[Entry]) -> Iterator[str]:
    """Yield in a sentence each entry that was altered, and each that does not follow the one before it."""
    before = defaultdict(set)
    for entry in entries:
        before[entry.device, entry.seq].add(entry.hash)
    for entry in entries:
        name = f"entry {entry.seq} of {entry.device} ({entry.id})"
        if faults := list(entry_faults(entry)):
            yield f"{name} is not as it was written: {faults[0]}"
        earlier = before.get((entry.device, entry.seq - 1))
        if earlier and entry.prev not in earlier:
            yield f"{name} does not follow the entry numbered before it: one was put in, or an older copy worked on"


def twice(entries: Iterable[Entry]) -> Iterator[str]:
    """Yield in a sentence each number that a device gave to two entries, and each id that two entries carry."""
    numbers, names = defaultdict(set), defaultdict(set)
    for entry in entries:
        numbers[entry.device, entry.seq].add(entry.hash)
        names[entry.id].add(entry.hash)
    for (device, seq), found in sorted(numbers.items()):
        if len(found) > 1:
            yield f"{len(found)} entries are numbered {seq} of {device}: an older copy of the file was worked on"
    for name, found in sorted(names.items()):
        if len(found) > 1:
            yield f"{len(found)} entries carry the id {name}"


def _device_gaps(device: str, numbers: set[int]) -> Iterator[Gap]:
    last = 0
    for seq in sorted(numbers):
        if seq > last + 1:
            yield Gap(device, last + 1, seq - 1)
        last = seq
