"""Around the machine: questions in words, one .toml file a topic, each answer with its source."""
