"""The page on which a trainer sets work: a form, what it comes to for anybody, and the set written.

- `setting_panel.py`: the page, and writing from it
- `form.py`: the boxes; `plant.py`: the trainer's own plant among them
- `draft.py`: what is filled in, as typed, and the set it makes, in no widgets; `typed_in.py`: how each box
  is read
- `summary.py`: the set in sentences; `preview.py`: the questions of anybody
- `keep.py`: the set written into its course, and never over another unasked
"""
