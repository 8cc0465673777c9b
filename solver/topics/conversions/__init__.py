"""Units for pump work: one reading in another unit, or as a share of a whole.

| file | what it has |
|---|---|
| `quantities.py` | flows, pressures, volumes, weights and powers in other units |
| `factors.py` | each factor once, with its exact value |
| `formulas.py` | the conversions |
| `scenes.py` | flows, gauges, tanks and motors that could exist |
| `problems.py` | the families, in the order of teaching |
| `judgments_chains.py` | which chain of conversions is set up right |
| `judgments_factors.py` | which number is plainly wrong |
| `by_hand.py` | each number worked in plain numbers |
"""
