"""Standby power.

| file | what it has |
|---|---|
| `quantities.py` | loads, generators, fuel, bypass pumps and trucks |
| `formulas.py` | running load, the largest start, a set's amps and frequency, fuel, bypass |
| `stations.py` | stations with a generator beside them, sets and tanks that are sold; and the chapter |
| `problems.py` | the families, in the order of teaching |
| `by_hand.py` | each number worked in plain numbers |
| `transfer_switch.toml`, `generator_care.toml`, `bypass_pumping.toml` | questions in words |
"""
