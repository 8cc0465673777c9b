"""Wet wells, cycles and drawdown.

| file | what it has |
|---|---|
| `quantities.py` | sizes, depths and volumes, rates, times of a cycle, starts, hours, storage |
| `formulas.py` | what a well holds, what it can still hold without power, the hours of its pumps |
| `formulas_drawdown.py` | flows by how fast the level moves: pump, inflow, leak back |
| `formulas_cycles.py` | filling, emptying, starts, the least volume between floats |
| `stations.py` | the stations that problems are read off, and the words that questions share |
| `problems.py` | volumes, hours and storage, and the chapter in the order of teaching |
| `problems_drawdown.py` | flows by how fast the level moves |
| `problems_cycles.py` | filling, emptying, starts, the volume between floats |
| `judgments.py` | starts, a drawdown against the rated flow |
| `judgments_rise.py` | what comes in and what leaks back, by how fast the level rises |
| `by_hand.py` | each number worked in plain numbers |
| `cycles.csv` | the published times between starts |
"""
