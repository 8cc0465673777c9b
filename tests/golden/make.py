"""The golden files: over 200 problems, and cases of find the fault, as they are, so that no change goes unnoticed.

    python -m tests.golden.make

Make it again after a change that is meant to change problems, and with every such change raise
the `revised` of the family, so that codes given out before are refused, never shown as other
problems. This command refuses to write where a problem changed and its family's revision did
not. `--unreleased` writes all the same: only for a family whose codes nobody has been given yet.
A new family, or a new level, needs no new revision, and may change until it is released; the release
runs this to have it in the file.
"""

import json
import sys
from pathlib import Path
from zlib import crc32

from solver import Case, draw
from tests.solver.drawn import PROBLEMS

from . import faults

__all__ = ["COUNT", "FILE", "as_kept", "kept", "main"]

FILE = Path(__file__).with_name("cases.json")
COUNT = 200


def as_kept(case: Case) -> dict:
    """What is kept of a case: all that makes it this problem, and no wording of its solution."""
    return {
        "code": case.code,
        "question": case.question,
        "given": dict(case.given),
        "answer": case.answer,
        "unit": case.unit,
        "accepted": [case.low, case.high],
        "mistakes": {mistake.id: mistake.value for mistake in case.mistakes},
        "choices": list(case.choices),
    }


def drawn() -> list[Case]:
    """Cases of every family, level and system, in their order; COUNT or more.

    A problem's seed hangs on its name alone, so that a new family moves no other's code.
    """
    rounds = range(-(-COUNT // len(PROBLEMS)))
    return [
        draw(
            family,
            crc32(f"{family.name} {level} {units} {again}".encode()) % 1_000_000,
            units,
            level,
        )
        for family, level, units in PROBLEMS
        for again in rounds
    ]


def kept() -> list[dict]:
    """The problems of the file."""
    return json.loads(FILE.read_text("utf-8")) if FILE.exists() else []


def main(arguments: list[str]) -> int:
    """Write the files; 1 where that would hide a change."""
    files = (
        (FILE, kept(), [as_kept(case) for case in drawn()]),
        (faults.FILE, faults.kept(), [faults.as_kept(case) for case in faults.drawn()]),
    )
    changed = [code for _, before, rows in files for code in _changed(before, rows)]
    if changed and "--unreleased" not in arguments:
        print(f"{len(changed)} problems changed, and their codes did not: {', '.join(changed)}")
        print(
            "Add the next catalogue to `revised` of their families, or see the first lines of this file."
        )
        return 1
    for file, _, rows in files:
        lines = ",\n".join(json.dumps(row, ensure_ascii=False, indent=1) for row in rows)
        file.write_text(f"[\n{lines}\n]\n", "utf-8")
    written = sum(len(rows) for _, _, rows in files)
    print(f"{written} problems and cases written, {len(changed)} of them changed.")
    return 0


def _changed(before: list[dict], rows: list[dict]) -> list[str]:
    """The codes of rows that are not what they were."""
    old = {row["code"]: row for row in before}
    return [row["code"] for row in rows if old.get(row["code"], row) != row]


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
