"""The solver on the Python that browsers run, which has no numpy and no other programs.

The files here run each time. All of the solver's tests take four minutes there:

    W2W_WHOLE=1 python -m pytest tests/workbook/online/test_solver_in_node.py
"""

import os
import shutil
import subprocess
import sysconfig
from zipfile import ZipFile

import pytest

from workbook.online.packages import fetch
from workbook.start.bootstrap import TESTER, pins

# Every code's problem, its reading and grading, and what comes of papers and records.
ALIKE = (
    "tests/golden",
    *(f"tests/solver/test_{name}.py" for name in ("code", "reading", "paper", "record")),
)
# These start another program.
APART = (
    "tests/solver/test_command_line.py::test_a_code_page_that_lacks_our_signs_does_not_matter",
    "tests/solver/test_command_line.py::test_a_refusal_leaves_with_2_also_as_a_program",
    "tests/solver/test_command_line.py::test_bytes_that_are_no_text_are_unreadable_and_not_a_fault",
    "tests/solver/test_command_line.py::test_it_runs_as_a_program_in_the_plainest_surroundings",
    "tests/solver/test_determinism.py::test_leaving_out_assertions_changes_no_problem",
    "tests/solver/test_determinism.py::test_the_order_of_hashes_changes_no_problem",
    "tests/solver/test_purity.py::test_importing_all_of_the_solver_brings_in_nothing_heavy",
    "tests/solver/test_questions.py::test_importing_the_solver_reads_no_questions",
    "tests/solver/test_set_cases.py::test_a_persons_problems_hang_on_no_order_of_hashes",
    "tests/solver/test_units.py::test_units_and_reading_do_not_wait_for_pint",
)
# These hold it against libraries that are not in plain Python.
OTHERS = ("curves", "tables", "typeset")
PLAIN = ("-q", "-o", "addopts=", "-p", "no:cacheprovider", "--import-mode=importlib")


@pytest.fixture
def node():
    found = shutil.which("node")
    if found is None:
        absent = pytest.fail if os.environ.get("CI") == "true" else pytest.skip
        absent("no Node was found here; see .ci/run")
    return found


def test_the_solver_gives_the_same_on_the_browsers_python(node, root, runtime, tmp_path):
    fetch({"hypothesis": pins(TESTER)["hypothesis"]}, tmp_path)  # a part of it is compiled
    built = tmp_path / "built"
    ZipFile(next(tmp_path.glob("hypothesis-*.whl"))).extractall(built)
    whole = os.environ.get("W2W_WHOLE")
    files = ("tests/golden", "tests/solver", "solver", "--doctest-modules") if whole else ALIKE
    words = [*PLAIN, *files, *(f"--deselect={test}" for test in APART)]
    words += [f"--ignore=tests/solver/test_{name}.py" for name in OTHERS]
    script = root / "tests/workbook/online/solver_in_node.mjs"
    command = [node, script, runtime, root, built, sysconfig.get_path("purelib"), *words]
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    said = done.stdout.decode(errors="replace").splitlines()[-40:]
    assert 0 == done.returncode, "\n".join(line[:200] for line in said)
    assert " passed" in said[-1]
