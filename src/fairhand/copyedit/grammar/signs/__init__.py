"""Apostrophes and hyphens."""
