"""The draft as it grows: written, outlined, cut, moved and brought to its length."""
