"""What to wear for each task, and who says so: the label, the floor by category, or the trade."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from rootcollar.hazard import TASKS, Floor, SignalWord, Task, wear_floor
from rootcollar.label.floor import CATEGORIES, categories_of, demands_eyewear, lacking
from rootcollar.label.words import flat
from rootcollar.reference import NamedFigure, Reference
from rootcollar.shelf import Sheet
from rootcollar.work.crew import Crew
from rootcollar.work.mixes import Product

__all__ = ["HEADS", "below_floor", "eyes_asked", "label_items", "not_read", "product_floor", "wear_rows"]

HEADS = ("Wear", "Mix", "Apply", "Clean", "Cut", "At hand")

_ADVISED: tuple[tuple[Task, str], ...] = (  # habits of the trade: shield your eyes, gloves, boots in wet growth
    ("mixing", "protective eyewear"), ("mixing", "chemical-resistant gloves"),
    ("applying", "chemical-resistant gloves"), ("cleaning", "chemical-resistant gloves"),
    ("applying", "rubber boots in wet treated growth"),
)  # fmt: skip


@dataclass(slots=True)
class _Item:
    """One thing to wear as it is collected: its words, and who says so, task by task."""

    words: str
    label: dict[str, list[str]] = field(default_factory=dict)
    floor: set[str] = field(default_factory=set)
    advice: dict[str, str] = field(default_factory=dict)


def wear_rows(
    products: Sequence[Product], reference: Reference, crew: Crew, *, power: bool, hand: bool
) -> tuple[tuple[str, ...], ...]:
    """Return what to wear: items, who asks for them in each task, whether the crew file lists them; alike together.

    power, hand: whether somebody works with a chainsaw, and with other cutting tools.
    """
    found: dict[str, _Item] = {}

    def item(words: str) -> _Item:
        return found.setdefault(flat(words), _Item(words))

    for product in products:
        for task in TASKS:
            for one in label_items(product.sheet, task) or ():
                item(one).label.setdefault(task, []).extend(mix.letter for mix in product.mixes)
            for one in product_floor(product.sheet, task, reference).items:
                item(one).floor.add(task)
    for task, words in _ADVISED if products else ():
        item(words).advice[task] = "advice"
    for words, who in _for_cutting(reference.hazard["saw"], power=power, hand=hand):
        item(words).advice["cut"] = who
    letters = sorted({mix.letter for product in products for mix in product.mixes})
    alike: dict[tuple[str, ...], list[str]] = {}
    for kept in found.values():
        whos = tuple(_who(kept, task, letters) for task in (*TASKS, "cut"))
        alike.setdefault((*whos, _at_hand(kept.words, crew.wear)), []).append(kept.words)
    return tuple((", ".join(words), *cells) for cells, words in alike.items())


def label_items(sheet: Sheet | None, task: Task) -> tuple[str, ...] | None:
    """Return the label's items for a task; none where it is silent, None where nobody has read it."""
    if sheet is None or sheet.line(f"ppe.{task}") is None:
        return None
    items: tuple[str, ...] = sheet.says(f"ppe.{task}") or ()
    respirator = str(sheet.says("ppe.respirator") or "none")
    return items if flat(respirator) == "none" else (*items, respirator)


def product_floor(sheet: Sheet | None, task: Task, reference: Reference) -> Floor:
    """Return the least to wear by the categories and the signal word typed on a sheet; nothing without a sheet."""
    if sheet is None:
        return Floor(())
    categories = categories_of([sheet.says(path) for path in CATEGORIES])
    word = sheet.says("hazard.signal_word")
    ready = bool(sheet.says("formulation.ready_to_use"))
    return wear_floor(
        task, categories, SignalWord[word.upper()] if word else None, reference.hazard["wear_floor"], ready_to_use=ready
    )


def not_read(products: Sequence[Product], reference: Reference) -> Iterator[str]:
    """Yield what no label or category was there for, so that a short list is not taken for a short need."""
    for one in products:
        if one.sheet is None:
            yield f"{one.name} (mix {one.letters}): no label sheet. Its label was not read, and no floor is known."
            continue
        tasks = [task for task in TASKS if label_items(one.sheet, task) is None]
        if tasks:
            yield f"{one.name}: what to wear for {', '.join(tasks)} was not read; the floor is only a floor."
        floor = product_floor(one.sheet, "applying", reference)
        if floor.unknown:
            yield f"{one.name}: category of {', '.join(floor.unknown)} not typed; the floor says nothing of it."
        yield from (f"{one.name}: {words}." for words in floor.stands_in)


def below_floor(product: Product, reference: Reference) -> Iterator[str]:
    """Yield a question for each task in which the label's list as typed lacks something of the floor."""
    for task in TASKS:
        listed = label_items(product.sheet, task)
        if listed is None:
            continue
        missing = lacking(product_floor(product.sheet, task, reference).items, listed)
        if missing:
            yield (
                f"{product.name}, {task}: typed without {', '.join(missing)}, which the federal floor has for its "
                "categories. Read its list again; the label wins."
            )


def eyes_asked(products: Iterable[Product], task: Task, reference: Reference) -> bool:
    """Whether any label, or the floor, asks for eyewear in a task; a label nobody has read may, so it counts."""
    for one in products:
        listed = label_items(one.sheet, task)
        items = (*(listed or ()), *product_floor(one.sheet, task, reference).items)
        if listed is None or demands_eyewear(items):
            return True
    return False


def _for_cutting(rows: Sequence[NamedFigure], *, power: bool, hand: bool) -> Iterator[tuple[str, str]]:
    said: dict[str, dict[str, list[str]]] = {}
    for row in rows:
        tool = {"wear_power": "chainsaw" if power else "", "wear_hand": "hand tools" if hand else ""}.get(row.name)
        if tool and isinstance(row.figure.value, tuple):
            rule = "logging rule" if row.figure.source.startswith("CFR") else "practice"
            for item in row.figure.value:
                said.setdefault(item, {}).setdefault(rule, []).append(tool)
    for item, by_rule in said.items():
        yield item, "; ".join(f"{', '.join(tools)}: {rule}" for rule, tools in by_rule.items())


def _who(item: _Item, task: str, letters: Sequence[str]) -> str:
    told = sorted(set(item.label.get(task, ())))
    parts = [f"label {', '.join(told)}" if told != list(letters) else "label"] if told else []
    parts += ["floor"] if task in item.floor else []
    if task in item.advice and told != list(letters):
        parts.append(item.advice[task])
    return ", ".join(parts) or "–"


def _at_hand(words: str, wear: frozenset[str] | None) -> str:
    if wear is None:
        return "look ___"
    return "listed ___" if flat(words) in {flat(one) for one in wear} else "NOT LISTED ___"
