"""Facts: what published sources and the trade say, each with its source and its mark.

Question: what is known of this plant, this ingredient, this formulation, this way of working, and who says so?
Inputs: the TOML files under data/, one plant, ingredient and method a file. Nothing else is read.
Outputs: frozen values (`Species`, `Ingredient`, `Formulation`, `MethodFacts`, ...) held by one `Reference`; every
figure is a `Cited` or stands in a `Row` with source and mark. Where sources disagree all are kept; `best` picks openly.
Sources: data/sources.toml; the pseudo sources practice, ours, geometry, definition and arithmetic say what they are.
Refuses: a name it does not know, with the near ones (`NotFound`); a data file with a key, word, mark or source it
does not know (`ValueError` naming file, table and key).
It judges nothing and permits nothing: the label in hand outranks every row here.

Public words: load, read, Reference; find_species, find_ingredient, find_form, find_formulation, find_method,
find_tongue; best, named, numbers, spans; figures, row_words; and the shapes listed in __all__.
"""

from rootcollar.reference.body import BodySize
from rootcollar.reference.chooser import best, middle, named, numbers, spans, why
from rootcollar.reference.disagree import Conflict
from rootcollar.reference.effort import EffortRow
from rootcollar.reference.figures import figures, row_words
from rootcollar.reference.find import (
    find_form,
    find_formulation,
    find_ingredient,
    find_method,
    find_species,
    find_tongue,
)
from rootcollar.reference.load import Reference, load, read
from rootcollar.reference.plants import (
    EfficacyRow,
    FailRow,
    General,
    Hazard,
    JudgeRow,
    LookAlike,
    MethodRow,
    Species,
    StatusRow,
    SymptomRow,
    TimingRow,
)
from rootcollar.reference.posting import PostingRow
from rootcollar.reference.products import Form, Formulation, Ingredient
from rootcollar.reference.seasons import SeasonRow
from rootcollar.reference.spans import Figure, Row, Span, Value, Window
from rootcollar.reference.steps import HoldRow, StepRow
from rootcollar.reference.ways import Coverage, KillRow, LabourRow, MethodFacts, NamedFigure, Practice, TrialRow

__all__ = [
    "load",
    "read",
    "Reference",
    "find_species",
    "find_form",
    "find_ingredient",
    "find_formulation",
    "find_method",
    "find_tongue",
    "best",
    "middle",
    "named",
    "numbers",
    "spans",
    "why",
    "figures",
    "row_words",
    "BodySize",
    "Conflict",
    "Coverage",
    "EfficacyRow",
    "EffortRow",
    "FailRow",
    "Figure",
    "Form",
    "Formulation",
    "General",
    "Hazard",
    "Ingredient",
    "HoldRow",
    "JudgeRow",
    "KillRow",
    "LabourRow",
    "LookAlike",
    "MethodFacts",
    "MethodRow",
    "NamedFigure",
    "PostingRow",
    "Practice",
    "Row",
    "SeasonRow",
    "Span",
    "Species",
    "StatusRow",
    "StepRow",
    "SymptomRow",
    "TimingRow",
    "TrialRow",
    "Value",
    "Window",
]
