"""A reader's own numbers, and the pump-day record."""
