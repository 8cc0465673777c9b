"""Work that came by mail or from a website, put where nbgrader looks for it.

The folder holds a zip file or a folder for each person. Those that the notebook of a set makes have
`ana.r/week-3/` inside. Any other is named after the person, with the files somewhere in it. What
one person sends stops nobody else's: it is skipped, by the name it came with, and said.
"""

import secrets
import shutil
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from workbook.trainer.course import Course, CourseFault
from workbook.trainer.learner.answer_sheet import SHEET, read_sheet
from workbook.trainer.marking.odd import plain
from workbook.trainer.people import listed

from .earlier import move_to_earlier
from .handed_in import SECRET, TIMESTAMP, Handed, read_handed, read_when
from .known import Class, class_of
from .opened import CannotOpen, called, came_at
from .replacing import same_work, was_replaced, why_not
from .times import (
    FORM,
    RECEIVED,
    SAID,
    TRAINER,
    Times,
    in_words,
    keep_times,
    kept_times,
    one_batch,
    times_of,
)
from .typed_as import keep_typed_as
from .whose import Work, names, works_in

__all__ = ["Taken", "take_in"]

BATCH = (
    "These files were all saved within ten minutes, so their times show when you saved them, not "
    "when they came. The times people's own files say count. To count yours, type --received."
)


class Taken(NamedTuple):
    """Whose work was taken in, sentences about what to know, and how many files were there already."""

    people: tuple[str, ...]
    notes: tuple[str, ...]
    again: int = 0


class _Into:
    """The place that work goes into: a course and a set, the times, and what was done so far."""

    def __init__(
        self, course: Course, name: str, when: datetime | None, prefer: str, now: datetime
    ):
        self.course, self.name, self.when, self.prefer, self.now = course, name, when, prefer, now
        self.chosen = False  # the trainer said which time counts
        self.times: dict[str, tuple[Times, str]] = {}
        self.before = kept_times(course, name)
        self.taken: list[str] = []
        self.notes: list[str] = []
        self.again = 0


def take_in(
    course: Course,
    name: str,
    source: Path,
    when: datetime | None = None,
    *,
    prefer: str = "",
    said_as: Mapping[str, str] | None = None,
    now: datetime | None = None,
) -> Taken:
    """Put what is in the folder `source`, or the one zip file, among what was handed in.

    `when` is the time of handing in, in UTC without an offset; where left out, `prefer` says which
    time counts: "received", the file's, or "said", the one packed into it. Where that is left out too
    the file's does, unless all were saved at once. `said_as` gives the id for a name that was typed,
    or for the name of a file. Newer work takes the place of older work, which goes to `earlier`.

    Raises:
        CourseFault: there is no such folder; or a name in `said_as` cannot be used.
    """
    items = _items(source)
    saved = [came_at(item) for item in items]
    batch = not (prefer or when) and one_batch(saved)
    now = now or datetime.now(UTC).replace(tzinfo=None)
    into = _Into(course, name, when, prefer or (SAID if batch else RECEIVED), now)
    into.chosen = bool(prefer)
    known = class_of(listed(course), said_as or {})
    alone = Path(source).expanduser().is_file()
    for _, item in sorted(zip(saved, items, strict=True), key=lambda each: (each[0], each[1].name)):
        _take(into, item, known, alone)
    if batch and any(times.said and times.received for times, _ in into.times.values()):
        into.notes.append(BATCH)
    keep_times(course, name, into.times)
    return Taken(tuple(dict.fromkeys(into.taken)), tuple(into.notes), into.again)


def _items(source: Path) -> list[Path]:
    source = Path(source).expanduser()
    if source.is_file():
        return [source]
    try:
        return [item for item in source.iterdir() if not item.name.startswith(".")]
    except OSError as error:
        raise CourseFault(f"The folder {source} can't be read: {error.strerror}.") from error


