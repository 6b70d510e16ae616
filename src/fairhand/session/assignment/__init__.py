"""Sheets given and read, and what the writer answers to them."""
