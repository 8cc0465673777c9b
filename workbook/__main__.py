"""python3 -m workbook: the one command for everything. It opens the workbook."""

import sys
from io import TextIOWrapper

# Kept readable by older Pythons too, so that they can say this and not a syntax error.
if sys.version_info < (3, 11):
    sys.exit(
        "This is Python %d.%d. Wire to Water needs Python 3.11 or newer. "
        "Install a newer Python, then type the same command with it." % sys.version_info[:2]
    )

from .commands import main

if __name__ == "__main__":
    # What is said is seen at once, also where another program reads it.
    if isinstance(sys.stdout, TextIOWrapper):
        sys.stdout.reconfigure(line_buffering=True)
    sys.exit(main(sys.argv[1:]))
