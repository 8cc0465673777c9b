"""Controls: signals and levels, lead and lag, timers, reduced starting, ladder drawings, alarms.

| file | what it has |
|---|---|
| `quantities.py` | signals, timers, lead and lag, reduced starting, the control load, the alarm battery |
| `formulas.py` | lead and lag, starting, the control load, the battery; `CONTROLS` has all of the chapter |
| `formulas_signals.py` | signals of 4 to 20 mA |
| `scenes.py` | transmitters, wet wells, starters and panels that are sold |
| `problems.py` | the families, in the order of teaching |
| `by_hand.py` | each number worked in plain numbers |
| `ladder.toml` | reading a short ladder drawing: each question with its rungs |
| `hand_off_auto.toml`, `starters.toml`, `fail_safe.toml` | questions in words |
"""
