"""Marking shared out among processes, of this computer or of several, with dask.distributed.

What was handed in is read here, and marks are written here: workers get bytes and give back plain
data. So they need no folder of the course and no gradebook, and there is one writer. Work of a
worker that is lost is done again by another. A class that is marked with neither is shared among the
processors that are at hand, where the system can copy a program at once.
"""

import hashlib
import logging
import os
import sys
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent import futures
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from functools import cache, partial
from itertools import chain, islice
from multiprocessing import get_context
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from solver import SolverError
from workbook.trainer.coming_in.handed_in import Handed

if TYPE_CHECKING:
    from distributed import Client, Future, LocalCluster

__all__ = ["NotShared", "at_hand", "copies", "shared"]

T = TypeVar("T")
Mapper = Callable[[Callable[[Handed], T], Iterable[Handed]], Iterable[T]]

PEOPLE, BYTES = 50, 2_000_000  # the most in one piece of work
AHEAD = 3  # pieces for each worker that are on their way, so that none waits
WORTH_IT = 4  # pieces from which on copies of this program pay for their start
PATIENCE = 30  # seconds until a scheduler has answered
PROJECT = Path(__file__).resolve().parents[3]
MARKING = ("solver", "workbook/log", "workbook/trainer")
NOTHING_CHANGED = "Nothing in the gradebook was changed."


class NotShared(SolverError):
    """Marking could not be shared out; the sentence says what to do."""


@contextmanager
def shared(workers: int = 0, scheduler: str = "") -> Iterator[Mapper]:
    """A `map` for `mark_all`, whose work is done by `workers` processes of this computer, or else
    by those that a dask scheduler at the address `scheduler` has. With neither, copies of this program
    do it, where there is enough to do.

    Raises:
        NotShared: packages are missing, or workers cannot be had or were lost.
    """
    if not (workers or scheduler):
        yield at_hand
        return
    client, cluster = _client(workers, scheduler)
    try:
        with client:
            yield partial(_mapped, client)
    finally:
        if cluster:
            cluster.close()


def at_hand(score: Callable[[Handed], T], handed: Iterable[Handed]) -> Iterator[T]:
    """What `score` gives for each, in order: by a copy of this program for each processor.

    They start at once, and so before a gradebook is opened. It is Python's own `map` for a small class.
    """
    pieces = _pieces(handed)
    first, many = list(islice(pieces, WORTH_IT)), copies()
    pieces = chain(first, pieces)
    if len(first) < WORTH_IT or many < 2:
        return map(score, chain.from_iterable(pieces))
    # A copy has `score` as it is; what is sent to it later must be plain data.
    pool = ProcessPoolExecutor(many, get_context("fork"), _SCORE.append, (score,))
    waiting = deque(pool.submit(_in_copy, piece) for piece in islice(pieces, AHEAD * many))
    return _of_copies(pool, waiting, pieces)


def copies() -> int:
    """How many copies of this program may run: one for each processor that it may use.

    A copy of a program with threads could wait for them forever; on Windows and macOS there are none.
    """
    if not sys.platform.startswith("linux") or len(os.listdir("/proc/self/task")) > 1:
        return 1
    return len(os.sched_getaffinity(0))


def _of_copies(
    pool: ProcessPoolExecutor,
    waiting: "deque[futures.Future[list[T]]]",
    more: Iterator[list[Handed]],
) -> Iterator[T]:
    try:
        with pool:
            while waiting:
                yield from waiting.popleft().result()
                waiting.extend(pool.submit(_in_copy, piece) for piece in islice(more, 1))
    except futures.BrokenExecutor as error:
        raise NotShared(
            f"A part of this program came to a sudden end while it graded. {NOTHING_CHANGED} Type the "
            "same command again."
        ) from error


_SCORE: list[Callable[[Handed], Any]] = []  # in a copy: what it does


def _in_copy(piece: list[Handed]) -> list[Any]:
    return [_SCORE[-1](each) for each in piece]


def _client(workers: int, scheduler: str) -> "tuple[Client, LocalCluster | None]":
    try:
        from distributed import Client, LocalCluster
    except ImportError:
        raise NotShared(
            "Sharing the grading needs two more packages. Type: "
            f"{sys.executable} -m pip install distributed cryptography"
        ) from None
    if scheduler:
        try:
            return Client(scheduler, timeout=PATIENCE), None
        except (OSError, ValueError) as error:
            raise NotShared(f"No scheduler answers at {scheduler}. Check its address.") from error
    # With keys of its own: others who use this computer could else have it run what they like.
    cluster = LocalCluster(
        n_workers=workers,
        threads_per_worker=1,
        dashboard_address="127.0.0.1:0",
        security=True,
        silence_logs=logging.CRITICAL,  # what goes wrong is told by the sentences of `NotShared`
    )
    return Client(cluster), cluster


def _mapped(
    client: "Client", score: Callable[[Handed], T], handed: Iterable[Handed]
) -> Iterator[T]:
    """What `score` gives for each, in order; only a few pieces are in memory at any time."""
    from distributed import KilledWorker

    waiting: deque[Future] = deque()
    edition = _edition()
    try:
        for piece in _pieces(handed):
            waiting.append(client.submit(_scored, edition, score, piece, pure=False))
            if len(waiting) > AHEAD * max(len(client.nthreads()), 1):
                yield from _result(client, waiting.popleft())
        while waiting:
            yield from _result(client, waiting.popleft())
    except SolverError:
        raise
    except KilledWorker as error:
        raise NotShared(
            f"Several workers were lost at the same work. Give each more memory. {NOTHING_CHANGED}"
        ) from error
    except Exception as error:
        raise NotShared(f"The workers couldn't grade: {error}. {NOTHING_CHANGED}") from error


def _result(client: "Client", piece: "Future") -> list[T]:
    """What a piece of work came to, however long it takes, while there is a worker to do it."""
    while True:
        try:
            return piece.result(timeout=PATIENCE)
        except TimeoutError:
            if not client.nthreads():
                raise NotShared(
                    f"There are no workers. Start some, and type the same command again. {NOTHING_CHANGED}"
                ) from None


def _pieces(handed: Iterable[Handed]) -> Iterator[list[Handed]]:
    piece: list[Handed] = []
    held = 0
    for each in handed:
        piece.append(each)
        held += len(each.sheet or b"") + len(each.notebook or b"")
        if len(piece) >= PEOPLE or held >= BYTES:
            yield piece
            piece, held = [], 0
    if piece:
        yield piece


def _scored(edition: str, score: Callable[[Handed], T], piece: list[Handed]) -> list[T]:
    """One piece of work, as a worker does it; an older workbook there would mark otherwise."""
    if edition != _edition():
        raise NotShared(
            f"A worker has another version of the workbook, in {PROJECT}. Put this one on every "
            f"computer that grades. {NOTHING_CHANGED}"
        )
    return [score(each) for each in piece]


@cache
def _edition() -> str:
    """Tells one state of all that marks depend on from another."""
    found = hashlib.sha256()
    for folder in MARKING:
        for path in sorted((PROJECT / folder).rglob("*")):
            if path.suffix in (".py", ".txt", ".csv", ".toml") and path.is_file():
                found.update(f"{path.relative_to(PROJECT).as_posix()}\n".encode())
                found.update(path.read_bytes())
    return found.hexdigest()
