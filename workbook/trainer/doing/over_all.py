"""Steps over all sets: hours in class, grades, records of completion, and a backup."""

from typing import TYPE_CHECKING

from .boxes import filled, text_box

if TYPE_CHECKING:
    from .course_panel import CoursePanel

__all__ = ["OverAll"]


class OverAll:
    """The steps at the end of a course, or whenever they are needed."""

    def __init__(self, panel: "CoursePanel"):
        self.day, self.topic = text_box("Day, such as 2026-12-01"), text_box("Topic")
        self.hours, self.absent = text_box("Hours"), text_box("Absent, by id (empty: nobody)")
        at, out = panel.course_words(), panel.out
        panel.add(
            "attend", "Hours in class", "A line for each meeting.", "Keep this meeting",
            lambda: filled(
                ["attend", self.day.value, *at],
                ("--topic", self.topic), ("--hours", self.hours), ("--absent", self.absent),
            ),
            [self.day, self.topic, self.hours, self.absent],
        )  # fmt: skip
        self.mark = text_box("Pass mark, percent (empty: 70)")
        about = "Everybody over all sets: one file with all there is, one that learning systems take in."
        panel.add(
            "grades", "Grades", about, "Write the grades",
            lambda: filled(
                ["grades", *at, "--csv", str(out("grades.csv")), "--lms", str(out("grades-lms.csv"))],
                ("--pass", self.mark),
            ),
            [self.mark], makes=lambda: panel.sent("grades.csv", "grades-lms.csv"),
        )  # fmt: skip
        self.trainer = text_box("Your name, as it is printed")
        about = "A page to print for everybody who passed, with topics and hours. It claims no accreditation."
        panel.add(
            "completion", "Records of completion", about, "Make the records",
            lambda: filled(
                ["completion", *at, "--out", str(out("completion.html"))],
                ("--trainer", self.trainer), ("--pass", self.mark),
            ),
            [self.trainer], makes=lambda: panel.sent("completion.html"),
        )  # fmt: skip
        about = "All of the course in one file, next to its folder: people's work, grades and sets."
        panel.add(
            "backup", "Back it up", about, "Make a backup", lambda: ["backup", str(panel.course)]
        )
