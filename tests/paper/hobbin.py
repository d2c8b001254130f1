# ruff: noqa: E501 (a packet's texts read better on one line each)
"""Packets to print: Hobbin Wood (invented, like every figure in it), one far too full, and one almost empty."""

import datetime
from collections.abc import Callable
from dataclasses import replace

from rootcollar.reference import load
from rootcollar.work.packet import (
    Card,
    DaySheet,
    LoadRow,
    MixLine,
    Packet,
    Page,
    Part,
    Reason,
    RulesPage,
    Said,
    Sign,
    SizeRow,
    Sketch,
    Struck,
    Tag,
    Target,
    UnitLine,
    UnitPage,
)

BANNER = "NOT CHECKED AGAINST A LABEL: the numbers of this packet are placeholders; do not spray by them."
EVIL = '#evil[*x*] $a$ "quotes" <b>'

SKETCH = Sketch(
    width_m=240,
    height_m=150,
    outline=((12, 120), (70, 140), (150, 136), (222, 118), (228, 52), (150, 34), (70, 42), (18, 54)),
    lines=(
        ("brook", "Hobbin Brook", ((0, 16), (40, 26), (90, 14), (140, 20), (190, 12), (240, 22))),
        ("trail", "loop trail", ((12, 120), (60, 100), (110, 106), (160, 92), (228, 96))),
        ("keep tree", "keep oak", ((88, 72),)),
        ("keep tree", "keep oak", ((172, 66),)),
        ("well", "well", ((206, 84),)),
        ("gate", "gate, truck", ((14, 128),)),
    ),
    keep_out=(("no oil mix below this line", ((14, 48), (60, 50), (110, 42), (150, 46), (228, 60))),),
)

DAY = DaySheet(
    title="North bench, day sheet",
    when="Friday 9 October 2026",
    season="Native leaves are down, buckthorn is still green: two weeks of the season are left.",
    sketch=SKETCH,
    roles=(
        ("Lead", "mixes, keeps this sheet, says yes or no"),
        ("Two treaters", "coat bases and fill cuts; one dye colour each"),
        ("Sawyer", "19 trailside stems only; carries no sprayer; never alone"),
    ),
    targets=(
        Target(
            "Common buckthorn",
            "fine-toothed leaves still green now, thorn between the end buds, orange under the bark",
            (
                ("native plum or cherry", "no thorn between the end buds, no orange under the bark"),
                ("nannyberry", "long beaked end bud, no thorn, no orange"),
            ),
        ),
        Target(
            "Bush honeysuckle", "hollow twigs, leaves in pairs", (("native honeysuckle", "twigs solid white inside"),)
        ),
    ),
    sizes=(
        SizeRow(
            "under 1/2 in",
            "common buckthorn",
            "Pull",
            "by hand, roots and all; hang them up to dry",
            "",
            "420 (310 to 560)",
            "ground hard: leave until it has rained",
        ),
        SizeRow(
            "1/2 to 3 in",
            "common buckthorn",
            "Coat the base",
            "lowest 12 in, all sides, down to the collar",
            "A",
            "186 (150 to 231)",
            "bark wet: cut, then coat the stump at once with mix B",
        ),
        SizeRow(
            "3 to 8 in",
            "common buckthorn",
            "Fill spaced cuts",
            "one cut an inch of width, 1 mL in each",
            "B",
            "44 (36 to 53)",
            "hollow or leaning: flag it and leave it",
        ),
        SizeRow(
            "1 to 3 in",
            "bush honeysuckle",
            "Cut and coat the stump",
            "within 5 minutes, the rim first",
            "B",
            "61 (40 to 88)",
            "no time to coat: do not cut",
        ),
    ),
    struck=(
        Struck(
            "stop",
            "Coat 64 stems below the dashed line with mix A.",
            "Oil mix within 25 ft of the brook (label page 9).",
            "Pull them in spring, or ask for a formulation made for the water’s edge.",
        ),
        Struck(
            "ask",
            "Treat 12 stems behind the orchard fence.",
            "Nobody has said yet that the neighbour agrees.",
            "Ask the neighbour and write the name and the day into the answers.",
        ),
    ),
    mixes=(
        MixLine(
            "A",
            "triclopyr ester 4 lb ae/gal, 20 % in bark oil",
            "for 1 gal: 25 1/2 fl oz, then oil to the mark",
            "2.51 gal",
            "1.9 to 3.3 gal",
        ),
        MixLine(
            "B",
            "triclopyr amine 3 lb ae/gal, undiluted",
            "fill over the tray; tag the bottle B",
            "0.24 gal",
            "0.2 to 0.3 gal",
        ),
    ),
    proving="Proving batch of 2 October: 9 mL a stem. Measure again after 25 stems: ____ mL left",
    weather=(("A", "wind 3 to 10 mph, under 85 °F, bark dry, 6 h without rain"), ("B", "no rain for 2 h")),
    boxes=(
        "wind ___ mph",
        "air ___ °F",
        "bark dry",
        "no haze lying",
        "signs up at gate and trail",
        "radio heard at the truck",
    ),
    wear=(
        ("Mixing", "long sleeves and trousers, boots, nitrile gloves 14 mil, goggles, apron"),
        ("Treating", "the same without the apron; rubber boots below the bench"),
        ("Saw", "chaps, helmet, eyes, ears"),
    ),
    wear_note="Ticks: tuck in, check in the evening. Wash water and eye flush: truck.",
    entry="No entry until 48 h after the last load (the longer of A and B). Last load ____ Entry from _______",
    emergency=(
        ("Position", "43.3012 N, 89.9043 W"),
        ("Meet at", "the gate, Hobbin Lane"),
        ("Hospital", ""),
        ("Poison line", ""),
    ),
    first_aid=(
        "Skin: wash 15 min with plenty of water. Eyes: rinse 15 min. Label page 2 goes along.",
        "Spill: stop it, ring it, soak it, bag it; the kit is in the truck.",
    ),
    loads=tuple(LoadRow(n, mix) for n, mix in enumerate("AAABB", start=1)),
    leftovers="Left over goes back into the same plan: mix ___ amount ____ used on ________",
    load_heads=("Filled", "Empty", "Wind mph", "Air °F", "Stems", "By"),
    words=load().tongues["en"].group("sheet"),
)

