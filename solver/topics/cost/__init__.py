"""Kilowatt-hours and what they cost."""
