"""What a trainer needs: work set to a class, handed out, taken in, marked, given back and reported.

A set goes through these rooms in this order:

- `course.py`: the folder of a class, its settings for nbgrader; `people.py`: its list of people
- `sets/`: a set as the file `set.toml`, and the notebook of it
- `setting/`: the page on which a trainer sets work
- `learner/`: the set as one person has it: who they are, its cards, the answer sheet
- `on_paper/`: the set as printed sheets with a key, and answers typed back
- `coming_in/`: work sent as files, taken into the course, and read as bytes
- `marking/`: marks of one person or of a class, and the pages given back
- `gradebook/`: what marking keeps in nbgrader's gradebook
- `doing/`: the page that does all of it, by the same commands; `backup.py`: a course as one file
- `over_all/`: one person over all sets, hours in class, records of completion
- `report/`: how the class did, as a page, as text and as files

`command.py`, `more_options.py` and `steps.py` are the commands; `opening.py` opens a course in the browser;
`nbgrader_commands.py` runs nbgrader's own, by `nbgrader_program.py`. `only_grade_cells.py`, `gradebook/saving.py` and `coming_in/by_nbgrader.py` have the
classes that a course's settings name: they stay where they are, as those settings stay with people.
`pages/` are the trainer's notebooks, `hub/` the settings of a JupyterHub for a class.

Pages and commands import from these rooms when they need them; no other feature does.
"""
