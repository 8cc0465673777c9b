"""The first start of a new copy, with the oldest Python on this computer that is promised.

Everything is made as on a reader's computer: the environment from binder/, the folder, the server. It
fetches what pip does not have yet, so it runs where everything is tried out, which is `.ci/run`.
"""

import os
import re
import shutil
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

from workbook.start import bootstrap

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(os.environ.get("CI") != "true", reason="it fetches packages; see .ci/run"),
]
LOWEST = (3, 11)
ASK = "import ensurepip, sys, venv; print(*sys.version_info[:3])"
FETCHED = ("PATH", "LANG", "TMPDIR", "SSL_CERT_FILE", "HTTPS_PROXY", "https_proxy", "no_proxy")


def version_of(python):
    """The version of a Python that can set the workbook up; None for any other program."""
    done = subprocess.run([python, "-c", ASK], capture_output=True, text=True, check=False)
    return tuple(map(int, done.stdout.split())) if done.returncode == 0 else None


def oldest_python():
    folders = [Path(folder) for folder in os.environ["PATH"].split(os.pathsep)]
    named = {path for folder in folders for path in folder.glob("python3*")}
    programs = [path for path in named if re.fullmatch(r"python3(\.\d+)?(\.exe)?", path.name)]
    inside = Path(sys.prefix)
    found = {path: version_of(path) for path in sorted(programs) if not path.is_relative_to(inside)}
    fit = [path for path, version in found.items() if version and version >= LOWEST]
    return min(fit, key=found.get)


@pytest.fixture(scope="module")
def opened(root, tmp_path_factory):
    """A copy of the project, opened by a reader who has just that Python; its address and words."""
    new = tmp_path_factory.mktemp("new")
    copy, home = new / "wire-to-water", new / "home"
    home.mkdir()
    listed = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    names = subprocess.run(listed, cwd=root, check=True, capture_output=True).stdout.decode()
    for name in filter(None, names.split("\0")):
        if not name.startswith("tests/"):
            (copy / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(root / name, copy / name)
    cache = [sys.executable, "-m", "pip", "cache", "dir"]
    kept = subprocess.run(cache, check=True, capture_output=True, text=True).stdout.strip()
    environment = {
        **{name: value for name, value in os.environ.items() if name in FETCHED},
        **{name: value for name, value in os.environ.items() if name.startswith("PIP_")},
        "HOME": str(home),
        "PIP_CACHE_DIR": kept,
    }
    python = oldest_python()
    command = [python, "-m", "workbook", "--no-browser"]
    with subprocess.Popen(
        command,
        cwd=copy,
        env=environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    ) as running:
        said = []
        try:
            for line in running.stdout:
                said.append(line)
                if "token=" in line:
                    break
            assert "token=" in said[-1], "".join(said)
            yield copy, said[-1].split()[-1], "".join(said)
        finally:
            running.terminate()


def test_the_oldest_python_here_sets_everything_up_and_opens_the_first_page(opened, page):
    copy, address, said = opened
    assert "Setting up Wire to Water." in said
    assert "Everything is set up." in said
    assert (copy / ".venv" / bootstrap.STAMP.name).exists()
    with urllib.request.urlopen(address) as answer:
        assert 200 == answer.status
    page.goto(address)
    page.locator('.wtw-page[data-state="ready"]').wait_for()
    assert page.get_by_role("heading", name="Wire to Water").is_visible()
