"""A course opened in the browser, to be seen and worked on."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

__all__ = ["open_course"]


def open_course(
    folder: str, port: int | None, browser: bool = True, say: Callable[[str], object] = print
) -> int:
    """Open the course in a folder in the browser, with the trainer's pages beside the chapters.

    The folder becomes a course if it is none yet. The exit status.
    """
    from workbook.start.launcher import keep_open
    from workbook.ui.pages import TRAINERS_OPENING

    return keep_open(partial(_prepare, Path(folder), say), TRAINERS_OPENING, port, browser, say)


def _prepare(folder: Path, say: Callable[[str], object]) -> Path:
    from workbook.start.folder import CannotWrite, bring_up_to_date
    from workbook.start.launcher import CannotOpen
    from workbook.ui.pages import TRAINERS, shipped_pages

    from .course import CONFIG, CourseFault, make_course
    from .setting.typed_in import folder_name

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
