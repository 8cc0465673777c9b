"""The reference: every formula rearranged, constants, units, tables and limits; to search, to print.

- `entry.py`: an entry and its part; finding entries by words
- `formulas.py`: formulas by chapter, as a chapter's list and as entries
- `search.py`, `__main__.py`: what the search in the bar finds
- `tables.py`: constants, units, published tables and limits
- `sheet.py`, `sheet.typ`: the formula sheet on paper, and `python3 -m workbook sheet`
- `reference_panel.py`: the page, and a chapter's formulas on its own page
"""

from .formulas import by_chapter, chapters_html
from .search import search_json
from .sheet import sheet_of

__all__ = ["by_chapter", "chapters_html", "search_json", "sheet_of"]
