"""Kilowatt-hours and what they cost.

| file | what it has |
|---|---|
| `quantities.py` | hours, energy, prices, charges, savings |
| `formulas.py` | energy, its cost, water moved, bills; what an upgrade saves, and its payback |
| `scenes.py` | duty schedules, prices, upgrades and bills that could be |
| `problems.py` | the families, in the order of teaching |
| `judgments.py` | the offer that pays back first, the pump that is cheapest to run |
| `by_hand.py` | each number worked in plain numbers |
"""
