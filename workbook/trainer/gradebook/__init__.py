"""nbgrader's gradebook: its tables, what marking writes into them, and the rules of both ways to mark.

- `rules.py`: scores, whom to look at and what being late costs; one rule for both ways
- `tables.py`: nbgrader's tables, and what they have of many people
- `writing.py`: the marks of many people written at once, for `mark_all`
- `given.py`: more time and points given by hand, as two small files; `applying.py`: those, the due
  time and the cost of being late, brought into the gradebook after either way
- `saving.py`: the same in nbgrader's own steps; its classes are named in courses' settings
"""
