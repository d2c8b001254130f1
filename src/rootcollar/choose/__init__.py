"""Choose: treat what first, how, with what, when; and what must never be done here.

Question: for each stand, which way is best, why, and what was set aside?
Inputs: stands as worlds, the ground, the shelf's label sheets, the crew's wear, answers, history, reference facts.
Outputs: a `Prescription`: one `Choice` a stand with reasons, fallback, verdicts; units in order; mixes by letter.
How: ways from the sources' rows x products; gates of plant, ground and label; figures per stem as worlds; the least
expected cost per stem killed among what is left.
Sources: the rows of the reference, named in every reason. Prices and minutes are guesses until own ones are put in;
a proving batch replaces the dose of its own mix and way, an own time the whole guess of a visit to a stem.
Refuses: to choose a way that a rule stops; to hide one: each is set aside with its reason and what would make it win.
"""

from rootcollar.choose.alike import alike
from rootcollar.choose.beside import line_side_m2, side_area, side_words
from rootcollar.choose.cost import cost_per_kill, cost_per_stem, expected, share_needed
from rootcollar.choose.decide import decide
from rootcollar.choose.figures import proving_batch
from rootcollar.choose.first import Place, place_of, thickness
from rootcollar.choose.gates import shut
from rootcollar.choose.in_month import Instead, MonthLine, in_month, instead_of, shut_words, year_of_line
from rootcollar.choose.judge import fallback_verdicts, line_departures, line_verdicts, total_verdicts, unit_totals
from rootcollar.choose.kill import Counted, KillPool, dead_and_alive, kill_pool, kill_share
from rootcollar.choose.missing import Opening, opens_most
from rootcollar.choose.months import Best, MonthSaid, best_months, reasons, year_of
from rootcollar.choose.option import Choice, Fallback, Option, PerStem, Pick, Piece, Prescription, SetAside, Way
from rootcollar.choose.own import NO_OWN, Mixed, Own, Price, Time
from rootcollar.choose.plan import prescribe
from rootcollar.choose.prices import LineCost, line_cost, wage_per_h
from rootcollar.choose.reach import Reach, mosts, reaches
from rootcollar.choose.replay import (
    replay_all_cost,
    replay_all_minutes,
    replay_cost,
    replay_labour,
    replay_minutes,
    replay_mix,
    replay_mix_cost,
    replay_per_kill,
    replay_side,
    replay_stem_cost,
)
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import minutes_per_stem
from rootcollar.choose.sums import line_minutes, line_mix_ml, line_money, minutes, poured_ml, stems, sum_worlds
from rootcollar.choose.visits import (
    day_money,
    minutes_to_share,
    money_to_share,
    share_to_reach,
    unit_day_minutes,
    visits_of,
)
from rootcollar.choose.ways import Product, not_planned_with, products, ways_for
from rootcollar.choose.words import instruction, method_in_words, mix_words, trigger, way_words

__all__ = [
    "NO_OWN", "Best", "Choice", "Counted", "Fallback", "Instead", "KillPool", "LineCost", "Mixed", "MonthLine",
    "MonthSaid", "Opening", "Option", "Own",
    "PerStem", "Pick", "Piece", "Place", "Prescription", "Price", "Product", "Reach", "SetAside", "Setting", "Time",
    "Way",
    "alike", "best_months", "cost_per_kill", "cost_per_stem", "day_money", "dead_and_alive", "decide", "expected",
    "fallback_verdicts", "in_month", "instead_of", "instruction", "kill_pool", "kill_share", "line_cost",
    "line_departures", "line_minutes", "line_mix_ml",
    "line_money", "line_side_m2", "line_verdicts", "method_in_words", "minutes", "minutes_per_stem",
    "minutes_to_share", "mix_words", "money_to_share", "mosts",
    "not_planned_with", "opens_most", "place_of", "poured_ml", "prescribe", "products", "proving_batch", "reaches",
    "reasons", "replay_all_cost", "replay_all_minutes", "replay_cost", "replay_labour", "replay_minutes", "replay_mix",
    "replay_mix_cost", "replay_per_kill", "replay_side",
    "replay_stem_cost", "share_needed", "share_to_reach", "shut", "shut_words", "side_area", "side_words", "stems",
    "sum_worlds", "thickness", "total_verdicts", "trigger",
    "unit_day_minutes", "unit_totals", "visits_of", "wage_per_h", "way_words", "ways_for", "year_of", "year_of_line",
]  # fmt: skip
