"""A class report as text for a terminal."""

from collections.abc import Sequence
from textwrap import wrap

from workbook.figures import View
from workbook.ui.contents import titles

from .sections import Section

__all__ = ["report_text"]

WIDTH = 100
NARROWEST = 24  # characters of a column whose words are wrapped


def report_text(sections: Sequence[Section]) -> str:
    """Every part under its title, pictures as their tables."""
    return "\n\n".join(_section(section) for section in sections) + "\n"


def _section(section: Section) -> str:
    lines = [section.title, "-" * len(section.title), *section.lines]
    if section.pictured:
        lines += _table(section.pictured[1])
    named = titles() if section.points else {}
    for point in section.points:
        lines += [f"* {point.head}", *(f"  {line}" for line in point.lines)]
        lines.append(f"  Chapter: {named.get(point.chapter, point.chapter)}")
    if section.table:
        lines += _table(section.table)
    return "\n".join(lines)


def _table(view: View) -> list[str]:
    """Columns under their heads; the last cell of a row goes on below itself where it is long."""
    rows = [view.columns, *view.rows]
    widths = [max(len(row[at]) for row in rows) for at in range(len(view.columns))]
    start = sum(widths[:-1]) + 2 * len(widths[:-1])
    lines = []
    for row in rows:
        head = "".join(
            f"{cell:<{width + 2}}" for cell, width in zip(row[:-1], widths, strict=False)
        )
        last = wrap(row[-1], max(WIDTH - start, NARROWEST)) or [""]
        lines += [head + last[0], *(" " * start + more for more in last[1:])]
    return [line.rstrip() for line in lines]
