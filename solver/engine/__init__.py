"""A problem: its chain of formulas, steps, mistakes, band, chance, code and grading.

| file | what is in it |
|---|---|
| `family.py` | the definition of a kind of problem: what is given, what is asked, how it is worded |
| `judgement.py` | what a judgement comes to, and its choices |
| `order.py` | steps to put in order: which must stand before which |
| `draw.py` | chance that is the same on every machine |
| `case.py` | a problem, with its question and its whole solution |
| `posing.py` | a problem drawn by its number, or posed of given values |
| `code.py` | how any code is typed, written and checked; the code of a problem |
| `plan.py` | the chain of formulas from what is known to what is asked; the chain as one line |
| `steps.py` | that chain as worked steps, each with its reason |
| `solution.py` | what given values come to: answer, steps, mistakes of one link |
| `band.py` | the accepted band: every answer that honest work can give |
| `variants.py` | every way to get one expression wrong, by its shape |
| `changes.py` | a chain with one link changed: those ways, the slips of its formulas, stopped early |
| `slips_together.py` | a common slip; the same at every link like it, or the two likeliest |
| `common_slips.py` | all common slips of a chain: those, any stop, another unit |
| `mistake.py` | a wrong answer with a name; which slips a problem names, and where |
| `choices.py` | a problem as one of several choices, of its mistakes' answers |
| `grading.py` | an answer as typed: right, a named mistake, close, wrong or unreadable |
| `telling.py` | hints, and a mistake told with the learner's own numbers |
"""
