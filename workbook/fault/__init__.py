"""Find the fault: a station that misbehaves, measured on one panel, named, and looked back on.

    story.py        one person's case: its file, a line for each thing done, so a closed tab loses nothing
    view.py         the station, the clipboard, the review, as HTML
    readings.py     the buttons: readings by what they need, the steps before them
    stand.py        the case being worked: station, readings, clipboard, name it and act
    fault_panel.py  the panel: choose a case, work it, see the review
    printed.py      a case on paper, by case.typ

Other rooms take nothing of it. The engine beneath is solver/fault.
"""
