"""Machines that could exist, which the problems' numbers are drawn from."""
