"""Machines that could exist, drawn whole: what the scenes of several topics share.

`pumps.py` draws a pump with its motor, `legs.py` a motor's three legs, and `readings.py` works
a reading out by formulas and notes it as a person would.
"""
