"""What can be typed after extend, override, grades, attend, completion and backup.

Only the standard library is imported at the top, for options are read before all is installed.
"""

import argparse
from datetime import date

from .command import course_option, set_and_course, when

__all__ = [
    "attend_options", "backup_options", "completion_options", "extend_options", "grades_options",
    "override_options",
]  # fmt: skip


def extend_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `extend`."""
    set_and_course(parser)
    parser.add_argument("person", nargs="?", default="", help="the id of the person")
    parser.add_argument("--group", default="", help="or everybody of this group of people.csv")
    parser.add_argument("--due", type=when, help="until when, such as 2026-12-05T18:00")
    parser.add_argument("--note", metavar="TEXT", default="", help="why; the person reads it too")
    parser.add_argument("--remove", action="store_true", help="take it back")


def override_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `override`."""
    set_and_course(parser)
    parser.add_argument("person", help="the id of the person")
    parser.add_argument(
        "--question", type=int, required=True, metavar="N", help="the number of the question"
    )
    parser.add_argument("--points", type=float, help="the points that count")
    parser.add_argument("--reason", metavar="TEXT", default="", help="why; the person reads it too")
    parser.add_argument("--remove", action="store_true", help="take it back")


def grades_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `grades`."""
    _over_all(parser)
    parser.add_argument(
        "--csv", metavar="OUT", help="write one row a person to this file, with all there is"
    )
    parser.add_argument(
        "--lms",
        metavar="OUT",
        help="write this file for a learning-management system: id, email, a column a set",
    )


def attend_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `attend`."""
    parser.add_argument("day", type=_day, help="the day of the meeting, such as 2026-12-01")
    course_option(parser)
    parser.add_argument("--topic", default="", help="what it was about")
    parser.add_argument("--hours", type=float, default=0.0, help="how many hours it took")
    parser.add_argument("--absent", metavar="A,B", default="", help="the ids of who wasn't there")


def completion_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `completion`."""
    _over_all(parser)
    parser.add_argument("--trainer", default="", help="your name, as it is printed")
    parser.add_argument("--title", default="", help="what the class is called; the course's name")
    parser.add_argument(
        "--people", metavar="A,B", default="", help="the ids to print; all who passed if left out"
    )
    parser.add_argument("--out", default="completion.html", help="the file to write")


def backup_options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `backup`."""
    parser.add_argument("course", nargs="?", default=".", help="the folder of the course")
    parser.add_argument(
        "--out", default="", help="the file to write; next to the folder if left out"
    )


def _over_all(parser: argparse.ArgumentParser) -> None:
    course_option(parser)
    parser.add_argument(
        "--sets", metavar="A,B", default="", help="only these sets; all that are graded if left out"
    )
    parser.add_argument(
        "--pass",
        dest="pass_mark",
        type=float,
        default=70,
        metavar="PERCENT",
        help="the percent of the points to pass; 70 if left out",
    )


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"{text} isn't a day; type one such as 2026-12-01"
        ) from None
