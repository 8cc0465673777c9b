"""What the files of a kept version come to, as plain data, by the workbook as it is now.

A problem is named by what its code holds, for the form of a code may change: "BP 2 us 1 4821".
"""

import json
import re
from collections.abc import Callable
from dataclasses import astuple
from pathlib import Path

from solver import FAMILIES, Case
from solver.engine.code import read_code
from solver.fault.case import REVISION, TAG, FaultCase
from solver.sets.paper import read_paper
from solver.sets.paper_questions import cases_of, faults_of
from solver.sets.work_set import cases_for, faults_for, read_set
from solver.topics.catalogue import Refused
from tests.solver.sets import PLANT
from workbook.exam.outcome import Outcome
from workbook.exam.sitting import Sitting
from workbook.group.results import facts as group_facts
from workbook.group.results import read_result
from workbook.group.set_text import questions_of
from workbook.group.set_text import read_set as read_group_set
from workbook.log import Log
from workbook.record.fleet import Fleet
from workbook.study import Study
from workbook.trainer.course import read_people
from workbook.trainer.marking.marked import Marked, mark
from workbook.trainer.on_paper.marks import marks_of
from workbook.trainer.on_paper.typed import TypedFile
from workbook.trainer.sets.set_file import read_set_file

__all__ = ["PARTS", "REFUSED", "changed", "named", "of_kept", "still"]

REFUSED = "refused"
SAID_THEN = {"first try": "at once"}  # words for the same state, which no file holds
_BY_TAG = {family.tag: family for family in FAMILIES}


def named(code: str) -> str:
    """A problem by what its code holds."""
    return " ".join(map(str, read_code(code)[:5]))


def changed(problem: str) -> bool:
    """Whether a problem, as it is named here, is of a kind that has changed since."""
    tag, _, _, revision, _ = problem.split()
    if tag == TAG:
        return int(revision) != REVISION
    return tag not in _BY_TAG or _BY_TAG[tag].revision != int(revision)


def still(
    expected: object, changed: Callable[[str], bool] = changed, one_stream: bool = False
) -> object:
    """What is still to be expected: questions of kinds that changed are refused, one by one.

    The points of all together are left out where one is. The exams of 0.1.0 drew all from `one_stream`
    (first_catalogue.py).
    """
    if isinstance(expected, list):
        return [still(each, changed) for each in expected]
    if not isinstance(expected, dict):
        return expected
    found = {
        name: still(each, changed, name.startswith("EXAM-")) for name, each in expected.items()
    }
    if rows := found.get("questions"):
        found["questions"] = _refused(rows, changed, one_stream)
        if any(row[1:] == [REFUSED] for row in found["questions"]):
            found.pop("points", None)
    return found


def _refused(rows: list, changed: Callable[[str], bool], one_stream: bool) -> list:
    """The rows, with those that are refused as such.

    Which seed a refused question had, nobody can tell where one was passed over; and from the second
    of a kind and level that changed on, nobody can tell what one stream gave.
    """
    found, lost, sure = [], set(), True
    for row in rows:
        kind = row[0].split()[:2]
        if changed(row[0]):
            sure = sure and not (one_stream and tuple(kind) in lost)
            lost.add(tuple(kind))
        found.append(row if sure and not changed(row[0]) else [kind, REFUSED])
    return found


def _log(where: Path) -> dict:
    """Each line, and how each kind of problem stands."""
    log = Log(where / "attempts.jsonl")
    log.read()
    study = Study(log.attempts)
    return {
        "lines": [[named(a.code), a.typed, a.status, a.tries, a.of] for a in log.attempts],
        "strange": len(log.strange),
        "skills": {
            name: [len(skill.firsts), skill.unaided, skill.problems]
            for name, skill in study.skills.items()
        },
    }


def _exams(where: Path) -> dict:
    """Each sitting: what it is made of, and what came of each question."""
    return {path.name: _exam(Sitting(path)) for path in sorted((where / "exams").glob("*.jsonl"))}


