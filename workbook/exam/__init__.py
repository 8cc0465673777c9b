"""The practice exam: a paper from its code, sat against the clock, kept as it goes."""
