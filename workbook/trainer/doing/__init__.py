"""The page that does a trainer's work: each step by the very command that a terminal takes.

- `line.py`: the words of a command read and done
- `sent.py`: files dropped on the page, kept in the course's folder `incoming`
- `boxes.py`: what is filled in; `step.py`: one step: its boxes, its button, what came of it, its command
- `standing.py`: who is on the list, and who has turned a set in
- `on_site.py`, `by_hand.py`, `over_all.py`: the steps that are not of every week
- `course_panel.py`: all steps of a course, from the list of people to the record of completion
"""
