"""The set in a folder as the person at this page has it: what is set, who they are, what is kept.

All cards of a page share one, so that a name given at the top reaches every question. There are no
widgets here; `parts` are what shows it, by name, and each has a `redraw`. How the work stands is
told in sentences; points are not, before the work is marked.
"""

import atexit
import shutil
import tempfile
from collections.abc import Callable, Mapping
from functools import cache, cached_property
from pathlib import Path

from solver import SolverError
from solver.sets.work_set import case_for, cases_for, faults_for, person_id
from solver.topics.catalogue import Refused
from workbook.trainer.coming_in.packed import work_as_zip
from workbook.trainer.course import CONFIG
from workbook.trainer.sets.set_file import SET_FILE, Assigned, read_set_file
from workbook.ui.pages import MARK, read_page

from .answer_sheet import SHEET, AnswerSheet, Asked
from .class_list import may_be_listed
from .own_case import OwnCase
from .parts import Answering, NothingToShow, NotListed, Packed, Part
from .timing import opening_line
from .who import Learner, keep_person, person_at

__all__ = ["SAY_WHO", "NotListed", "NothingToShow", "OwnSet", "Packed", "own_set"]

PROGRESS = ("top", "end")  # the parts that tell how the work stands
COURSE_COPIES = ("source", "release")
NOT_THERE = (
    f"The file {SET_FILE} isn't in the same folder as this page, so there is nothing to show. "
    "Get the whole folder from your trainer again, and keep its files together."
)
OTHER = (
    "This page was made for the set {}, but here the set is {}. "
    "Ask your trainer for the folder again, and which version of the workbook to use."
)
NOT_LISTED = (
    "“{}” isn't on your trainer's list, so your work might not be found under it. Check how your "
    "trainer has you, and type that. If it's right, press Use this name once more."
)
OPEN_FIRST = "First open the questions, at the top of this page. Your time starts then."
SAY_WHO = "First type who you are, at the top of this page."


