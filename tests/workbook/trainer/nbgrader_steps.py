"""What a trainer types of nbgrader's commands, in one program: its start costs more than each step."""

import subprocess
import sys
from pathlib import Path

from workbook.start.child import environment

__all__ = ["nbgrader"]

PROGRAM = """
import sys
from nbgrader.apps import NbGraderAPI
from traitlets.config import PyFileConfigLoader

config = PyFileConfigLoader("nbgrader_config.py").load_config()
_, name, gradebook, *steps = sys.argv
if gradebook:
    config.CourseDirectory.db_url = gradebook
nbgrader = NbGraderAPI(config=config)
for step in steps:
    word, *person = step.split()
    done = getattr(nbgrader, word)(name, *person)
    done["success"] or sys.exit(done["log"])
"""


def nbgrader(course: Path, name: str, *steps: str, gradebook: str = "") -> None:
    """Take the set `name` through steps, such as "collect" or, of one person, "autograde ben".

    They all must end well. `gradebook` is the address of another one than the course's own.
    """
    command = [sys.executable, "-c", PROGRAM, name, gradebook, *steps]
    subprocess.run(command, cwd=course, env=environment(), check=True)
