"""Logs of several machines made one: the union of their attempts, in order of time.

An attempt is known by its id. Should two differ under one id, because somebody changed a line, the
one that comes first as text is taken, so that the order of merging never matters.
"""

from collections.abc import Iterable, Mapping

from .attempt import Attempt, line_of

__all__ = ["in_order", "merged", "none_ahead", "union"]


def none_ahead(attempts: Iterable[Attempt], now: str) -> list[Attempt]:
    """The attempts as they were written, with no time later than now.

    A clock was wrong where a time is ahead. It counts as that of the next attempt that was written
    with a time that can be, or as now.
    """
    found, by_then = [], now
    for attempt in reversed(list(attempts)):
        if attempt.when > now:
            found.append(attempt._replace(when=by_then))
        else:
            by_then = attempt.when
            found.append(attempt)
    return found[::-1]


def union(by_id: dict[str, Attempt], attempts: Iterable[Attempt]) -> list[Attempt]:
    """Put these among those by their ids; the ones that changed anything."""
    news = []
    for attempt in attempts:
        other = by_id.get(attempt.id)
        if other is None or (other != attempt and line_of(attempt) < line_of(other)):
            by_id[attempt.id] = attempt
            news.append(attempt)
    return news


def merged(*logs: Iterable[Attempt]) -> list[Attempt]:
    """All attempts of these logs, once each, in order of time."""
    by_id: dict[str, Attempt] = {}
    for attempts in logs:
        union(by_id, attempts)
    return in_order(by_id)


def in_order(by_id: Mapping[str, Attempt]) -> list[Attempt]:
    """The attempts in order of time; those of one moment by their ids."""
    return sorted(by_id.values(), key=lambda attempt: (attempt.when, attempt.id))
