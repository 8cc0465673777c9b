"""Where a class stands: who is on the list, when a set is due, who has turned it in and who has not."""

from datetime import UTC

from workbook.trainer.coming_in.times import in_words
from workbook.trainer.course import Course
from workbook.trainer.marking.bulk import set_in
from workbook.trainer.people import counted_people, listed
from workbook.trainer.sets.set_file import SetFault

from .boxes import who_is

__all__ = ["standing"]

NOT_YET = 12  # people named
NO_LIST = "This class has no list of people yet. Take it in first."


def standing(course: Course, name: str) -> list[str]:
    """Sentences on where the class stands with the set `name`; "" is no set."""
    people = listed(course)
    said = [_are_on_list(len(people))] if people else [NO_LIST]
    if not name:
        return said
    try:
        assigned = set_in(course, name)
    except SetFault as fault:
        return [*said, str(fault)]
    if not (course.folder("release", name)).is_dir():
        return [*said, f"“{name}” hasn't been made for people yet: choose Make what people get."]
    if assigned.due:
        said.append(f"“{name}” is due {in_words(assigned.due.astimezone(UTC))}.")
    there = set(course.handed_in(name))
    wanted = [one for one in people if not assigned.group or one.group == assigned.group]
    said.append(f"{_have_turned_in(len(there))} turned it in.")
    missing = [who_is(one) for one in wanted if one.id not in there]
    if missing:
        more = f" and {len(missing) - NOT_YET:,} more" if len(missing) > NOT_YET else ""
        said.append(f"Not yet: {', '.join(missing[:NOT_YET])}{more}.")
    elif people:
        said.append("Nobody is missing.")
    return said


def _are_on_list(many: int) -> str:
    return f"{counted_people(many)} {'is' if many == 1 else 'are'} on the list."


def _have_turned_in(many: int) -> str:
    return f"{counted_people(many)} {'has' if many == 1 else 'have'}"
