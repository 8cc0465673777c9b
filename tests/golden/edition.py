"""The edition of exams: which families there were when it was last raised.

    python -m tests.golden.edition

The code of an exam gives the same questions only while the families stay as they are. So whoever
adds a family or a level, takes one away, moves one, or raises a revision, raises `EDITION` in
solver/paper.py too, then runs this. It refuses to write where the families changed and the edition
did not. `--unreleased` writes all the same: only while nobody has been given a code of it.
"""

import json
import sys
from hashlib import sha256
from pathlib import Path

from solver import FAMILIES
from solver.paper import EDITION

__all__ = ["FILE", "kept", "main", "now"]

FILE = Path(__file__).with_name("edition.json")
RAISE = (
    "The families changed, so an old exam code would give other questions. "
    "Raise EDITION in solver/paper.py, then run: python -m tests.golden.edition"
)


def now(families=FAMILIES, edition: int = EDITION) -> dict:
    """The edition, and a digest of the families in their order."""
    rows = [[f.chapter, f.name, f.tag, f.revision, len(f.levels)] for f in families]
    return {"edition": edition, "families": sha256(json.dumps(rows).encode()).hexdigest()}


def kept() -> dict:
    """What the file holds."""
    return json.loads(FILE.read_text("utf-8")) if FILE.exists() else {}


def fault(before: dict, after: dict) -> str:
    """What is to be done before exams can be given out again; empty where all is well."""
    if before == after:
        return ""
    if before.get("edition") == after["edition"]:
        return RAISE
    return "EDITION was raised. Run: python -m tests.golden.edition"


def main(arguments: list[str]) -> int:
    """Write the file; 1 where that would hide a change."""
    if fault(kept(), now()) == RAISE and "--unreleased" not in arguments:
        print(RAISE)
        return 1
    FILE.write_text(json.dumps(now(), indent=1) + "\n", "utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
