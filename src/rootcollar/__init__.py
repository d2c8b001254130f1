"""Rootcollar: for people who remove invasive woody plants from woodland, stem by stem, with hand tools.

Each room of the house answers one question of the job; imports between rooms go down only:
cli, jobs, exchange and paper, work, choose, label, mix, dose, survey, site, shelf, reference, kernel.
"""

__all__ = ["__version__"]

__version__ = "0.1.0"
