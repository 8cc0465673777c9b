"""The candidate's study: what the log says of each skill, what to do next and why, the plan to an exam.

- `skills.py`: a skill and its recurring mistakes, from the log; when it is due, by FSRS
- `study.py`: every skill, kept up to date; what to do next
- `goal.py`: the day of the exam, minutes a day and the pass mark, in a file; `goal_form.py` asks for them
- `progress.py`: how a study stands, and `plan.py`: what to do by week, both as plain data
- `home_panel.py`: the first page, in the words of `home_shown.py`
- `progress_panel.py`: the study page, in those of `progress_shown.py` and `plan_shown.py`
- `pieces.py`, `study.css`: what both are put together from, and their looks

But for the goal nothing is stored: all is worked out from the log.
"""

from .skills import level_of, skill_of
from .study import Study, Suggestion, suggestions

__all__ = ["Study", "Suggestion", "level_of", "skill_of", "suggestions"]
