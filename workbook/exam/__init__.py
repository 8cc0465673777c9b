"""The practice exam: a paper from its code, sat against the clock, kept as it goes.

    lines.py      the file of a sitting, a line for each thing that happens
    sitting.py    a sitting as its file has it; time_used.py, how much of its time is used;
                  ways.py, its ways through cases; question.py, one question, read and marked
    earlier.py    sittings begun before, and how each stands
    desk.py       where a reader is in it; case_desk.py, a case of find the fault; clock.py, the time left;
                  overview.py, all questions at a glance
    outcome.py    what came of it, counted; result.py, the same as HTML
    mixture.py    a share for each chapter, as text to keep, to send and to paste
    start.py, sit.py, done.py   its views: set up, taken, seen through; practice_exam.py, all of them
    printed.py    the exam on paper

Other rooms take nothing of it.
"""