def _exam(sitting: Sitting) -> dict:
    outcome = Outcome(sitting)
    return {
        "paper": list(astuple(sitting.paper)[:7]),
        "ended": sitting.ended,
        "used": sitting.elapsed,
        "flagged": sorted(sitting.flagged),
        "questions": [
            _row(one.question.case, one.answer.typed if one.answer else "", one.right)
            for one in outcome.marks
        ],
        "points": [outcome.whole.in_time, outcome.whole.of],
    }


def _row(case: Case | Refused | FaultCase, *came_to: object) -> list:
    return [named(str(case.code)), *([REFUSED] if isinstance(case, Refused) else came_to)]


def _set(where: Path) -> dict:
    """The marks of everybody who handed in."""
    assigned = read_set_file(where / "source" / "week-3" / "set.toml")
    found = {}
    for folder in sorted((where / "submitted").glob("*/week-3")):
        sheet, page = folder / "answer-sheet.jsonl", folder / "week-3.ipynb"
        data = [each.read_bytes() if each.exists() else None for each in (sheet, page)]
        found[folder.parent.name] = _marked(mark(assigned, folder.parent.name, *data))
    return {"code": assigned.work.code, "people": found}


def _marked(marked: Marked) -> dict:
    return {
        "questions": [
            _row(each.case, each.typed, each.status, each.points) for each in marked.questions
        ],
        "points": [marked.points, marked.needs_person],
    }


def _group(where: Path) -> dict:
    """How each member stands at each problem."""
    problems = read_group_set((where / "group.txt").read_text("utf-8"))
    results = [read_result(p.read_bytes(), problems) for p in sorted(where.glob("group-*.jsonl"))]
    questions = questions_of(problems)
    found = group_facts(questions, results)
    cells = {
        one.code: [[SAID_THEN.get(cell.state, cell.state), cell.tries] for cell in row]
        for one, row in zip(found.questions, found.cells, strict=True)
    }
    return {
        "key": problems.key,
        "members": [member.name for member in found.members],
        "questions": [[named(one.code), *cells.get(one.code, [REFUSED])] for one in questions],
    }


def _record(where: Path) -> dict:
    """Every day of every pump of the record."""
    fleet = Fleet((where / "record.csv").read_bytes())
    return {
        f"{name} {when}": dict(fleet.day(key, row).record.values)
        for name, key in fleet.pumps
        for when, row in fleet.days(key)
    }


def _paper(where: Path) -> dict:
    """The marks of each row that was typed back from paper."""
    assigned = read_set_file(where / "source" / "week-3" / "set.toml")
    people = read_people(where / "people.csv")
    with (where / "typed.csv").open("rb") as stream:
        rows = list(marks_of(assigned, TypedFile(stream, assigned.work.count), people))
    return {row.marked.person or f"row {row.row}": _marked(row.marked) for row in rows}


def _drawn(where: Path) -> dict:
    """The problems of many codes of exams, and of sets for a person."""
    codes = json.loads((where / "codes.json").read_text("utf-8"))
    papers = {code: read_paper(code) for code in codes["exams"]}
    found = {code: (*cases_of(paper), *faults_of(paper)) for code, paper in papers.items()}
    for code, person in codes["sets"]:
        work = read_set(code, PLANT if re.search(r"-P\d{6}-", code) else None)
        found[f"{code} {person}"] = (*cases_for(work, person), *faults_for(work, person))
    return {name: {"questions": [_row(case) for case in cases]} for name, cases in found.items()}


PARTS = {
    "log": _log,
    "exams": _exams,
    "set": _set,
    "group": _group,
    "record": _record,
    "paper": _paper,
    "drawn": _drawn,
}


def of_kept(where: Path) -> dict:
    """All that the files in this folder come to."""
    return {name: part(where) for name, part in PARTS.items()}
