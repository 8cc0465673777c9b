"""The panel of a course: a class from its list to the record of completion, a step under the other."""

from collections.abc import Callable, Sequence
from pathlib import Path
from time import monotonic

from ipywidgets import HTML

from solver import SolverError
from workbook.trainer.coming_in.times import RECEIVED, SAID
from workbook.trainer.command import line_of
from workbook.trainer.course import CONFIG, SEND, Course, course_at
from workbook.trainer.setting.keep import sets_in
from workbook.ui.controls import Panel, chooser, show, tick
from workbook.ui.markup import joined, tag

from .boxes import text_box, upload_box
from .by_hand import ByHand, OnPaper
from .on_site import OnSite
from .over_all import OverAll
from .sent import INCOMING, kept_files
from .standing import standing
from .step import Step

__all__ = ["CoursePanel"]

TIMES = [
    ("The usual way", ""),
    ("When each file was saved", RECEIVED),
    ("What each file says", SAID),
]
NO_SET = "There is no set in this course yet. Make one on the page “Set work”."
NO_COURSE = "This folder isn't a course yet. Close this page, and type: {}"
WHERE = "The course is the folder {}. To close it, close the program. To copy or move it, copy the folder."
OPEN = "To open it on another day, in a terminal: "
EACH_WEEK = ("give out", "on site", "take in")
NOW_AND_THEN = ("extend", "override", "paper", "typed", "attend")
AT_THE_END = ("grades", "completion", "backup")


class CoursePanel(Panel):
    """The steps of a course in a folder. Each shows the same command for a terminal."""

    def __init__(self, course: Path, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-course", clock=clock)
        self.course = course.absolute()
        there = (self.course / CONFIG).exists()
        self.at = course_at(self.course) if there else Course(self.course, "", "")
        names = sets_in(self.course)
        self.sets = chooser(
            "Set",
            names or [("No set yet", "")],
            self.safely(self._stand),
            names[-1] if names else None,
        )
        self.stand = HTML()
        self.steps: dict[str, Step] = {}
        self._list()
        self._give_out()
        self.on_site = OnSite(self)
        self._take_in()
        self.hand, self.paper, self.over = ByHand(self), OnPaper(self), OverAll(self)
        self._stand()
        self.put(
            HTML(joined(tag("h2", "The course"), self._where(there))),
            self.said, self.steps["list"].box, HTML(tag("h3", "A set of work")), self.sets, self.stand,
            *self._boxes(EACH_WEEK), HTML(tag("h3", "Now and then")), *self._boxes(NOW_AND_THEN),
            HTML(tag("h3", "At the end, or for a learning system")), *self._boxes(AT_THE_END),
        )  # fmt: skip

    def _where(self, there: bool):
        again = line_of(["trainer", str(self.course)])
        if not there:
            return tag("p", NO_COURSE.format(again), cls="w2w-about")
        opens = tag("p", OPEN, tag("code", again), cls="w2w-about")
        return joined(tag("p", WHERE.format(self.course), cls="w2w-about"), opens)

    def _boxes(self, names: Sequence[str]):
        return (self.steps[name].box for name in names)

    def _stand(self, _=None) -> None:
        """Say where the class stands with the set that is chosen."""
        said = standing(self.at, self.sets.value) if (self.course / CONFIG).exists() else []
        self.stand.value = joined(tag("p", sentence) for sentence in said)

    def add(self, name: str, *parts, after: Callable[[], object] = lambda: None, **more) -> None:
        """Add a step; once it is done, the page says where the class stands now."""

        def done() -> None:
            after()
            self._stand()

        more["after"] = done
        self.steps[name] = Step(self, *parts, **more)

    def course_words(self) -> list[str]:
        """The words that say which course."""
        return ["--course", str(self.course)]

    def chosen(self) -> str:
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

    def sent(self, *names: str) -> list[Path]:
        """Files of these names among those to send."""
        return [self.course / SEND / name for name in names]

    def out(self, name: str) -> Path:
        """Where to write a file of this name to send."""
        (self.course / SEND).mkdir(exist_ok=True)
        return self.course / SEND / name

    def _list(self) -> None:
        self.people = upload_box("Choose the list", ".csv,.txt,.tsv")
        about = (
            "A list from any spreadsheet or school system: a name, an id and an email for each person, "
            "and a group where the class has parts. Taking in another list later is fine."
        )
        self.add(
            "list", "Class list", about, "Take the list in", self._list_words, [self.people],
            after=lambda: self.hand.refresh(),
        )  # fmt: skip

    def _list_words(self) -> Sequence[str]:
        if not self.people.value:
            raise SolverError("Choose the file with the list first.")
        file = self.people.value[0]
        folder = kept_files(self.course, "people", [file])
        newest = max(folder.iterdir(), key=lambda path: path.stat().st_ctime)
        return ["course", str(self.course), "--people", str(newest)]

    def _exchange(self, says: str):
        """A box to check, for a course that has an exchange."""
        made = tick(says, False, lambda _: None)
        show(made, self.at.exchange)
        return made

    def _give_out(self) -> None:
        self.release = self._exchange("Give it out through the exchange too")
        about = "Makes the folder that people get, as one file to send. It has no answers in it."
        self.add(
            "give out", "Give it out", about, "Make what people get",
            lambda: ["set", self.chosen(), *self.course_words(), *["--release"] * self.release.value],
            [self.release] if self.at.exchange else [],
            makes=lambda: self.sent(f"{self.chosen()}.zip"),
        )  # fmt: skip

    def _take_in(self) -> None:
        self.files = upload_box("Choose what people sent", ".zip,.jsonl,.txt", many=True)
        self.times = chooser("Which time counts", TIMES)
        self.said_as = text_box("Whose it is, such as maria=op01 (if asked for)")
        self.collect = self._exchange("Collect from the exchange, and give feedback out there")
        about = (
            "Takes in what people sent, grades it, and makes a feedback page for each of them. What one "
            "person sends can't harm another's. Without new files it grades again."
        )
        self.add(
            "take in", "Take in and grade", about, "Take in and grade", self._take_in_words,
            [self.files, self.times, self.said_as, *[self.collect] * bool(self.at.exchange)],
            makes=lambda: self.sent(f"{self.chosen()}-feedback.zip"), after=self._emptied,
        )  # fmt: skip

    def _take_in_words(self) -> Sequence[str]:
        name = self.chosen()
        if self.files.value:
            kept_files(self.course, name, self.files.value)
        folder = self.course / INCOMING / name
        words = ["mark", name, *self.course_words(), "--feedback"]
        if self.collect.value:
            words += ["--collect", "--release"]
        if folder.is_dir():
            words += ["--hand-in", str(folder)]
        if self.times.value:
            words.append(f"--{self.times.value}")
        for said in filter(None, (each.strip() for each in self.said_as.value.split(","))):
            words += ["--as", said]
        return words

    def _emptied(self) -> None:
        self.files.value = ()
