"""python3 -m workbook paper: a set printed as sheets with a key, and marked as it is typed back.

Only the standard library is imported at the top, for options are read before all is installed.
"""

import argparse
import re
import sys
from collections.abc import Iterator
from pathlib import Path

from workbook.trainer.command import course_option, say_in_utf8

__all__ = ["options", "run", "steps_of"]

MOST_SAID = 20  # sentences about rows that are printed; all of them stand in the file
NUMBERS = re.compile(r"([0-9]{1,5})(?:-([0-9]{1,5}))?")


def options(parser: argparse.ArgumentParser) -> None:
    """What can be typed after `paper`."""
    parser.add_argument("set", help="a set's file, its folder, or its name in the course")
    course_option(parser)
    parser.add_argument(
        "--sheets", type=_numbers, metavar="N", help="how many sheets, or a range such as 31-60"
    )
    parser.add_argument("--people", metavar="CSV", help="make a sheet for each person on this list")
    parser.add_argument("--pdf", metavar="OUT", help="make a PDF of the sheets and the key")
    parser.add_argument(
        "--solved", metavar="3,7", default="", help="add full solutions for these sheets"
    )
    parser.add_argument(
        "--two-sided",
        action="store_true",
        help="for printing on both sides: start each sheet on new paper",
    )
    parser.add_argument("--mark", metavar="CSV", help="grade the answers typed into this file")
    parser.add_argument(
        "--keep",
        action="store_true",
        help="keep the answers in the course, to be graded with the rest",
    )
    parser.add_argument(
        "--csv", metavar="OUT", help="write the grades, question by question, to this file"
    )
    parser.add_argument("--report", action="store_true", help="print a report of how the class did")


def _numbers(text: str) -> tuple[int, int]:
    """The first and the last number that is meant."""
    if match := NUMBERS.fullmatch(text):
        low, high = map(int, match.groups() if match[2] else ("1", match[1]))
        if 1 <= low <= high:
            return low, high
    raise argparse.ArgumentTypeError(
        f"{text} isn't a number of sheets; type one such as 30 or 31-60"
    )


def run(options: argparse.Namespace) -> int:
    """Do what the options of the command ask; return the exit status."""
    from solver import SolverError

    say_in_utf8()
    try:
        for sentence in steps_of(options):
            print(sentence, flush=True)
    except SolverError as refusal:
        print(refusal, file=sys.stderr)
        return 2
    except OSError as error:
        from workbook.ui.saving import PART

        name = str(error.filename).removesuffix(PART)
        print(f"{name}: {error.strerror}. Check the name and the folder.", file=sys.stderr)
        return 2
    return 0


def steps_of(options: argparse.Namespace) -> Iterator[str]:
    """Do what the options ask, a sentence for each thing done; errors are those of `steps.py`."""
    from solver import SolverError
    from workbook.trainer.course import read_people
    from workbook.trainer.sets.set_file import read_new_file, read_set_file

    from .steps import mark_typed_file, print_sheets

    if bool(options.pdf) == bool(options.mark):
        raise SolverError("Type --pdf and a name to print, or --mark and a file to grade it.")
    assigned = (read_new_file if options.pdf else read_set_file)(_file(options))
    people = read_people(Path(options.people)) if options.people else []
    if options.pdf:
        return print_sheets(assigned, people, options)
    return mark_typed_file(assigned, people, options)


def _file(options: argparse.Namespace) -> Path:
    """The file of the set: as it is named, in the folder named, or in the course."""
    from workbook.trainer.sets.set_file import SET_FILE

    named = Path(options.set)
    if named.is_file():
        return named
    in_course = Path(options.course) / "source" / options.set / SET_FILE
    return (
        in_course if in_course.is_file() and not (named / SET_FILE).is_file() else named / SET_FILE
    )
