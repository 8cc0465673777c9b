"""The panel of a course: a class from its list to the record of completion, a step under the other."""

from collections.abc import Callable, Sequence
from pathlib import Path
from time import monotonic

from ipywidgets import HTML, FileUpload, Text

from solver import SolverError
from workbook.trainer.coming_in.times import RECEIVED, SAID
from workbook.trainer.course import CONFIG, course_at
from workbook.trainer.people import PEOPLE, people_in
from workbook.trainer.sets.on_site import linked, page_html
from workbook.trainer.sets.set_file import SET_FILE, read_set_file
from workbook.trainer.setting.keep import sets_in
from workbook.ui.controls import AUTO, LABELLED, Panel, chooser, classed
from workbook.ui.markup import Markup, joined, tag

from .sent import INCOMING, kept_files
from .step import Step

__all__ = ["CoursePanel"]

TIMES = [
    ("The usual way", ""),
    ("When each file was saved", RECEIVED),
    ("What each file says", SAID),
]
SEND = "to-send"
NO_SET = "There is no set in this course yet. Make one on the page “Set work”."
NO_SITE = "Type the address of your website first, such as https://example.org/pumps/."
WHERE = (
    "The course is the folder {}. To open it on another day, start the workbook with that folder. To "
    "close it, close the program. To move it to another computer, copy the folder."
)


def _text(label: str) -> Text:
    return classed(Text(description=label, style=LABELLED, layout=AUTO), "w2w-field")


def _upload(says: str, accept: str, many: bool = False) -> FileUpload:
    made = FileUpload(accept=accept, multiple=many, description=says, layout=AUTO)
    return classed(made, "w2w-button")