LINES = (
    UnitLine(
        "Common buckthorn", "1/2 to 3 in", "186 (150 to 231)",
        "Coat the base, lowest 12 inches, all sides, with 20 % triclopyr ester in bark oil.",
        "A", "2.51 gal (1.9 to 3.3)", "6.2 h (4.4 to 8.8)", "$148 (110 to 205)",
        "it reaches the target in one visit for the least money, and the bark is thin enough at this size.",
        (
            Reason("Cut and coat the stump", "twice the hours at this size", "stems were fewer than 60, or bark stayed wet"),
            Reason("Foliar spray in fall", "reaches 210 ft² of sedges beneath", "the ground below were bare"),
            Reason("Leave alone", "fruits next year", "the unit were last on the list for five years"),
        ),
        (
            Said("ok", "Bark is thin enough at this size.", rule="B02"),
            Said("warn", "Mix may reach 1.9 of 2.0 gal an acre in the upper tenth of cases.", "Pour no more than 1 gal on this acre, then measure.", "L11", "5"),
            Said("ask", "The label’s wording on standing water has not been read.", "Read page 9 on the jug.", "L23", "9"),
        ),
    ),
    UnitLine(
        "Common buckthorn", "1/2 to 3 in, below the line", "64",
        "Coat the base, lowest 12 inches, all sides, with 20 % triclopyr ester in bark oil.",
        "A", "0.86 gal", "2.1 h", "$51", "", (),
        (Said("stop", "Oil mix within 25 ft of the brook.", "Pull in spring, or choose a formulation made for the water’s edge.", "L17", "9"),),
        "stop",
    ),
    UnitLine(
        "Common buckthorn", "under 1/2 in", "420 (310 to 560)",
        "Pull, roots and all, and hang up to dry.", "", "", "3.5 h (2.4 to 5.1)", "$0",
        "seedlings lift easily from this soil and no mix is needed.", (), (Said("ok", "No known rule objects.", rule="B01"),),
    ),
)  # fmt: skip

UNITS = (
    UnitPage(
        "North bench",
        "First, because it feeds the seed rain on the orchid patch and 80 % of it is done in one visit.",
        (
            ("Area", "14.2 acres"), ("Slope", "8 to 15 %, south"), ("Water", "Hobbin Brook, 40 ft below"), ("Well", "one, 210 ft east"),
            ("Keep", "two oaks, hazel under the ridge"), ("Way in", "gate at Hobbin Lane"), ("Permission", "owner, 3 September 2026"),
        ),
        LINES,
    ),
    UnitPage(
        "Orchard edge",
        "",
        (("Area", "3.1 acres"), ("Neighbour", "orchard, 30 ft beyond the fence")),
        (
            UnitLine(
                "Multiflora rose", "clumps", "12", "Cut, and coat the stumps with triclopyr amine, undiluted.", "B", "0.1 gal", "1.2 h", "$14",
                "", (), (Said("ask", "Nobody has said yet that the neighbour agrees.", "Ask, and write down name and day.", "P04"),), "ask",
            ),
        ),
    ),
)  # fmt: skip

