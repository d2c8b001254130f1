"""Shelf: the products in the shed and what their labels say. Values, no rules.

Question: what does the label on this jug say, and what has nobody read yet?
Inputs: a label sheet as typed by its owner from the jug in hand (`template` gives an empty one).
Outputs: a `Sheet` of lines in three states (says something, read and silent, not read), and plain look-ups on it;
a `Stock` of lots, oldest last day first.
Sources: the label itself; what a label can say follows 40 CFR part 156 (edition of 2015) and the elements of
directions for use that a label reviewer looks for [LRM11, December 2014].
Refuses: a sheet with a key it does not know, a figure of the wrong kind, a low above its high, with all faults at
once. It ships no filled-in sheet of a real product and guesses no line: absent stays absent.
"""

from rootcollar.shelf.fields import FIELDS, METHODS, SITE_CLASSES, Field, Stricter, fields_of
from rootcollar.shelf.parse import SCHEMA, parse_sheet
from rootcollar.shelf.read import (
    NOT_READ,
    actives,
    ae_g_per_l,
    carriers,
    dose_each,
    entry_hours,
    setback_words,
    sites,
    strength_range,
    unread,
    wear,
)
from rootcollar.shelf.registration import base_product, is_epa_reg_no, is_placeholder, sln_state
from rootcollar.shelf.second import Again, Twice, another, asked_again, first_reader, same_person, twice, value_again
from rootcollar.shelf.sheet import SILENT, Active, Distance, Line, Second, Sheet, Silent, SiteLine
from rootcollar.shelf.stock import ADDITIVES, Lot, Stock
from rootcollar.shelf.strictest import strictest
from rootcollar.shelf.template import template
from rootcollar.shelf.typed import SILENT_WORD, as_typed, cells_of, form_of, raw_of, shape_of
from rootcollar.shelf.values import NotAllowed, read_value
from rootcollar.shelf.walk import (
    PAGED,
    REPEATED,
    SECTIONS,
    Section,
    Shape,
    block_of,
    field_at,
    in_order,
    page_words,
    walk,
)

__all__ = [
    "Sheet", "Line", "SILENT", "Silent", "Active", "SiteLine", "Distance",
    "FIELDS", "Field", "Stricter", "METHODS", "SITE_CLASSES", "fields_of",
    "SCHEMA", "NOT_READ", "parse_sheet", "template", "unread",
    "actives", "ae_g_per_l", "carriers", "dose_each", "entry_hours", "setback_words",
    "sites", "strength_range", "wear",
    "ADDITIVES", "Lot", "Stock", "strictest",
    "SECTIONS", "Section", "Shape", "PAGED", "REPEATED", "block_of", "field_at", "in_order", "page_words",
    "walk",
    "SILENT_WORD", "NotAllowed", "as_typed", "cells_of", "form_of", "raw_of", "read_value", "shape_of",
    "Second", "Again", "Twice", "another", "asked_again", "first_reader", "same_person", "twice", "value_again",
    "base_product", "is_epa_reg_no", "is_placeholder", "sln_state",
]  # fmt: skip
