"""A reader's own numbers, and the pump-day record.

- `work.py`: any known quantities in, any other out, with its steps.
- `follows.py`: all that follows from what is known, and what would have to be added for the rest.
- `doubts.py`: what cannot be true of readings, and what is unusual.
- `record/`: a pump's day worked, judged, and set against earlier ones.
"""
