"""Verbs that agree with their subjects, and nouns with the words that count them."""
