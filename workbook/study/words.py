"""The sentences of a progress page."""

from collections.abc import Iterable
from datetime import date, datetime
from html import escape

from solver import Family
from solver.units.show import counted
from workbook.log import Log

from .facts import AHEAD, Flaw, Kind, Progress

__all__ = ["NO_FLAWS", "coming", "due", "flaw", "kind_rows", "minutes", "ready", "summary"]

NO_FLAWS = "You haven't made the same mistake twice lately. If you do, it shows here."
NONE = "none yet"
SHOWN = 3  # lines of a log that could not be read and are named


def summary(told: Progress, log: Log) -> str:
    """How much was done, and what of the log could not be read."""
    if not told.problems:
        text = "Your log is empty so far. Every answer you give on any page is kept here."
    else:
        days = len(told.days)
        text = f"You have worked on {counted(told.problems, 'problem')}, on {counted(days, 'day')}."
    return f"<p>{text}</p>{_strange(log)}{_waiting(log)}"


def _strange(log: Log) -> str:
    if not log.strange:
        return ""
    named = "; ".join(f"line {one.number}: {one.why}" for one in log.strange[:SHOWN])
    more = f"; and {len(log.strange) - SHOWN} more" * (len(log.strange) > SHOWN)
    return (
        f"<p>{counted(len(log.strange), 'line')} of your log couldn't be read "
        f"({escape(named)}{more}). All the others count, and nothing was removed from the file. "
        f"The file is {escape(str(log.path))}</p>"
    )


def _waiting(log: Log) -> str:
    if not log.waiting:
        return ""
    many = counted(len(log.waiting), "answer")
    they = "It is" if len(log.waiting) == 1 else "They are"
    return f"<p>{many} couldn't be saved yet. {they} kept and saved with your next one.</p>"


def ready(told: Progress) -> str:
    """What to expect of an exam, and how that is reckoned."""
    if not told.problems:
        return ""
    hundred = round(100 * told.ready)
    untried = sum(chapter.kinds - chapter.tried for chapter in told.chapters)
    kinds = (
        f" {counted(untried, 'kind')} you haven't tried {_count_as(untried)} as wrong."
        if untried
        else ""
    )
    return (
        f"<p><b>If an exam asked every kind of problem once, you would get about {hundred} of 100 right."
        f"</b>{kinds} It comes from your last problems of each kind "
        "and how long ago you did them.</p>"
    )


def _count_as(number: int) -> str:
    return "counts" if number == 1 else "count"


def flaw(one: Flaw) -> str:
    """A mistake that recurs, in words, and where."""
    times = counted(one.recurring.times, "time")
    return f"<p><b>{escape(one.family.title)}</b>, {times} lately. {escape(one.says)}</p>"


def due(told: Progress, offered: int) -> str:
    """How many kinds are due now, of which so many are offered under this sentence."""
    now = len(told.due_now)
    if not now:
        return "<p>Nothing is due right now. Try a new kind any time.</p>"
    them = (
        "It is"
        if now == 1
        else "They are"
        if now <= offered
        else f"The {offered} you are least sure of are"
    )
    return (
        f"<p>{counted(now, 'kind')} {'comes' if now == 1 else 'come'} back today. {them} here.</p>"
    )


def coming(told: Progress, today: date) -> str:
    """On which of the days to come how many kinds come due, as a table; today's are late or due."""
    if not told.due_on:
        return f"<p>Nothing comes back in the next {AHEAD} days.</p>"
    rows = "".join(
        f'<tr><th scope="row">{"Today" if day == today else _day(day)}</th><td>{number}</td></tr>'
        for day, number in sorted(told.due_on.items())
    )
    caption = f"<caption>In the next {AHEAD} days</caption>"
    return f'<table class="w2w-givens">{caption}<tbody>{rows}</tbody></table>'


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
