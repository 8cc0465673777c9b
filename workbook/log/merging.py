"""Logs of several machines made one: the union of their attempts, in order of time.

An attempt is known by its id. Should two differ under one id, because somebody changed a line, the
one that comes first as text is taken, so that the order of merging never matters.
"""

from collections.abc import Iterable, Mapping

from .attempt import Attempt, line_of

__all__ = ["merged", "union"]


def union(by_id: dict[str, Attempt], attempts: Iterable[Attempt]) -> None:
    """Put these among those by their ids."""
    for attempt in attempts:
        other = by_id.setdefault(attempt.id, attempt)
        if other is not attempt and other != attempt:
            by_id[attempt.id] = min(other, attempt, key=line_of)


def merged(*logs: Iterable[Attempt]) -> list[Attempt]:
    """All attempts of these logs, once each, in order of time."""
    by_id: dict[str, Attempt] = {}
    for attempts in logs:
        union(by_id, attempts)
    return in_order(by_id)


def in_order(by_id: Mapping[str, Attempt]) -> list[Attempt]:
    """The attempts in order of time; those of one moment by their ids."""
    return sorted(by_id.values(), key=lambda attempt: (attempt.when, attempt.id))
