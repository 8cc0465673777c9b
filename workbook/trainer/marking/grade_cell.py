"""A set's grade cells: filled in with one person's marks, or run by nbgrader with the same outcome.

In a settled course no cell is run (`only_grade_cells.py`). In a course with other settings nbgrader
runs the whole notebook that was handed in, and what a learner wrote in it runs before this. It could
change anything then, these marks too: nothing in a notebook can prevent that. What can be kept
honest is: the person and the set come from the folders that nbgrader made, never from a name in the
notebook, and the sheet is read as data.
"""

import os
from functools import cache
from pathlib import Path

from solver import Case, SolverError, grade
from solver.engine.grading import as_typed
from solver.fault.review import sure_way
from solver.sets.work_set import cases_for, faults_for
from solver.topics.catalogue import Refused
from workbook.fault import attempt_of_way
from workbook.log import Attempt, line_of, made
from workbook.trainer.coming_in.handed_in import ANSWER, METADATA, read_handed
from workbook.trainer.coming_in.typed_as import typed_as
from workbook.trainer.gradebook.rules import grade_id, score_of
from workbook.trainer.sets.set_file import SET_FILE, Assigned, read_set_file
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import css

from .feedback import comment_of, feedback_html
from .marked import Marked, mark, mark_handed
from .tries import QuestionMark

__all__ = [
    "ANSWERED",
    "AUTOGRADE",
    "fill_in",
    "nbgrader_step",
    "set_mark",
    "show_plain_answers",
]

AUTOGRADE, VALIDATE = "autograde", "validate"
ANSWERED = "<pre>"  # a plain answer was put in after this
ANYBODY = "anybody"


def nbgrader_step() -> str:
    """The step, or "" where a person runs the notebook."""
    return os.environ.get("NBGRADER_EXECUTION", "")


def fill_in(page: dict, marked: Marked | None) -> None:
    """Put the marks into the notebook's grade cells, and nothing into any other cell."""
    by_id = {grade_id(each.number): each for each in marked.questions} if marked else {}
    for cell in page["cells"]:
        if cell["cell_type"] == "code":
            name = cell["metadata"].get("nbgrader", {}).get("grade_id")
            question = by_id.get(name)
            cell["outputs"] = _outputs_of(question) if question else []
            cell["execution_count"] = question.number if question else None


def _outputs_of(question: QuestionMark) -> list[dict]:
    """What running the grade cell of a question puts out: its feedback, and then its points."""
    return [
        {"output_type": "display_data", "data": _as_output(question), "metadata": {}},
        {
            "output_type": "execute_result",
            "data": {"text/plain": repr(score_of(question))},
            "execution_count": question.number,
            "metadata": {},
        },
    ]


def _as_output(question: QuestionMark) -> dict[str, str]:
    """The feedback of a question for a cell; the first one brings the look for all of them."""
    look = css() if question.number == 1 else None
    panel = tag("div", feedback_html(question), cls="w2w-panel", style="max-width: 54em")
    return {"text/html": str(joined(look, panel)), "text/plain": comment_of(question)}


def show_plain_answers(page: dict, answers: dict[int, str]) -> None:
    """Put what was typed into the cells that ask for plain answers, as text."""
    for cell in page["cells"]:
        number = cell["metadata"].get(METADATA, {}).get("answer")
        if number in answers:
            before = "".join(cell["source"]).partition(ANSWER)[0]
            cell["source"] = f"{before}{ANSWER}\n\n{tag('pre', answers[number])}"


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
        _show({"text/html": str(tag("p", said)), "text/plain": said})
        return 0.0
    _show(_as_output(question))
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
    under = typed_as(course, name).get(person, "")
    return mark_handed(assigned, handed._replace(typed=under))


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
    from workbook.trainer.learner.own_set import OwnSet  # marking needs nothing of it

    own = OwnSet(folder)
    if own.fault or own.assigned is None:
        raise SolverError(own.fault)
    if own.course_copy or not own.person.id:
        return mark(own.assigned, ANYBODY, _all_right(own.assigned))
    handed = read_handed(folder, folder.name, own.person.id)
    return mark(own.assigned, handed.person, handed.sheet, handed.notebook)


def _all_right(assigned: Assigned) -> bytes:
    """An answer sheet with the right answer to each question."""
    work = assigned.work
    cases = [c for c in cases_for(work, ANYBODY) if not isinstance(c, Refused)]
    ways = [sure_way(str(case.code)) for case in faults_for(work, ANYBODY)]
    lines = [_right(case, work.code) for case in cases]
    lines += [attempt_of_way(way, work.code, ANYBODY) for way in ways]
    return "\n".join(map(line_of, lines)).encode()


def _right(case: Case, of: str) -> Attempt:
    typed = as_typed(case, case.answer)
    return made(
        code=case.code,
        family=case.family.name,
        level=case.level,
        typed=typed,
        status=grade(case, typed).status,
        of=of,
        who=ANYBODY,
    )
