"""Speed, impeller and the affinity laws."""
