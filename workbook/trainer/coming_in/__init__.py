"""Work as it comes in: taken into the course under its person, and read as bytes.

- `packed.py`: a person's work packed as one file; `opened.py`: such a file opened, within hard limits
- `whose.py`: whose work it is; `typed_as.py`: who worked under another name
- `times.py`: the time a file says, the time it came, and which counts
- `taking_in.py`: what was sent put into the course; `exchange_clock.py`: the same of nbgrader's exchange
- `earlier.py`: where work goes that newer work takes the place of
- `handed_in.py`: what is in the course of one person, read; the plain answers in a notebook
"""
