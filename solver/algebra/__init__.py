"""Equations as data: expressions, formulas, rearranged for any quantity, typeset.

| file | what is in it |
|---|---|
| `expression.py` | the nodes of an expression, `Expr` their closed union; the constants of the trade |
| `tree.py` | a tree of nodes walked, rearranged, made again of others, made a function |
| `formula.py` | an equation with its source, its why and its slips, which proves that its units cancel |
| `notation.py` | an expression written out in one notation, plain or LaTeX |
| `typeset.py` | that with the names of its quantities, with their symbols, or with numbers |

A new node is added to `Expr`; mypy then names every function that does not know it yet.
"""
