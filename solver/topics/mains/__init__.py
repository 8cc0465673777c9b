"""Force mains, and how flow is measured: surge, weirs, flumes and meters.

| file | what it has |
|---|---|
| `quantities.py` | volumes and times of a main, surge, weirs, flumes, meters |
| `formulas.py` | the main's volume and time, and surge; `MAINS` has all of the chapter |
| `formulas_measuring.py` | weirs and flumes |
| `formulas_meters.py` | Venturi tubes and orifices, a meter against a test |
| `v_notch.csv`, `parshall.csv` | a V-notch by its angle, a Parshall flume by its throat |
| `stations.py` | the stations and the small draws its problems read |
| `problems.py` | what a main holds, flushing, surge, and the chapter in the order of teaching |
| `problems_measuring.py` | weirs, flumes and meters |
| `judgments.py` | how fast is too fast to close; whether a flume is submerged |
| `by_hand.py` | each number worked in plain numbers |
| `*.toml` | questions in words: force mains and their valves, meters and what they need |
"""
