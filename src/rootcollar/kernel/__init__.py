"""Kernel: the words everybody uses.

Question: how is a quantity read, a doubt carried, a number shown with its working, an objection said?
Inputs: text people type, plain numbers. Outputs: quantities, worlds, formulas, verdicts, windows of the year, errors.
Sources: exact unit definitions [definition]; the marks for measuring jugs are ours.
Refuses: what can be read in two ways ("oz" of what?), what is not finite, a formula outside its range.
Modules: units, doubt, formula and working, verdict, days, rounding, sources, errors. Imported one by one, because a
quick question must not wait for what it does not need.
"""
