"""Cli: the commands in the terminal. It asks, runs one job and shows what came of it.

Question: what did this person type, and how is the answer said plainly?
Inputs: the words of the command line, with their units; files only through exchange.
Outputs: text for a person, or with --json one object whose schema has a name and a number; errors as sentences.
Exit codes: 0 done, 1 a stop or an open question stands, 2 bad input or a refusal, 3 our own fault, 130 interrupted.
Sources: none of its own; what it prints carries the sources of what was worked out.
Refuses: to guess a unit, to show a trace unless ROOTCOLLAR_TRACE=1 asks for it, to say that work is safe or legal.

Public words: main (cli.main); what commands share stands in cli.show and cli.ask. Nothing is imported here, because
`rootcollar --help` has to answer at once.
"""
