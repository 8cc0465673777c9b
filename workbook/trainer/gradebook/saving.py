"""What a settled course keeps in nbgrader's gradebook: marks with their reasons, and what is due."""

from pathlib import Path

from nbgrader.api import Comment, Gradebook
from nbgrader.plugins import LateSubmissionPlugin
from nbgrader.preprocessors import NbGraderPreprocessor, SaveAutoGrades

from workbook.trainer.only_grade_cells import MARKED
from workbook.trainer.sets.set_file import SET_FILE, read_set_file

from .applying import apply_given
from .rules import Kept, must_look, penalty, scores_of
from .tables import GradebookFault, opened, set_rows

__all__ = ["LateShare", "SaveDue", "SaveMarks"]


class SaveMarks(SaveAutoGrades):
    """Saves scores as nbgrader does, and with each its sentence and whether a person must look."""

    def preprocess(self, nb, resources):
        """Save what the grade cells came to."""
        self.scores = scores_of(resources[MARKED]) if resources[MARKED] else {}
        saved = super().preprocess(nb, resources)
        if resources[MARKED]:
            self._apply_given(resources["nbgrader"])
        return saved

    def _apply_given(self, of: dict) -> None:
        """Bring in what the trainer gave this person by hand, before what being late costs is saved."""
        course, name = self.parent.parent.coursedir, of["assignment"]
        assigned = read_set_file(
            Path(course.format_path(course.source_directory, ".", name), SET_FILE)
        )
        try:
            with opened(of["db_url"]) as connection:
                rows = set_rows(connection, name)
                apply_given(connection, assigned, rows, Path(course.root), [of["student"]])
        except GradebookFault as fault:
            self.log.warning(str(fault))

    def _add_score(self, cell, resources):
        if cell.cell_type != "code":
            return super()._add_score(cell, resources)
        name = cell.metadata.nbgrader["grade_id"]
        grade = self.gradebook.find_grade(
            name, self.notebook_id, self.assignment_id, self.student_id
        )
        score = self.scores.get(name)
        if score is None:  # a cell of the trainer's own was not run; nbgrader would give it all
            grade.auto_score, grade.needs_manual_grade = None, True
            return self.gradebook.db.commit()
        remark = self._remark(grade)
        kept = Kept(
            grade.auto_score, grade.manual_score, grade.needs_manual_grade, remark.auto_comment
        )
        super()._add_score(cell, resources)
        grade.needs_manual_grade = must_look(score.needs_person, grade.auto_score, score.said, kept)
        remark.auto_comment = score.said
        return self.gradebook.db.commit()

    def _remark(self, grade) -> Comment:
        """The comment that stands at a grade cell; nbgrader itself makes none there."""
        where = {"notebook_id": grade.notebook_id, "cell_id": grade.cell_id}
        found = self.gradebook.db.query(Comment).filter_by(**where).one_or_none()
        if found is None:
            found = Comment(**where)
            self.gradebook.db.add(found)
        return found


class SaveDue(NbGraderPreprocessor):
    """Puts into the gradebook when a set is due, as its file says."""

    def preprocess(self, nb, resources):
        """The notebook as it is."""
        of, course = resources["nbgrader"], self.parent.parent.coursedir
        name = of["assignment"]
        path = Path(course.format_path(course.source_directory, ".", name), SET_FILE)
        if path.exists():
            with Gradebook(of["db_url"], course.course_id) as gradebook:
                due = read_set_file(path).due
                gradebook.update_or_create_assignment(name, duedate=due)
        return nb, resources


class LateShare(LateSubmissionPlugin):
    """Takes off the share of the score that the set's file says."""

    def late_submission_penalty(self, student_id, score, total_seconds_late):
        """The points taken off; None where being late costs nothing."""
        late = self.parent
        course = late.parent.parent.coursedir
        folder = course.format_path(course.source_directory, ".", late.assignment_id)
        return penalty(read_set_file(Path(folder, SET_FILE)), score)
