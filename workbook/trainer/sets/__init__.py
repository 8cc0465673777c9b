"""A set of work: its file, `set.toml`, and the notebook that is handed out."""
