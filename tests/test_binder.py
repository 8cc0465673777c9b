"""What Binder does with this project, done here as far as a computer without containers can.

The environment that runs the tests stands in for the pinned one: it has the same versions. Into a new
one upon it goes what binder/postBuild installs, and nothing is fetched.
"""

import contextlib
import os
import shutil
import socket
import subprocess
import sys
import sysconfig
import time
import urllib.request
import venv
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import pytest

from workbook.online import links
from workbook.start import child

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="Binder runs on Linux")
PARTS = ("solver", "workbook", "binder")
OTHERS = ("JUPYTER_", "MPL", "PYTHON", "XDG_")  # a session has none of ours


def test_repo2docker_reads_the_whole_recipe(root):
    look = [sys.executable, "-m", "repo2docker", "--no-build", "--debug", str(root)]
    done = subprocess.run(look, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    told = done.stdout.decode()
    assert 0 == done.returncode, told
    assert 'pip install --no-cache-dir -r "binder/requirements.txt"' in told
    assert "RUN ./binder/postBuild" in told
    assert 'ENV R2D_ENTRYPOINT="${REPO_DIR}/binder/start"' in told
    runtime = (root / "binder" / "runtime.txt").read_text().strip().removeprefix("python-")
    assert f'"Programming Language :: Python :: {runtime}"' in (root / "pyproject.toml").read_text()


@pytest.fixture(scope="module")
def image(root, tmp_path_factory):
    """A checkout and a new environment in which postBuild has run; the variables of a session."""
    home = tmp_path_factory.mktemp("binder")
    checkout, own = home / "checkout", home / "own"
    leave = shutil.ignore_patterns("__pycache__")
    for part in PARTS:
        shutil.copytree(root / part, checkout / part, ignore=leave)
    for file in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(root / file, checkout)
    venv.create(own, symlinks=True)
    base = {"base": str(own), "platbase": str(own)}
    place = Path(sysconfig.get_path("purelib", "venv", vars=base))
    (place / "pinned.pth").write_text(sysconfig.get_path("purelib") + "\n")
    environment = {
        **{name: value for name, value in os.environ.items() if not name.startswith(OTHERS)},
        "HOME": str(home),
        "PATH": f"{own / 'bin'}{os.pathsep}{os.environ['PATH']}",
        "JUPYTER_PATH": str(Path(sys.prefix, "share", "jupyter")),
        # What would be fetched to build with is pinned and there.
        "PIP_NO_INDEX": "1",
        "PIP_NO_BUILD_ISOLATION": "0",
    }
    build = [checkout / "binder" / "postBuild"]
    subprocess.run(build, cwd=checkout, env=environment, check=True, stdout=subprocess.DEVNULL)
    return checkout, environment


def test_what_a_session_needs_first_is_made_with_the_image(image):
    checkout, environment = image
    ask = ["python3", "-c", "import matplotlib; print(matplotlib.get_cachedir())"]
    told = subprocess.run(ask, env=environment, check=True, stdout=subprocess.PIPE).stdout
    assert list(Path(told.decode().strip()).glob("fontlist-*.json"))
    modules = {path for part in PARTS[:2] for path in (checkout / part).rglob("*.py")}
    compiled = {path.parent.parent / path.name for path in checkout.rglob("__pycache__/*.pyc")}
    names = {path.parent / f"{path.name.split('.')[0]}.py" for path in compiled}
    assert set() == modules - names


@contextlib.contextmanager
def session(checkout, environment):
    """A server started as Binder starts one; its address."""
    with socket.socket() as trial:
        trial.bind(("127.0.0.1", 0))
        port = trial.getsockname()[1]
    server = ["python3", "-m", "jupyterlab", "--no-browser", "--allow-root", f"--port={port}"]
    server += ["--ip=127.0.0.1", "--ServerApp.port_retries=0", "--ServerApp.base_url=/user/one/"]
    start = [str(checkout / "binder" / "start"), *server]
    environment = {**environment, "JUPYTER_TOKEN": "key"}
    with child.started(start, cwd=checkout, env=environment, stderr=subprocess.DEVNULL) as jupyter:
        base = f"http://127.0.0.1:{port}/user/one"
        while not _answers(f"{base}/api"):
            assert jupyter.poll() is None, "the server did not start"
            time.sleep(0.1)
        yield base


def _answers(address):
    with contextlib.suppress(OSError), urllib.request.urlopen(address, timeout=5):
        return True
    return False


@pytest.mark.browser
def test_the_link_opens_the_opening_page_as_a_reader_sees_it(image, page):
    link = links.binder(links.repository("https://github.com/pumps/wire"))
    [urlpath] = parse_qs(urlsplit(link).query)["urlpath"]
    with session(*image) as base:
        page.goto(f"{base}/{urlpath}?token=key")
        page.locator('.wtw-page[data-state="ready"]').wait_for()
        assert page.get_by_role("heading", name="Wire to Water").is_visible()
        assert not page.get_by_text("from workbook import page").is_visible()
        page.get_by_role("link", name="chapter 1", exact=True).click()
        page.get_by_label("Your answer").locator("visible=true").first.wait_for()
