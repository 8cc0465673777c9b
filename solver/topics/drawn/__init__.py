"""Machines that could exist, drawn whole: what the scenes of several topics share.

| file | what it has |
|---|---|
| `pumps.py` | a pump with its drive and its motor |
| `readings.py` | a reading worked by formulas, noted as people note it, said with its unit |
"""
