"""The server behind the pages: what it finds without loading more than it needs."""

import json
import subprocess
import sys
import urllib.request

from workbook.start.child import environment
from workbook.start.launcher import SETTINGS

FIND = """
import sys
from workbook.start.kernels import Kernels
print(*Kernels().find_kernel_specs())
print("IPython" in sys.modules)
"""


def test_kernels_are_found_without_loading_ipython():
    """What Jupyter finds by itself, with all of IPython, is in Jupyter's own folders too."""
    command = [sys.executable, "-c", FIND]
    own = environment(JUPYTER_PATH=str(SETTINGS))
    done = subprocess.run(command, env=own, capture_output=True, text=True, check=True)
    found, loaded = done.stdout.splitlines()
    assert "python3" in found.split()
    assert "False" == loaded


def test_a_notebook_of_ones_own_can_still_be_exported(workbook_server):
    ask = f"{workbook_server.base}/api/nbconvert?token={workbook_server.token}"
    with urllib.request.urlopen(ask) as answer:
        assert {"html", "pdf", "script"} <= set(json.load(answer))
