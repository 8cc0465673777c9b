"""Who is in a class, and work that did not come through nbgrader's exchange."""
