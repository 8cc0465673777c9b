"""JupyterLab's server, as the workbook starts it.

Of the formats that settings and events may be checked for, one takes a second and a half to load
at each start: international web addresses, which nothing here has. Its package is one that
jsonschema does without where it is missing.
"""

import runpy
import sys

if __name__ == "__main__":
    sys.modules["rfc3987_syntax"] = None  # type: ignore[assignment]  # an import finds it missing
    runpy.run_module("jupyterlab", run_name="__main__")
