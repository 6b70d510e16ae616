"""Small words that were left out."""
