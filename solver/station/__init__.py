"""One model of a pump station, behind every number: a problem is a reading of a station that could exist.

`drawn` draws one for a `Need`: its `site` from one of the `kinds`, the `machines` for its duty, and the rest, each
as people build it (`built`). Each machine has its module with its physics, its sources and its own draw: `main`, `suction`,
`supply`, `drive`, `pump`, `motor`, `well`, `condition`, `bill`; `system` has the units.
`Station.reading` gives any quantity by its name, worked out only when asked for (`readings/`, one module a
topic); `noted` as its instrument shows it (`instruments`). `running` finds where the curves cross, `curves` has
points to draw; `what_if` tells of another speed, a trim, a second pump, better machines. `faults` is what
can be wrong, `changes` what each one changes, `telling_apart` which readings tell one state from another.
`town` has the pumps of the invented town.

The model is the truth and the formulas are the lesson: tests/station/test_formulas.py holds one against the
other and says what a formula leaves out, tests/references/test_station.py holds it against published tables.
Nothing here knows a formula or a problem; of the topics it reads the published tables alone.
"""
