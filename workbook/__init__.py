"""What people see and run: the pages, the cards on them, and the commands that open them."""
