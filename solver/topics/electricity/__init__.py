"""Electricity from first principles: circuits, single-phase power, wire, transformers, the demand bill.

| file | what it has |
|---|---|
| `quantities.py` | volts, amps, ohms and watts of a circuit; wire; transformers; demand in kVA, load factor |
| `formulas.py` | Ohm's law, series and parallel, watts, single-phase power |
| `formulas_supply.py` | voltage drop, transformers, kVA billing, load factor; `ELECTRICITY` has all |
| `scenes.py` | heaters, signal loops, cables and transformers of sizes that are sold; bills by the kVA |
| `problems.py` | the families, in the order of teaching |
| `by_hand.py` | each number worked in plain numbers |
| `wire_us.csv`, `wire_si.csv` | copper wire: its area, its resistance, what it may carry |
| `circuits.toml`, `overcurrent.toml`, `grounding.toml` | questions in words |
"""
