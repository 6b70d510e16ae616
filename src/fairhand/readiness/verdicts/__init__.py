"""What became of each requirement, one file a kind; ``fairhand.readiness.table`` puts them in order."""
