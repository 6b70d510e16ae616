"""Marks, dashes, numerals, headings and exhibits against the form that the style asks."""
