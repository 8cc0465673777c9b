"""Find the fault: a station that misbehaves, and answers whatever is measured at it.

- `signals.py`: what one reading is: a number off an instrument, or words; `seen.py`: what somebody sees,
  hears, feels.
- `acts.py`: what can be done at a station: what each act reads, its minutes, and what it needs first.
- `safety.py`: the steps before an act, in their order, with the rule and its source.
- `stories.py`: what people report, and harmless oddities; `remedies.py`: what to do about each fault.
- `case.py`: a case by its code: the station, last year's record, the suspects, the fault.
- `finding.py`: what an act finds in a case, as the instrument shows it; the same for anyone.
- `model.py`: what each suspect would show, so which suspects a finding rules out, and what an act would tell.
- `way.py`: one person's way through a case, step by step: minutes, refusals, findings, names.
- `review.py`: a way held against the model, and against the shortest sure way.

A way is a list of words, so it can be kept, replayed and marked: `way_of(code, words)`. Nothing here asks the
clock, and all chance comes from the code.
"""
