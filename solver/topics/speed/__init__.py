"""Speed, impeller and the affinity laws.

| file | what it has |
|---|---|
| `quantities.py` | speeds, diameters, what they make of flow, head and power, and points of curves |
| `formulas.py` | the affinity laws; `SPEED_AND_IMPELLER` has all of the chapter |
| `formulas_slowing.py` | what slowing down saves, with and without lift |
| `formulas_curves.py` | where curves cross, with one pump and with two; specific speed |
| `curves.py` | a pump's curve and a system's as parabolas, for figures |
| `stations.py` | the stations its problems read, and what the families share |
| `problems.py` | the affinity laws, and the chapter in the order of teaching |
| `problems_slowing.py` | what slowing down saves |
| `problems_curves.py` | where curves cross; specific speed |
| `judgments.py` | the cube law's limit, two pumps on one main, the kind of impeller |
| `judgments_duty.py` | why the duty point moved; the wet well's drawdown asks it too |
| `by_hand.py` | each number worked in plain numbers |
"""
