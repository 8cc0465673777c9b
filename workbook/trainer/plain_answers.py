"""The plain answers of a notebook: what stands after "Answer:" in the cells that ask for one.

They are for a person whose cards do not run. A cell is known by its metadata, `wire_to_water`
with `answer` and the question's number; its text is data and nothing else.

>>> cell = {"cell_type": "markdown", "metadata": {"wire_to_water": {"answer": 3}}}
>>> page = {"cells": [{**cell, "source": "**Question 3.** Answer: 12.5 hp"}]}
>>> plain_answers(json.dumps(page).encode())
{3: '12.5 hp'}
"""

import json
import re

__all__ = ["ANSWER", "METADATA", "plain_answers"]

METADATA, ANSWER = "wire_to_water", "Answer:"
MOST = 20_000_000  # bytes; a notebook of text is a hundredth of it
LONGEST = 4_000  # characters of a cell
REMARK = re.compile(r"<!--.*?-->", re.DOTALL)
AROUND = " \t\r\n*_`>"  # marks that Markdown puts around words


def plain_answers(notebook: bytes | None) -> dict[int, str]:
    """The answers by question, without those left empty; it never raises.

    Where two cells answer one question in different words, both are returned joined, which
    cannot be read as one answer.
    """
    found: dict[int, list[str]] = {}
    for cell in _cells(notebook):
        number = _number(cell)
        if number and (text := _answer(cell)) and text not in found.setdefault(number, []):
            found[number].append(text)
    return {number: " and ".join(texts) for number, texts in found.items()}


def _cells(notebook: bytes | None) -> list:
    try:
        page = json.loads(notebook) if notebook and len(notebook) <= MOST else {}
    except (ValueError, RecursionError):
        return []
    cells = page.get("cells") if isinstance(page, dict) else None
    return cells if isinstance(cells, list) else []


def _number(cell: object) -> int:
    """The question a cell is for; 0 where it is for none."""
    for name in ("metadata", METADATA, "answer"):
        cell = cell.get(name) if isinstance(cell, dict) else None
    return cell if type(cell) is int and 1 <= cell <= 999 else 0


def _answer(cell: dict) -> str:
    """The first line with words after "Answer:"; other programs write a cell as lines."""
    source = cell.get("source")
    if isinstance(source, list):
        source = "".join(line for line in source if isinstance(line, str))
    if not isinstance(source, str) or cell.get("cell_type") != "markdown":
        return ""
    after = source[:LONGEST].partition(ANSWER)[2].strip()
    lines = (line.strip(AROUND) for line in REMARK.sub("", after).splitlines())
    return next(filter(None, lines), "") if after else ""
