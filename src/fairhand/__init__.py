"""Fairhand: researched papers from the assignment sheet to the hand-in."""

__version__ = "0.1.0"
