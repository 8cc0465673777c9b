"""Marks of what was handed in: of one person or of a class, what is said of them, and the pages given back."""
