"""A set of work: its file, `set.toml`, and the notebook that is handed out.

- `set_file.py`: `Assigned`, the set as data; its file read, and written again
- `set_keys.py`: every key of the file, what it may be, what it is where left out
- `set_checks.py`: the checks of single values, and which mistakes may have a share
- `guessing.py`: what somebody earns who only guesses
- `notebook.py`: the notebook with cards, cells for plain answers and grade cells
"""
