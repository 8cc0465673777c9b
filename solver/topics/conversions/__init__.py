"""Units for pump work: one reading in another unit, or as a share of a whole.

| file | what it has |
|---|---|
| `quantities.py` | flows, pressures, volumes, weights and powers in other units |
| `factors.py` | each factor once, with its exact value |
| `formulas.py` | pressures, volumes, weights and powers; `CONVERSIONS` has all of the chapter |
| `formulas_flows.py` | flows |
| `stations.py` | the stations that flows, gauges and loads are read off |
| `small.py` | gauges, tanks and motors, drawn; and the chapter |
| `problems.py` | pressures, volumes and powers, and the chapter in the order of teaching |
| `problems_flows.py` | flows |
| `judgments_chains.py` | which chain of conversions is set up right |
| `judgments_factors.py` | which number is plainly wrong |
| `by_hand.py` | each number worked in plain numbers |
"""
