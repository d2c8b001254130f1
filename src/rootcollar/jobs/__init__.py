"""Jobs: one function for each thing a person does; the only place where a project and the rooms meet.

Question: what did the person ask for, and which rooms answer it?
Inputs: a `Project` (an immutable snapshot), what is asked, the day. Outputs: an `Outcome`: a value and verdicts.
Jobs arrange and never compute: they import no numbers, geometry, files or framework, and read no clock.
Refuses: what the rooms refuse, unchanged. Modules are imported one by one, so that a quick question starts at once.
"""
