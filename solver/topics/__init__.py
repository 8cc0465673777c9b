"""One folder a chapter, and what the chapters share.

| file | what it has |
|---|---|
| `quantities.py` | every quantity, topic by topic |
| `formulas.py` | every formula, in the order that the engine tries them |
| `problems.py` | every family, in the order of the chapters |
| `chapter.py` | a maker of a chapter's families |
| `by_hand.py` | the form of the sums by hand |
| `library.py` | a family by its name, a problem by its code |
| `catalogue.py` | which kinds of problems there were when |
| `first_catalogue.py` | how version 0.1.0 drew |
| `constants.py` | the constants that several topics use |
| `limits.py` | the limits that readings are judged by |
| `zones.py` | a quantity against its two limits, and the judge of it |
| `tables.py` | the published tables, read |
| `questions.py`, `orders.py` | questions in words, and steps to put in order, read |
| `rungs.py` | a rung of a ladder drawing, in words |
| `readings.py`, `scenes.py` | a reading worked by formulas and noted as people note it; stations that several chapters read |

A chapter's folder has `quantities.py`, `formulas.py`, `problems.py` and `by_hand.py`: each numeric
family's answer in plain numbers, which a test holds it to. Where it needs them it has `stations.py` (what
its problems need of their station), judgments, tables as .csv and questions in words as .toml. What would
be longer than 250 lines parts where the trade does, as `formulas_bills.py` does from `formulas.py`; each still
has the whole of its chapter. Its docstring lists its files.
"""
