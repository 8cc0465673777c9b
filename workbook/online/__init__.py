"""The workbook as a static site: built here, and what it needs to know where it runs.

`build` and what stands beside it make the site, on any computer. `address` and `here` are used by
pages that run in a reader's browser; they import nothing that a browser's Python lacks.
"""
