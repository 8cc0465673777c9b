"""What is typed and shown: units and their spellings, numbers, names, and what is refused."""
