"""Where a page of the static site keeps what a reader did: in the browser, through the page.

JupyterLite shows a browser's own files to Python in one folder. Where the browser offers none (a
private window, or a site that is not served by https), what is written is gone with the page.
"""

import sys
from pathlib import Path

__all__ = ["kept", "lasting"]

DRIVE = Path("/drive")
FOLDER = "kept"  # front.py tells JupyterLite that the site itself has nothing there


def lasting() -> bool:
    """Whether what is written here is still there when the page is opened again."""
    return sys.platform != "emscripten" or DRIVE.is_dir()


def kept() -> Path | None:
    """The folder in the browser; None elsewhere, and where there is none."""
    return DRIVE / FOLDER if sys.platform == "emscripten" and DRIVE.is_dir() else None
