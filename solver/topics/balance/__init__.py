"""Three legs: amps and volts in balance.

| file | what it has |
|---|---|
| `quantities.py` | amps, volts, averages, deviations, unbalance, full-load and service-factor amps |
| `formulas.py` | the legs against their average and against the nameplate; `balance` for any three readings |
| `formulas_heating.py` | what unbalanced volts cost: the derating, the temperature rise |
| `legs.py` | how uneven the legs are that are read, and what the families share |
| `problems.py` | the families that ask for a number, and the chapter in the order of teaching |
| `judgments.py` | readings against the limits of a standard, a manual, a nameplate |
| `judgments_leads.py` | rolled motor leads: where the cause is, which connection to keep, the rotation |
| `by_hand.py` | each number worked in plain numbers |
| `derating.csv` | the published points of load on unbalanced volts |
"""
