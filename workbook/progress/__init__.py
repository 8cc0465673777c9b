"""The progress page: facts, their pictures and words, and the panel that shows them."""
