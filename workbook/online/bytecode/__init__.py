"""Modules as bytecode of the browsers' Python, where something here can make it."""

import shutil
import subprocess
import sys
from pathlib import Path

from workbook.online.refusal import NotBuilt
from workbook.online.runtime import PYTHON, Brought, Usual

__all__ = ["to_bytecode"]

SCRIPT = Path(__file__).with_name("to_bytecode.py")
IN_NODE = Path(__file__).with_name("in_node.mjs")


def to_bytecode(wheels: Path, runtime: Brought | Usual) -> bool:
    """Put bytecode in place of the modules of all wheels in a folder; False where nothing can.

    Raises:
        NotBuilt: it failed.
    """
    node = shutil.which("node")
    if sys.version_info[:2] == PYTHON:
        command = [sys.executable, SCRIPT, wheels]
    elif node and isinstance(runtime, Brought):
        command = [node, IN_NODE, runtime.folder, SCRIPT, wheels]
    else:
        return False
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        raise NotBuilt(f"The modules couldn't be turned into bytecode: {done.stderr[-2000:]}")
    return True
