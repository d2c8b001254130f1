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

from rootcollar.choose.after import LOOK, NOTHING, SEED, VISIT, bank_words, bank_years, judge_years, lost_words
from rootcollar.choose.alike import alike
from rootcollar.choose.beside import line_side_m2, side_area, side_words
from rootcollar.choose.booked import (
    Booked,
    Start,
    Year,
    booked,
    kinds_of,
    new_ground,
    new_lines,
    new_year,
    owed_year,
    owed_years,
    together,
)
from rootcollar.choose.cost import cost_per_kill, cost_per_stem, expected, share_needed
from rootcollar.choose.decide import decide
from rootcollar.choose.figures import figures_of, proving_batch
from rootcollar.choose.first import Place, place_working
from rootcollar.choose.gates import shut
from rootcollar.choose.in_month import Instead, MonthLine, in_month, instead_of, shut_words, year_of_line
from rootcollar.choose.judge import fallback_verdicts, line_departures, line_verdicts, total_verdicts, unit_totals
from rootcollar.choose.kill import Counted, KillPool, dead_and_alive, kill_pool, kill_share
from rootcollar.choose.missing import Opening, opens_most
from rootcollar.choose.months import Best, MonthSaid, best_months, reasons, year_of
from rootcollar.choose.option import Choice, Fallback, Option, PerStem, Pick, Piece, Prescription, SetAside, Way
from rootcollar.choose.owed import Owed, owed, owed_soon
from rootcollar.choose.own import NO_OWN, Mixed, Own, Price, Time
from rootcollar.choose.plan import prescribe
from rootcollar.choose.plan_sums import PLAN_FIGURES, plan_figure
from rootcollar.choose.plans import PropertyPlan, plans
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
from rootcollar.choose.rounds import Rounds, rounds_of, rounds_of_unit
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import minutes_per_stem
from rootcollar.choose.step_day import OwedStep, begun, on_day, owed_steps
from rootcollar.choose.steps import StepDays, holds_of, second_spans, step_days
from rootcollar.choose.sums import line_minutes, line_mix_ml, line_money, minutes, poured_ml, stems, sum_worlds
from rootcollar.choose.thicket import Band, OneInstruction, Thicket, one_instruction, thickets
from rootcollar.choose.visits import (
    day_money,
    minutes_to_share,
    money_to_share,
    share_to_reach,
    unit_day_minutes,
    visits_of,
)
from rootcollar.choose.ways import Product, not_planned_with, products, ways_for
from rootcollar.choose.why_first import Speaks, thickness
from rootcollar.choose.wins import most_to_win, wins_at
from rootcollar.choose.words import (
    date_words,
    instruction,
    method_in_words,
    mix_words,
    span_words,
    trigger,
    wait_words,
    way_words,
)

__all__ = [
    "LOOK", "NOTHING", "NO_OWN", "PLAN_FIGURES", "SEED", "VISIT", "Band", "Best", "Booked", "Choice", "Counted",
    "Fallback", "Instead", "KillPool", "LineCost", "Mixed", "MonthLine", "MonthSaid", "OneInstruction", "Opening",
    "Option", "Owed", "OwedStep", "Own", "PerStem", "Pick", "Piece", "Place", "Prescription", "Price", "Product",
    "PropertyPlan", "Reach", "Rounds", "SetAside", "Setting", "Speaks", "Start", "StepDays", "Thicket", "Time", "Way",
    "Year", "alike", "bank_words", "bank_years", "begun", "best_months", "booked", "cost_per_kill", "cost_per_stem",
    "date_words", "day_money", "dead_and_alive", "decide", "expected", "fallback_verdicts", "figures_of", "holds_of",
    "in_month", "instead_of", "instruction", "judge_years", "kill_pool", "kill_share", "kinds_of", "line_cost",
    "line_departures", "line_minutes", "line_mix_ml", "line_money", "line_side_m2", "line_verdicts", "lost_words",
    "method_in_words", "minutes", "minutes_per_stem", "minutes_to_share", "mix_words", "money_to_share",
    "most_to_win", "mosts", "new_ground", "new_lines", "new_year", "not_planned_with", "on_day", "one_instruction",
    "opens_most", "owed", "owed_soon", "owed_steps", "owed_year", "owed_years", "place_working", "plan_figure",
    "plans", "poured_ml", "prescribe", "products", "proving_batch", "reaches", "reasons", "replay_all_cost",
    "replay_all_minutes", "replay_cost", "replay_labour", "replay_minutes", "replay_mix", "replay_mix_cost",
    "replay_per_kill", "replay_side", "replay_stem_cost", "rounds_of", "rounds_of_unit", "second_spans",
    "share_needed", "share_to_reach", "shut", "shut_words", "side_area", "side_words", "span_words", "stems",
    "step_days", "sum_worlds", "thickets", "thickness", "together", "total_verdicts", "trigger", "unit_day_minutes",
    "unit_totals", "visits_of", "wage_per_h", "wait_words", "way_words", "ways_for", "wins_at", "year_of",
    "year_of_line",
]  # fmt: skip
