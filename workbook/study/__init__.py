"""The candidate's study: what the log says of each skill, when it is due, what to do next and why.

- `skills.py`: a skill and its recurring mistakes, from the log; when it is due, by FSRS
- `study.py`: every skill, kept up to date; what to do next
- `progress.py`: how a study stands, as plain data; `progress_shown.py`: as sentences and pictures
- `progress_panel.py`: the page that shows it

Nothing is stored: all is worked out from the log.
"""

from .skills import level_of, skill_of
from .study import Study, Suggestion, suggestions

__all__ = ["Study", "Suggestion", "level_of", "skill_of", "suggestions"]
