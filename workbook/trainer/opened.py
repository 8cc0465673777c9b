"""A trainer's course opened in the browser: their pages stand beside the chapters in its folder."""

from functools import partial
from pathlib import Path

from workbook.start.folder import CannotWrite, bring_up_to_date
from workbook.start.launcher import CannotOpen, keep_open
from workbook.ui.pages import TRAINERS, TRAINERS_OPENING, shipped_pages

from .course import CONFIG, CourseFault, make_course
from .setting.boxes import folder_name

__all__ = ["open_course"]


def open_course(folder: str, port: int | None, browser: bool = True, say=print) -> int:
    """Open the course in a folder, which becomes one if it is none yet; return the exit status."""
    return keep_open(partial(_prepare, Path(folder), say), TRAINERS_OPENING, port, browser, say)


def _prepare(folder: Path, say) -> Path:
    root = folder.expanduser().absolute()
    if not (root / CONFIG).exists():
        say(f"{root} becomes a course now.")
    try:
        course = make_course(root, name=folder_name(root.name) or "course")
        for sentence in bring_up_to_date(course.root, [*shipped_pages(), *shipped_pages(TRAINERS)]):
            say(sentence)
    except (CourseFault, CannotWrite) as fault:
        raise CannotOpen(str(fault)) from fault
    return course.root
