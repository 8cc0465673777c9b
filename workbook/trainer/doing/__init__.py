"""The page that does a trainer's work: each step by the very command that a terminal takes.

- `line.py`: the words of a command read and done, and the line that does the same in a terminal
- `sent.py`: files dropped on the page, kept in the course's folder `incoming`
- `step.py`: one step: its boxes, its button, what came of it, its command
- `course_panel.py`: all steps of a course, from the list of people to the record of completion
"""
