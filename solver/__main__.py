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

from . import FAMILIES, Case, SolverError, case_from_code, draw, family_named, grade
from .fault.case import fault_case
from .fault.way import DO, NAME, REVIEW, way_of
from .options import parser
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
