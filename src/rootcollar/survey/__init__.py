"""Count: how many stems of what, how big, where, and how sure are we.

Question: how many stems of each species and size stand on each unit?
Inputs: rows of a stem tally, one a unit, species and diameter class, with the counter's own range where one was given.
Outputs: `Stand`s in key order, their stems as worlds (best figure first, then the doubt); totals and densities.
Sources: the user's count. A range "from .. to" is read as the middle 80 % of what the counter believes (ours).
Refuses: two rows for one unit, species and class (a sum would hide a row typed twice), and a range that does not
hold its own count.
"""

from rootcollar.survey.stand import MeasuredAt, Stand, TallyRow
from rootcollar.survey.tally import stand_key, stands, stems_per_acre, total
from rootcollar.survey.when import easiest_to_find

__all__ = ["Stand", "TallyRow", "MeasuredAt", "stands", "stand_key", "total", "stems_per_acre", "easiest_to_find"]
