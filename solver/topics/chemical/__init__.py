"""Chemical feed pumps.

| file | what it has |
|---|---|
| `quantities.py` | doses, pounds a day, solutions, settings of a feed pump |
| `formulas.py` | from a dose to a pump's setting, and dilution |
| `small.py` | chemicals as they are delivered, pumps that are sold; and the chapter |
| `problems.py` | the families, in the order of teaching |
| `by_hand.py` | each number worked in plain numbers |
| `chemical_safety.toml`, `feed_pumps.toml` | questions in words |
"""
