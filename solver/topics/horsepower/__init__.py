"""The three horsepowers."""
