"""The hand-in: what the sheet asks of it, what the writer states, and what was handed in and came back."""
