"""Pump curves, two pumps together, and pumps that push a fixed volume at every stroke or turn.

| file | what it has |
|---|---|
| `quantities.py` | the shutoff test, the best point, two pumps, strokes and turns |
| `formulas.py` | the shutoff test, series and parallel; `CURVES` has all of the chapter |
| `formulas_strokes.py` | output and slip of displacement pumps |
| `stations.py` | the stations and the small draws its problems read |
| `problems.py` | the families that ask for a number, and the chapter in the order of teaching |
| `read_off.py` | a drawn curve: its scales, its points, choices that can be told apart |
| `judged_curves.py` | head, efficiency and flow read off a drawn curve, and horsepower from them |
| `judged_npsh.py` | NPSHr read off the curve |
| `judgments.py` | where a pump runs on its curve; what a shutoff test tells |
| `by_hand.py` | each number worked in plain numbers |
| `*.toml` | questions in words: what curves tell, kinds of pumps, priming and cavitation |
"""
