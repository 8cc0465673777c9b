"""Marks of what was handed in: of one person or of a class, what is said of them, and the pages given back.

- `marked.py`: the marks of one person, from the bytes handed in or from answers typed back
- `lines.py`: the lines of a sheet, each where it belongs; `timed.py`: those after the time limit
- `tries.py`: what becomes of the answers to one question; `ways.py`: of a case of find the fault; `paper_case.py`: of one on paper; `odd.py`: why somebody must look, said shortly
- `bulk.py`: a class at once; `sharding.py`: shared out among processes and computers
- `feedback.py`: a mark in words; `feedback_pages.py`: a page for each person
- `given.py`: marks with the points that a trainer gave by hand
- `grade_cell.py`: the grade cells of a notebook, filled in or run
"""
