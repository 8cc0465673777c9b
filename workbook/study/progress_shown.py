"""How a study stands, in sentences, tables and pictures; each picture has its numbers as a table."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta
from functools import partial
from typing import TYPE_CHECKING

from solver import Family
from solver.units.show import counted
from workbook.figures import Figure, View, draw_shares
from workbook.log import Log
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import table

from .progress import AHEAD, Flaw, Kind, Progress

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "NO_FLAWS",
    "chapters_picture",
    "coming",
    "days_picture",
    "due",
    "flaw",
    "kind_rows",
    "minutes",
    "ready",
    "summary",
]

NO_FLAWS = "You haven't made the same mistake twice lately. If you do, it shows here."
NONE = "none yet"
SHOWN = 3  # lines of a log that could not be read and are named
WEEKS = 13
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
Pictured = tuple[Figure, View]


def summary(told: Progress, log: Log) -> Markup:
    """How much was done, and what of the log could not be read."""
    if not told.problems:
        text = "Your log is empty so far. Every answer you give on any page is kept here."
    else:
        days = len(told.days)
        text = f"You have worked on {counted(told.problems, 'problem')}, on {counted(days, 'day')}."
    return joined(tag("p", text), _strange(log), _waiting(log))


def _strange(log: Log) -> Markup | None:
    if not log.strange:
        return None
    named = "; ".join(f"line {one.number}: {one.why}" for one in log.strange[:SHOWN])
    more = f"; and {len(log.strange) - SHOWN} more" * (len(log.strange) > SHOWN)
    return tag(
        "p",
        f"{counted(len(log.strange), 'line')} of your log couldn't be read "
        f"({named}{more}). All the others count, and nothing was removed from the file. "
        f"The file is {log.path}",
    )


def _waiting(log: Log) -> Markup | None:
    if not log.waiting:
        return None
    many = counted(len(log.waiting), "answer")
    they = "It is" if len(log.waiting) == 1 else "They are"
    return tag("p", f"{many} couldn't be saved yet. {they} kept and saved with your next one.")


def ready(told: Progress) -> Markup:
    """What to expect of an exam, and how that is calculated."""
    if not told.problems:
        return Markup()
    hundred = round(100 * told.ready)
    untried = sum(chapter.kinds - chapter.tried for chapter in told.chapters)
    kinds = (
        f" {counted(untried, 'kind')} you haven't tried {_count_as(untried)} as wrong."
        if untried
        else ""
    )
    return tag(
        "p",
        tag(
            "b",
            f"If an exam asked every kind of problem once, you would get about {hundred} of 100 right.",
        ),
        f"{kinds} It comes from your last problems of each kind and how long ago you did them.",
    )


def _count_as(number: int) -> str:
    return "counts" if number == 1 else "count"


def flaw(one: Flaw) -> Markup:
    """A mistake that recurs, in words, and where."""
    times = counted(one.recurring.times, "time")
    return tag("p", tag("b", one.family.title), f", {times} lately. {one.says}")


def due(told: Progress, offered: int) -> Markup:
    """How many kinds are due now, of which so many are offered under this sentence."""
    now = len(told.due_now)
    if not now:
        return tag("p", "Nothing is due right now. Try a new kind any time.")
    them = (
        "It is"
        if now == 1
        else "They are"
        if now <= offered
        else f"The {offered} you are least sure of are"
    )
    return tag(
        "p", f"{counted(now, 'kind')} {'comes' if now == 1 else 'come'} back today. {them} here."
    )


def coming(told: Progress, today: date) -> Markup:
    """On which of the days to come how many kinds come due, as a table; today's are late or due."""
    if not told.due_on:
        return tag("p", f"Nothing comes back in the next {AHEAD} days.")
    days = sorted(told.due_on.items())
    rows = (("Today" if day == today else _day(day), number) for day, number in days)
    return table(rows, f"In the next {AHEAD} days")


def kind_rows(found: Iterable[Kind], due_now: Iterable[Family], now: datetime) -> list[tuple]:
    """A row of text for each kind of a chapter, under the heads of the panel's table."""
    late = {family.name for family in due_now}
    return [
        (
            kind.family.title,
            f"{kind.right} of {kind.lately}" if kind.lately else NONE,
            str(kind.level),
            _when(kind, late, now),
            minutes(kind.seconds),
        )
        for kind in found
    ]


