"""Commas that are missing or too many, semicolons and colons."""
