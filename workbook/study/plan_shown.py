"""The plan and what to expect, in sentences and tables."""

from datetime import date

from solver.units.show import counted
from workbook.ui.contents import titled
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import table

from .goal import Goal
from .pieces import bar, block, day_in_words, short_day
from .plan import Plan, Week
from .progress import Progress

__all__ = ["fits", "fits_shortly", "plan_table", "ready_block", "this_week", "to_cover_block"]

SURE_FROM = 10  # problems from which on something can be expected
SHOWN = 8  # weeks in sight
NAMED = 2  # chapters of a week that are named
TOO_EARLY = f"Work {SURE_FROM} problems, and you’ll see what to expect here."


def this_week(plan: Plan) -> str:
    """What is begun this week, by the titles of the chapters, the first few."""
    names = list(titled(name for name, _ in plan.weeks[0].new).values())
    if not names:
        return "This week: nothing new, only what comes back."
    more = f" and {len(names) - NAMED} more" * (len(names) > NAMED)
    return f"This week: {', '.join(names[:NAMED])}{more}."


def fits(goal: Goal, plan: Plan, today: date) -> str:
    """Whether all that is to cover fits in before the exam, and what would make it fit."""
    goal = goal.ahead(today)
    pace = f"At {goal.minutes} minutes a day"
    if plan.left and goal.exam is None:
        return f"{pace}, there's more here than fits in half a year."
    if plan.left:
        kinds = f"{counted(plan.left, 'kind')} of problems won't fit before your exam"
        more = f" {plan.enough} minutes a day would do it." if plan.enough else ""
        return f"{pace}, {kinds}.{more}"
    if plan.covered is None:
        return "You've tried every kind of problem. From here on they come back."
    by = f"{pace}, you'll have tried every kind by {day_in_words(plan.covered)}"
    if goal.exam is None:
        return f"{by}."
    return f"{by}, {_before((goal.exam - plan.covered).days)} your exam."


def fits_shortly(goal: Goal, plan: Plan, today: date) -> str:
    """The same in a few words."""
    if plan.left and goal.ahead(today).exam:
        more = f" {plan.enough} minutes a day would do it." if plan.enough else ""
        return f"{counted(plan.left, 'kind')} won't fit before the exam.{more}"
    return f"All tried by {short_day(plan.covered)}." if plan.covered else ""


def _before(days: int) -> str:
    return f"{counted(days, 'day')} before" if days < 14 else f"{days // 7} weeks before"


def plan_table(plan: Plan, goal: Goal, today: date) -> Markup:
    """A row for each week: the kinds begun, and how many problems come back.

    Without a day of the exam it ends where nothing new is left.
    """
    last = max((n for n, week in enumerate(plan.weeks) if week.new), default=-1)
    weeks = plan.weeks if goal.ahead(today).exam else plan.weeks[: last + 1]
    rows = [_row(week, today) for week in weeks]
    if not rows:
        return Markup()
    heads = ("Week", "New", "Coming back")
    shown = table(rows[:SHOWN], "", heads, "w2w-plan")
    if not rows[SHOWN:]:
        return shown
    later = table(rows[SHOWN:], "", heads, "w2w-plan")
    return joined(shown, tag("details", tag("summary", "The weeks after that"), later))


def _row(week: Week, today: date) -> tuple[str, Markup | str, str]:
    first, last = week.first, week.last
    until = last.day if last.month == first.month else short_day(last)
    when = "This week" if first <= today <= last else f"{short_day(first)} to {until}"
    names = titled(name for name, _ in week.new)
    many = dict(week.new)
    new = Markup(tag("br")).join(
        joined(title, tag("span", f" {counted(many[name], 'kind')}", cls="w2w-about"))
        for name, title in names.items()
    )
    return when, new or "Nothing new", str(week.back or "–")


def ready_block(told: Progress, goal: Goal) -> Markup:
    """What to expect of the kinds that were tried."""
    title = "Of what you've tried"
    if told.ready is None or told.problems < SURE_FROM:
        return block(title, tag("p", TOO_EARLY))
    hundred = round(100 * told.ready)
    each = "1 kind" if told.tried == 1 else f"each of {told.tried} kinds"
    above = "at or above" if hundred >= goal.pass_mark else "below"
    return block(
        title,
        tag("p", "About ", tag("b", hundred, cls="w2w-big"), " of 100 right"),
        bar(told.ready, mark=goal.pass_mark / 100),
        tag("p", f"That's {above} your pass mark of {goal.pass_mark}."),
        tag(
            "p",
            f"Based on your last problems of {each}, and how long ago you did them.",
            cls="w2w-about",
        ),
    )


def to_cover_block(told: Progress, goal: Goal, plan: Plan, today: date) -> Markup:
    """How much was tried, and when the rest is."""
    return block(
        "Still to cover",
        tag(
            "p",
            tag("b", told.kinds - told.tried, cls="w2w-big"),
            f" of {told.kinds} kinds of problems",
        ),
        bar(told.tried / told.kinds),
        tag("p", fits(goal, plan, today)),
    )