CARDS = (
    Card(
        "A", "Triclopyr ester 4 lb ae/gal in bark oil", "20 % by volume was asked for; 2.51 gal in all (1.9 to 3.3)",
        (
            ("Full load, 1 gal, twice", ("Half fill the jug with bark oil.", "Add 25 1/2 fl oz of triclopyr ester.", "Add dye, 1/2 fl oz.", "Oil to the 1 gal mark; close, turn over ten times."), "19.9 %"),
            ("Last load, 2 qt", ("Half fill the jug with bark oil.", "Add 13 fl oz of triclopyr ester.", "Add dye, 1/4 fl oz.", "Oil to the 2 qt mark; close, turn over ten times."), "20.3 %"),
        ),
        ("Oil first", "Product", "Dye", "Oil to the mark"),
        ("Leave an air gap: the hose end never dips into the jug.", "Oil mixes do not go through a water pump.", "Tag the jug A."),
        (("triclopyr ester 4 lb ae/gal", "65 fl oz (49 to 85)"), ("bark oil", "2.0 gal (1.5 to 2.7)"), ("dye, blue", "1 1/4 fl oz")),
        (
            ("Mix for all stems", "186 stems × 51 mL = 9,486 mL = 2.51 gal; ours, proving batch of 2 October"),
            ("Product a gallon", "20 / 100 × 128 fl oz = 25.6, jug reads 25 1/2; reckoned"),
            ("True strength", "25.5 / 128 = 19.9 %; reckoned"),
        ),
    ),
    Card(
        "B", "Triclopyr amine 3 lb ae/gal, undiluted", "0.24 gal in all (0.2 to 0.3)",
        (("One bottle, 1 qt", ("Fill the bottle over the tray, with the funnel.", "Close, wipe, tag it B."), "100 %"),),
        (), ("Burns eyes: goggles stay on while it is open.",), (("triclopyr amine 3 lb ae/gal", "31 fl oz (26 to 38)"),),
        (("Mix for all stems", "44 stems × 6 cuts × 1 mL + 61 × 10 mL = 874 mL; practice"),),
    ),
    Card("C", "Glyphosate 4 lb ae/gal in water", "50 % was asked for", (("One bottle, 1 qt", ("Water, 16 fl oz.", "Product, 16 fl oz."), "50 %"),), (), (), (), ()),
)  # fmt: skip

RULES = RulesPage(
    (
        ("L08", "Never stronger than the label’s top strength for this method.", "ok"),
        ("L17", "Nothing the label forbids near water.", "stop"),
        ("L11", "Never more on an acre in a year than the label’s ceiling.", "warn"),
        ("L23", "Standing water: what the label says is read.", "ask"),
        ("P04", "The owner of the ground has agreed.", "ask"),
    ),
    (("L31", "Rinsing of containers"), ("L40", "Local notice before work near schools")),
    (
        Said("ask", "Does the label allow this mix on ground that floods?", "Read page 9 on the jug.", "L23", "9"),
        Said("ask", "Has the neighbour at the orchard agreed?", "Ask, and write down name and day.", "P04"),
    ),
    ("Page 9, standing water", "Page 2, first aid: it goes along"),
    (
        ("L14", "Wind within the label’s limits", "the hour: box on page one"),
        ("R02", "The record holds who, what, where, how much", "the record"),
    ),
)

PACKET = Packet(
    "Hobbin Wood",
    "7 October 2026",
    BANNER,
    DAY,
    UNITS,
    CARDS,
    (
        ("Date", "9 October 2026"), ("Place", "Hobbin Wood, North bench"), ("Who applied", ""), ("Licence", ""), ("Started", ""), ("Ended", ""),
        ("Product A, registration number", ""), ("Product B, registration number", ""), ("Area treated", ""), ("Total of A", ""), ("Total of B", ""), ("Wind, air, sky", ""),
        ("Signs taken down", ""), ("Signed", ""),
    ),
    RULES,
    (
        ("PNW-STEM", "an invented citation standing where the stem table’s source stands"),
        ("UIUC06", "an invented citation standing where the mixing guide stands"),
    ),
    "31 rules weighed, 4 wait for today’s boxes, 9 not checked by this version. This sheet does not say the work is lawful: the label in your hand does.",
)  # fmt: skip


