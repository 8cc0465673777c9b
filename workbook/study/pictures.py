"""The pictures of a progress page, each with the same numbers as a table."""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from functools import partial
from typing import TYPE_CHECKING

from workbook.figures import Figure, View, draw_shares

from .facts import Progress
from .words import NONE, minutes

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["Pictured", "chapters_picture", "days_picture"]

WEEKS = 13
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
Pictured = tuple[Figure, View]


def _figure(name: str, view: View, draw, height: float) -> Pictured:
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
    """A square a day; its number says how many problems, and its colour says it again."""
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
