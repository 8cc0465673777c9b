"""Efficiency of pump, motor, drive and the whole."""
