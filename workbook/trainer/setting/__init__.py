"""The page on which a trainer sets work: a form, what it comes to for anybody, and the set written."""
