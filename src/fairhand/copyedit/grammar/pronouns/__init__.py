"""Pronouns: their case, and the word they stand for."""
