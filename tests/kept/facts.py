"""What the files of a kept version come to, as plain data, by the workbook as it is now.

A problem is named by what its code holds, for the form of a code may change: "BP 2 us 1 4821".
"""

import json
from pathlib import Path

from solver.code import read_code
from solver.paper import cases_of, read_paper
from solver.work_set import cases_for, read_set
from tests.solver.sets import PLANT
from workbook.exam.outcome import Outcome
from workbook.exam.sitting import Sitting
from workbook.group.facts import facts as group_facts
from workbook.group.posed import questions_of
from workbook.group.result import read_result
from workbook.group.set_text import read_set as read_group_set
from workbook.log import Log
from workbook.record.fleet import Fleet
from workbook.study import Study
from workbook.trainer.coming_in.people import read_people
from workbook.trainer.marking import Marked, mark
from workbook.trainer.on_paper.marks import marks_of
from workbook.trainer.on_paper.typed import TypedFile
from workbook.trainer.set_file import read_set_file

__all__ = ["PARTS", "named", "of_kept"]


def named(code: str) -> str:
    """A problem by what its code holds."""
    return " ".join(map(str, read_code(code)[:5]))


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
    whole = Outcome(sitting).whole
    return {
        "paper": list(sitting.paper[:7]),
        "ended": sitting.ended,
        "used": sitting.elapsed,
        "flagged": sorted(sitting.flagged),
        "questions": {
            named(one.question.case.code): [one.answer.typed if one.answer else "", one.right]
            for one in sitting.marks()
        },
        "in time": whole.in_time,
        "of": whole.of,
    }


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
        "questions": {
            named(each.case.code): [each.typed, each.status, each.points]
            for each in marked.questions
        },
        "points": marked.points,
        "look": marked.needs_person,
    }


def _group(where: Path) -> dict:
    """How each member stands at each problem."""
    problems = read_group_set((where / "group.txt").read_text("utf-8"))
    results = [read_result(p.read_bytes(), problems) for p in sorted(where.glob("group-*.jsonl"))]
    found = group_facts(questions_of(problems), results)
    return {
        "key": problems.key,
        "members": [member.name for member in found.members],
        "questions": {
            named(one.code): [[cell.state, cell.tries] for cell in row]
            for one, row in zip(found.questions, found.cells, strict=True)
        },
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
    found = {code: [named(c.code) for c in cases_of(read_paper(code))] for code in codes["exams"]}
    for code, person in codes["sets"]:
        work = read_set(code, PLANT if "-P" in code else None)
        found[f"{code} {person}"] = [named(case.code) for case in cases_for(work, person)]
    return found


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
