"""What is typed and shown: units and their spellings, numbers, and what is refused.

| file | what is in it |
|---|---|
| `unit.py` | every unit: how the trade spells it, its kind, the scale that converts it; products of units |
| `units.txt`, `unit_scales.txt` | the units written by hand; their scales, compiled |
| `in_pint.py` | the units in pint, which compiles the scales and proves formulas in the tests |
| `quantity.py` | what a quantity is: names, symbol, units, plausible range, hard limits |
| `show.py` | a number written for a reader, with its unit |
| `reading.py` | what was typed, read as one number with a unit that fits, or refused |
| `typed.py` | the ordinary case of that, and the sentences that refuse |
| `other_forms.py` | the other ways to write a number: 62 ft 6 in, 1:15, 12k |
| `order.py` | an order of lettered steps, typed as C A B D and kept as a number |
| `worked_sum.py` | a sum typed as an answer: 150*66/3960 |

The quantities themselves are in their topics; `solver/vocabulary.py` finds one by its name and says
its name in a sentence.
"""
