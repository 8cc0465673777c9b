"""Electricity from first principles: circuits, single-phase power, wire, transformers, the demand bill.

| file | what it has |
|---|---|
| `quantities.py` | volts, amps, ohms and watts of a circuit; wire; transformers; demand in kVA, load factor |
| `formulas.py` | Ohm's law, series and parallel, watts; `ELECTRICITY` has all of the chapter |
| `formulas_supply.py` | single-phase power, voltage drop, transformers |
| `formulas_demand.py` | kVA billing, load factor |
| `scenes.py` | heaters, signal loops, cables and transformers of sizes that are sold; bills by the kVA |
| `problems.py` | circuits and single-phase power, and the chapter in the order of teaching |
| `problems_supply.py` | wire, transformers, the bill for demand |
| `by_hand.py` | each number worked in plain numbers |
| `wire_us.csv`, `wire_si.csv` | copper wire: its area, its resistance, what it may carry |
| `circuits.toml`, `overcurrent.toml`, `grounding.toml` | questions in words |
"""
