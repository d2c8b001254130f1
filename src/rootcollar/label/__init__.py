"""Label: the only judge. May this be done, here, so, now: ok, warn, ask or stop, with the clause.

Question: does any known rule object to this plan, on this ground, with this crew, after what was applied before?
Inputs: a `Planned` line, its label `Sheet`, a `Unit`, a `UnitTotal` and the `History`, made into facts.
Outputs: one `Verdict` a rule, `ok` included; `NOT_CHECKED` lists the rules nobody weighs here.
Sources: FIFRA 2(ee), 2(p), 12(a)(2) and 24; 40 CFR parts 152 and 156 (edition of 2015); LRM11; each rule names its own.
Refuses: to permit. A rule can object, never allow. What nobody has read asks; silence of a label asks or stops unless
silence can set no limit; a rule that is only remembered asks at most; no answer of a person clears a stop.
"""

from rootcollar.label.aboard import NOTHING_SAID, Aboard, Jugs, aboard_facts, jugs_of, law_facts, same_number
from rootcollar.label.answers import Answer, Answers, settle
from rootcollar.label.applied import Applied, History
from rootcollar.label.departures import DEPARTURES, NEVER, Departure, departures
from rootcollar.label.facts import Past, Work, place_facts, template_facts, total_facts
from rootcollar.label.most import Most, most_mix
from rootcollar.label.not_checked import NOT_CHECKED, NotChecked
from rootcollar.label.once import Heard, Template, Weigher, heard_of
from rootcollar.label.paths import PATHS, Fact
from rootcollar.label.people import Handling, Licence, Person, treaters
from rootcollar.label.planned import Partnered, Planned, UnitTotal
from rootcollar.label.rule import RULES, Basis, Facts, Rule, Seen, weigh
from rootcollar.label.rules.sums import figure_doubts
from rootcollar.label.weighing import must_read, weigh_day, weigh_mix, weigh_place, weigh_template, weigh_totals

__all__ = [
    "template_facts", "place_facts", "total_facts", "weigh_template", "weigh_place", "weigh_totals", "weigh_mix",
    "weigh_day", "weigh", "Most", "most_mix", "Heard", "Template", "Weigher", "heard_of",
    "Planned", "UnitTotal", "Applied", "History", "Past", "Work", "Facts", "Fact", "PATHS", "must_read",
    "Rule", "RULES", "Basis", "Seen", "NOT_CHECKED", "NotChecked",
    "Handling", "Licence", "Person", "treaters",
    "Answer", "Answers", "settle", "figure_doubts",
    "Aboard", "NOTHING_SAID", "Jugs", "aboard_facts", "jugs_of", "law_facts", "same_number", "Partnered",
    "DEPARTURES", "NEVER", "Departure", "departures",
]  # fmt: skip
