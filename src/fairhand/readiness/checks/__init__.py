"""The checks, one file each; ``fairhand.readiness.table`` puts them in order."""