def overfull() -> Packet:
    """Return a packet whose day sheet holds more than a page does: 4 mixes, 8 sizes, 6 look-alikes, endless words."""
    row, endless = DAY.sizes[1], "Pneumonoultramicroscopicsilicovolcanoconiosis" * 2
    day = replace(
        DAY,
        title="The long north bench above the brook and below the orchard, day sheet",
        targets=(
            Target("Common buckthorn", DAY.targets[0].tells, tuple((f"look-alike number {n}", DAY.targets[0].not_these[0][1]) for n in (1, 2, 3))),
            Target("Multiflora rose", "hooked thorns, fringed stipules", tuple((f"wild rose number {n}", "stipules are not fringed") for n in (1, 2, 3))),
        ),
        roles=(*DAY.roles, ("Helper", endless), ("Driver", "stays in hearing of the radio and turns the truck round")),
        sizes=tuple(replace(row, size=f"{n} to {n + 1} in", rest=row.rest + ", and once more around where the stems stand in a clump") for n in range(8)),
        struck=(*DAY.struck, replace(DAY.struck[0], what=f"Spray the {endless} above the spring.")),
        mixes=tuple(replace(DAY.mixes[0], letter=letter) for letter in "ABCD"),
        loads=tuple(LoadRow(n, "ABCD"[n % 4]) for n in range(1, 13)),
    )  # fmt: skip
    return replace(PACKET, day=day, banner=BANNER + " " + BANNER)


def absurd() -> Packet:
    """Return the overfull packet with everything thrice, each text told again and again."""
    day = overfull().day
    return replace(
        PACKET,
        day=replace(
            day,
            season=day.season * 5,
            targets=tuple(replace(one, tells=one.tells * 4) for one in day.targets * 3),
            sizes=tuple(replace(one, rest=one.rest * 3) for one in day.sizes * 2),
            struck=day.struck * 3,
            mixes=day.mixes * 2,
            weather=tuple((letters, words * 4) for letters, words in day.weather * 3),
            boxes=day.boxes * 3,
            wear=tuple((task, items * 4) for task, items in day.wear * 2),
            entry=day.entry * 4,
            emergency=day.emergency * 3,
            first_aid=day.first_aid * 6,
        ),
    )


def bare() -> Packet:
    """Return a packet of which almost nothing is known."""
    day = DaySheet(
        "Day sheet",
        "",
        "",
        Sketch(0, 0),
        (),
        (),
        (),
        (),
        (),
        "",
        (),
        (),
        (),
        "",
        "",
        (("Hospital", ""), ("Poison line", "")),
        (),
        (LoadRow(1, ""),),
        "",
        DAY.load_heads,
        DAY.words,
    )
    return Packet("Hobbin Wood", "", "", day, (), (), (), RulesPage((), (), (), ()), (), "")


def typed() -> Packet:
    """Return a packet into which somebody typed what looks like markup, and letters our type does not have."""
    day = replace(DAY, title=EVIL, season="maple \N{DECIDUOUS TREE} and Łukasz’s café", leftovers=EVIL)
    return replace(
        PACKET,
        day=day,
        banner=EVIL,
        property_name=EVIL,
        units=(replace(UNITS[0], name=EVIL, lines=(replace(LINES[0], instruction=EVIL, plant=EVIL),)),),
    )


PAGES = (
    Page(
        "Spill and first aid",
        "The label goes along.",
        (
            Part("A spill", "steps", (("People first.",), ("Stop it, then ring it.",)), note="Advice, not the label."),
            Part("Kit", "ticks", (("gloves",), ("absorbent for ___ gal",))),
            Part(
                "Numbers",
                "pairs",
                (("Hospital", ""), ("Owner of the ground, for anything at all", "call ______ first")),
            ),
            Part("More mix", "table", (("1 qt", "6 fl oz"), ("2 qt", "12 fl oz")), ("Oil to", "Product")),
            Part(
                "Long rows", "table", (("Elsewhere", "words " * 30, "no sign"),), ("Place", "Sign wanted there", "When")
            ),
            Part("No heads", "table", (("left", "right"),)),
            Part("Empty", "text", ()),
            Part("Never", "text", (("Never into a drain.",), ("Never hose it down.",))),
        ),
    ),
)
TAG = Tag(
    "A", "Sprayer", "one narrow, one wide", (1, 2),
    (("Product", "triclopyr ester 4 lb ae/gal"), ("EPA Reg. No.", ""), ("Mixed", "on ____ by ____")), "Keep it closed.",
)  # fmt: skip
SIGN = Sign(
    "Herbicide work here", "Keep out until the hour below", (("Place", "North bench"), ("Entry from", ""), ("Work", "began ____")),
    "Questions: call the number above.", (("es", "No entre hasta la hora de abajo"),),
)  # fmt: skip


def papers() -> Packet:
    """Return a packet with every paper: a page of parts, nine tags, two signs."""
    return replace(
        PACKET, pages=PAGES, tags=(TAG,) * 8 + (replace(TAG, letter="", title="Not mixed"),), signs=(SIGN, SIGN)
    )


MADE_ON = datetime.date(2026, 10, 7)
PACKETS: dict[str, Callable[[], Packet]] = {
    "hobbin": lambda: PACKET,
    "overfull": overfull,
    "absurd": absurd,
    "bare": bare,
    "typed": typed,
    "papers": papers,
}
