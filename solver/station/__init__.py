"""One model of a pump station, behind every number: a problem is a reading of a station that could exist.

`drawn` draws one for a `Need`, going from its duty to its bill through one module a machine: `main`, `suction`,
`supply`, `drive`, `pump`, `motor`, `well`, `bill`, `condition`, with what each `kind` allows. `Station.reading` gives any
quantity by its name, worked out only when asked for (`readings/`, one module a topic); `noted` as its
instrument shows it. `running` finds where the curves cross; `what_if` another speed, a trim, a second
pump; `faults` what can be wrong, each in one place. The model is the truth and the formulas are the
lesson: tests/station/test_formulas.py holds one against the other, and says what a formula leaves out.
"""
