"""Taking in by nbgrader's own commands in a settled course: the same work, kept with the same times.

The course's settings name both classes. `nbgrader collect` lets the exchange's own clock count, and
`nbgrader zip_collect` takes in what is in `downloaded/SET/archive` as `mark --hand-in` does. To count the
times that people's own files say, a trainer adds `c.ReceivedCollect.counts = "said"`, or the same for
`TakeIn`, to the settings.
"""

from pathlib import Path

from nbgrader.coursedir import CourseDirectory
from nbgrader.exchange.default import ExchangeCollect
from nbgrader.plugins import ExtractorPlugin
from traitlets import Enum

from workbook.trainer.course import Course

from .exchange_clock import keep_mailed, take_exchange_times
from .taking_in import take_in
from .times import RECEIVED, SAID

__all__ = ["ReceivedCollect", "TakeIn"]


def _course(of: CourseDirectory, exchange: str = "") -> Course:
    return Course(Path(of.root), of.course_id, of.db_url, exchange)


class ReceivedCollect(ExchangeCollect):
    """Collects as nbgrader does, and lets the time count at which work came to the exchange."""

    counts = Enum([RECEIVED, SAID], RECEIVED, help="which time counts").tag(config=True)

    def copy_files(self):
        """Take in what came; work that came by mail is kept aside, and times that cannot be are said."""
        course, name = _course(self.coursedir, self.root), self.coursedir.assignment_id
        keep_mailed(course, name)
        super().copy_files()
        for sentence in take_exchange_times(course, name, self.counts):
            self.log.warning(sentence)


class TakeIn(ExtractorPlugin):
    """Puts what people sent straight where nbgrader looks for it; nothing is left to collect."""

    counts = Enum(["", RECEIVED, SAID], "", help="which time counts").tag(config=True)

    def extract(self, archive_path: str, extracted_path: str) -> None:
        """Take in the zip files and folders there, within hard limits, each under its person."""
        of = self.parent.coursedir
        taken = take_in(_course(of), of.assignment_id, Path(archive_path), prefer=self.counts)
        for sentence in taken.notes:
            self.log.warning(sentence)
        self.log.info("Taken in: %s. It is in %s.", len(taken.people), of.submitted_directory)
