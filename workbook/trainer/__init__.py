"""What a trainer needs: work set to a class, marked as data, with no page and no program running."""
