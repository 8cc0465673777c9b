"""Units of the trade, converted."""
