"""Who is who among the results of a group: one person's files put together, two people's kept apart.

A result is one person's. Two with an answer in common come from one log, so they are of one person.
Two that only have the same name may be of two people, and somebody is asked before they count as one.
"""

from collections.abc import Collection, Iterable, Sequence
from typing import NamedTuple

from workbook.log import Attempt, merged

__all__ = ["Member", "Result", "fold", "members_of"]


class Result(NamedTuple):
    """What one member answered, oldest first; `who` may be empty. `strange` lines were left out."""

    who: str
    attempts: Sequence[Attempt]
    strange: int = 0


class Member(NamedTuple):
    """One member, known by `key`; `name` is empty where none was given.

    `alike` is the name as `fold` gives it where results under it have no answer in common,
    whether or not they count as one person's; else it is empty.
    """

    key: str
    name: str
    attempts: Sequence[Attempt]
    alike: str = ""


def fold(name: str) -> str:
    """A name as it is compared: capital or small letters make no difference."""
    return name.casefold()


def members_of(results: Iterable[Result], one: Collection[str] = ()) -> list[Member]:
    """The members, in the order of their names; those without a name come last.

    `one` are the names, as `fold` gives them, under which all results are one person's. A result
    without a name that has an answer of one with a name was saved before that was given.
    """
    logs = _logs(sorted(results, key=lambda result: (not result.who, *_first(result.attempts))))
    held: dict[str, list[list[Result]]] = {}
    for log in logs:
        held.setdefault(fold(log[0].who), []).append(log)
    found: list[Member] = []
    for name, some in held.items():
        alike = name if len(some) > 1 else ""
        if name in one and name:
            some = [[result for log in some for result in log]]
        found += [_member(name, number, log, alike) for number, log in enumerate(some)]
    return sorted(found, key=lambda member: (not member.name, member.key))


def _logs(results: Iterable[Result]) -> list[list[Result]]:
    """The results, those of one log together: with an answer in common, and under one name or none."""
    logs: list[tuple[list[Result], set[str]]] = []
    for result in results:
        mine, ids = [result], {each.id for each in result.attempts}
        for log in list(logs):
            if not ids.isdisjoint(log[1]) and fold(result.who) in ("", fold(log[0][0].who)):
                logs.remove(log)
                mine, ids = [*log[0], *mine], ids | log[1]
                if not result.who:  # it was saved once: only one person's
                    break
        logs.append((mine, ids))
    return [log for log, _ in sorted(logs, key=lambda log: _oldest(log[0]))]


def _member(name: str, number: int, log: Sequence[Result], alike: str) -> Member:
    called = min((one.who for one in log if one.who), default="")
    oldest = " ".join(_oldest(log))
    key = f"{name} {oldest}" if number or not name else name
    return Member(key, called, merged(*(one.attempts for one in log)), alike)


def _oldest(log: Iterable[Result]) -> tuple[str, str]:
    return min(_first(one.attempts) for one in log)


def _first(attempts: Iterable[Attempt]) -> tuple[str, str]:
    """When the oldest of them was made, and its id."""
    return min((each.when, each.id) for each in attempts)
