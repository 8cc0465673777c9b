"""Below every feature, knowing none: controls, entry, pieces of pages, sayings, the list of pages."""
