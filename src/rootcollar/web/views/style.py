"""Samples for the style page: every element of the look once, invented, through the same templates as everywhere."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.sheet import SheetLine
from rootcollar.web.forms import Form
from rootcollar.web.views.count import COLUMNS, Cell
from rootcollar.web.views.facts import Cite, Entry, Group
from rootcollar.web.views.facts import Part as Words
from rootcollar.web.views.facts import Row as Line
from rootcollar.web.views.map import KINDS, DrawnFeature, DrawnUnit, Kind, Label
from rootcollar.web.views.map import Drawn as Map
from rootcollar.web.views.packet import Drawn, bars_of
from rootcollar.web.views.prepare import UnitStep
from rootcollar.web.views.sheet_form import Cell as Asked
from rootcollar.web.views.unit import Row
from rootcollar.web.views.working import Drawer, Run, Step
from rootcollar.work.packet import Card, Part, Said, Sign, Tag

__all__ = ["SAMPLE", "SAMPLE_DRAWER", "Sample"]

_AT = "/style/working"
_YES_NO = (("", ""), ("yes", "yes"), ("no", "no"))
_NAMES = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
_YEAR = {8: "open", 9: "best open", 10: "maybe"}
_STATES: Mapping[int, bool | str] = {8: True, 9: True, 10: "remembered", 3: "shut", 4: "shut by memory"}

SAMPLE_DRAWER = Drawer(
    "2.5 gal of mix", "1.8–3.5 gal", (Step("product in ml", "total ml * pct / 100 = 9463.53 * 20 / 100 = 1892.71 mL"),),
    (("arithmetic", "Arithmetic on figures that carry their own source"),),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Sample:
    """What the style page shows.

    steps: units to step to. lines: one that is work, one held, one struck out. parts: of each kind.
    """

    verdicts: tuple[Said, ...]
    steps: tuple[UnitStep, ...]
    lines: tuple[Row, ...]
    months: tuple[tuple[str, bool | str, str], ...]
    opens: Run
    form: Form
    cells: tuple[Cell, ...]
    kinds: tuple[Kind, ...]
    map: Map
    parts: tuple[Part, ...]
    card: Card
    tags: tuple[tuple[Tag, Drawn], ...]
    sign: Sign
    groups: tuple[Group, ...]
    label: tuple[Asked, ...]
    said: tuple[SheetLine, ...]


def _verdicts() -> tuple[Said, ...]:
    return (
        Said("stop", "the oil mix within 25 ft of the brook", "the water-borne mix there", "L37a", "9"),
        Said("ask", "any wanted tree within 10 ft of the cut stems?", "unmapped trees count too"),
        Said("warn", "spined twigs at face height", "treaters keep goggles on"),
        Said("ok", "no known rule objects"),
    )


def _lines() -> tuple[Row, ...]:
    because = (Run("least expected cost per stem killed, "), Run("$1.04", _AT, "cost of a stem killed"))
    aside = (("cut and treat the stump", (Run("dearer: "), Run("$2.22", _AT, "cost")), (Run("it killed more"),)),)
    stems, doubt = Run("260", _AT, "stems of 1–2 in"), "210–320"
    work = Row(
        "a", "1–2 in", "Coat the base", stems, doubt, because, aside, "", rest="all round, to run-down", mix="Mix A",
        months=tuple((name[0], _YEAR.get(at, "closed"), name) for at, name in enumerate(_NAMES)),
        months_words="Months of this line", best=Run("Best October", _AT, "months"),
        amount=Run("2.5 gal", _AT, "mix for 1–2 in"),
        amount_doubt="1.8–3.5 gal", hours=Run("8.7 person-hours", _AT, "work on 1–2 in"),
        money=Run("$240", _AT, "cost of 1–2 in"), money_doubt="$150–520",
        fallback="buds swell: cut and treat the stump",
    )  # fmt: skip
    held = Row("b", "2–4 in", "Cut and treat the stump", stems, doubt, because, (), "ask")
    struck = Row("c", "4–6 in", "Fill spaced cuts", stems, doubt, because, (), "stop")
    return work, held, struck


def _months() -> tuple[tuple[str, bool | str, str], ...]:
    return tuple((name[0], _STATES.get(at, False), name) for at, name in enumerate(_NAMES))


def _cells() -> tuple[Cell, ...]:
    said = (
        "bench",
        "common buckthorn",
        "1-2 in",
        "many",
        "80",
        "150",
        "breast height",
        "4 ft",
        "6 ft",
        "yes",
        "",
        "",
        "",
    )
    units = (("", ""), ("bench", "The bench"))
    choices = {"unit": units, "measured at": (("", ""), ("breast height", "breast height")), "fruiting": _YES_NO}
    return tuple(
        Cell(f"r0c{at}", column, said[at], choices.get(column.name, ()), "" if at != 3 else "Wanted: a whole number.")
        for at, column in enumerate(COLUMNS)
    )


def _map() -> Map:
    features = (
        DrawnFeature("water", "line", "60,330 400,300 940,340", (60, 330), Label("a brook", 400, 350)),
        DrawnFeature("keep", "spot", "700,160", (700, 160), Label("an oak", 700, 190)),
    )
    unit = DrawnUnit("", "120,70 860,60 880,280 110,290", Label("A unit", 400, 170), 1)
    return Map(1000, 400, (unit,), features, "200 ft (61 m)", 200)


def _parts() -> tuple[Part, ...]:
    return (
        Part(
            "Pairs, and lines to write on",
            "pairs",
            (("Treater", "A. N. Other"), ("Mixed when", ""), ("Wind", "____ mph")),
        ),
        Part("Steps", "steps", (("Half fill the jug.",), ("Pour in the product.",))),
        Part("Boxes to tick", "ticks", (("Gloves without a hole",), ("The tag is on the bottle",))),
        Part("Text", "text", (("Keep out until the mix has dried.",),), note="advice, not the label"),
        Part("Table", "table", (("1–2 in", "260", ""), ("2–4 in", "85", "held")), ("Size", "Stems", "State")),
        Part("Pairs of long names", "pairs", (("Where the nearest water to wash with is to be had", "At the gate"),)),
    )


def _card() -> Card:
    return Card(
        "A", "triclopyr ester 4 lb ae/gal EC, 20 % in oil", "for 2.5 gal",
        (("One full load", ("Oil 2 gal",), "20.0 %"),), ("Oil first", "then product"), ("Never add water",),
        (("product", "1/2 gal"),), (("product", "2.5 * 20 / 100 = 0.5 gal"),),
    )  # fmt: skip


def _groups() -> tuple[Group, ...]:
    read, own = Cite(Words("UIUC06", "/facts/UIUC06"), "p. 2", "read", False), Cite(Words(""), "", "from memory", True)
    line = Line("20 %", (Words("in oil on a dry base"),), (read,))
    seen = Line("30 %", (Words("where bark is thick"),), (own,))
    return (
        Group("Named lines", (Entry(Words("basal bark"), (line, seen)),), True),
        Group("Lines without a name", (Entry(Words(""), (seen,)),), False),
        Group("Sources that disagree", (), True, (line, seen), (line,)),
    )


def _tags() -> tuple[tuple[Tag, Drawn], ...]:
    taped = (("A", "one wide", (2,)), ("B", "wide, narrow", (2, 1)))
    empty = (("Mixed when", ""),)
    return tuple(
        (Tag(letter, "Backpack", said, bars, empty, "Not food"), bars_of(bars)) for letter, said, bars in taped
    )


def _label() -> tuple[Asked, ...]:
    weight = "Found '3 lb'; wanted: a number in lb/gal."
    return (
        Asked("front.name", "Name of the product as printed", "", "WOODY-STEM LIQUID (invented)", False),
        Asked("front.lot", "Lot or batch number", "behind the word LOT", "", True),
        Asked("front.acid", "Acid in a gallon", "in lb/gal", "3 lb", False, weight),
        Asked("front.word", "Signal word", "", "", False, picks=(("CAUTION", "CAUTION"),)),
        Asked("front.high", "Strongest strength", "in %", "20", False, note="the other reading differs"),
        Asked("front.page", "Page", "", "", False, box=False),
    )


def _said() -> tuple[SheetLine, ...]:
    return (
        SheetLine("front.name", "", "name of the product as printed", "WOODY-STEM LIQUID (invented)", "1", "said"),
        SheetLine("front.lot", "", "lot or batch number", "the label says nothing", "1", "silent"),
        SheetLine("front.word", "", "signal word", "not read yet", "", "unread"),
    )


SAMPLE = Sample(
    _verdicts(),
    (
        UnitStep("ridge", "The ridge", "", "ok", "6 of 6 lines are work", True),
        UnitStep("bench", "The bench", "", "stop", "2 of 7 lines are work", False),
    ),
    _lines(),
    _months(),
    Run("2.5 gal", _AT, "mix"),
    Form({"amount": "3 oz"}, {"amount": "Found '3 oz'; wanted: fl oz or oz wt."}),
    _cells(),
    tuple(Kind(key, word, (f"a sample of {word.lower()}",), True, True) for key, word in KINDS.items()),
    _map(),
    _parts(),
    _card(),
    _tags(),
    Sign("Sign", "Keep out", (("Until", ""),), "Ask at the gate", (("es", "No entrar"),)),
    _groups(),
    _label(),
    _said(),
)
