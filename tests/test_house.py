"""The house: who may import whom, what type everything has, and how long a file is.

pyproject.toml has the rules of imports and types, DEVELOPERS.md all of them in words.
"""

import os
import subprocess
import sys
from pathlib import Path

import pytest

# What each asks of the whole tree; import-linter's program has no name that Python could run.
ASKED = {
    "imports": ("-c", "from importlinter.cli import lint_imports_command; lint_imports_command()"),
    "types": ("-m", "mypy"),
}

LONGEST = 250  # lines of a source
SOURCES = (".py", ".js", ".mjs", ".css")


@pytest.mark.parametrize("ask", ASKED)
def test_the_house_is_as_it_is_drawn(root, ask, tmp_path):
    own = {"PYTHONPATH": str(root), "MYPY_CACHE_DIR": str(tmp_path), "NO_COLOR": "1"}
    command = [sys.executable, *ASKED[ask], *(["--no-cache"] if ask == "imports" else [])]
    done = subprocess.run(
        command, cwd=root, env=os.environ | own, capture_output=True, text=True, check=False
    )
    assert 0 == done.returncode, done.stdout + done.stderr


def test_a_broken_rule_is_seen(root, tmp_path):
    """A type that is wrong in a copy of one small module fails there."""
    wrong = tmp_path / "wrong.py"
    source = Path(root, "solver/errors.py").read_text("utf-8")
    wrong.write_text(source + '\nMOST: int = "many"\n', "utf-8")
    command = [sys.executable, "-m", "mypy", "--strict", "--cache-dir", str(tmp_path), str(wrong)]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert "[assignment]" in done.stdout


def test_every_source_is_short_enough_to_be_read_whole(root):
    """One that outgrows it parts at a seam of the trade; DEVELOPERS.md says how."""
    files = [file for room in ("solver", "workbook") for file in Path(root, room).rglob("*")]
    lines = {
        str(file.relative_to(root)): len(file.read_text("utf-8").splitlines())
        for file in files
        if file.suffix in SOURCES
    }
    assert {"solver/topics/limits.py", "workbook/ui/look.css"} <= set(lines)
    assert {} == {file: count for file, count in lines.items() if count > LONGEST}
