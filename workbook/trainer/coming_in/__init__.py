"""Work that did not come through nbgrader's exchange, and what was handed in read as bytes.

- `packed.py`: a person's work packed as one file, and such a file opened
- `taking_in.py`: those files put into the course, each under its person
- `handed_in.py`: what is in the course of one person, read; the plain answers in a notebook
"""
