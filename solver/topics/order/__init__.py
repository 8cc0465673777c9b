"""Order of steps: what is done first and what must wait, marked by which steps must stand before which.

The steps are data in this folder, one file a topic (`solver/topics/orders.py` says how). `ORDER` has a
family for each.
"""
