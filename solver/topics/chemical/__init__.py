"""Chemical feed pumps.

| file | what it has |
|---|---|
| `quantities.py` | doses, pounds a day, solutions, settings of a feed pump |
| `formulas.py` | from a dose to a pump's setting, and dilution |
| `small.py` | chemicals as they are delivered, pumps that are sold; the chapter, and the words that its questions share |
| `problems.py` | doses, pounds and solutions, and the chapter in the order of teaching |
| `problems_pump.py` | the feed pump: drawdown cylinder, stroke and speed, dilution |
| `by_hand.py` | each number worked in plain numbers |
| `chemical_safety.toml`, `feed_pumps.toml` | questions in words |
"""
