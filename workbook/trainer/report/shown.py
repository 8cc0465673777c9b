"""The parts of a class report on a page: headings, sentences, pictures, points, wide tables."""

from collections.abc import Sequence
from html import escape
from urllib.parse import quote

from ipywidgets import HTML, VBox, Widget

from workbook.figures import LOOK, Beside, View, table_html
from workbook.ui.contents import chapters, titles
from workbook.ui.controls import classed

from .pictures import Pictured
from .sections import Point, Section

__all__ = ["Parts"]

NO_SHORTCUTS = "data-lm-suppress-shortcuts"  # or arrow keys would go to JupyterLab's cells
FEW = 4  # columns that a telephone has room for


class Parts:
    """The parts of a report under each other; a picture is drawn anew only where it has changed."""

    def __init__(self) -> None:
        self.box = VBox()
        self._pictures: dict[str, Beside] = {}

    def show(self, sections: Sequence[Section]) -> None:
        """Show these parts in place of those before."""
        parts = [HTML(LOOK)]
        for section in sections:
            parts.append(HTML(f"<h3>{escape(section.title)}</h3>{_lines(section.lines)}"))
            if section.pictured:
                parts.append(self._picture(section.title, section.pictured))
            if section.points:
                parts.append(HTML(_points(section.points)))
            if section.table:
                parts.append(classed(HTML(_table(section.table)), "w2w-numbers"))
        self.box.children = parts

    def _picture(self, title: str, pictured: Pictured) -> Widget:
        beside = self._pictures.setdefault(title, Beside("w2w-wide"))
        beside.show(*pictured)
        return beside.box


def _lines(lines: Sequence[str]) -> str:
    return "".join(f"<p>{escape(line)}</p>" for line in lines)


def _points(points: Sequence[Point]) -> str:
    files = {chapter.title: chapter.file for chapter in chapters()}
    named = titles()
    items = "".join(_point(point, named.get(point.chapter, ""), files) for point in points)
    return f'<ol class="w2w-flaws">{items}</ol>'


def _point(point: Point, title: str, files: dict[str, str]) -> str:
    where = escape(title or point.chapter)
    if title in files:
        where = f'<a class="w2w-save" href="{quote(files[title])}" target="_blank">{where}</a>'
    return f"<li><b>{escape(point.head)}</b>{_lines(point.lines)}<p>Chapter: {where}</p></li>"


def _table(table: View) -> str:
    """A table; one of many columns is moved sideways on a narrow screen, by keyboard too."""
    shown, caption = table_html(table, table.headline), escape(table.headline)
    if len(table.columns) <= FEW:
        return f'<div class="w2w-reasons">{shown}</div>'
    return (
        f'<div class="w2w-across" tabindex="0" role="region" aria-label="{caption}" '
        f"{NO_SHORTCUTS}>{shown}</div>"
    )
