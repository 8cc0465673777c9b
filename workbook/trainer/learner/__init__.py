"""A set as its learner has it: who they are, their questions and tries, the sheet that is handed in.

- `who.py`: the id of a person, asked once and kept
- `class_list.py`: the list of a class as marks that travel with a set
- `own_set.py`: the set open on a page; `parts.py`, what shows it; `standing.py`, how the work stands
- `timing.py`: the time limit of a set, from when its questions are opened
- `answer_sheet.py`: the sheet, and one question with its tries
- `own_case.py`: a case of find the fault, worked; `fault_card.py`: its card
- `set_card.py`: the card of a question
- `set_panel.py`: above the questions who works here, below them handing in
- `sent_set.py`: a set that came as a link or a text; `sent_panel.py`: the page of it
"""
