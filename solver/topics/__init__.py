"""One folder a chapter: its quantities, formulas, tables, problems and questions in words."""
