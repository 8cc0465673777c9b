"""A problem: its chain of formulas, steps, mistakes, band, chance, code and grading."""
