"""Answers from paper kept in the course, so that grading, grades, feedback and report count them.

They lie where other work does, as `on-paper.json` in the folder of each person. Paper knows no time, so
nothing of it is late. Work that came from a computer stays, and is told.
"""

import json
from collections.abc import Iterator, Sequence

from workbook.trainer.coming_in.earlier import move_to_earlier
from workbook.trainer.coming_in.handed_in import ON_PAPER, read_handed
from workbook.trainer.course import Course, people_in
from workbook.trainer.sets.set_file import Assigned

from .marks import RowMark

__all__ = ["keep_answers"]


def keep_answers(course: Course, assigned: Assigned, marks: Sequence[RowMark]) -> Iterator[str]:
    """Put the answers of every row that counts into the course; sentences about what was kept.

    Raises:
        OSError: a file cannot be written.
    """
    known, kept, same = people_in(course), 0, 0
    for mark in marks:
        person = mark.marked.person
        if not mark.marked.questions:
            continue
        if known and person not in known:
            yield f"Row {mark.row}: “{person}” isn't on the list of this class, so it stays out of the grades."
            continue
        place = course.folder("submitted", assigned.name, person)
        there = read_handed(place, assigned.name, person)
        data = _data(mark)
        if there.sheet or there.notebook:
            yield f"{person} has turned in work from a computer too. That counts; row {mark.row} doesn't."
        elif there.paper == data:
            same += 1
        else:
            if there.paper:
                where = move_to_earlier(course, assigned.name, person)
                yield f"{person} had other answers from paper before. They are kept in {where}."
            place.mkdir(parents=True, exist_ok=True)
            (place / ON_PAPER).write_bytes(data)
            kept += 1
    sheets = "1 sheet is" if kept == 1 else f"{kept:,} sheets are"
    yield f"{sheets} new in the course; {same:,} were there already."
    yield f"To grade them with the others, type: python3 -m workbook mark {assigned.name}"


def _data(mark: RowMark) -> bytes:
    answers = {str(number): text for number, text in sorted(mark.answers.items())}
    odd = {str(number): text for number, text in sorted(mark.odd.items())}
    held = {"answers": answers, "odd": odd, "whole": list(mark.odd_whole)}
    return json.dumps(held, ensure_ascii=False, indent=1).encode()