class CoursePanel(Panel):
    """The steps of a course in a folder. Each shows the same command for a terminal."""

    def __init__(self, course: Path, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-course", clock=clock)
        self.course = course.absolute()
        names = sets_in(self.course)
        self.sets = chooser("Set", names or [("No set yet", "")])
        self.steps: dict[str, Step] = {}
        self._list()
        self._give_out()
        self._on_site()
        self._take_in()
        self._by_hand()
        self._paper()
        self._in_all()
        there = WHERE.format(self.course) if (self.course / CONFIG).exists() else NO_SET
        self.put(
            HTML(joined(tag("h2", "The course"), tag("p", there, cls="w2w-about"))),
            self.said,
            self.steps["list"].box,
            self.sets,
            *(step.box for name, step in self.steps.items() if name != "list"),
        )

    def _step(self, name: str, *parts, **more) -> None:
        self.steps[name] = Step(self, *parts, **more)

    def _at(self) -> list[str]:
        return ["--course", str(self.course)]

    def _set(self) -> str:
        """The set that is chosen; the list of sets is brought up to date first.

        Raises:
            SolverError: there is none.
        """
        names, chosen = sets_in(self.course), self.sets.value
        if list(self.sets.options) != names and names:
            self.sets.put(
                chosen if chosen in names else names[-1], [(name, name) for name in names]
            )
        if not names:
            raise SolverError(NO_SET)
        return self.sets.value

    def _sent(self, *names: str) -> list[Path]:
        return [self.course / SEND / name for name in names]

    def _list(self) -> None:
        self.people = _upload("Choose the list", ".csv,.txt,.tsv")
        about = (
            "A list from any spreadsheet or school system: a name, an id and an email for each person, "
            "and a group where the class has parts. Taking in another list later is fine."
        )
        self._step("list", "Class list", about, "Take the list in", self._list_words, [self.people])

    def _list_words(self) -> Sequence[str]:
        if not self.people.value:
            raise SolverError("Choose the file with the list first.")
        file = self.people.value[0]
        folder = kept_files(self.course, "people", [file])
        newest = max(folder.iterdir(), key=lambda path: path.stat().st_ctime)
        return ["course", str(self.course), "--people", str(newest)]

    def _give_out(self) -> None:
        about = "Makes the folder that people get, as one file to send. It has no answers in it."
        self._step(
            "give out", "Give it out", about, "Make what people get",
            lambda: ["set", self._set(), *self._at()],
            makes=lambda: self._sent(f"{self._set()}.zip"),
        )  # fmt: skip

    def _on_site(self) -> None:
        self.site = _text("Address of your website")
        about = (
            "Makes a link, a QR code and a text that open the set on your website, with each person's own "
            "numbers. Their files come back to you, and you take them in below."
        )
        self._step(
            "on site", "Put it on your website", about, "Make the link", self._on_site_words,
            [self.site], shows=self._linked,
        )  # fmt: skip

    def _on_site_words(self) -> Sequence[str]:
        if not (site := self.site.value.strip()):
            raise SolverError(NO_SITE)
        return ["set", self._set(), *self._at(), "--site", site]

    def _linked(self) -> Markup:
        name = self._set()
        assigned = read_set_file(self.course / "source" / name / SET_FILE)
        listed = people_in(course_at(self.course), assigned.group)
        return page_html(linked(assigned, self.site.value, listed))

    def _take_in(self) -> None:
        self.files = _upload("Choose what people sent", ".zip,.jsonl,.txt", many=True)
        self.times = chooser("Which time counts", TIMES)
        self.said_as = _text("Whose it is, such as maria=op01 (if asked for)")
        about = (
            "Takes in what people sent, grades it, and makes a feedback page for each of them. What one "
            "person sends can't harm another's. Without new files it grades again."
        )
        self._step(
            "take in", "Take in and grade", about, "Take in and grade", self._take_in_words,
            [self.files, self.times, self.said_as],
            makes=lambda: self._sent(f"{self._set()}-feedback.zip"), after=self._emptied,
        )  # fmt: skip

    def _take_in_words(self) -> Sequence[str]:
        name = self._set()
        if self.files.value:
            kept_files(self.course, name, self.files.value)
        folder = self.course / INCOMING / name
        words = ["mark", name, *self._at(), "--feedback"]
        if folder.is_dir():
            words += ["--hand-in", str(folder)]
        if self.times.value:
            words.append(f"--{self.times.value}")
        for said in filter(None, (each.strip() for each in self.said_as.value.split(","))):
            words += ["--as", said]
        return words

    def _emptied(self) -> None:
        self.files.value = ()

    def _by_hand(self) -> None:
        self.who, self.until, self.note = (
            _text("Person, by id"), _text("Until, such as 2026-12-05T18:00"), _text("Why")
        )  # fmt: skip
        about = "The person reads why in the feedback. It stays through every grading."
        self._step(
            "extend", "More time for one person", about, "Give more time",
            lambda: _filled(
                ["extend", self._set(), self.who.value, *self._at()],
                ("--due", self.until), ("--note", self.note),
            ),
            [self.who, self.until, self.note],
        )  # fmt: skip
        self.whose, self.number = _text("Person, by id"), _text("Question")
        self.points, self.reason = _text("Points"), _text("Why")
        self._step(
            "override", "Points by hand", about, "Give these points",
            lambda: _filled(
                ["override", self._set(), self.whose.value, *self._at()],
                ("--question", self.number), ("--points", self.points), ("--reason", self.reason),
            ),
            [self.whose, self.number, self.points, self.reason],
        )  # fmt: skip

    def _paper(self) -> None:
        about = "A sheet for everybody on the list and a key at the end, with a file to type the answers into."
        self._step(
            "paper", "Print it on paper", about, "Make the sheets",
            lambda: [
                "paper", self._set(), *self._at(), "--people", str(self.course / PEOPLE),
                "--pdf", str(self._out(f"{self._set()}.pdf")),
            ],
            makes=lambda: self._sent(f"{self._set()}.pdf", f"{self._set()}-answers.csv"),
        )  # fmt: skip
        self.typed = _upload("Choose the answers you typed", ".csv,.txt,.tsv")
        about = "The answers you typed from paper go to the others. Then choose Take in and grade."
        self._step(
            "typed",
            "Answers from paper",
            about,
            "Take the answers in",
            self._typed_words,
            [self.typed],
        )

    def _typed_words(self) -> Sequence[str]:
        name = self._set()
        if not self.typed.value:
            raise SolverError("Choose the file with the answers first.")
        folder = kept_files(self.course, f"{name}-paper", [self.typed.value[0]])
        newest = max(folder.iterdir(), key=lambda path: path.stat().st_ctime)
        listed = ["--people", str(self.course / PEOPLE)]
        return ["paper", name, *self._at(), *listed, "--mark", str(newest), "--keep",
                "--csv", str(self._out(f"{name}-paper.csv"))]  # fmt: skip

    def _out(self, name: str) -> Path:
        (self.course / SEND).mkdir(exist_ok=True)
        return self.course / SEND / name

    def _in_all(self) -> None:
        self.day, self.topic = _text("Day, such as 2026-12-01"), _text("Topic")
        self.hours, self.absent = _text("Hours"), _text("Absent, by id (empty: nobody)")
        self._step(
            "attend", "Hours in class", "A line for each meeting.", "Keep this meeting",
            lambda: _filled(
                ["attend", self.day.value, *self._at()],
                ("--topic", self.topic), ("--hours", self.hours), ("--absent", self.absent),
            ),
            [self.day, self.topic, self.hours, self.absent],
        )  # fmt: skip
        self.mark = _text("Pass mark, percent (empty: 70)")
        about = "Everybody over all sets: one file with all there is, one that learning systems take in."
        self._step(
            "grades", "Grades", about, "Write the grades",
            lambda: _filled(
                ["grades", *self._at(), "--csv", str(self._out("grades.csv")), "--lms", str(self._out("grades-lms.csv"))],
                ("--pass", self.mark),
            ),
            [self.mark], makes=lambda: self._sent("grades.csv", "grades-lms.csv"),
        )  # fmt: skip
        self.trainer = _text("Your name, as it is printed")
        about = "A page to print for everybody who passed, with topics and hours. It claims no accreditation."
        self._step(
            "completion", "Records of completion", about, "Make the records",
            lambda: _filled(
                ["completion", *self._at(), "--out", str(self._out("completion.html"))],
                ("--trainer", self.trainer), ("--pass", self.mark),
            ),
            [self.trainer], makes=lambda: self._sent("completion.html"),
        )  # fmt: skip
        about = "All of the course in one file, next to its folder: people's work, grades and sets."
        self._step(
            "backup", "Back it up", about, "Make a backup", lambda: ["backup", str(self.course)]
        )


def _filled(words: Sequence[str], *boxes: tuple[str, Text]) -> list[str]:
    """The words, and those of the boxes that have something in them."""
    found = [word for word in words if word]
    for option, box in boxes:
        if text := box.value.strip():
            found += [option, text]
    return found
