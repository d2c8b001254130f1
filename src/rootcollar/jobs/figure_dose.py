"""Figure a dose: how much finished mix so many stems of a size take, which coverage that rests on, and how sure it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from rootcollar.choose import line_mix_ml
from rootcollar.choose.strength import Asked as AskedStrength
from rootcollar.choose.strength import Strength, choose_strength
from rootcollar.dose import Asked, DoseRule, per_stem_ml, rule_for
from rootcollar.jobs.figure import Answer
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.doubt import Band, Doubt, Worlds, band, sure
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.units import convert, show
from rootcollar.mix import Carrier, product_ml
from rootcollar.reference import Formulation, Reference

__all__ = ["DoseAsk", "dose"]
