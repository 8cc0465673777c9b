"""nbgrader's exchange: when work really came there, by its own clock, and what must not be lost of others.

`timestamp.txt` is written on the learner's side, and can say anything. The exchange's computer keeps
when a folder was last changed, which nobody can set back: that is when it came.
"""

import os
import shutil
from datetime import UTC, datetime
from pathlib import Path

from workbook.trainer.course import Course
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.marking.odd import plain

from .earlier import earlier_work, next_earlier
from .handed_in import SECRET, TIMESTAMP, read_handed
from .times import FORM, RECEIVED, Times, in_words, keep_times, kept_times, times_of

__all__ = ["inbound", "keep_mailed", "take_exchange_times"]

EXCHANGE = "the exchange"
MOST = 1_000  # entries of a folder that are looked at


def inbound(course: Course, name: str) -> dict[str, list[Path]]:
    """The folders of each person in the exchange, for this set."""
    found: dict[str, list[Path]] = {}
    folder = Path(course.exchange, course.name, "inbound")
    try:
        names = sorted(os.listdir(folder))
    except OSError:
        return {}
    for each in names:
        person, of, *rest = (*each.split("+"), "", "")
        if of == name and any(rest):
            found.setdefault(person, []).append(folder / each)
    return found


def keep_mailed(course: Course, name: str) -> None:
    """Copy aside work that did not come by the exchange, where work of the same person did too.

    nbgrader's collect puts newer work in its place, and keeps nothing.
    """
    for person, folders in inbound(course, name).items():
        place = course.folder("submitted", name, person)
        if not place.is_dir() or any(_same_secret(one, place) for one in folders):
            continue
        here = read_handed(place, name, person)._replace(when=None)
        if here not in [one._replace(when=None) for one in earlier_work(course, name, person)]:
            shutil.copytree(place, next_earlier(course, name, person), symlinks=True)


def take_exchange_times(course: Course, name: str, prefer: str = RECEIVED) -> list[str]:
    """Let the exchange's own clock count for what came by it; sentences about times that cannot be."""
    before, found, said = kept_times(course, name), {}, []
    for person, folders in inbound(course, name).items():
        place = course.folder("submitted", name, person)
        came = next((one for one in folders if place.is_dir() and _same_secret(one, place)), None)
        if came is None:
            continue
        times = _times(name, person, came, prefer)
        now = times.counts.strftime(FORM)
        kept = before.get(person, {})
        if (kept.get("counts"), kept.get("from")) == (now, EXCHANGE):
            continue
        (place / TIMESTAMP).unlink(missing_ok=True)  # nbgrader may have made it unwritable
        (place / TIMESTAMP).write_text(now, encoding="ascii")
        found[person] = (times, EXCHANGE)
        if times.note:
            said.append(
                f"{plain(person, 40)}: {times.note} It counts as turned in at {in_words(times.counts)}."
            )
    keep_times(course, name, found)
    return said


def _times(name: str, person: str, came: Path, prefer: str) -> Times:
    said = read_handed(came, name, person).when
    now = datetime.now(UTC).replace(tzinfo=None)
    return times_of(said, _last_change(came), None, now, prefer)


def _last_change(folder: Path) -> datetime:
    """When the folder, or a file that counts in it, was last changed, by the clock of its computer."""
    times = [folder.stat().st_ctime]
    for name in (SHEET, TIMESTAMP, SECRET, *sorted(os.listdir(folder))[:MOST]):
        try:
            times.append((folder / name).lstat().st_ctime)
        except OSError:
            continue
    return datetime.fromtimestamp(max(times), UTC).replace(tzinfo=None)


def _same_secret(came: Path, place: Path) -> bool:
    """Whether work in the course is what lies in this folder of the exchange."""
    try:
        held = (came / SECRET).read_bytes()[:1000]
        return bool(held) and held == (place / SECRET).read_bytes()[:1000]
    except OSError:
        return False
