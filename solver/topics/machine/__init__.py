"""Around the machine: questions in words."""
