"""Choose: treat what first, how, with what, when; and what must never be done here.

Question: for each stand, which way is best, why, and what was set aside?
Inputs: stands as worlds, the ground, the shelf's label sheets, the crew's wear, answers, history, reference facts.
Outputs: a `Prescription`: one `Choice` a stand with reasons, fallback, verdicts; units in order; mixes by letter.
How: ways from the sources' rows x products; gates of plant, ground and label; figures per stem as worlds; the least
expected cost per stem killed among what is left.
Sources: the rows of the reference, named in every reason. Prices and minutes are guesses until own ones are put in;
a proving batch replaces the dose of its own mix and way.
Refuses: to choose a way that a rule stops; to hide one: each is set aside with its reason and what would make it win.
"""

from rootcollar.choose.alike import alike
from rootcollar.choose.cost import cost_per_kill, cost_per_stem, expected
from rootcollar.choose.decide import decide
from rootcollar.choose.figures import proving_batch
from rootcollar.choose.gates import shut
from rootcollar.choose.judge import fallback_verdicts, line_departures, line_verdicts, total_verdicts, unit_totals
from rootcollar.choose.option import Choice, Fallback, Option, PerStem, Pick, Prescription, SetAside, Way
from rootcollar.choose.own import NO_OWN, Mixed, Own, Price
from rootcollar.choose.plan import prescribe
from rootcollar.choose.prices import LineCost, line_cost
from rootcollar.choose.replay import replay_cost, replay_minutes, replay_mix
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import line_minutes, line_mix_ml, line_money, minutes, poured_ml, stems, sum_worlds
from rootcollar.choose.ways import Product, not_planned_with, products, ways_for
from rootcollar.choose.words import instruction, method_in_words, mix_words, trigger, way_words

__all__ = [
    "NO_OWN", "Choice", "Fallback", "LineCost", "Mixed", "Option", "Own", "PerStem", "Pick", "Prescription",
    "Price", "Product", "SetAside", "Setting", "Way", "alike", "cost_per_kill", "cost_per_stem", "decide", "expected",
    "fallback_verdicts", "instruction", "line_cost", "line_departures", "line_minutes", "line_mix_ml",
    "line_money", "line_verdicts", "method_in_words", "minutes", "mix_words",
    "not_planned_with", "poured_ml", "prescribe", "products", "proving_batch", "replay_cost",
    "replay_minutes", "replay_mix", "shut", "stems",
    "sum_worlds", "total_verdicts", "trigger", "unit_totals", "way_words", "ways_for",
]  # fmt: skip
