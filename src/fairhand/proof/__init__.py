"""The page as it will be read, the marks on it, and what is let stand."""
