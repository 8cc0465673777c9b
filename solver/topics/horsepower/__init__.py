"""Water, brake and motor horsepower, from flow and head to the meter and back.

| file | what it has |
|---|---|
| `quantities.py` | flow, head, pressure rise, the three horsepowers, input power |
| `formulas.py` | `POWER`: from the water to the meter, with the formulas of the efficiency topic |
| `problems.py` | the families, in the order of teaching |
| `judgments.py` | which reading is which, and which can't be right |
| `by_hand.py` | each number worked in plain numbers |
"""
