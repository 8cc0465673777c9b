"""Total dynamic head: from levels, from gauges and from pipes; suction lift and NPSH.

| file | what it has |
|---|---|
| `quantities.py` | levels, gauges, pipes and fittings, parts of the total, the suction side |
| `formulas.py` | the total, from two gauges or from its parts |
| `formulas_static.py` | levels, lifts, the suction side, the air by altitude |
| `formulas_pipes.py` | velocity, friction, minor losses |
| `stations.py` | the stations that problems are read off, and the words that questions share |
| `problems.py` | levels, totals and gauges, and the chapter in the order of teaching |
| `problems_pipes.py` | velocity, friction, minor losses |
| `problems_suction.py` | the suction side |
| `problems_judged.py` | what is to be judged of pipes, totals and gauges, with its limits |
| `judged_suction.py` | what is to be judged on the suction side |
| `judgments.py` | a part left out, a pipe by its C factor |
| `judgments_gauges.py` | what two gauges tell |
| `by_hand.py` | each number worked in plain numbers |
| `atmosphere_*.csv` | the air by altitude; with `c_factors.csv` and `fittings.csv` the published tables |
"""