def _when(kind: Kind, late: Iterable[str], now: datetime) -> str:
    if kind.due is None:
        return "–"
    return "now" if kind.family.name in late else _day(kind.due.astimezone(now.tzinfo).date())


def _day(day: date) -> str:
    return f"{day:%a} {day.day} {day:%b}"


def minutes(seconds: float | None) -> str:
    """A time as a person says it, to the nearest half minute.

    >>> minutes(44.2), minutes(190), minutes(None)
    ('44 s', '3 min', '–')
    """
    if seconds is None:
        return "–"
    return f"{seconds:.0f} s" if seconds < 59.5 else f"{round(seconds / 30) / 2:g} min"


def _figure(name: str, view: View, draw: Callable[["Axes", View], None], height: float) -> Pictured:
    return Figure(name, view.headline, (), lambda values, units: view, draw, height), view


def chapters_picture(told: Progress, titles: Mapping[str, str]) -> Pictured:
    """Each chapter: of the last problems of each kind, how many were right at once."""
    rows = tuple(
        (
            titles[c.name],
            f"{c.right} of {c.lately}" if c.lately else NONE,
            f"{c.tried} of {c.kinds}",
            str(c.due),
            minutes(c.seconds),
        )
        for c in told.chapters
    )
    known = {titles[c.name]: 100 * c.right / c.lately if c.lately else 0 for c in told.chapters}
    columns = ("Chapter", "Right the first time", "Kinds tried", "Back today", "Usual time")
    alt = "Right the first time and without help, lately. " + ". ".join(
        f"{row[0]}: {row[1]}" for row in rows
    )
    view = View("Right the first time, lately", alt, columns, rows, known, "")
    draw = partial(draw_shares, label="Right the first time, %")
    return _figure("progress", view, draw, 0.7 + 0.5 * len(rows))


def days_picture(told: Progress, today: date) -> Pictured:
    """The last weeks as a calendar: how many problems on which day."""
    first = today - timedelta(days=today.weekday() + 7 * (WEEKS - 1))
    days = [first + timedelta(days=n) for n in range((today - first).days + 1)]
    known = {day.isoformat(): told.days[day] for day in days}
    weeks = [days[at : at + 7] for at in range(0, len(days), 7)]
    rows = tuple(_week(told, week) for week in reversed(weeks))
    alt = f"A calendar of the last {WEEKS} weeks with {sum(known.values())} problems in all."
    columns = ("Week from", "Days you practiced", "Problems")
    return _figure(
        "days", View("Days you practiced", alt, columns, rows, known, ""), _draw_days, 2.9
    )


def _week(told: Progress, week: Sequence[date]) -> tuple[str, str, str]:
    counts = [told.days[day] for day in week]
    return _short(week[0]), str(sum(map(bool, counts))), str(sum(counts))


def _short(day: date) -> str:
    return f"{day.day} {day:%b}"


def _draw_days(axes: "Axes", view: View) -> None:
    """One square for each day: the number in it is how many problems, and its color shows the same."""
    most = max(*view.known.values(), 1)
    for at, count in enumerate(view.known.values()):
        _draw_day(axes, *divmod(at, 7), int(count), int(most))
    axes.set(xlim=(-0.6, WEEKS - 0.4), ylim=(6.6, -0.6), aspect="equal")
    axes.set_yticks(range(7), DAYS)
    firsts = [_short(date.fromisoformat(day)) for day in view.known][:: 3 * 7]
    axes.set_xticks(range(0, WEEKS, 3), firsts)
    axes.tick_params(length=0)
    axes.grid(False)
    for spine in axes.spines.values():
        spine.set_visible(False)


def _draw_day(axes: "Axes", column: int, row: int, count: int, most: int) -> None:
    from matplotlib.patches import Rectangle

    share = count / most
    look = {"facecolor": "C0", "alpha": 0.25 + 0.75 * share} if count else {"facecolor": "none"}
    corner = (column - 0.45, row - 0.45)
    axes.add_patch(Rectangle(corner, 0.9, 0.9, edgecolor="#8884", linewidth=0.8, **look))
    if count:
        white = share > 0.55
        axes.text(
            column, row, str(count), ha="center", va="center", color="white" if white else None,
        )  # fmt: skip
