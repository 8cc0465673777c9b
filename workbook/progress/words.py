"""The sentences of a progress page."""

from datetime import date
from html import escape

from workbook.log import Log

from .facts import AHEAD, Flaw, Progress

__all__ = ["NO_FLAWS", "due", "flaw", "ready", "summary"]

NO_FLAWS = "No mistake has come twice lately. A mistake that does is named here."
SHOWN = 3  # lines of a log that could not be read and are named


def summary(told: Progress, log: Log) -> str:
    """How much was done, and what of the log could not be read."""
    if not told.problems:
        text = "Nothing is in your log yet. Each answer you give on any page is kept here."
    else:
        days = len(told.days)
        text = (
            f"You have worked on {_counted(told.problems, 'problem')}, on {_counted(days, 'day')}."
        )
    return f"<p>{text}</p>{_strange(log)}{_waiting(log)}"


def _strange(log: Log) -> str:
    if not log.strange:
        return ""
    named = "; ".join(f"line {one.number}: {one.why}" for one in log.strange[:SHOWN])
    more = f"; and {len(log.strange) - SHOWN} more" * (len(log.strange) > SHOWN)
    return (
        f"<p>{_counted(len(log.strange), 'line')} of your log could not be read "
        f"and was set aside ({escape(named)}{more}). All others count. "
        f"Nothing was taken out of the file.</p>"
    )


def _waiting(log: Log) -> str:
    if not log.waiting:
        return ""
    many = _counted(len(log.waiting), "answer")
    return f"<p>{many} could not be saved yet, and will be with the next one.</p>"


def ready(told: Progress) -> str:
    """What to expect of an exam, and how that is reckoned."""
    if not told.problems:
        return ""
    hundred = round(100 * told.ready)
    untried = sum(chapter.kinds - chapter.tried for chapter in told.chapters)
    kinds = (
        f" {_counted(untried, 'kind')} you have not tried {_count_as(untried)} as not known."
        if untried
        else ""
    )
    return (
        f"<p><b>If an exam asked every kind once, about {hundred} of 100 answers would be right."
        f"</b>{kinds} This is reckoned from your last problems of each kind, "
        "and from how long ago they were.</p>"
    )


def _count_as(number: int) -> str:
    return "counts" if number == 1 else "count"


def flaw(one: Flaw) -> str:
    """A mistake that recurs, in words, and where."""
    times = _counted(one.recurring.times, "time")
    says = f": {escape(one.says)}" if one.says else "."
    return f"<p><b>{escape(one.family.title)}</b>, {times} lately{says}</p>"


def due(told: Progress, today: date) -> str:
    """How many kinds are due now and on the days that come, as a sentence and a table."""
    if not told.due_on:
        return (
            f"<p>Nothing is due in the next {AHEAD} days. New kinds can be tried at any time.</p>"
        )
    now = len(told.due_now)
    head = f"<p>{_counted(now, 'kind')} due now.</p>" if now else "<p>Nothing is due now.</p>"
    rows = "".join(
        f'<tr><th scope="row">{"Today" if day == today else f"{day:%a} {day.day} {day:%b}"}</th>'
        f"<td>{number}</td></tr>"
        for day, number in sorted(told.due_on.items())
    )
    return (
        f'{head}<table class="w2w-givens"><caption>Kinds that come due</caption>'
        f"<tbody>{rows}</tbody></table>"
    )


def _counted(number: int, noun: str) -> str:
    return f"{number:,} {noun}{'' if number == 1 else 's'}"
