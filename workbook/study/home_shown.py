"""The side of the first page in words: exam and minutes, what comes back, work begun, the chapters."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta
from typing import NamedTuple

from solver.units.show import counted
from workbook.ui.markup import Markup, tag
from workbook.ui.pages import Chapter as Page

from .goal import Goal
from .pieces import bar, block, day_in_words, page_link
from .plan import Plan
from .plan_shown import fits_shortly, this_week
from .progress import Back, Chapter, Progress

__all__ = ["WELCOME", "Begun", "back_block", "begun_block", "chapters_block", "exam_block"]

WELCOME = (
    "Here are pump, motor and power problems, with new numbers each time. "
    "Work one on paper and type your answer. If it's off, you see which step to look at."
)
STUDY = "14-your-study.ipynb"
NAMED = 3  # kinds that come back and are named
WEEK = 7
NO_BACK = "Nothing more comes back today. New kinds come next."
WAITS = ", as time allows"
NO_BACK_YET = "Nothing yet. What you work on comes back here, sooner if you missed it."


class Begun(NamedTuple):
    """An exam or a set of work to go on with: what it is called, how it stands, its page."""

    title: str
    says: str
    page: str


def exam_block(goal: Goal, told: Progress, plan: Plan, minutes: float, today: date) -> Markup:
    """The days to the exam, the minutes of today, this week's plan, and the days of work.

    Before anything was asked or done there is only its heading.
    """
    if not (goal.asked or told.problems):
        return block("Your exam")
    done = round(minutes)
    return block(
        exam_in_words(goal, today),
        tag("p", tag("b", done, cls="w2w-big"), f" of {goal.minutes} minutes today"),
        bar(minutes / goal.minutes),
        _last_days(told, today),
        tag("p", this_week(plan), " ", fits_shortly(goal, plan, today)) if plan.weeks else None,
    )


def exam_in_words(goal: Goal, today: date) -> str:
    """When the exam is, as a heading.

    >>> exam_in_words(Goal(date(2027, 1, 28)), date(2026, 11, 30))
    'Exam in 59 days'
    """
    left = goal.days_left(today)
    if goal.exam is None or left is None:
        return "Your plan"
    if left < 0:
        return f"Your exam was {day_in_words(goal.exam)}"
    return ("Your exam is today", "Exam tomorrow")[left] if left < 2 else f"Exam in {left} days"


def _last_days(told: Progress, today: date) -> Markup:
    """The last seven days, each with a mark where somebody worked."""
    days = [today - timedelta(days=n) for n in reversed(range(WEEK))]
    kept = sum(day in told.days for day in days)
    marks = (
        tag("span", f"{day:%a}"[:2], cls="w2w-kept" if day in told.days else "") for day in days
    )
    said = f"{kept} of {WEEK} days" if kept else "Your days show here"
    return tag(
        "p",
        tag("span", marks, cls="w2w-days", aria_hidden="true"),
        tag("span", said, cls="w2w-about"),
    )


def back_block(told: Progress, now: datetime, room: float) -> Markup:
    """What comes back today, the first few by name, each with why; `room` is how many a day holds."""
    back = told.back
    if not back:
        return block("Coming back today", tag("p", NO_BACK if told.problems else NO_BACK_YET))
    items = [tag("li", one.family.title, " ", tag("span", why(one, now))) for one in back[:NAMED]]
    if len(back) > NAMED:
        waits = WAITS * (len(back) > room)
        items.append(tag("li", page_link(f"and {len(back) - NAMED} more{waits}", STUDY)))
    return block(f"Coming back today: {len(back)}", tag("ul", items), more="w2w-back")


def why(one: Back, now: datetime) -> str:
    """Why a kind comes back, in a few words."""
    if one.slips:
        return f"same mistake {counted(one.slips, 'time')}"
    soon = (one.since - now).total_seconds()
    if soon > 0:
        return f"missed just now, back in {max(round(soon / 60), 1)} min"
    days = (now.date() - one.last.astimezone(now.tzinfo).date()).days
    ago = ("today", "yesterday")[days] if days < 2 else f"{days} days ago"
    return f"right {ago}" if one.unaided else f"missed {ago}"


def begun_block(found: Sequence[Begun]) -> Markup:
    """What was begun and waits; nothing where nothing does."""
    if not found:
        return Markup()
    items = (tag("li", page_link(b.title, b.page), " ", tag("span", b.says)) for b in found)
    return block("In progress", tag("ul", items), more="w2w-back")


def chapters_block(chapters: Iterable[Chapter], pages: Mapping[str, Page]) -> Markup:
    """Each chapter: a link, the number of kinds tried, a bar of what is tried and would go right."""
    shown = [chapter for chapter in chapters if chapter.name in pages]
    about = "Kinds of problems you've tried. Dark: what you'd get right today."
    return block(
        "Chapters",
        tag("ul", (_row(chapter, pages[chapter.name]) for chapter in shown), cls="w2w-chapters"),
        tag("p", about, cls="w2w-about") if any(chapter.tried for chapter in shown) else None,
    )


def _row(chapter: Chapter, page: Page) -> Markup:
    tried, kinds = chapter.tried, chapter.kinds
    number = f"{tried} of {kinds}" if tried else "not started"
    link = page_link(page.title, page.file)
    share = bar(chapter.sure / kinds, tried / kinds) if tried else None
    return tag("li", link, tag("span", number, cls="w2w-number"), share)
