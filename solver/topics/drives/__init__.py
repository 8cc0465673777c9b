"""Drives, belts and bearings.

| file | what it has |
|---|---|
| `quantities.py` | sheaves, torque, coupling gaps, grease, wear rings, vibration |
| `formulas.py` | alignment, grease, clearances; `DRIVES` has all of the chapter |
| `formulas_belts.py` | sheave speeds, belt speed, torque |
| `small.py` | what a mechanic measures, drawn; and the chapter |
| `problems.py` | the families, in the order of teaching |
| `judgments.py` | vibration, by its zone and by its change |
| `by_hand.py` | each number worked in plain numbers |
| `bearing_sizes.csv` | bearings by number |
| `belt_drives.toml`, `couplings.toml`, `packing_rings.toml` | questions in words |
"""
