"""Looked: how well was this ground looked at, and when may it be called clear?

Question: what share of the stems did we see, how many stood there, and how many clean visits are enough?
Inputs: track and effective width; flags of a calibration walk, found or missed; two observers' finds; chances.
Outputs: times swept and chance found, a detection curve with its fit, stems standing, counts mended as worlds, visits.
Sources: COOPER, BURNHAM80 (read in the copies named), MACK02 (abstract read), CHAPMAN51, REGAN06 (memory).
Refuses: a width from fewer than 20 flags, or where nothing or everything was found; clear ground by looks alone.
"""

from rootcollar.survey.looked.again import Clear, best_visits, clear_when, found_by_then, looks_for, still_there
from rootcollar.survey.looked.curve import Curve, Fit, chance_at, expected_between, half_width_m, how_good, seen_share
from rootcollar.survey.looked.mend import mended, mended_count
from rootcollar.survey.looked.repeat import Occupied, more_than_seen_pct, occupied, there_share
from rootcollar.survey.looked.search import chance_found, times_swept, track_needed_m
from rootcollar.survey.looked.two import ALIKE, TwoWalks, chapman, chapman_variance, lincoln_petersen, standing
from rootcollar.survey.looked.walk import FEWEST_FLAGS, Flag, Walked, fit_walk, half_width_worlds

__all__ = [
    "times_swept", "chance_found", "track_needed_m",
    "Flag", "Walked", "fit_walk", "half_width_worlds", "FEWEST_FLAGS",
    "Curve", "Fit", "chance_at", "half_width_m", "seen_share", "expected_between", "how_good",
    "TwoWalks", "standing", "chapman", "chapman_variance", "lincoln_petersen", "ALIKE",
    "Clear", "clear_when", "still_there", "found_by_then", "looks_for", "best_visits",
    "Occupied", "occupied", "there_share", "more_than_seen_pct",
    "mended", "mended_count",
]  # fmt: skip
