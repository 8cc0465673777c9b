"""What the commands grades, attend and completion do, a sentence for each thing done."""

import argparse
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from solver import SolverError
from solver.sets.work_set import person_id
from solver.units.show import counted
from workbook.trainer.course import course_at
from workbook.trainer.people import counted_people, people_in
from workbook.ui.saving import whole_file

from .attendance import Meeting, hours_of, keep_meeting, meetings
from .completion import completion_html
from .files import lms_csv, passes, wide_csv
from .rows import Over, over_all

__all__ = ["attend", "completion", "grades"]

SHOWN = 60  # people printed one by one


def _over(options: argparse.Namespace) -> Over:
    names = [name.strip() for name in options.sets.split(",") if name.strip()]
    told = over_all(course_at(options.course), names)
    if not told.sets:
        raise SolverError("No set of this course is graded yet. Take work in and grade it first.")
    return told


def grades(options: argparse.Namespace) -> Iterator[str]:
    """Everybody over all sets: written to files, or printed."""
    told = _over(options)
    mark = options.pass_mark / 100
    for out, data in ((options.csv, wide_csv(told, mark)), (options.lms, lms_csv(told))):
        if out:
            with whole_file(Path(out)) as file:
                file.write(data)
            yield f"{out} has {counted_people(len(told.rows))} and {counted(len(told.sets), 'set')}."
    if not (options.csv or options.lms):
        for row in told.rows[:SHOWN]:
            missing = [each.name for each in told.sets if each.name not in row.sets]
            not_in = f"; not turned in: {', '.join(missing)}" if missing else ""
            passed = "passed" if passes(told, row, mark) else "under the pass mark"
            yield f"{row.person.id}: {100 * told.share(row):.0f}%, {passed}{not_in}"
        if len(told.rows) > SHOWN:
            yield f"And {len(told.rows) - SHOWN:,} more; write them all with --csv."
    if told.gone:
        yield f"Left out, as they aren't on the list: {', '.join(told.gone[:20])}. Their work is kept."


def attend(options: argparse.Namespace) -> Iterator[str]:
    """Keep a meeting of the class: the hours, the topic, and who was not there."""
    course = course_at(options.course)
    if not options.topic.strip() or not 0 < options.hours <= 24:
        raise SolverError('Type the topic and the hours: --topic "Pump power" --hours 2.')
    absent = tuple(person_id(one) for one in options.absent.split(",") if one.strip())
    known = people_in(course)
    for person in absent:
        if known and person not in known:
            raise SolverError(f"“{person}” isn't on the list of this class. Check the id.")
    topic = " ".join(options.topic.split())
    replaced = keep_meeting(course.root, Meeting(options.day, topic, options.hours, absent))
    were = "is changed" if replaced else "is kept"
    long = f"{options.hours:g} hour{'' if options.hours == 1 else 's'}"
    yield f"The meeting of {options.day} {were}: {topic}, {long}, {len(absent)} absent."
    if known:
        most = max(hours_of(meetings(course.root), known).values())
        yield f"Whoever was there every time now has {most:g} hour{'' if most == 1 else 's'}."


def completion(options: argparse.Namespace) -> Iterator[str]:
    """Write the records of completion of those who passed, or of those named."""
    told, course = _over(options), course_at(options.course)
    if not options.trainer.strip():
        raise SolverError('Type your name, which is printed on each record: --trainer "R. Vance".')
    wanted = {person_id(one) for one in options.people.split(",") if one.strip()}
    mark = options.pass_mark / 100
    rows = [
        row for row in told.rows
        if (row.person.id in wanted if wanted else passes(told, row, mark))
    ]  # fmt: skip
    if missing := wanted - {row.person.id for row in rows}:
        raise SolverError(f"Not on the list of this class: {', '.join(sorted(missing))}.")
    if not rows:
        raise SolverError(
            f"Nobody has {options.pass_mark:g}% of the points. Choose another --pass."
        )
    title = options.title.strip() or course.name
    page = completion_html(told, rows, title, options.trainer.strip(), date.today())
    with whole_file(Path(options.out)) as file:
        file.write(page.encode())
    yield f"{options.out} has {counted(len(rows), 'record')}. Open it in a browser and print it."
