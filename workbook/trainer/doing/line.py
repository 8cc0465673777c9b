"""One command of a trainer's: its words read as a terminal's are, done, and written to be typed.

The page and the terminal do the same thing by the same code, so they cannot come to differ.
"""

import argparse
from collections.abc import Iterator, Sequence

from solver import SolverError
from workbook.trainer import command, more_options
from workbook.trainer.on_paper import command as on_paper
from workbook.trainer.steps import STEPS

__all__ = ["do"]

OPTIONS = {
    "attend": more_options.attend_options,
    "backup": more_options.backup_options,
    "completion": more_options.completion_options,
    "course": command.course_options,
    "extend": more_options.extend_options,
    "grades": more_options.grades_options,
    "mark": command.mark_options,
    "override": more_options.override_options,
    "paper": on_paper.options,
    "set": command.set_options,
}


class _Parser(argparse.ArgumentParser):
    def error(self, message: str):
        raise SolverError(f"{message[:1].upper()}{message[1:].rstrip('.')}.")


def do(words: Sequence[str]) -> Iterator[str]:
    """Do what these words ask, as a terminal would; a sentence for each thing done.

    Raises:
        SolverError: it cannot be done; the sentence says what to change.
        OSError: a file cannot be read or written.
    """
    parser = _Parser(prog=words[0], add_help=False)
    OPTIONS[words[0]](parser)
    options = parser.parse_args(list(words[1:]))
    options.command = words[0]
    if words[0] == "paper":
        yield from on_paper.steps_of(options)
    else:
        yield from STEPS[words[0]](options)
