"""The one-line calls of work that others share: a group, a set from a trainer, a trainer's own pages.

The notebooks call them as `page.set_work(...)`, as all the others. Everything is imported when it is called.
"""

__all__ = [
    "class_report",
    "course",
    "group",
    "sent_set",
    "set_fault",
    "set_mark",
    "set_question",
    "set_work",
    "setting",
]


def group(part: str = "work"):
    """Group study: "work" at a set, "make" one, or put the "results" of all members together."""
    from .group.own_group import own_group

    own = own_group()
    if part == "make":
        from .group.make_panel import MakePanel
        from .practice import past, units_of

        return MakePanel(own, units_of(past()))
    if part == "results":
        from .group.results_panel import ResultsPanel

        return ResultsPanel(own)
    from .group.work_panel import WorkPanel

    return WorkPanel(own)


def set_work(part: str = "top"):
    """Work set by a trainer: who works here and how it stands; or "end", how to hand it in."""
    from pathlib import Path

    if _is_marked():
        return None
    from .trainer.learner.own_set import own_set
    from .trainer.learner.set_panel import HandIn, SetTop

    own = own_set(Path.cwd())
    if part == "end":
        return HandIn(own)
    own.read()
    return SetTop(own)


def sent_set():
    """A set that a trainer sent as a link or a text: opened, worked, and sent back as a file."""
    from .trainer.learner.sent_panel import SentPanel

    return SentPanel()


def set_question(number: int):
    """The card of one question of the set of work in this folder, from 1."""
    from pathlib import Path

    if _is_marked():
        return None
    from .trainer.learner.own_set import own_set
    from .trainer.learner.set_card import SetCard

    return SetCard(own_set(Path.cwd()), number)


def set_fault(number: int):
    """The case of find the fault that is this question of the set of work in this folder."""
    from pathlib import Path

    if _is_marked():
        return None
    from .trainer.learner.fault_card import FaultCard
    from .trainer.learner.own_set import own_set

    return FaultCard(own_set(Path.cwd()), number)


def _is_marked() -> bool:
    """Whether nbgrader marks this page, so that nobody is there to answer."""
    from .trainer.marking.grade_cell import AUTOGRADE, nbgrader_step

    return nbgrader_step() == AUTOGRADE


def set_mark(number: int):
    """The feedback and the points of one question, where nbgrader runs it; else nothing."""
    from .trainer.marking.grade_cell import set_mark

    return set_mark(number)


def setting():
    """Set work to the class whose course this folder is: chosen, seen as anybody, written."""
    from pathlib import Path

    from .trainer.setting.setting_panel import SettingPanel

    return SettingPanel(Path.cwd())


def course():
    """The steps of the course whose folder this is: list, work given out and taken in, grades, records."""
    from pathlib import Path

    from .trainer.doing.course_panel import CoursePanel

    return CoursePanel(Path.cwd())


def class_report():
    """How the class of this course did in a set: marks, mistakes to teach, who needs a hand."""
    from pathlib import Path

    from .trainer.report.class_panel import ClassPanel

    return ClassPanel(Path.cwd())
