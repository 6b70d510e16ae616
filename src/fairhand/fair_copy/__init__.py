"""The fair copy: the paper as it is handed in, laid out as its style and its sheet ask."""
