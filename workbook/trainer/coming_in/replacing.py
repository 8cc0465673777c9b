"""Whether work takes the place of what the same person turned in before."""

from datetime import datetime

from workbook.trainer.course import Course
from workbook.trainer.learner.answer_sheet import SHEET

from .earlier import earlier_work
from .handed_in import Handed
from .whose import Work

__all__ = ["same_work", "was_replaced", "why_not"]


def same_work(before: Handed, work: Work, name: str) -> bool:
    """Whether this work for the set `name` is what was handed in before."""
    files = work.files
    return (before.sheet, before.notebook) == (files.get(SHEET), files.get(f"{name}.ipynb"))


def was_replaced(course: Course, name: str, work: Work) -> bool:
    """Whether this work was here before, and newer work took its place."""
    return any(same_work(one, work, name) for one in earlier_work(course, name, work.person))


def why_not(work: Work, before: Handed, then: datetime | None, now: datetime) -> str:
    """Why work that came `now` does not take the place of what came `then`; empty where it does.

    It does where it goes on from that.
    """
    take = f"To take this one all the same, type: --as FILE={work.person}, with this file's name."
    if then and then >= now:
        return f"{work.person} has already turned in newer work, which stays. {take}"
    old = set((before.sheet or b"").split(b"\n"))
    if old - {b""} and old <= set((work.files.get(SHEET) or b"").split(b"\n")):
        return ""
    if not before.sheet and work.named:
        return ""
    return f"{work.person} turned in answers before that this file doesn't have, so it was left out. {take}"
