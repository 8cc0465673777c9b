"""A set of work: its file, `set.toml`, and the notebook that is handed out.

- `set_file.py`: `Assigned`, the set as data; its file read; `as_toml.py`: the file written
- `set_keys.py`: every key of the file, what it may be, what it is where left out
- `set_checks.py`: the checks of single values, and which mistakes may have a share
- `guessing.py`: what somebody earns who only guesses
- `told.py`: what people are told of a set above its questions
- `as_text.py`: a set as one text; `on_site.py`: the link that opens it on the static site
- `notebook.py`: the notebook with cards, cells for plain answers and grade cells
"""
