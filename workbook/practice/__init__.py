"""Practice on cards: one kind, mixed, guided; worked examples; a reader's own numbers."""
