"""A problem's picture: its givens in their places, and a question mark for what is asked.

`picture_of(case)` takes the drawing that has a place for most of a problem's quantities; what else is
given is in a line under it. A problem without enough of any has no picture.

- `shown.py`: what may be said: givens, "?" or the answer, what to look at; and how it is written
- `drawing.py`: what a drawing is: its places, and how it is drawn
- `chosen.py`: the list of drawings, and the picture with all that goes around one
- power and money: `band`, `energy`, `bill`, `peaks`, `demand`; water: `well`, `gauges`, `suction`, `pipe`, `profile`, `tank`, `weir`, `throat`
- circuits, wire, transformers and controls: `circuit`, `supply`, `ladder`, `control`
- the motor: `triangle`, `speeds`, `plate`, `legs`, `rolled`, `megohms`; the pump: `twice`, `curve`, `sheet`, `strokes`, `together`, `closed`
- between the two: `sheaves`, `shaft`, `coupling`, `greasing`; chemicals: `feed`; outages: `standby`

To add one: a module with a `Drawing`, which names the quantities it has a place for, and its name in
`chosen.py`. Nothing of it may be as long or as high as what is asked; the tests hold it to that, and to
labels that stand clear of each other in the widest letters.

A drawing keeps its height and its letters, and is as wide as the page lets it, from 330 px on.
"""

from .chosen import drawing_for, picture_of

__all__ = ["drawing_for", "picture_of"]
