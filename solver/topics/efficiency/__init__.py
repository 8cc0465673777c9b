"""Efficiencies of pump, drive and motor, wire to water, and the motor for a load.

| file | what it has |
|---|---|
| `quantities.py` | the motor's size and load, efficiencies, what each machine loses |
| `formulas.py` | efficiencies in a row, losses, the next standard motor |
| `stations.py` | the stations near a standard size of motor; and the chapter |
| `problems.py` | the families, in the order of teaching |
| `judgments.py` | the greatest loss; reports and readings that can't be right |
| `by_hand.py` | each number worked in plain numbers |
"""
