"""The command line: `python -m solver families | draw | show | grade | exam | station | fault | work`.

Exit status: 0 answered; 2 for bad usage or input that cannot be read, with one line on standard
error that says what to type instead.
"""

import argparse
import json
import sys
from collections.abc import Sequence
from io import TextIOWrapper
from pathlib import Path
from typing import NoReturn

from . import FAMILIES, Case, SolverError, case_from_code, draw, family_named, grade
from .fault.case import fault_case
from .fault.way import DO, NAME, REVIEW, way_of
from .own.work import work
from .render.fault import fault_json, fault_text
from .render.paper import paper_json, paper_text
from .render.station import station_json, station_text
from .render.text import (
    case_json,
    case_text,
    family_json,
    family_text,
    verdict_json,
    work_json,
    work_text,
)
from .sets.mixtures import mixture_of, read_mixtures
from .sets.paper import CHAPTERS, SEEDS, Paper, checked, read_paper
from .station.drawn import seeded

__all__ = ["main"]

EXAMPLES = {
    "draw": "python -m solver draw water_power --seed 7",
    "show": "python -m solver show WP-1U2-7-DHA",
    "grade": 'python -m solver grade WP-1U2-7-DHA "31.6 hp"',
    "exam": 'python -m solver exam --shares "head 30, wet well 20" --count 50 --seed 7',
    "station": "python -m solver station --seed 7 --fault worn_rings",
    "fault": "python -m solver fault --level 1 --seed 7",
    "work": 'python -m solver work --given flow="450 gpm" --given head="62 ft" --find water_power',
}


class Parser(argparse.ArgumentParser):
    """An argument parser whose errors are one line that says what to type."""

    def error(self, message: str) -> NoReturn:
        command = self.prog.split()[-1]
        example = EXAMPLES.get(command, EXAMPLES["draw"])
        self.exit(2, f"{message[:1].upper()}{message[1:]}. For example, type: {example}\n")


def parser() -> Parser:
    """The commands and their options."""
    top = Parser(
        prog="python -m solver", description="Pump and motor problems with full solutions."
    )
    commands = top.add_subparsers(dest="command", required=True, metavar="command")

    def command(name: str, tells: str) -> argparse.ArgumentParser:
        one = commands.add_parser(name, help=tells, description=tells)
        one.add_argument("--json", action="store_true", help="full precision, for programs")
        return one

    command("families", "list the kinds of problem")
    one = command("draw", "draw a problem and show its solution")
    one.add_argument("family", help="the kind of problem, such as brake_power")
    one.add_argument(
        "--seed",
        type=int,
        required=True,
        help="any whole number, 0 or more; the same one gives the same problem",
    )
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument("--level", type=int, default=1)
    command("show", "show the problem with this code").add_argument("code")
    one = command("grade", "grade an answer to the problem with this code")
    one.add_argument("code")
    one.add_argument("answer")
    _exam_command(
        command("exam", "what is in an exam: one by its code, or a new one by its shares")
    )
    one = command("station", "show one pump station: nameplates, readings, curves")
    one.add_argument(
        "--seed",
        type=int,
        required=True,
        help="any whole number; the same one gives the same station",
    )
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument("--fault", default="", help="a fault, such as worn_rings")
    _fault_command(command("fault", "find the fault of a station: a case by its code"))
    one = command("work", "work out your own numbers")
    one.add_argument(
        "--given",
        action="append",
        default=[],
        metavar='NAME="VALUE UNIT"',
        help="something you know; repeat for each one",
    )
    one.add_argument("--find", required=True, metavar="NAME", help="what to calculate")
    one.add_argument("--units", choices=("us", "si"), default="us")
    return top


def _exam_command(one: argparse.ArgumentParser) -> None:
    one.add_argument("code", nargs="?", default="", help="an exam's code; else a new one is made")
    one.add_argument(
        "--shares",
        default="",
        metavar="TEXT",
        help='a share for each chapter, such as "head 30, wet well 20"; all alike if left out',
    )
    one.add_argument(
        "--mixtures",
        metavar="FILE",
        help='a file of mixtures, a line each: "Grade 2: head 30"; then --shares may name one of them',
    )
    one.add_argument("--count", type=int, default=20, help="how many questions")
    one.add_argument("--minutes", type=int, default=60)
    one.add_argument("--level", type=int, default=0, choices=range(4), help="0 mixes all levels")
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument("--typed", action="store_true", help="typed answers in place of choices")
    one.add_argument("--seed", type=int, default=0, help="any whole number, 0 to 99999")


