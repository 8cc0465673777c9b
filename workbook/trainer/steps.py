"""What the commands course, set and mark do, a sentence for each thing done."""

import argparse
from collections.abc import Iterable, Iterator
from datetime import datetime
from pathlib import Path
from secrets import randbelow

from solver import SolverError
from solver.sets.credit import Credit
from solver.sets.paper import read_paper
from solver.sets.work_set import MOST, plan_of, set_of
from solver.topics.catalogue import CATALOGUE
from solver.units.show import counted
from workbook.ui.kept_mixtures import mixture_asked

from . import nbgrader_commands
from .backup import backup, packed_release
from .coming_in.exchange_clock import keep_mailed, take_exchange_times
from .coming_in.taking_in import take_in
from .coming_in.times import RECEIVED
from .course import Course, course_at, lacks_taking_in, make_course, people_in
from .giving import bring_up_to_date, extend, moved_lines, override
from .learner.class_list import keep_class_list
from .marking.bulk import Summary, mark_all, set_in
from .marking.feedback_pages import pack_feedback, sending_zip, write_feedback
from .marking.sharding import shared
from .over_all.steps import attend, completion, grades
from .people import counted_people
from .sets import on_site
from .sets.guessing import guessing
from .sets.set_file import SET_FILE, Assigned, SetFault, parse_set_file, read_set_file
from .sets.set_keys import FAIR, FAIR_CREDIT
from .setting.keep import put

__all__ = ["STEPS"]

DRAWS = 100_000
MOST_SAID = 20  # people told one by one


def _course(options: argparse.Namespace) -> Iterator[str]:
    course = make_course(options.folder, name=options.name, exchange=options.exchange)
    yield f"The course is in {course.root}."
    if options.people:
        many, gone = nbgrader_commands.enrol(course, Path(options.people).expanduser())
        yield f"{many:,} {'person is' if many == 1 else 'people are'} on its list."
        if gone:
            named = ", ".join(gone[:MOST_SAID]) + ", …" * (len(gone) > MOST_SAID)
            yield f"Not on it any more: {named}. They leave the grades, and their work stays kept."
    if missing := lacks_taking_in(course):
        yield missing


def _set(options: argparse.Namespace) -> Iterator[str]:
    course, name = course_at(options.course), options.set
    chosen = _chosen(course, options)
    for number, (kind, _) in enumerate(plan_of(chosen.work), 1):
        if kind.why:
            raise SolverError(f"Question {number}: {kind.why} Make a new set, under another name.")
    yield from put(course.root, chosen, datetime.now(), replace=options.replace)
    keep_class_list(
        course.folder("source", name), chosen.work.code, people_in(course, chosen.group)
    )
    nbgrader_commands.validate(course, name)
    yield "Right answers get full points."
    yield guessing(chosen)
    folder = nbgrader_commands.generate_assignment(course, name)
    yield f"Give people the folder {folder}."
    yield f"As one file to send, it is {packed_release(course, name)}."
    if options.release:
        nbgrader_commands.release(course, name)
        yield f"It is given out through the exchange in {course.exchange}."
    if options.site:
        listed = people_in(course, chosen.group)
        yield from on_site.sentences(on_site.linked(chosen, options.site, listed))


def _chosen(course: Course, options: argparse.Namespace) -> Assigned:
    """The set that the options say, or else the one that stands in the course."""
    name = options.set
    if options.file:
        return _from_file(course, Path(options.file).expanduser(), name)
    if options.exam:
        return _as_exam(name, options.exam)
    if options.chapters or options.families or options.shares:
        work = set_of(
            chapters=_names(options.chapters),
            families=_names(options.families),
            shares=mixture_asked(options.shares) if options.shares else {},
            count=options.count,
            level=options.level,
            units=options.units,
            seed=randbelow(DRAWS),
        )
        credit = Credit(each_try=FAIR_CREDIT["each_try"], wrong_choice=FAIR_CREDIT["wrong_choice"])
        fair = Assigned(name, name, work, tries=FAIR["tries"], credit=credit)
        return fair._replace(choice_tries=FAIR["choice_tries"])
    folder = course.folder("source", name)
    path = folder / SET_FILE
    if not path.exists():
        raise SolverError(
            f"There is no set “{name}” yet. Add --chapters horsepower,head to make one, or --file."
        )
    made = (folder / f"{name}.ipynb").exists()
    return read_set_file(path, None if made else CATALOGUE)


