"""What somebody may do to the notebook of a set before handing it in. None of it may count or run.

Each takes the notebook that went out, and returns the bytes of the file handed in.
"""

import json
from collections.abc import Callable
from typing import Any

from solver.sets.work_set import cases_for
from tests.workbook.trainer.sheets import right
from workbook.trainer.sets.set_file import Assigned

Page = dict[str, Any]


def untouched(page: Page) -> bytes:
    """The notebook as it went out."""
    return json.dumps(page).encode()


def torn(page: Page) -> bytes:
    """Half of a file."""
    return json.dumps(page).encode()[:5000]


def typed_in_words(assigned: Assigned, person: str) -> Callable[[Page], bytes]:
    """Each right answer behind the colon of its cell, with no card ever opened."""

    def fill(page: Page) -> bytes:
        cases = cases_for(assigned.work, person)
        for cell in page["cells"]:
            if number := cell["metadata"].get("wire_to_water", {}).get("answer"):
                cell["source"] = "".join(cell["source"]) + right(cases[number - 1])
        return json.dumps(page).encode()

    return fill


def _grade_cells(page: Page) -> list[dict]:
    return [cell for cell in page["cells"] if "nbgrader" in cell["metadata"]]


def edited(page: Page) -> bytes:
    """Grade cells that say full points."""
    for cell in _grade_cells(page):
        cell["source"] = "2.0"
    return json.dumps(page).encode()


def worth_more(page: Page) -> bytes:
    """Grade cells worth more, and open to changes."""
    for cell in _grade_cells(page):
        cell["metadata"]["nbgrader"] |= {"points": 1000, "locked": False}
    return json.dumps(page).encode()


def deleted(page: Page) -> bytes:
    """Without any grade cell."""
    page["cells"] = [cell for cell in page["cells"] if "nbgrader" not in cell["metadata"]]
    return json.dumps(page).encode()


def copied(page: Page) -> bytes:
    """Every cell twice, its lines split between the two."""
    cells = []
    for cell in page["cells"]:
        cells.append({**cell, "source": "from workbook import page"})
        cells.append({**cell, "id": f"{cell['id']}-2", "source": "page.set_mark(1)"})
    return json.dumps({**page, "cells": cells}).encode()


def strange(page: Page) -> bytes:
    """Grade cells whose metadata nbgrader could not read."""
    for cell in _grade_cells(page):
        cell["metadata"]["nbgrader"] = {"grade": "yes", "schema_version": 99, "grade_id": ["a"]}
    return json.dumps(page).encode()


def with_code(*code: str) -> Callable[[Page], bytes]:
    """Code of a learner before all other cells."""

    def put_in(page: Page) -> bytes:
        cells = [
            {**_CODE, "id": f"mine-{number}", "source": source}
            for number, source in enumerate(code)
        ]
        return json.dumps({**page, "cells": cells + page["cells"]}).encode()

    return put_in


def with_scripts(page: Page) -> bytes:
    """Scripts for the browser of whoever opens it: as plain answers, in headings, and as what cells put out."""
    put = {"output_type": "display_data", "data": {"text/html": SCRIPT}, "metadata": {}}
    for cell in page["cells"]:
        if cell["cell_type"] == "code":
            cell["outputs"] = [put]
        else:
            cell["source"] = f"{''.join(cell['source'])} {SCRIPT}"
    return json.dumps(page).encode()


SCRIPT = "<img src=x onerror=\"document.title='taken'\"><script>document.title='taken'</script>"
_CODE = {"cell_type": "code", "metadata": {}, "outputs": [], "execution_count": None}
STOLEN = "stolen.txt"
STEALS = f"""
gradebook = open("../../../gradebook.db", "rb").read()
open("../../../{STOLEN}", "wb").write(gradebook)
from workbook import page
page.set_mark = lambda number: 2.0
"""
