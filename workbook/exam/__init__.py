"""The practice exam: a paper from its code, sat against the clock, kept as it goes.

    lines.py      the file of a sitting, a line for each thing that happens
    sitting.py    a sitting as its file has it; question.py, one question, read and marked
    earlier.py    sittings begun before, and how each stands
    desk.py       where a reader is in it; clock.py, the time left
    result.py     what came of it, counted and as HTML
    start.py, sit.py, practice_exam.py   its views: set up, sat, seen through
    printed.py    the exam on paper

Other rooms take nothing of it.
"""
