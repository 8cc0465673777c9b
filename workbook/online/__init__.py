"""The workbook as a static site, built on any computer."""
