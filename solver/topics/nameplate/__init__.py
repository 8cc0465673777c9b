"""Motors and their nameplates."""
