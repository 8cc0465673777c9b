"""nbgrader's gradebook: its tables, what marking writes into them, and the rules of both ways to mark."""