def _take(into: _Into, item: Path, known: Class, alone: bool) -> None:
    """Take in one file or folder; whatever it is, the others come after it."""
    try:
        for work in works_in(item, into.name, known, alone=alone):
            _put(into, item, work)
    except CannotOpen as fault:
        into.notes.append(str(fault))
    except OSError as error:
        why = error.strerror or type(error).__name__
        into.notes.append(f"{called(item)} couldn't be saved in the course: {why}.")
    except Exception as error:  # whatever somebody made to stop the others
        why = plain(f"{type(error).__name__}: {error}", 80)
        into.notes.append(f"{called(item)} was skipped, because it can't be handled ({why}).")


def _put(into: _Into, item: Path, work: Work) -> None:
    """Put one person's work into its place, or say why what is there stays."""
    place = into.course.folder("submitted", into.name, work.person)
    times = _times(into, item, work)
    before = read_handed(place, into.name, work.person) if place.exists() else None
    if before and same_work(before, work, into.name):
        _once_more(into, item, work, before, times)
        return
    if before and was_replaced(into.course, into.name, work):
        into.again += 1
        return
    if before and not work.sure and (why := _why_not(into, work, before, times)):
        into.notes.append(f"{called(item)}: {why}")
        return
    into.notes += work.notes
    if before:
        where = move_to_earlier(into.course, into.name, work.person)
        came = f" of {in_words(before.when)}" if before.when else ""
        into.notes.append(
            f"{called(item)} takes the place of the work{came} that {work.person} turned in before. "
            f"That is kept in {where}."
        )
    _write(into, work, place, times)
    _say_times(into, item, times)
    keep_typed_as(into.course.root, into.name, work.person, work.typed)
    into.times[work.person] = (times, item.name)
    into.taken.append(work.person)


def _times(into: _Into, item: Path, work: Work) -> Times:
    lines = [line.when for line in read_sheet(work.files.get(SHEET)).lines]
    last = _time(max(lines, default=""))
    times = times_of(work.packed, came_at(item), last, into.now, into.prefer)
    return times._replace(counts=into.when, which=TRAINER) if into.when else times


def _time(text: str) -> datetime | None:
    try:
        return read_when(text) if text else None
    except (ValueError, OverflowError):
        return None


def _say_times(into: _Into, item: Path, times: Times) -> None:
    if times.note and times.which != TRAINER:
        counts = f"It counts as turned in at {in_words(times.counts)}."
        into.notes.append(f"{called(item)}: {times.note} {counts}")


def _once_more(into: _Into, item: Path, work: Work, before: Handed, times: Times) -> None:
    """Work that is there already: only a time or a name that the trainer says can be new."""
    was = into.before.get(work.person, {}).get("which", times.which)
    other = into.chosen and times.which != was
    keep = before.when == times.counts or not (into.when or other)
    if work.sure:
        keep_typed_as(into.course.root, into.name, work.person, work.typed)
        into.notes += work.notes
    if keep:
        into.again += 1
        return
    place = into.course.folder("submitted", into.name, work.person)
    (place / TIMESTAMP).write_text(times.counts.strftime(FORM), encoding="ascii")
    into.times[work.person] = (times, item.name)
    into.taken.append(work.person)


def _why_not(into: _Into, work: Work, before: Handed, times: Times) -> str:
    """Why work does not take the place of what is there; empty where it does."""
    if work.named and not _was_named(into, work.person):
        return ""
    then = before.when if before.when and before.when <= into.now else None
    return why_not(work, before, then, times.counts)


def _was_named(into: _Into, person: str) -> bool:
    """Whether the work that is there came under a name that says whose it is, or by the exchange."""
    if person in into.times:
        source = into.times[person][1]
    else:
        source = into.before.get(person, {}).get("from", "")
    return not source or not source.lower().endswith(".zip") or names(source, into.name) == person


def _write(into: _Into, work: Work, place: Path, times: Times) -> None:
    half = place.with_name(f".{into.name}.part")
    shutil.rmtree(half, ignore_errors=True)
    half.mkdir(parents=True)
    for name, data in work.files.items():
        (half / name).write_bytes(data)
    (half / TIMESTAMP).write_text(times.counts.strftime(FORM), encoding="ascii")
    (half / SECRET).write_text(secrets.token_hex(64), encoding="ascii")
    half.rename(place)