def _fault_command(one: argparse.ArgumentParser) -> None:
    one.add_argument("code", nargs="?", default="", help="a case's code; else --level and --seed")
    one.add_argument("--level", type=int, default=1, help="1 to 3")
    one.add_argument("--seed", type=int, default=0, help="any whole number, 0 or more")
    one.add_argument("--units", choices=("us", "si"), default="us")
    one.add_argument(
        "--take",
        action="append",
        default=[],
        metavar="READING",
        help="a reading to take, or a step before it such as tell or lock; repeat in order",
    )
    one.add_argument("--name", action="append", default=[], metavar="FAULT", help="what it is")
    one.add_argument("--do", default="", help="what to do next: run, watch, call or pull")
    one.add_argument("--review", action="store_true", help="end the case and show the review")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit status."""
    options = parser().parse_args(_negatives_kept(arguments))
    try:
        return _COMMANDS[options.command](options)
    except SolverError as refusal:
        print(" ".join(str(refusal).split()), file=sys.stderr)
        return 2


def _negatives_kept(arguments: Sequence[str] | None) -> list[str]:
    """An answer such as -5 or -5 hp is not an option: it is passed on as it stands."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    if given[:1] == ["grade"]:
        flags = [a for a in given[1:] if a in ("--json", "-h", "--help")]
        return ["grade", *flags, "--", *(a for a in given[1:] if a not in (*flags, "--"))]
    return given


def _print(options: argparse.Namespace, data: object, text: str) -> None:
    print(json.dumps(data, ensure_ascii=False, indent=2) if options.json else text)


def _families(options: argparse.Namespace) -> int:
    _print(options, [family_json(f) for f in FAMILIES], "\n".join(map(family_text, FAMILIES)))
    return 0


def _show_case(options: argparse.Namespace, case: Case) -> int:
    _print(options, case_json(case), case_text(case))
    return 0


def _draw(options: argparse.Namespace) -> int:
    family = family_named(options.family)
    return _show_case(options, draw(family, options.seed, options.units, options.level))


def _show(options: argparse.Namespace) -> int:
    return _show_case(options, case_from_code(options.code))


def _grade(options: argparse.Namespace) -> int:
    verdict = grade(case_from_code(options.code), options.answer)
    if verdict.counts or options.json:
        _print(options, verdict_json(verdict), f"{verdict.status}: {verdict.says}")
    if not verdict.counts:
        print(verdict.says, file=sys.stderr)
        return 2
    return 0


def _exam(options: argparse.Namespace) -> int:
    paper = read_paper(options.code) if options.code else _new_paper(options)
    _print(options, paper_json(paper), paper_text(paper))
    return 0


def _new_paper(options: argparse.Namespace) -> Paper:
    kept = _mixtures_in(options.mixtures) if options.mixtures else {}
    shares = mixture_of(options.shares, kept) if options.shares else {}
    if not 0 <= options.seed < SEEDS:
        raise SolverError(
            f"A seed is a whole number from 0 to {SEEDS - 1}; you typed {options.seed}."
        )
    return checked(
        Paper(
            tuple(shares) or CHAPTERS,
            options.level,
            options.units,
            options.count,
            options.minutes,
            not options.typed,
            options.seed,
            shares=tuple(shares.values()),
        )
    )


def _mixtures_in(name: str) -> dict[str, dict[str, int]]:
    try:
        return read_mixtures(Path(name).read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError) as fault:
        raise SolverError(f"The file {name} can't be read: {fault}.") from None
    except SolverError as fault:
        raise SolverError(f"{name}: {fault}") from None


def _station(options: argparse.Namespace) -> int:
    station = seeded(options.seed, options.units, options.fault)
    _print(options, station_json(station), station_text(station))
    return 0


def _fault(options: argparse.Namespace) -> int:
    code = options.code or str(fault_case(options.level, options.units, options.seed).code)
    words = [*options.take, *(NAME + name for name in options.name)]
    words += [DO + options.do] * bool(options.do)
    way = way_of(code, words)
    if options.review and not way.ended:
        way = way.then(REVIEW)
    _print(options, fault_json(way), fault_text(way))
    return 0


def _work(options: argparse.Namespace) -> int:
    given = {}
    for pair in options.given:
        name, mark, value = pair.partition("=")
        if not mark:
            raise SolverError(
                f"After --given comes NAME=VALUE; you typed “{pair[:40]}”. "
                'For example, type --given flow="450 gpm".'
            )
        if name.strip() in given:
            raise SolverError(f"“{name.strip()}” is given twice. Give it once.")
        given[name.strip()] = value
    found = work(given, options.find, options.units)
    _print(options, work_json(found), work_text(found))
    return 0


_COMMANDS = {
    "families": _families,
    "draw": _draw,
    "show": _show,
    "grade": _grade,
    "exam": _exam,
    "station": _station,
    "fault": _fault,
    "work": _work,
}

if __name__ == "__main__":
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(encoding="utf-8")  # × and ≥ are in no code page of Windows' pipes
    sys.exit(main())
