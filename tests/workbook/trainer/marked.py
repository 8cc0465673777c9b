"""A course whose set nbgrader has made ready, what is handed in there, and what a trainer sets by hand."""

from pathlib import Path

from nbgrader.api import Comment, Gradebook

from tests.workbook.trainer.in_course import Kept, kept_in
from tests.workbook.trainer.nbgrader_steps import nbgrader
from tests.workbook.trainer.week_three import NAME, WEEK
from workbook.trainer.course import Course, make_course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.notebook import write_source

__all__ = ["ANA", "BEN", "by_hand", "hand_in", "kept", "made_ready"]

ANA, BEN = "ana.r", "ben.k"


def made_ready(folder: Path, *steps: str, exchange: str = "") -> Course:
    """A course with the set, taken through these steps of nbgrader's too."""
    course = make_course(folder, exchange=exchange)
    write_source(WEEK, course.root)
    nbgrader(course.root, NAME, "generate_assignment", *steps)
    return course


def hand_in(course: Course, person: str, data: bytes, when: str | None = None) -> None:
    """Put a sheet, and a time as nbgrader has it, where a person's work lies."""
    folder = course.folder("submitted", NAME, person)
    folder.mkdir(parents=True, exist_ok=True)
    (folder / SHEET).write_bytes(data)
    if when:
        (folder / "timestamp.txt").write_text(when)


def kept(course: Course, person: str = ANA) -> list[Kept]:
    """What the gradebook says of a person."""
    return [row for row in kept_in(course.root / "gradebook.db") if row.person == person]


def by_hand(course: Course, number: int = 1, **values) -> None:
    """What a trainer sets on nbgrader's own page for a question of ANA's."""
    with Gradebook(course.gradebook) as gradebook:
        grade = gradebook.find_grade(f"question-{number:02}", NAME, NAME, ANA)
        comment = values.pop("manual_comment", None)
        for name, value in values.items():
            setattr(grade, name, value)
        if comment:
            where = {"cell_id": grade.cell_id, "notebook_id": grade.notebook_id}
            gradebook.db.query(Comment).filter_by(**where).one().manual_comment = comment
        gradebook.db.commit()
