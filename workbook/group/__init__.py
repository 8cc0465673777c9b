"""Group study: a set of problems as a short text, worked by everybody, and the results put together.

There is no server: the text goes by chat or in a link, and each member's result is a file.

- `set_text.py`: a set as text, its mark, and its problems
- `set_link.py`: the link that opens a set on a site
- `own_group.py`: the set open on a page, and the name its answers are kept under
- `make_panel.py`: a set made; `work_panel.py`: a set worked; `posed.py`: one problem and its card;
  `posed_case.py`: a case of find the fault and its card
- `members.py`: who is who among the results; `results.py`: one as a file, and what several say
- `results_shown.py`: that in sentences, tables, HTML and a file; `results_panel.py`: the page of it
"""

from .set_link import link_at
from .set_text import BadSet, ProblemSet, set_of

__all__ = ["BadSet", "ProblemSet", "link_at", "set_of"]
