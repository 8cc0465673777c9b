"""Wet wells, cycles and drawdown."""
