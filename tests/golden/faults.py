"""Cases of find the fault as they are, in faults.json: what a code gives must stay, once codes are given out.

`python -m tests.golden.make` writes the file with the problems'. Where a change is meant and codes were given out,
raise REVISION in solver/fault/case.py: old codes are then refused with a sentence.
"""

import json
from pathlib import Path

from solver.fault.case import LEVELS, FaultCase, fault_case
from solver.fault.finding import finding
from solver.fault.record import last_year
from solver.fault.review import sure_way

__all__ = ["FILE", "as_kept", "drawn", "kept"]

FILE = Path(__file__).with_name("faults.json")
SEEDS = (7, 48213, 99_999)


def as_kept(case: FaultCase) -> dict:
    """All that makes it this case: what is reported, what each act finds, the fault, a sure way."""
    return {
        "code": str(case.code),
        "report": [case.title, case.report],
        "suspects": list(case.suspects),
        "fault": [case.fault, case.severity],
        "off": list(case.off),
        "last_year": {one.signal.name: one.value for one in last_year(case)},
        "finds": {
            act: {one.signal.name: one.value for one in finding(case, act).shown}
            for act in case.acts
        },
        "sure_way": list(sure_way(str(case.code)).words),
    }


def drawn() -> list[FaultCase]:
    """Cases of every level and system."""
    return [fault_case(n, units, seed) for n in LEVELS for units in ("us", "si") for seed in SEEDS]


def kept() -> list[dict]:
    """The cases of the file."""
    return json.loads(FILE.read_text("utf-8")) if FILE.exists() else []
