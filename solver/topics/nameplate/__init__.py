"""Motors and their nameplates.

| file | what it has |
|---|---|
| `quantities.py` | volts, amps, the three powers, speeds and slips, the overload, the start |
| `formulas.py` | what nameplate and code table say: full-load amps, overload, conductors, starting |
| `formulas_running.py` | what a running motor shows: kVA, kW, kvar, power factor, slip, load |
| `stations.py` | the stations its problems read, and what the families share |
| `problems.py` | loads, the overload, the start, and the chapter in the order of teaching |
| `problems_power.py` | kVA, kilowatts, amps, power factor, kvar |
| `problems_speed.py` | synchronous speed and slip |
| `judgments.py` | the overload setting, table or nameplate, the code letter |
| `judgments_running.py` | which power is which, load by amps, the service factor |
| `judgments_speed.py` | number of poles, what the slip tells |
| `by_hand.py` | each number worked in plain numbers |
| `premium_motors_*.csv`, `standard_motors_*.csv` | published tables of efficiency by size and poles |
| `full_load_amps_*.csv`, `locked_rotor_amps_us.csv`, `overload.csv`, `code_letters.csv` | published tables of amps |
"""