def _as_exam(name: str, code: str) -> Assigned:
    """A set like a practice exam: its chapters, shares, level, questions and minutes, one try at each.

    Each person has numbers of their own, so nobody can copy.
    """
    paper = read_paper(code)
    work = set_of(
        chapters=paper.chapters,
        level=paper.level,
        units=paper.units,
        count=min(paper.count, MOST),
        seed=paper.seed,
        catalogue=CATALOGUE,
        faults=paper.faults,
        shares=paper.by_share,
    )
    title = f"Practice exam, {paper.minutes} minutes"
    credit = Credit(mistake=0.0, wrong_choice=0.0)
    return Assigned(
        name, title, work, tries=1, counts="first", credit=credit, minutes=paper.minutes
    )


def _from_file(course: Course, path: Path, name: str) -> Assigned:
    """The set in a trainer's own file, of the catalogue that the set of this name has, if any."""
    try:
        there = read_set_file(course.folder("source", name) / SET_FILE).work.catalogue
    except SolverError:
        there = CATALOGUE
    try:
        return parse_set_file(path.read_text(encoding="utf-8-sig"), name, there)
    except (OSError, UnicodeDecodeError):
        raise SetFault(f"{path} can't be read. Check its name, and save it as UTF-8.") from None


def _names(text: str) -> list[str]:
    return [name.strip() for name in text.split(",") if name.strip()]


def _mark(options: argparse.Namespace) -> Iterator[str]:
    course, name = course_at(options.course), options.set
    if options.collect:
        keep_mailed(course, name)
        yield from nbgrader_commands.collect(course, name)
    if course.exchange:
        yield from take_exchange_times(course, name, options.prefer or RECEIVED)
    if options.hand_in:
        yield from _taken_in(course, options)
    if options.nbgrader:
        yield from nbgrader_commands.autograde(course, name, options.again)
        yield f"nbgrader has graded “{name}”."
        yield from bring_up_to_date(course, set_in(course, name))
    else:
        with shared(options.workers, options.scheduler) as mapper:
            found = mark_all(course.root, name, mapper=mapper)
        yield from _summed_up(name, found)
    yield from _given_out(course, options)


def _taken_in(course: Course, options: argparse.Namespace) -> Iterator[str]:
    taken = take_in(
        course,
        options.set,
        Path(options.hand_in),
        options.when,
        prefer=options.prefer or "",
        said_as=dict(options.said_as),
    )
    if taken.people or not taken.again:
        yield f"Work from {counted_people(len(taken.people))} was taken in."
    if taken.again:
        were = "file was" if taken.again == 1 else "files were"
        yield f"{taken.again:,} {were} taken in before, and nothing in them is new."
    yield from taken.notes


def _summed_up(name: str, found: Summary) -> Iterator[str]:
    yield f"“{name}” is graded for {counted_people(found.people)}; {found.late:,} of them were late."
    yield from found.notes
    yield from moved_lines(found.moved)
    new = set(found.new)
    look = [(person, reason) for person, reason in found.to_look_at if person in new]
    if look:
        yield f"You need to look at the work of {counted_people(len(look))}:"
    yield from _some(f"  {person}: {reason}" for person, reason in look)
    if (before := len(found.to_look_at) - len(look)) > 0:
        yield f"{counted_people(before)} you were told about before still need a look, or had one."


def _some(lines: Iterable[str]) -> Iterator[str]:
    """The first of them, and how many more there are."""
    lines = list(lines)
    yield from lines[:MOST_SAID]
    if len(lines) > MOST_SAID:
        yield f"  And {len(lines) - MOST_SAID:,} more; the class report names them all."


def _given_out(course: Course, options: argparse.Namespace) -> Iterator[str]:
    name = options.set
    if options.feedback:
        if options.nbgrader:
            nbgrader_commands.generate_feedback(course, name)
            made = pack_feedback(course, name)
        else:
            made = write_feedback(course, name)
        are = "is" if made == 1 else "are"
        yield f"{counted(made, 'feedback page')} {are} in {course.root / 'feedback'}."
        yield f"To send them out, unpack {sending_zip(course, name)}: each has its person's name."
    if options.release:
        nbgrader_commands.release_feedback(course, name)
        yield "The feedback is given out through the exchange."
    if options.grades:
        nbgrader_commands.export_grades(course, Path(options.grades), [name])
        yield f"The grades are in {options.grades}."


STEPS = {
    "attend": attend,
    "backup": backup,
    "completion": completion,
    "course": _course,
    "extend": extend,
    "grades": grades,
    "mark": _mark,
    "override": override,
    "set": _set,
}
