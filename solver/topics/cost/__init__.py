"""Kilowatt-hours and what they cost.

| file | what it has |
|---|---|
| `quantities.py` | hours, energy, prices, charges, savings |
| `formulas.py` | energy, its cost, water moved; `COST` has all of the chapter |
| `formulas_upgrades.py` | what an upgrade saves, and its payback |
| `formulas_bills.py` | demand, prices by the hour, the whole bill |
| `stations.py` | the stations its problems read, with their hours, prices and offers |
| `problems.py` | energy and its cost, what is judged, and the chapter in the order of teaching |
| `problems_upgrades.py` | what an upgrade saves |
| `problems_bills.py` | bills |
| `judgments.py` | the offer that pays back first, the pump that is cheapest to run |
| `by_hand.py` | each number worked in plain numbers |
"""