class OwnSet:
    """The set of a folder. `fault` says why there is none to show; it is empty where there is."""

    by_file = "Save this page. Then press the button below, and send the file to your trainer."

    def __init__(self, folder: Path):
        self.folder = folder
        self.parts: dict[str, Part] = {}
        self.read()

    @cached_property
    def course_copy(self) -> bool:
        """Whether this is the copy of a course, which goes out to everybody as it stands."""
        where = self.folder.absolute().parent
        return where.name in COURSE_COPIES and (where.parent / CONFIG).exists()

    @cached_property
    def keeps_in(self) -> Path:
        """Where a name and answers are kept; what a trainer tries out must not go out."""
        if not self.course_copy:
            return self.folder
        aside = tempfile.mkdtemp(prefix="tried-out-")
        atexit.register(shutil.rmtree, aside, ignore_errors=True)
        return Path(aside)

    def read(self) -> None:
        """Take in the set and the person as the folder has them now; what is wrong goes to `fault`."""
        self.assigned: Assigned | None = None
        self.sheet: AnswerSheet | None = None
        self.fault, self.person = "", Learner("")
        try:
            if not (self.folder / SET_FILE).exists():
                raise NothingToShow(NOT_THERE)
            self.assigned = assigned = read_set_file(self.folder / SET_FILE)
            self._fits_its_page(assigned)
            self._belongs_to(assigned, person_at(self.keeps_in))
        except SolverError as fault:
            self.fault = str(fault)
        self._changed()

    def _changed(self) -> None:
        for part in list(self.parts.values()):
            part.redraw()

    def _fits_its_page(self, assigned: Assigned) -> None:
        """The page was made for one set; another edition would ask other questions unnoticed."""
        try:
            page = read_page(self.folder / f"{assigned.name}.ipynb")
            made_for = page["metadata"][MARK]["set"]
        except (OSError, ValueError, LookupError, TypeError):
            return  # under another name, perhaps; the set's file alone says what is asked
        if made_for != assigned.work.code:
            raise NothingToShow(OTHER.format(made_for, assigned.work.code))

    def _belongs_to(self, assigned: Assigned, person: Learner) -> None:
        self.person, self.sheet = person, None
        self.__dict__.pop("codes", None)
        if person.id:
            self.sheet = AnswerSheet(self.sheet_at(person.id), assigned, person.id)

    def sheet_at(self, person: str) -> Path:
        """Where the answer sheet of this person is."""
        return self.keeps_in / SHEET

    def packed(self) -> Packed:
        """The work of this person as one file.

        Raises:
            NotRead: a file is there and cannot be read; the sentence says why.
        """
        assigned, person = self._set(), self.person.id
        data, lacks = work_as_zip(self.folder, person)
        return Packed(f"{assigned.name}-{person}.zip", "application/zip", data, lacks)

    def begin_as(self, text: str, sure: bool = False) -> None:
        """This is the name or number of the person; `sure` where they said so once more.

        Raises:
            NotListed: it is not on the trainer's list, and they may have typed it wrong.
            SolverError: nobody can have this id; the sentence says what to type.
            NotKept: it cannot be written; the sentence says why.
        """
        code, person = self._set().work.code, person_id(text)
        if not (sure or self.course_copy or may_be_listed(self.folder, code, person)):
            raise NotListed(NOT_LISTED.format(person))
        self._belongs_to(self._set(), keep_person(self.keeps_in, text))
        self._changed()

    def ask_again(self) -> None:
        """Ask anew who the person is.

        Raises:
            NothingToShow: answers are kept under this name; the sentence says what to do.
        """
        if self.begun():
            raise NothingToShow(
                f"Answers are kept as {self.person.id}, so the name stays. To begin under "
                "another, get a fresh copy of the folder from your trainer."
            )
        self._belongs_to(self._set(), Learner(""))
        self._changed()

    def _set(self) -> Assigned:
        if self.fault or self.assigned is None:
            raise NothingToShow(
                "This question can't be shown. The reason is at the top of this page."
            )
        return self.assigned

    def question(self, number: int, clock: Callable[[], float]) -> Asked:
        """Question `number` of this person.

        Raises:
            NothingToShow: there is none yet, or none of this number.
        """
        work = self._set().work
        count = work.count
        if not 1 <= number <= count:
            raise NothingToShow(f"There is no question {number}; this set has 1 to {count}.")
        sheet = self._open_sheet()
        if isinstance(case := case_for(work, self.person.id, number), Refused):
            raise NothingToShow(f"Question {number}. {case.why} Tell your trainer.")
        return Asked(sheet, number, case, clock)

    def case(self, number: int) -> OwnCase:
        """Question `number` of this person where it is a case of find the fault.

        Raises:
            NothingToShow: there is none yet, or none of this number.
        """
        work = self._set().work
        if not work.count < number <= work.asked:
            raise NothingToShow(
                f"Question {number} isn't a case of find the fault in this set. Ask your trainer for the folder again."
            )
        sheet = self._open_sheet()
        case = faults_for(work, self.person.id)[number - work.count - 1]
        return OwnCase(sheet, number, case)

    def _open_sheet(self) -> AnswerSheet:
        if self.sheet is None:
            raise NothingToShow(SAY_WHO)
        if self._set().minutes and self.sheet.opened() is None:
            raise NothingToShow(OPEN_FIRST)
        return self.sheet

    def open_questions(self) -> None:
        """The time of the set begins now, where it has one and that has not begun.

        Raises:
            NotKept: it cannot be written; the sentence says why.
            NotRead: the sheet is there and cannot be read; the sentence says why.
        """
        if self.sheet and self.sheet.opened() is None:
            self.sheet.add(opening_line(self._set(), self.person.id))
        self._changed()

    @cached_property
    def codes(self) -> Mapping[int, str]:
        """The code of each of this person's problems that can be asked, by its number."""
        work, person = self._set().work, self.person.id
        asked = [*cases_for(work, person), *faults_for(work, person)]
        return {n: str(one.code) for n, one in enumerate(asked, 1) if not isinstance(one, Refused)}

    def unanswered(self) -> list[int]:
        """The numbers of the questions without an answer, from 1.

        Raises:
            NotRead: the sheet is there and cannot be read; the sentence says why.
        """
        answered = self.sheet.answered() if self.sheet else set()
        return [number for number, code in self.codes.items() if code not in answered]

    def begun(self) -> bool:
        """Whether anything is answered.

        Raises:
            NotRead: the sheet is there and cannot be read; the sentence says why.
        """
        return bool(self.sheet and self.sheet.read())

    def unchecked(self) -> list[int]:
        """The numbers of the questions in whose box something stands that is no answer yet."""
        return [
            part.number
            for part in self.parts.values()
            if isinstance(part, Answering) and part.unsent
        ]

    def told(self) -> None:
        """Something was answered or typed, so how the work stands may have changed."""
        for name in PROGRESS:
            if part := self.parts.get(name):
                part.redraw()


@cache
def own_set(folder: Path) -> OwnSet:
    """The set of a folder; one for all cards of a page."""
    return OwnSet(folder)
