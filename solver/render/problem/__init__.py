"""A problem's picture: its givens in their places, and a question mark for what is asked.

`picture_of(case)` chooses the drawing that has a place for most of a problem's quantities, or none.

- `shown.py`: what may be said: givens, "?" or the answer, what to look at
- `drawing.py`: what a drawing is; `band.py`, `legs.py`: a drawing each
- `chosen.py`: the list of drawings, and the picture with all that goes around one
"""

from .chosen import drawing_for, picture_of

__all__ = ["drawing_for", "picture_of"]
