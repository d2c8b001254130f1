"""Exchange: a property as a folder of plain files that any text editor and any spreadsheet can open.

Question: what has this person written down of their ground, their count, their labels, their crew?
Inputs: a folder: ground.toml and tally.csv (needed); crew, answers, choices and own (.toml), applied and stock (.csv),
shelf/*.toml (if there).
Outputs: a `Project`; a new folder of commented templates; the demo property, Hobbin Wood.
Sources: the user. The demo ground and its labels are invented and say so on every page.
Refuses: anything it cannot read without guessing, all of it at once, each with file, row, column, what was found and
what is allowed. It never writes into a folder that holds something, and writes a new folder whole or not at all.
What is not written down is not known (None), and is asked for later; it is never taken to be none.
"""

from rootcollar.exchange.begin import Begun, begin
from rootcollar.exchange.folder import read_folder
from rootcollar.exchange.ground_file import WRITTEN_AS
from rootcollar.exchange.kept import keep_answer, keep_choice
from rootcollar.exchange.photo_file import keep_photo, photo_file
from rootcollar.exchange.plots_write import plots_as_csv, plots_as_geojson, plots_as_gpx
from rootcollar.exchange.second_file import keep_second, read_second, second_stamp, with_second
from rootcollar.exchange.sheet_file import read_sheet
from rootcollar.exchange.sheet_write import TypedSheet, keep_sheet, new_key, sheet_as_typed, sheet_changed
from rootcollar.exchange.start import new_folder, write_demo
from rootcollar.exchange.tally_write import Changed, TypedTally, keep_tally, tally_as_typed, tally_cells
from rootcollar.exchange.whole import write_whole

__all__ = [
    "Begun",
    "begin",
    "read_folder",
    "read_sheet",
    "TypedSheet",
    "keep_sheet",
    "new_key",
    "sheet_as_typed",
    "sheet_changed",
    "keep_photo",
    "photo_file",
    "plots_as_csv",
    "plots_as_geojson",
    "plots_as_gpx",
    "keep_second",
    "read_second",
    "second_stamp",
    "with_second",
    "keep_answer",
    "keep_choice",
    "keep_tally",
    "tally_as_typed",
    "tally_cells",
    "TypedTally",
    "Changed",
    "WRITTEN_AS",
    "new_folder",
    "write_demo",
    "write_whole",
]
