"""The pictures of a progress page, each with the same numbers as a table."""

from collections.abc import Mapping
from datetime import date, timedelta
from functools import partial
from typing import TYPE_CHECKING

from ..figures.view import Figure, View
from .facts import Chapter, Progress

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["chapters_picture", "days_picture"]

WEEKS = 13
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
NONE = "none yet"
Pictured = tuple[Figure, View]


def _figure(name: str, view: View, draw, height: float) -> Pictured:
    return Figure(name, view.headline, (), lambda values, units: view, draw, height), view


def minutes(seconds: float | None) -> str:
    """A time as a person says it.

    >>> minutes(44.2), minutes(190), minutes(None)
    ('44 s', '3 min 10 s', 'none yet')
    """
    if seconds is None:
        return NONE
    whole = round(seconds)
    return f"{whole} s" if whole < 60 else f"{whole // 60} min {whole % 60} s"


def chapters_picture(told: Progress, titles: Mapping[str, str]) -> Pictured:
    """Each chapter: of the last problems of each kind, how many were right at once."""
    names = [titles.get(c.name) or c.name.replace("_", " ").capitalize() for c in told.chapters]
    rows = tuple(
        (
            name,
            f"{c.right} of {c.lately}" if c.lately else NONE,
            f"{c.tried} of {c.kinds}",
            str(c.due),
            minutes(c.seconds),
        )
        for name, c in zip(names, told.chapters, strict=True)
    )
    columns = ("Chapter", "Right at once", "Kinds tried", "Due now", "Usual time")
    alt = "Right at once and without help, lately. " + ". ".join(
        f"{row[0]}: {row[1]}" for row in rows
    )
    view = View("Right at once, lately", alt, columns, rows, {}, "")
    height = 0.8 + 0.36 * len(names)
    return _figure("progress", view, partial(_draw_chapters, names, told.chapters), height)


def _draw_chapters(
    names: list[str], chapters: tuple[Chapter, ...], axes: "Axes", view: View
) -> None:
    """A bar a chapter from none to all; how much was tried is told in words beside it."""
    places = range(len(names))
    shares = [100 * c.right / c.lately if c.lately else 0 for c in chapters]
    axes.barh(places, shares, color="C0", height=0.62)
    for place, share, chapter in zip(places, shares, chapters, strict=True):
        said = f"{chapter.right} of {chapter.lately}" if chapter.lately else NONE
        inside = share > 60
        axes.annotate(
            said, (share, place), xytext=(-5 if inside else 5, 0), textcoords="offset points",
            ha="right" if inside else "left", va="center", fontsize=10,
            color="white" if inside else None,
        )  # fmt: skip
    axes.set_yticks(places, names)
    axes.set(xlim=(0, 100), xlabel="Right at once, % of the last problems")
    axes.invert_yaxis()


def days_picture(told: Progress, today: date) -> Pictured:
    """The last weeks as a calendar: how many problems on which day."""
    first = today - timedelta(days=today.weekday() + 7 * (WEEKS - 1))
    weeks = [first + timedelta(days=7 * week) for week in range(WEEKS)]
    rows = tuple(_week(told, week) for week in reversed(weeks))
    done = sum(told.days[first + timedelta(days=n)] for n in range(7 * WEEKS))
    alt = f"A calendar of the last {WEEKS} weeks with {done} problems in all."
    columns = ("Week from", "Days of work", "Problems")
    view = View("Days of work", alt, columns, rows, {}, "")
    return _figure("days", view, partial(_draw_days, told, weeks, today), 2.9)


def _week(told: Progress, week: date) -> tuple[str, str, str]:
    counts = [told.days[week + timedelta(days=n)] for n in range(7)]
    return f"{week.day} {week:%b}", str(sum(map(bool, counts))), str(sum(counts))


def _draw_days(told: Progress, weeks: list[date], today: date, axes: "Axes", view: View) -> None:
    """A square a day; its number says how many problems, and its colour says it again."""
    most = max(told.days.values(), default=1)
    for column, week in enumerate(weeks):
        for row in range(7):
            day = week + timedelta(days=row)
            if day <= today:
                _draw_day(axes, column, row, told.days[day], most)
    axes.set(xlim=(-0.6, len(weeks) - 0.4), ylim=(6.6, -0.6), aspect="equal")
    axes.set_yticks(range(7), DAYS)
    axes.set_xticks(range(0, len(weeks), 3), [f"{w.day} {w:%b}" for w in weeks[::3]])
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
            column, row, str(count), ha="center", va="center", fontsize=11,
            color="white" if white else None,
        )  # fmt: skip
