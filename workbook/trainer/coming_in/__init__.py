"""Work as it comes in: taken into the course under its person, and read as bytes.

- `packed.py`: a person's work packed as one file; `opened.py`: such a file opened, within hard limits
- `whose.py`: whose work it is; `known.py`: the people of the list, and the trainer's word;
  `inside.py`: which files are the work; `typed_as.py`: who worked under another name
- `times.py`: the time a file says, the time it came, and which counts
- `taking_in.py`: what was sent put into the course; `exchange_clock.py`: the same of nbgrader's exchange
- `replacing.py`: whether work takes the place of what came before; `earlier.py`: where that goes
- `by_nbgrader.py`: the same for who types nbgrader's own collect and zip_collect
- `handed_in.py`: what is in the course of one person, read; the plain answers in a notebook
"""
