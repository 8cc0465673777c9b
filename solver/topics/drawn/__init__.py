"""`readings.py`: a reading worked by formulas, noted as people note it, said with its unit."""
