"""The same work in several forms; no arithmetic.

- `text.py`: problems, steps, verdicts and own numbers as plain text, and as data for JSON.
- `paper.py`: an exam, by its chapters and the codes of its questions.
- `html.py`: steps and formulas as HTML, and formulas in LaTeX.
- `print.py`: formulas as marked text, which a printed page reads as data.
- `station.py`: a station as text and as data for JSON; `picture.py`: as a drawing, with its scenes
  (`picture_scenes.py`, of `picture_pieces.py`), its words (`picture_words.py`) and the pieces of any
  drawing (`svg.py`).
- `taken.py`: a station with the places where the readings of a record are taken.
- `problem/`: the picture of a problem, with its givens in their places; a drawing a module.
"""
