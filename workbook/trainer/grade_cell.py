"""What a grade cell of a set does when nbgrader runs it: the feedback, and then the points.

In a settled course it is never run (`only_grade_cells.py`). In a course with other settings nbgrader
runs the whole notebook that was handed in, and what a learner wrote in it runs before this. It could
change anything then, these marks too: nothing in a notebook can prevent that. What can be kept
honest is: the person and the set come from the folders that nbgrader made, never from a name in the
notebook, and the sheet is read as data.
"""

from functools import cache
from html import escape
from pathlib import Path

from solver import Case, SolverError, grade
from solver.sets.work_set import cases_for
from solver.topics.catalogue import Refused
from workbook.log import Attempt, line_of, made

from .gradebook.scores import score_of
from .handed_in import read_handed
from .marked_page import shown
from .marking import Marked, mark
from .nbgrader_step import AUTOGRADE, VALIDATE, nbgrader_step
from .set_file import SET_FILE, Assigned, read_set_file

__all__ = ["set_mark"]

ANYBODY = "anybody"


def set_mark(number: int) -> float | None:
    """The points of question `number`, after its feedback is shown; None outside of nbgrader.

    Points are a plain float up to what the question is worth, as nbgrader takes them.
    """
    step, folder = nbgrader_step(), Path.cwd()
    if step not in (AUTOGRADE, VALIDATE):
        return None
    try:
        marked = _marked(folder) if step == AUTOGRADE else _tried_out(folder)
        question = marked.questions[number - 1]
    except (SolverError, IndexError) as fault:
        said = f"This question couldn't be graded. {fault}"
        _show({"text/html": f"<p>{escape(said)}</p>", "text/plain": said})
        return 0.0
    _show(shown(question))
    return score_of(question)


def _show(data: dict[str, str]) -> None:
    from IPython.display import display

    display(data, raw=True)


@cache
def _marked(folder: Path) -> Marked:
    """The marks of the person and set whose folder nbgrader runs in: autograded/PERSON/SET."""
    name, person, course = folder.name, folder.parent.name, folder.parents[2]
    assigned = _trainers_copy(course, folder)
    there = course / "submitted" / person / name
    handed = read_handed(there if there.is_dir() else folder, name, person)
    return mark(assigned, person, handed.sheet, handed.notebook)


def _trainers_copy(course: Path, folder: Path) -> Assigned:
    """The set as the trainer has it; nbgrader also puts a copy of it beside what it runs."""
    source = course / "source" / folder.name / SET_FILE
    return read_set_file(source if source.exists() else folder / SET_FILE)


@cache
def _tried_out(folder: Path) -> Marked:
    """The marks so far in a learner's folder; in a trainer's, those of right answers.

    So `nbgrader validate` tells a learner what is still to do, and proves to a trainer that right
    answers get all the points.
    """
    from .own_set import OwnSet  # marking needs nothing of it

    own = OwnSet(folder)
    if own.fault or own.assigned is None:
        raise SolverError(own.fault)
    if own.course_copy or not own.person.id:
        return mark(own.assigned, ANYBODY, _all_right(own.assigned))
    handed = read_handed(folder, folder.name, own.person.id)
    return mark(own.assigned, handed.person, handed.sheet, handed.notebook)


def _all_right(assigned: Assigned) -> bytes:
    """An answer sheet with the right answer to each question."""
    cases = [c for c in cases_for(assigned.work, ANYBODY) if not isinstance(c, Refused)]
    return "\n".join(line_of(_right(case, assigned.work.code)) for case in cases).encode()


def _right(case: Case, of: str) -> Attempt:
    typed = f"{case.answer:.10g}"
    return made(
        code=case.code,
        family=case.family.name,
        level=case.level,
        typed=typed,
        status=grade(case, typed).status,
        of=of,
        who=ANYBODY,
    )
