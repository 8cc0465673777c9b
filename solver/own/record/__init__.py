"""The pump-day record: one pump's readings worked, judged, and set against its earlier ones.

What a page, a form, a printed sheet or a plot builds on:

- `FIELDS`, by `GROUPS`: what can be written down; each has a label, its unit by `unit(system)`,
  and for a word of the nameplate its `words` to choose from.
- `read_entries(texts, units)`: what was typed, by field name -> a `Record`, and a `Fault` (field,
  sentence) for each entry that could not be read or is to be known. Nothing typed is lost.
- `examine(record)` -> `Examined`: `findings` in the order of `CHECKS`, each with its `check.topic`
  and `check.label(units)`, `value`, `unit`, `state` (one of `STATES`, the most pressing first), its
  `verdict` (says, limit, source, then) and `steps`, shown with `found.known` and `found.given`;
  then `contradictions`, `notices`, `next_checks`, `cautions` (topics), `not_measured`, `always`.
- `by_pump(records)`, then `trend(records)` of one pump, or `trend_of(examined)`: a `Trend` for each
  of `FOLLOWED`, with its `points` (day, years for an axis, value), `direction`, `change`, `sudden`,
  `rule`, `says` and `may_mean`. `limit_lines(name, examined)` has its limits as numbers.
- `place_of(name)`: where a reading is taken, one of `PLACES`.
- `lesson(examined)`: the problems whose givens a record knows; `like(exercise, ...)`: fresh ones.

`days.py` reads dates. `check.py` works a check, `verdict.py` sets it against its limit; the checks of
each topic are in `insulation.py`, `legs.py` and `wire_to_water.py`.

>>> from solver.own.record import examine, read_entries
>>> volts = {"volts_ab": "462", "volts_bc": "463", "volts_ca": "455 V"}
>>> record, faults = read_entries({"pump": "Pump 2", **volts})
>>> found = examine(record).finding("voltage_unbalance")
>>> found.state, found.verdict.says, found.verdict.source
('look into it', 'The voltage unbalance is 1.087%, over 1%.', 'NEMA MG 1')
"""

from .check import Finding
from .entries import Fault, Record, read_entries
from .examine import ALWAYS, CHECKS, Examined, Line, examine, limit_lines
from .fields import FIELDS, GROUPS, Field, field_named
from .lesson import Exercise, Lesson, lesson, like
from .places import PLACES, Place, place_of
from .trend import FOLLOWED, Followed, Trend, by_pump, trend, trend_of
from .verdict import BEYOND, COARSE, LOOK, NO_LIMIT, NOT_MEASURED, STATES, WITHIN

__all__ = [
    "ALWAYS",
    "BEYOND",
    "CHECKS",
    "COARSE",
    "FIELDS",
    "FOLLOWED",
    "GROUPS",
    "LOOK",
    "NOT_MEASURED",
    "NO_LIMIT",
    "PLACES",
    "STATES",
    "WITHIN",
    "Examined",
    "Exercise",
    "Fault",
    "Field",
    "Finding",
    "Followed",
    "Lesson",
    "Line",
    "Place",
    "Record",
    "Trend",
    "by_pump",
    "examine",
    "field_named",
    "lesson",
    "like",
    "limit_lines",
    "place_of",
    "read_entries",
    "trend",
    "trend_of",
]
