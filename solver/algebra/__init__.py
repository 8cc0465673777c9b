"""Equations as data: expressions, formulas, turned round for any quantity, typeset."""
