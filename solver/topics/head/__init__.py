"""Head and pressure."""
