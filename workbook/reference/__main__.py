"""Writes what the search in the bar finds, as JSON: python -m workbook.reference."""

import sys

from .search import search_json

sys.stdout.buffer.write(search_json().encode())
